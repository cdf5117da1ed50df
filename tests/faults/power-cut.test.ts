import { type ChildProcess, execFileSync, spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as after } from 'node:timers/promises';
import { DatabaseSync } from '@photostructure/sqlite';
import { beforeAll, describe, expect, test } from 'vitest';
import { compiled } from '../compiled.ts';
import { aFolder } from '../folders.ts';
import { expectAllKept } from './writer-run.ts';

const CUTS = 5;
/** So many answers are waited for before the power goes. */
const ANSWERS_MIN = 11;

/**
 * Ends a file system at once, without a last write of its journal: what was not synced is gone, as when the power goes
 * (EXT4_IOC_SHUTDOWN with EXT4_GOING_FLAGS_NOLOGFLUSH, from the kernel's ext4.h).
 */
const SHUT_DOWN =
  'import fcntl, os, struct, sys; fcntl.ioctl(os.open(sys.argv[1], os.O_RDONLY), 0x8004587D, struct.pack("I", 2))';

/** A disk of its own in a file. */
class LoopDisk {
  readonly at: string;
  readonly #image: string;

  constructor() {
    const folder = aFolder();
    this.#image = join(folder, 'image');
    this.at = join(folder, 'disk');
    mkdirSync(this.at);
    execFileSync('dd', ['if=/dev/zero', `of=${this.#image}`, 'bs=1M', 'count=64'], { stdio: 'ignore' });
    execFileSync('mkfs.ext4', ['-q', this.#image]);
  }

  mount(): void {
    execFileSync('mount', ['-o', 'loop', this.#image, this.at]);
  }

  unmount(): void {
    execFileSync('umount', [this.at]);
  }

  cutPower(): void {
    execFileSync('python3', ['-c', SHUT_DOWN, this.at]);
  }
}

interface Cut {
  /** Answers that must be kept. */
  readonly acknowledged: number;
  readonly answered: number;
}

/** Lets a program write for a while, cuts the power under it, and looks at the disk as it comes back. */
async function cutUnder(disk: LoopDisk, parameters: readonly string[]): Promise<Cut> {
  disk.mount();
  const child = spawn(process.execPath, parameters, { stdio: ['ignore', 'pipe', 'ignore'] });
  let output = '';
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    output += text;
  });
  while (answersIn(output) < ANSWERS_MIN && child.exitCode === null) await after(20);
  await after(Math.random() * 700);
  const before = answersIn(output);
  disk.cutPower();
  await ended(child);
  disk.unmount();
  disk.mount();
  const answered = answersIn(output);
  // One sync at most is under way as the power goes. A program that lives on, as none does without power, may then be told by the
  // dying file system that it was done: 3 of 25 cuts on Linux 6.18 kept all but that last answer.
  return { acknowledged: Math.max(before, answered - 1), answered };
}

function answersIn(output: string): number {
  return output.split('\n').filter((line) => line.startsWith('ack ')).length;
}

async function ended(child: ChildProcess): Promise<void> {
  const closed = new Promise((resolve) => child.once('close', resolve));
  child.kill('SIGKILL');
  await closed;
}

const isLong = process.env.YOKESIDE_LONG === '1';
const canCut =
  process.platform === 'linux' &&
  process.getuid?.() === 0 &&
  existsSync('/dev/loop-control') &&
  ['python3', 'mkfs.ext4', 'mount'].every((program) => spawnSync('which', [program]).status === 0);
if (isLong && !canCut)
  console.warn('This machine cannot cut the power of a disk in a file: that is not tried here.');

// It wants the rights of an administrator and a disk of its own: the long run does it.
describe.runIf(isLong && canCut)('a power cut', () => {
  let writer: string;
  let bare: string;
  beforeAll(async () => {
    writer = await compiled('tests/faults/writer.ts');
    bare = await compiled('tests/faults/bare-writer.ts');
  });

  test(`${CUTS} times over takes nothing that was confirmed (RL-01, RL-14, R-03)`, {
    timeout: 300_000,
  }, async () => {
    for (let cut = 1; cut <= CUTS; cut += 1) {
      const disk = new LoopDisk();
      const cut = await cutUnder(disk, [writer, join(disk.at, 'data'), '1', '1']);
      try {
        expect(cut.acknowledged).toBeGreaterThanOrEqual(ANSWERS_MIN);
        await expectAllKept(join(disk.at, 'data'), cut.acknowledged, cut.answered);
      } finally {
        execFileSync('umount', ['-l', disk.at]);
      }
    }
  });

  test('takes what another program confirmed that waits for no disk: this test can fail (RL-16)', {
    timeout: 120_000,
  }, async () => {
    const disk = new LoopDisk();
    const file = join(disk.at, 'bare.sqlite');
    const { acknowledged } = await cutUnder(disk, [bare, file]);
    try {
      expect(acknowledged).toBeGreaterThanOrEqual(ANSWERS_MIN);
      expect(rowsOf(file)).toBeLessThan(acknowledged);
    } finally {
      execFileSync('umount', ['-l', disk.at]);
    }
  });
});

function rowsOf(file: string): number {
  if (!existsSync(file)) return 0;
  const database = new DatabaseSync(file);
  try {
    const isThere = database.prepare("SELECT 1 FROM sqlite_schema WHERE name = 'log'").get() !== undefined;
    return isThere ? Number(database.prepare('SELECT count(*) AS rows FROM log').get().rows) : 0;
  } finally {
    database.close();
  }
}
