import { execFile, spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { DatabaseSync } from '@photostructure/sqlite';
import { beforeAll, describe, expect, test } from 'vitest';
import { compiled } from '../compiled.ts';
import { aFolder } from '../folders.ts';
import { ROOT } from '../root.ts';
import { expectAllKept } from './writer-run.ts';

const CUTS = 25;
/** The first cut comes while the program starts; at each later one it has given at least so many answers more. */
const ANSWERS_BETWEEN_CUTS = 10;

/** What becomes of the cache of the drive; with `barriers` the file system asks the drive to flush it, as ever. */
type Drive = { readonly cache: 'kept' | 'lost'; readonly barriers: boolean };

interface Cut {
  /** What the disk holds when the power is back. */
  readonly kept: string;
  /** Answers that were given before the power went. */
  readonly answered: number;
  /** With those that were given as it went. */
  readonly late: number;
}

/** Lets a program write on a disk (`disk` in its own folder) and cuts the power under it at moments that chance gives. */
async function cutsUnder(drive: Drive, cuts: number, program: readonly string[]): Promise<Cut[]> {
  const folder = aFolder();
  const pausesS = Array.from({ length: cuts }, () => (Math.random() * 0.4).toFixed(3)).join(' ');
  const options = drive.barriers ? 'barrier' : 'nobarrier';
  const script = [join(ROOT, 'tests/faults/cut-power.sh'), folder, drive.cache, options, pausesS, ...program];
  await promisify(execFile)('unshare', [...OWN, 'sh', ...script], { timeout: 280_000 });
  return Array.from({ length: cuts }, (_, index) => ({
    kept: join(folder, `kept.${index + 1}`),
    answered: answersIn(join(folder, `answered.${index + 1}`)),
    late: answersIn(join(folder, `late.${index + 1}`)),
  }));
}

const OWN = ['--mount', '--pid', '--fork', '--kill-child'];

function answersIn(file: string): number {
  return readFileSync(file, 'utf8')
    .split('\n')
    .filter((line) => line.startsWith('ack ')).length;
}

const isLong = process.env.YOKESIDE_LONG === '1';
const canCut =
  process.platform === 'linux' &&
  process.getuid?.() === 0 &&
  existsSync('/dev/loop-control') &&
  spawnSync('unshare', [...OWN, 'true']).status === 0 &&
  ['fsfreeze', 'mkfs.ext4', 'mount'].every((program) => spawnSync('which', [program]).status === 0);
if (isLong && !canCut)
  console.warn('This machine cannot cut the power of a disk in a file: that is not tried here.');

// It wants the rights of an administrator and a disk of its own: the long run does it.
describe.runIf(isLong && canCut)('a power cut', { timeout: 300_000 }, () => {
  let writer: readonly string[];
  let bare: readonly string[];
  beforeAll(async () => {
    writer = [process.execPath, await compiled('tests/faults/writer.ts'), 'disk/data', '1', '1'];
    bare = [process.execPath, await compiled('tests/faults/bare-writer.ts'), 'disk/bare.sqlite'];
  });

  test.each(['kept', 'lost'] as const)(
    `${CUTS} times over takes nothing that was confirmed: cache of the drive %s (RL-01, RL-14, R-03)`,
    async (cache) => {
      const cuts = await cutsUnder({ cache, barriers: true }, CUTS, writer);
      for (const { kept, answered, late } of cuts) await expectAllKept(join(kept, 'data'), answered, late);
      expect(cuts.at(-1)?.answered).toBeGreaterThanOrEqual((CUTS - 1) * ANSWERS_BETWEEN_CUTS);
    },
  );

  test('takes what another program confirmed that waits for no disk: this test can fail (RL-16)', async () => {
    const cuts = await cutsUnder({ cache: 'kept', barriers: true }, 3, bare);
    for (const { kept, answered } of cuts.slice(1))
      expect(rowsOf(join(kept, 'bare.sqlite'))).toBeLessThan(answered);
  });

  test('takes what was confirmed where the drive is not asked to flush: what is lost with its cache is really lost (RL-16)', async () => {
    const [, cut] = await cutsUnder({ cache: 'lost', barriers: false }, 2, writer);
    if (cut === undefined) throw new Error('There were two cuts.');
    await expect(expectAllKept(join(cut.kept, 'data'), cut.answered, cut.late)).rejects.toThrow();
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
