import { join } from 'node:path';
import { afterEach, beforeAll, describe, expect, test } from 'vitest';
import { FV_214 } from '../../server/demo/demo-valves.ts';
import { GEAR_IN_PSI } from '../../server/demo/earlier-jobs.ts';
import { SiteLog } from '../../server/log/site-log.ts';
import { verifyStore } from '../../server/log/verify.ts';
import type { DemoPerson } from '../../server/pages/set-up.ts';
import { openSqliteStore } from '../../server/store/sqlite-store.ts';
import { auditors, streamKinds } from '../../server/streams.ts';
import { strokeCheckByJson } from '../browser/harness/by-json.ts';
import { inRole } from '../browser/harness/people.ts';
import { comparableJob } from '../builders/comparable-log.ts';
import { aSheetOf } from '../builders/sheets.ts';
import { compiled } from '../compiled.ts';
import { aFolder } from '../folders.ts';
import { JobClient, type Texts, type Told, type Wire } from '../server/jobs/job-client.ts';
import { wireTo } from '../server/jobs/wire.ts';
import { RunningServer } from './running-server.ts';

/** The long run kills before and within every request of the job; the ordinary one within some of them. */
const LONG = process.env.YOKESIDE_LONG === '1';
const EACH = LONG ? 1 : 29;
/** A request takes a few milliseconds: a server killed so long after it was sent has done all, some or nothing of it. */
const WITHIN_MS = 12;
const ACTS_MAX = 120;

const SHEET = aSheetOf(FV_214);
const after = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

let script = '';
let clock = '';
const running: RunningServer[] = [];
beforeAll(async () => {
  script = await compiled('server/main.ts');
  clock = await compiled('tests/faults/moved-clock.ts');
});
afterEach(async () => {
  for (const server of running.splice(0)) await server.kill();
});

interface Outcome {
  readonly folder: string;
  readonly server: RunningServer;
  readonly people: readonly DemoPerson[];
  readonly id: string;
  /** Ids of the acts that the server confirmed, in order. */
  readonly confirmed: readonly string[];
  readonly kills: { between: number; unanswered: number; kept: number };
}

/** Does the job on a server that is killed between requests and within them, and started again each time. */
async function jobThroughKills(): Promise<Outcome> {
  const folder = aFolder();
  const server = new RunningServer({ script, clock, folder: join(folder, 'data') });
  running.push(server);
  await server.start();
  const people = await server.loadDemo();
  const technician = inRole(people, 'technician');
  // The session outlives the server, and the wire reaches it wherever it listens after each start.
  const wire = await wireTo({ origin: () => server.address, who: technician.id, pin: technician.pin });
  const client = new JobClient({ wire, ask: 'json', sheet: SHEET, signer: inRole(people, 'supervisor') });
  const id = await client.open('line', GEAR_IN_PSI);
  const kills = { between: 0, unanswered: 0, kept: 0 };
  const confirmed: string[] = [];
  for (let acts = 0; acts < ACTS_MAX; acts += 1) {
    const told = await client.job(id);
    if (told.status === 'closed') {
      return { folder: join(folder, 'data'), server, people, id, confirmed, kills };
    }
    server.wait(client.waitMs(told));
    if (acts % EACH === 0) {
      await server.killAndStart();
      kills.between += 1;
      // All that stood there, word for word; a page is sealed anew each time it is shown.
      expect(unsealed(await client.job(id))).toEqual(unsealed(told));
    }
    const fields = client.actFor(told);
    if (acts % EACH === 0) await killedWithin({ server, wire, client, id }, { told, fields, kills });
    await client.post(`/jobs/${id}/acts`, fields);
    client.confirmed(told.step);
    confirmed.push(fields.requestId ?? '');
    expect((await client.job(id)).place, told.step).toBe(told.place + 1);
  }
  throw new Error(`the job did not end within ${ACTS_MAX} acts`);
}

function unsealed(told: Told): Told {
  return { ...told, card: told.card === null ? null : { ...told.card, nonce: '' } };
}

interface Working {
  readonly server: RunningServer;
  readonly wire: Wire;
  readonly client: JobClient;
  readonly id: string;
}

/** Sends the act and kills the server meanwhile: it is kept whole or not at all, and kept if it was confirmed. */
async function killedWithin(
  { server, wire, client, id }: Working,
  { told, fields, kills }: { readonly told: Told; readonly fields: Texts; readonly kills: Outcome['kills'] },
): Promise<void> {
  const answered = wire.post(`/jobs/${id}/acts`, fields, 'json').then(
    ({ status }) => status,
    () => null,
  );
  await after(Math.random() * WITHIN_MS);
  await server.killAndStart();
  const status = await answered;
  const now = await client.job(id);
  expect([told.place, told.place + 1]).toContain(now.place);
  if (status === 200) expect(now.place).toBe(told.place + 1);
  else kills.unanswered += 1;
  if (now.place > told.place) kills.kept += 1;
}

/** So many send what is to be kept, at the moment at which the server is asked to end. */
const AT_THE_END = 24;

/** @returns numbers of the plans that it confirmed */
async function stopUnderLoad({ server, people }: Outcome) {
  const { id: who, pin } = inRole(people, 'supervisor');
  const wire = await wireTo({ origin: () => server.address, who, pin });
  const refused = await wire.post('/sign-in', { who, pin: WRONG_PIN }, 'json');
  expect(refused.ok).toBe(false);
  const sent = Array.from({ length: AT_THE_END }, async (_, at) => {
    const number = `W-${at}`;
    const plan = { number, tag: SHEET.tag, procedure: 'stroke-check', place: 'line', role: 'technician' };
    const fields = { ...plan, dueOn: '2031-01-01', note: NOTE, requestId: wire.newRequestId() };
    await after(at);
    const status = await wire.post('/plans', fields, 'json').then(
      (answer) => answer.status,
      () => null,
    );
    return { number, status };
  });
  // Some are confirmed by then and some are not, however busy this machine is.
  await Promise.all([after(AT_THE_END / 2), Promise.any(sent)]);
  const begunMs = performance.now();
  expect(await server.stop()).toBe(0);
  expect(performance.now() - begunMs).toBeLessThan(15_000);
  const plans = await Promise.all(sent);
  // Whoever came too late was told nothing, and nobody was told of a fault.
  expect(plans.filter(({ status }) => status !== 201 && status !== null)).toEqual([]);
  return plans.filter(({ status }) => status === 201).map(({ number }) => number);
}

const WRONG_PIN = '904617';
const NOTE = 'noted by nobody else';

/** The operations log of the whole job, its kills, a wrong PIN and a stop: never a PIN, a token or a word that somebody typed. */
function expectNoSecrets({ server, people }: Outcome): void {
  const lines = server.operations;
  expect(lines.filter(({ event }) => event === 'stopped')).toHaveLength(1);
  expect(lines.filter(({ event }) => event === 'fault')).toEqual([]);
  for (const line of lines.filter(({ event }) => event === 'refused'))
    expect(line.requestId).toMatch(/^[\w-]{8,}$/);
  const text = JSON.stringify(lines);
  for (const pin of [WRONG_PIN, ...people.map((person) => person.pin)])
    expect(text).not.toMatch(new RegExp(`(?<!\\d)${pin}(?!\\d)`));
  expect(text).not.toContain(NOTE);
  // Tokens of sessions and screens, seals of pages: all are long and random, as no other text is but the number of a request.
  const long = (text.match(/[\w-]{30,}/g) ?? []).filter(
    (word) => !/^[0-9a-f]{8}(-[0-9a-f]{4}){3}-/.test(word),
  );
  expect(long).toEqual([]);
}

function logOf(folder: string): SiteLog {
  const store = openSqliteStore({ folder });
  return new SiteLog({ store, kinds: streamKinds, now: () => new Date(), codeVersion: 'test' });
}

describe('a server that is killed again and again while a job is done on it', () => {
  test(
    `loses nothing that it confirmed, keeps nothing half, and ends with the log of a job that nobody disturbed (${LONG ? 'at every request' : 'at some requests'})`,
    async () => {
      const startsAt = new Date();
      const outcome = await jobThroughKills();
      const { folder, id, confirmed, kills } = outcome;
      expect(kills.between).toBeGreaterThan(LONG ? 55 : 2);
      const kept = await stopUnderLoad(outcome);
      expectNoSecrets(outcome);
      const log = logOf(folder);
      const plans = (await log.summaries('plan')).map((plan) => plan.id);
      expect(plans).toEqual(expect.arrayContaining(kept));
      expect(kept.length).toBeGreaterThan(0);
      const entries = await log.entriesOf(`job:${id}`);
      // Each request is there once, also the one that was sent a second time after a kill.
      expect(entries.slice(1).map(({ requestId }) => requestId)).toEqual(confirmed);
      const job = await comparableJob(log, id);
      await log.close();
      const store = openSqliteStore({ folder, readOnly: true });
      const report = await verifyStore(store, auditors);
      await store.close();
      expect([report.fault, report.problems]).toEqual([null, []]);
      expect(job).toEqual(await strokeCheckByJson({ tag: SHEET.tag, startsAt }));
      if (LONG) expect(kills.unanswered).toBeGreaterThan(0);
    },
    LONG ? 1_200_000 : 600_000,
  );
});
