import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { readExport } from '../../../server/log/export.ts';
import { verifyLines } from '../../../server/log/verify.ts';
import {
  EXPORT_SCHEMA,
  linesOf,
  type Manifest,
  readCheckpoints,
  verifyExport,
} from '../../../server/verifier/verify-export.ts';

const FIXTURES = fileURLToPath(new URL('fixtures', import.meta.url));

/** One folder for each form that an export ever had, kept as it was written: none is ever made anew. */
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
    expect(verdict).toMatchObject({ fault: null, against: [], fitting: 4, entries: manifest.entries });
    expect(verdict.head.hash).toBe(manifest.head.hash);
    async function* pieces(): AsyncIterable<string> {
      yield readFileSync(file(manifest.file.name), 'utf8');
    }
    expect(await verifyLines(readExport(pieces()))).toMatchObject({ fault: null, entries: manifest.entries });
  },
);
