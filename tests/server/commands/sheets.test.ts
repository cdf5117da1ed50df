import { spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
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
const run = (...args: readonly string[]) =>
  spawnSync(process.execPath, [command, ...args], { cwd: project, encoding: 'utf8', timeout: 100_000 });

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

test('Any procedure is written into a folder as a plain document and a statechart picture', () => {
  const done = run('out', 'solenoid', 'stroke-check');
  expect([done.status, done.stderr]).toEqual([0, '']);
  const written = (name: string) => readFileSync(join(project, 'out', name), 'utf8');
  expect(readdirSync(join(project, 'out')).sort()).toEqual([
    'solenoid.md',
    'solenoid.svg',
    'stroke-check.md',
    'stroke-check.svg',
  ]);
  expect(written('stroke-check.md')).toBe(read(ROOT, 'stroke-check.sheet.md'));
  const picture = written('solenoid.svg');
  const solenoid = PROCEDURES.find(({ definition }) => definition.id === 'solenoid')?.definition;
  const titles = picture.match(/class="statechart__number/g) ?? [];
  expect(titles).toHaveLength(Object.keys(solenoid?.steps ?? {}).length);
  for (const { title } of solenoid?.phases ?? []) expect(picture).toContain(`>${title}</text>`);
  // One whole document, each element closed.
  expect(picture.match(/<svg /g)).toHaveLength((picture.match(/<\/svg>/g) ?? []).length);
});

test('A procedure that there is not is named with those that there are, and nothing is written', () => {
  const refused = run('none', 'kettle');
  expect(refused.status).toBe(1);
  expect(refused.stderr).toContain('There is no procedure kettle. There are: stroke-check,');
  expect(existsSync(join(project, 'none'))).toBe(false);
});
