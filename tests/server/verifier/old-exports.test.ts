import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import type { Definition } from '../../../procedures/vocabulary.ts';
import { auditJobLines } from '../../../server/audit/job-rows.ts';
import { jobAuditor } from '../../../server/jobs/auditor.ts';
import { hashOf } from '../../../server/jobs/catalogue.ts';
import { jobKind } from '../../../server/jobs/job-stream.ts';
import { readExport } from '../../../server/log/export.ts';
import { verifyLines } from '../../../server/log/verify.ts';
import type { LogEntry } from '../../../server/store/store.ts';
import {
  EXPORT_SCHEMA,
  linesOf,
  type Manifest,
  readCheckpoints,
  verifyExport,
} from '../../../server/verifier/verify-export.ts';

const FIXTURES = fileURLToPath(new URL('fixtures', import.meta.url));

/** Exports as earlier releases wrote them, a folder for each form and more for what stands in it: none is ever made anew. */
const kept = readdirSync(FIXTURES);

test('the form of today is among the exports that are kept', () => {
  expect(kept).toContain(EXPORT_SCHEMA.replace('yokeside-export/', 'export-'));
});

test.each(kept)(
  'an export of an earlier release opens, and fits its checkpoints: %s (SA-03)',
  async (name) => {
    const file = (called: string): string => join(FIXTURES, name, called);
    const manifest = JSON.parse(readFileSync(file('manifest.json'), 'utf8')) as Manifest;
    const { checkpoints, wrong } = readCheckpoints(readFileSync(file('checkpoints.jsonl'), 'utf8'));
    const verdict = verifyExport(linesOf(file(manifest.file.name)), {
      of: manifest.of,
      anchors: { checks: [manifest.head.check], checkpoints },
    });
    expect(wrong).toEqual([]);
    expect(verdict).toMatchObject({
      fault: null,
      against: [],
      fitting: checkpoints.length + 1,
      entries: manifest.entries,
    });
    expect(verdict.head.hash).toBe(manifest.head.hash);
    async function* pieces(): AsyncIterable<string> {
      yield readFileSync(file(manifest.file.name), 'utf8');
    }
    expect(await verifyLines(readExport(pieces()))).toMatchObject({ fault: null, entries: manifest.entries });
  },
);

describe('a whole job of an earlier release', () => {
  const lines = readFileSync(join(FIXTURES, 'export-1-job', 'log.jsonl'), 'utf8')
    .trimEnd()
    .split('\n');
  const all = lines.map((line) => JSON.parse(line) as LogEntry);
  const of = (stream: string) => all.filter((entry) => entry.stream === stream);
  const job = of('job:1');
  const stored = all.filter(({ kind }) => kind === 'procedure-stored');

  test('is read, folded, and run through the machine of its own revision, which the log has (SA-03, HP-48)', () => {
    expect(job.reduce(jobKind.evolve, jobKind.initial)).toMatchObject({ status: 'closed', closedAs: 'done' });
    expect(stored.map(({ stream }) => stream)).toEqual([jobAuditor.needs?.(job)]);
    expect(jobAuditor.audit('job:1', job, stored)).toEqual([]);
    const definition = stored[0]?.inputs as unknown as Definition;
    const { rows, title } = auditJobLines('1', { entries: job, definition, now: job.at(-1)?.at ?? '' });
    expect(title).toBe('Stroke check and plug adjustment');
    expect(rows.filter(({ kind }) => kind === 'sign-off').map(({ person }) => person)).toEqual(['s1', 's1']);
    expect(rows.some(({ proof }) => proof.includes('0 psi on G-'))).toBe(true);
  });

  test('is judged by a revision that no release serves any more, and under no other than it was signed', () => {
    const definition = { ...(stored[0]?.inputs as unknown as Definition), title: 'As it was called then' };
    const older = (hash: string) =>
      [
        { ...job[0], inputs: { ...(job[0]?.inputs as object), definitionHash: hash } },
        ...job.slice(1),
      ] as LogEntry[];
    const kept = [{ ...stored[0], inputs: definition }] as unknown as LogEntry[];
    // The machine agrees; the two signatures say that they were given under another definition.
    expect(jobAuditor.audit('job:1', older(hashOf(definition)), kept).map(({ what }) => what)).toEqual(
      [12, 52].map((line) => `line ${line}: what its signer was shown belongs to another place`),
    );
    expect(jobAuditor.audit('job:1', older('a'.repeat(64)), kept)[0]?.what).toContain(
      'neither in this program nor in the log',
    );
  });
});
