import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { checkNumber } from '../../../server/log/check-number.ts';
import { openSqliteStore } from '../../../server/store/sqlite-store.ts';
import { compiled } from '../../compiled.ts';
import { aFolder } from '../../folders.ts';
import { exportedText } from '../log/export-lines.ts';
import { adding, aLog } from '../log/register.ts';
import { tamper } from '../log/tamper.ts';

let verify: string;
let rebuild: string;
beforeAll(async () => {
  verify = await compiled('server/commands/verify.ts');
  rebuild = await compiled('server/commands/rebuild.ts');
});

let folder: string;
beforeEach(async () => {
  folder = aFolder();
  const log = aLog(openSqliteStore({ folder }));
  for (let added = 1; added <= 4; added += 1) await log.act(adding({ id: 'ab'.charAt(added % 2), added }));
  await log.close();
});

function run(command: string, ...parameters: string[]): { status: number | null; said: string } {
  const env = { ...process.env, YOKESIDE_DATA: folder };
  const { status, stdout, stderr } = spawnSync(process.execPath, [command, ...parameters], {
    encoding: 'utf8',
    env,
  });
  return { status, said: stdout + stderr };
}

function spoil(seq: number): void {
  tamper(folder, ({ sql }) => sql(`UPDATE log SET bytes = replace(bytes, 't1', 't2') WHERE seq = ?`, seq));
}

describe('the command that verifies', () => {
  test('says that a whole log is whole, with its check number, also beside a running server', async () => {
    const running = openSqliteStore({ folder });
    const { hash } = await running.head();
    expect(run(verify)).toEqual({
      status: 0,
      said: expect.stringContaining(`Whole: 4 entries. Last entry 4, check number ${checkNumber(hash)}.`),
    });
    await running.close();
  });

  test('names the first bad entry and ends with an error', () => {
    spoil(3);
    const { status, said } = run(verify);
    expect(status).toBe(1);
    expect(said).toContain(
      'NOT WHOLE. First bad entry: 3 (register:b, place 2): its content does not give its hash.',
    );
  });

  test('verifies one stream alone', () => {
    spoil(3);
    expect(run(verify, '--stream', 'register:a')).toMatchObject({
      status: 0,
      said: expect.stringContaining('2 entries'),
    });
    expect(run(verify, '--stream', 'register:b')).toMatchObject({ status: 1 });
  });

  test('verifies an export without the database', async () => {
    const file = join(aFolder(), 'export.jsonl');
    const store = openSqliteStore({ folder, readOnly: true });
    const text = await exportedText(store);
    const stream = await exportedText(store, 'register:b');
    await store.close();
    folder = 'nowhere';
    writeFileSync(file, text);
    expect(run(verify, '--export', file)).toMatchObject({
      status: 0,
      said: expect.stringContaining('4 entries'),
    });
    writeFileSync(file, text.replace('"added":2', '"added":3'));
    expect(run(verify, '--export', file)).toMatchObject({
      status: 1,
      said: expect.stringContaining('First bad entry: 2'),
    });
    writeFileSync(file, stream);
    expect(run(verify, '--export', file, '--stream', 'register:b')).toMatchObject({ status: 0 });
  });

  test('says where it found no log', () => {
    folder = join(aFolder(), 'nothing');
    expect(run(verify)).toEqual({ status: 2, said: `There is no log in the folder ${folder}.\n` });
  });
});

describe('the command that makes the lists anew', () => {
  test('does so for a log of which it knows every kind of stream', async () => {
    folder = aFolder();
    await openSqliteStore({ folder }).close();
    expect(run(rebuild)).toEqual({ status: 0, said: 'Lists made anew from the entries of 0 streams.\n' });
  });

  test('leaves the lists alone and says why, where it does not', () => {
    expect(run(rebuild)).toEqual({ status: 1, said: 'No kind of stream is registered for "register:a".\n' });
  });

  test('does not run beside a server', async () => {
    const running = openSqliteStore({ folder });
    expect(run(rebuild)).toMatchObject({
      status: 1,
      said: expect.stringContaining('Another Yokeside server'),
    });
    await running.close();
  });
});
