import { spawnSync } from 'node:child_process';
import { beforeAll, describe, expect, test } from 'vitest';
import { compiled } from '../compiled.ts';
import { aFolder } from '../folders.ts';
import { type Command, expectAllKept, failedRun, runWriter } from './writer-run.ts';

const LONG = process.env.YOKESIDE_LONG === '1';
const upTo = (last: number) => Array.from({ length: last }, (_, at) => at + 1);

/** SQLite calls the one or the other, as it was built. */
const SYNC = 'fsync,fdatasync';
/** Which one of its writes, and which one of its syncs, is its last. */
const WRITES = LONG ? upTo(60) : [26];
const SYNCS = LONG ? upTo(25) : [9];

/** Changes what the system answers the writer, one kind of call at a time (Linux, strace 6). */
function under(calls: string, change: string, writer: string, folder: string): Command {
  const inject = ['-e', `trace=${calls}`, '-e', `inject=${calls}:${change}`];
  return ['strace', '-f', '-qq', '-o', '/dev/null', ...inject, process.execPath, writer, folder, '1', '1'];
}

const canInject =
  process.platform === 'linux' &&
  spawnSync('strace', ['-qq', '-o', '/dev/null', '-e', 'inject=getppid:retval=1', 'true'], {
    stdio: 'ignore',
  }).status === 0;
if (!canInject) console.warn('This machine cannot change system calls (strace): their faults are not tried.');

describe.runIf(canInject)('a server whose system fails it', () => {
  let writer: string;
  beforeAll(async () => {
    writer = await compiled('tests/faults/writer.ts');
  });

  test.each([
    ...WRITES.map((at) => ['write', 'pwrite64', at] as const),
    ...SYNCS.map((at) => ['sync', SYNC, at] as const),
  ])('killed at a %s (%s, number %i) loses nothing that it confirmed (RL-13, R-02)', async (_, call, at) => {
    const folder = aFolder();
    const { acknowledged, signal } = runWriter(under(call, `signal=KILL:when=${at}`, writer, folder));
    expect(signal).toBe('SIGKILL');
    await expectAllKept(folder, acknowledged);
  });

  test.each([
    [
      'a sync that fails (RL-21, R-04)',
      SYNC,
      'error=EIO:when=12',
      'nothing more is written until the server is started',
    ],
    [
      'a disk that became read-only (RL-19, R-09)',
      'pwrite64',
      'error=EROFS:when=80+',
      'nothing more is written until',
    ],
    [
      'a disk without room for the next write (RL-17, R-06)',
      'pwrite64',
      'error=ENOSPC:when=80+',
      'the disk is full',
    ],
  ])('by %s says so, confirms nothing more, and keeps what it confirmed', async (_, call, change, said) => {
    const folder = aFolder();
    const { acknowledged, failure } = failedRun(under(call, change, writer, folder));
    expect(acknowledged).toBeGreaterThan(0);
    expect(failure).toContain(said);
    await expectAllKept(folder, acknowledged);
  });
});
