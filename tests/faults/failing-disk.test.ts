import { execFileSync, spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { openSqliteStore } from '../../server/store/sqlite-store.ts';
import { compiled } from '../compiled.ts';
import { aFolder } from '../folders.ts';
import { expectAllKept, failedRun } from './writer-run.ts';

let writer: string;
beforeAll(async () => {
  writer = await compiled('tests/faults/writer.ts');
});

// A limit on the size of a file is a thing of POSIX systems, and a small disk of memory one of Linux for root.
if (process.platform !== 'win32') {
  describe('a disk that takes no more', () => {
    test('fails the writing with an error of the system: nothing confirmed is lost, and the log goes on (RL-11, R-07)', async () => {
      const folder = aFolder();
      // SIGXFSZ is ignored, so that the write comes back with EFBIG instead of ending the program.
      const shell = `trap '' XFSZ; ulimit -f 400; exec "$@"`;
      const { acknowledged, failure } = failedRun([
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
  test('a real disk that is full: nothing confirmed is lost, and writing goes on when there is room again (RL-17, R-05)', async () => {
    expect(smallDisk(disk)).toBe(true);
    try {
      const folder = join(disk, 'data');
      const { acknowledged, failure } = failedRun([process.execPath, writer, folder, '1', '1']);
      expect(failure).toContain('The log cannot be written: the disk is full');
      execFileSync('mount', ['-o', 'remount,size=8m', disk]);
      await expectAllKept(folder, acknowledged);
    } finally {
      removeDisk(disk);
    }
  });

  test('a disk that is full before the start: it says why in plain words, and nothing is half made (RL-18)', async () => {
    expect(smallDisk(disk)).toBe(true);
    try {
      spawnSync('dd', ['if=/dev/zero', `of=${join(disk, 'full')}`, 'bs=4k'], { stdio: 'ignore' });
      const folder = join(disk, 'data');
      expect(() => openSqliteStore({ folder })).toThrow(/full|disk/);
      execFileSync('rm', [join(disk, 'full')]);
      await expectAllKept(folder, 0);
    } finally {
      removeDisk(disk);
    }
  });
}
