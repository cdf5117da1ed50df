/** How the server stands: for whoever looks after it, as a page and for a program that watches. */
import { z } from 'zod';
import { nextDueMs } from '../backups/keep-backing-up.ts';
import { type Marks, readMarks } from '../backups/marks.ts';
import { type BareCall, type PageView, type Route, route } from '../http/route.ts';
import { checkNumber } from '../log/check-number.ts';
import { shownTime } from '../shown-time.ts';
import { type MachineFacts, machineFacts } from '../status/machine.ts';
import { shownBytes } from '../status/shown-bytes.ts';
import { warningsOf } from '../status/warnings.ts';

const ANSWER = z.object({
  at: z.iso.datetime(),
  warnings: z.array(
    z.object({ code: z.string(), text: z.string(), isUrgent: z.boolean().describe('See to it now') }),
  ),
  version: z.string(),
  node: z.string(),
  sqlite: z.string(),
  startedAt: z.iso.datetime(),
  memoryBytes: z.int(),
  log: z.object({
    entries: z.int(),
    check: z.string(),
    bytes: z.int().nullable(),
    freeBytes: z.int().nullable(),
  }),
  backups: z
    .object({
      folder: z.string(),
      everyHours: z.int(),
      keepDays: z.int(),
      freeBytes: z.int().nullable(),
      nextDueAt: z.iso.datetime(),
    })
    .nullable()
    .describe('Null where this server makes none'),
  lastBackup: z
    .object({
      at: z.iso.datetime(),
      folder: z.string(),
      entries: z.int(),
      check: z.string(),
      photosLost: z.int(),
    })
    .nullable()
    .describe('Read whole by the verifier before it counted'),
  lastCheckpoint: z.object({ at: z.iso.datetime(), line: z.int() }).nullable(),
  lastVerification: z
    .object({
      at: z.iso.datetime(),
      entries: z.int(),
      isWhole: z.boolean(),
      by: z.enum(['a person', 'a backup']),
    })
    .nullable(),
});

type Status = z.output<typeof ANSWER>;

async function statusOf({ services, now }: BareCall): Promise<Status> {
  const { machine, store, checkpoints, settings } = services;
  const [head, marks] = [await store.head(), await readMarks(store)];
  const facts = machineFacts(machine);
  const latest = checkpoints?.latest ?? null;
  const checkpoint =
    checkpoints === null
      ? null
      : {
          at: latest?.at ?? null,
          isFailing: checkpoints.failing,
          distrust: checkpoints.distrust?.what ?? null,
        };
  const looked = { machine, facts, marks, now, checkpoint, isOpenHttp: settings.isOpenHttp };
  const { node, sqlite, memoryBytes, logBytes, freeBytes } = facts;
  return {
    at: now.toISOString(),
    warnings: warningsOf(looked).map((warning) => ({ ...warning })),
    version: machine.version,
    node,
    sqlite,
    startedAt: machine.startedAt.toISOString(),
    memoryBytes,
    log: { entries: head.seq, check: checkNumber(head.hash), bytes: logBytes, freeBytes },
    backups: plannedOf({ services, now }, { facts, marks }),
    lastBackup: marks.backup,
    lastCheckpoint: latest === null ? null : { at: latest.at, line: latest.seq },
    lastVerification: marks.verification,
  };
}

function plannedOf(
  { services, now }: Pick<BareCall, 'services' | 'now'>,
  { facts, marks }: { readonly facts: MachineFacts; readonly marks: Marks },
): Status['backups'] {
  const { backups } = services.machine;
  if (backups === null) return null;
  const { to, everyHours, keepDays } = backups;
  const dueMs = nextDueMs(marks, { everyHours, nowMs: now.getTime() });
  const nextDueAt = new Date(dueMs).toISOString();
  return { folder: to, everyHours, keepDays, freeBytes: facts.backupFreeBytes, nextDueAt };
}

function statusPage(status: Status): PageView {
  const params = {
    warnings: status.warnings,
    at: shownTime(status.at),
    log: logFacts(status),
    backups: backupFacts(status),
    program: programFacts(status),
  };
  return { title: 'State of the server', template: 'pages/status.njk', params };
}

type Fact = { readonly label: string; readonly value: string };

const sizeOf = (bytes: number | null): string => (bytes === null ? 'not known' : shownBytes(bytes));

function logFacts({ log, lastCheckpoint, lastVerification }: Status): readonly Fact[] {
  return [
    { label: 'lines', value: String(log.entries) },
    { label: 'check number', value: log.check },
    { label: 'size on the disk', value: sizeOf(log.bytes) },
    { label: 'free on its disk', value: sizeOf(log.freeBytes) },
    {
      label: 'last checkpoint',
      value:
        lastCheckpoint === null ? 'none yet' : `line ${lastCheckpoint.line}, ${shownTime(lastCheckpoint.at)}`,
    },
    { label: 'read whole last', value: verifiedWords(lastVerification) },
  ];
}

function verifiedWords(last: Status['lastVerification']): string {
  if (last === null) return 'never';
  const at = shownTime(last.at);
  return last.isWhole ? `whole, ${last.entries} lines, ${at}` : `NOT whole, ${at}`;
}

function backupFacts({ backups, lastBackup }: Status): readonly Fact[] {
  if (backups === null) return [{ label: 'made by this server', value: 'none' }];
  return [
    { label: 'last one', value: lastBackup === null ? 'none yet' : shownTime(lastBackup.at) },
    {
      label: 'its check',
      value:
        lastBackup === null
          ? 'none yet'
          : `whole, ${lastBackup.entries} lines, check number ${lastBackup.check}`,
    },
    { label: 'next one due', value: shownTime(backups.nextDueAt) },
    {
      label: 'how often',
      value: backups.everyHours === 1 ? 'each hour' : `every ${backups.everyHours} hours`,
    },
    { label: 'kept for', value: backups.keepDays === 1 ? '1 day' : `${backups.keepDays} days` },
    { label: 'free there', value: sizeOf(backups.freeBytes) },
    { label: 'folder', value: lastBackup?.folder ?? backups.folder },
  ];
}

function programFacts({ version, node, sqlite, startedAt, memoryBytes }: Status): readonly Fact[] {
  return [
    { label: 'release', value: version },
    { label: 'runs since', value: shownTime(startedAt) },
    { label: 'memory', value: shownBytes(memoryBytes) },
    { label: 'Node', value: node },
    { label: 'SQLite', value: sqlite },
  ];
}

export const statusRoute: Route = route({
  method: 'GET',
  path: '/status',
  name: 'showStatus',
  summary:
    'Space, last backup and its check, last checkpoint and verification, size of the log, release, and what wants seeing to',
  roles: ['engineer', 'safety-officer'],
  menu: { text: 'Server', order: 85 },
  answer: ANSWER,
  handle: async (call) => {
    const data = await statusOf(call);
    return { data, page: statusPage(data) };
  },
});
