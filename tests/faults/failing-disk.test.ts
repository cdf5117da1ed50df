import { execFileSync, spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { verifyStore } from '../../server/log/verify.ts';
import { openSqliteStore } from '../../server/store/sqlite-store.ts';
import { compiled } from '../compiled.ts';
import { aFolder } from '../folders.ts';
import { adding, aLog } from '../server/log/register.ts';

let writer: string;
beforeAll(async () => {
  writer = await compiled('tests/faults/writer.ts');
});

/** How many answers the writer gave before it reported that the store failed, and what it reported. */
function outcomeOf(command: readonly [string, ...string[]]): { acknowledged: number; failure: string } {
  const [program, ...parameters] = command;
  const { stdout, status } = spawnSync(program, parameters, {
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
    stdio: ['ignore', 'pipe', 'inherit'],
    timeout: 60_000,
  });
  expect(status).toBe(3);
  const lines = stdout.trimEnd().split('\n');
  return {
    acknowledged: lines.filter((line) => line.startsWith('ack ')).length,
    failure: lines.filter((line) => line.startsWith('failed ')).join(),
  };
}

async function expectAllKept(folder: string, acknowledged: number): Promise<void> {
  const store = openSqliteStore({ folder });
  const { entries, fault, photos } = await verifyStore(store, []);
  expect([fault, photos]).toEqual([null, []]);
  expect(entries).toBeGreaterThanOrEqual(acknowledged);
  // The one that failed may have reached the disk before the failure was known.
  expect(entries).toBeLessThanOrEqual(acknowledged + 1);
  const log = aLog(store);
  await log.act(adding({ id: '0', added: 1 }));
  expect((await log.head()).seq).toBe(entries + 1);
  await log.close();
}

// A limit on the size of a file is a thing of POSIX systems, and a small disk of memory one of Linux for root.
if (process.platform !== 'win32') {
  describe('a disk that takes no more', () => {
    test('fails the writing with an error of the system: nothing confirmed is lost, and the log goes on', async () => {
      const folder = aFolder();
      // SIGXFSZ is ignored, so that the write comes back with EFBIG instead of ending the program.
      const shell = `trap '' XFSZ; ulimit -f 400; exec "$@"`;
      const { acknowledged, failure } = outcomeOf([
        'sh',
        '-c',
        shell,
        'sh',
        process.execPath,
        writer,
        folder,
        '1',
        '1',
      ]);
      expect(failure).toContain('STO-001: The log cannot be written: disk I/O error');
      expect(failure).toContain('nothing more is written until the server is started again');
      expect(acknowledged).toBeGreaterThan(0);
      await expectAllKept(folder, acknowledged);
    });
  });
}

/** A disk of half a megabyte in memory; false where this system or this user cannot have one. */
function smallDisk(at: string): boolean {
  return (
    process.platform === 'linux' &&
    process.getuid?.() === 0 &&
    spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=512k', 'tmpfs', at], { stdio: 'ignore' }).status === 0
  );
}

function removeDisk(at: string): void {
  // Lazily, since a closed database of the SQLite package stays open for a while.
  execFileSync('umount', ['-l', at]);
}

const disk = aFolder();
if (smallDisk(disk)) {
  removeDisk(disk);
  test('a real disk that is full: nothing confirmed is lost, and writing goes on when there is room again', async () => {
    expect(smallDisk(disk)).toBe(true);
    try {
      const folder = join(disk, 'data');
      const { acknowledged, failure } = outcomeOf([process.execPath, writer, folder, '1', '1']);
      expect(failure).toContain('The log cannot be written: the disk is full');
      execFileSync('mount', ['-o', 'remount,size=8m', disk]);
      await expectAllKept(folder, acknowledged);
    } finally {
      removeDisk(disk);
    }
  });
}
