import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { strokeCheck } from '../../../procedures/commissioning/stroke-check.ts';
import { PROCEDURES } from '../../../procedures/served.ts';
import { revisionOf } from '../../../procedures/vocabulary.ts';
import { compiled } from '../../compiled.ts';
import { ROOT } from '../../root.ts';

const FOLDER = join('procedures', 'commissioning');
const command = await compiled('server/commands/sheets.ts');
const project = mkdtempSync(join(tmpdir(), 'sheets-'));
for (const { folder } of PROCEDURES) mkdirSync(join(project, 'procedures', folder), { recursive: true });
afterAll(() => rmSync(project, { recursive: true, force: true }));

const LETTER = revisionOf(strokeCheck);
/** The newest letter, with the hash of something else. */
const ALTERED = `{"${LETTER}":"other"}`;

const read = (folder: string, name: string) => readFileSync(join(folder, FOLDER, name), 'utf8');
const run = () => spawnSync(process.execPath, [command], { cwd: project, encoding: 'utf8', timeout: 20_000 });

test('Sheets are printed and the newest revision gets its hash, as they are kept in the project', () => {
  const kept = Object.entries(JSON.parse(read(ROOT, 'stroke-check.revisions.json')) as object);
  const earlier = Object.fromEntries(kept.slice(0, -1));
  writeFileSync(join(project, FOLDER, 'stroke-check.revisions.json'), JSON.stringify(earlier));
  expect(run().status).toBe(0);
  for (const name of ['stroke-check.sheet.md', 'stroke-check.revisions.json'])
    expect(read(project, name)).toBe(read(ROOT, name));
});

test('A procedure that was changed under its letter is refused, and nothing is written', () => {
  writeFileSync(join(project, FOLDER, 'stroke-check.revisions.json'), ALTERED);
  writeFileSync(join(project, FOLDER, 'stroke-check.sheet.md'), 'as it was');
  const refused = run();
  expect(refused.status).toBe(1);
  expect(refused.stderr).toContain(
    `stroke-check was changed under revision ${LETTER}: give it a new letter.`,
  );
  expect(read(project, 'stroke-check.sheet.md')).toBe('as it was');
  expect(read(project, 'stroke-check.revisions.json')).toBe(ALTERED);
});
