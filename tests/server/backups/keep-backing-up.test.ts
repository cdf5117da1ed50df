import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { backUpInProcess } from '../../../server/backups/backup-process.ts';
import { keepBackingUp, nextDueMs } from '../../../server/backups/keep-backing-up.ts';
import { type GoodBackup, markVerification, readMarks } from '../../../server/backups/marks.ts';
import { checkNumber } from '../../../server/log/check-number.ts';
import { openSqliteStore } from '../../../server/store/sqlite-store.ts';
import type { Store } from '../../../server/store/store.ts';
import { compiled } from '../../compiled.ts';
import { aFolder } from '../../folders.ts';
import { adding, aLog } from '../log/register.ts';

const HOUR_MS = 3_600_000;
const START_MS = Date.UTC(2026, 2, 4, 8);
const at = (hours: number) => new Date(START_MS + hours * HOUR_MS).toISOString();
const COPY = { folder: 'copies/one', entries: 7, check: '1234-5678', photosLost: 0 };
const backup = (hours: number): GoodBackup => ({ ...COPY, at: at(hours) });

describe('the next backup is due', () => {
  test.each([
    ['at once where there was none', null, null, 0],
    ['a day after the last', backup(-5), null, 19],
    ['at once where the last is older than that', backup(-30), null, -6],
    ['an hour after one that failed', null, at(-0.25), 0.75],
    ['when it would be anyway, where that is later', backup(-5), at(-4), 19],
    ['at once where the last is from the future, by a clock that was set back', backup(100), at(90), 0],
  ])('%s', (_, last, failedAt, hours) => {
    const failed = failedAt === null ? null : { at: failedAt, why: 'no room' };
    expect(nextDueMs({ backup: last, failed }, { everyHours: 24, nowMs: START_MS })).toBe(
      START_MS + hours * HOUR_MS,
    );
  });
});

describe('a server that makes its own backups', () => {
  let store: Store;
  let stop: () => Promise<void> = async () => {};
  let failing = false;
  const made: number[] = [];
  const reported: unknown[] = [];

  beforeEach(() => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'Date'], now: START_MS });
    store = openSqliteStore({ folder: aFolder() });
    [failing, made.length, reported.length] = [false, 0, 0];
  });
  afterEach(async () => {
    await stop();
    vi.useRealTimers();
    await store.close();
  });

  function begin(make = async () => COPY): void {
    stop = keepBackingUp({
      plan: { to: 'copies', everyHours: 24, keepDays: 90 },
      store,
      now: () => new Date(),
      make: async () => {
        made.push((Date.now() - START_MS) / HOUR_MS);
        if (failing) throw new Error('No backup was made: there is no room.');
        return await make();
      },
      report: (error) => reported.push(error),
    });
  }
  const hours = (count: number) => vi.advanceTimersByTimeAsync(count * HOUR_MS);

  test('makes one soon after its start, then each day, and remembers the last and that it was read whole (RL-29)', async () => {
    begin();
    await hours(0.2);
    expect(made).toHaveLength(1);
    expect(made[0]).toBeLessThan(0.05);
    await hours(47);
    expect(made).toHaveLength(2);
    expect(made[1]).toBeCloseTo(24, 0);
    const { backup: last, failed, verification } = await readMarks(store);
    expect(last).toMatchObject(COPY);
    expect(failed).toBeNull();
    expect(verification).toEqual({ at: last?.at, entries: 7, isWhole: true, by: 'a backup' });
  });

  test('makes none again at a restart where the last is young', async () => {
    begin();
    await hours(1);
    await stop();
    begin();
    await hours(20);
    expect(made).toHaveLength(1);
  });

  test('tries one that failed again within the hour, tells of it, and forgets it once one is made', async () => {
    failing = true;
    begin();
    await hours(3);
    expect(made.length).toBeGreaterThanOrEqual(3);
    expect(made.length).toBeLessThanOrEqual(4);
    expect((await readMarks(store)).failed?.why).toBe('No backup was made: there is no room.');
    expect(reported).toHaveLength(made.length);
    failing = false;
    await hours(1.5);
    expect(await readMarks(store)).toMatchObject({ backup: COPY, failed: null });
  });

  test('stops the one under way when the server stops, and marks it as neither made nor failed', async () => {
    let wasStopped = false;
    stop = keepBackingUp({
      plan: { to: 'copies', everyHours: 24, keepDays: 90 },
      store,
      now: () => new Date(),
      make: (signal) =>
        new Promise((_, reject) => {
          signal.addEventListener('abort', () => {
            wasStopped = true;
            reject(signal.reason);
          });
        }),
      report: (error) => reported.push(error),
    });
    await hours(0.1);
    await stop();
    expect([wasStopped, reported]).toEqual([true, []]);
    expect(await readMarks(store)).toEqual({ backup: null, failed: null, verification: null });
  });

  test('a check of the log by a person is remembered in the place of an older one', async () => {
    begin();
    await hours(1);
    await markVerification(store, { at: at(2), entries: 9, isWhole: false, by: 'a person' });
    expect((await readMarks(store)).verification).toMatchObject({ entries: 9, isWhole: false });
  });
});

describe('the process that makes one', () => {
  const plan = (to: string) => ({ to, everyHours: 24, keepDays: 90 });
  const copied = async (dataFolder: string, to: string) =>
    backUpInProcess({
      script: await compiled('server/commands/backup.ts'),
      dataFolder,
      plan: plan(to),
      stop: new AbortController().signal,
    });

  test('copies beside the running server, says what it read whole, and hands on why it could not', async () => {
    const [folder, to] = [aFolder(), aFolder()];
    const store = openSqliteStore({ folder });
    const log = aLog(store);
    for (let added = 1; added <= 5; added += 1) await log.act(adding({ id: 'a', added }));
    const { hash } = await store.head();
    const kept = await copied(folder, to);
    expect(kept).toMatchObject({ entries: 5, check: checkNumber(hash), photosLost: 0 });
    expect(readdirSync(to)).toEqual([kept.folder.slice(to.length + 1)]);
    await log.close();
    await expect(copied(aFolder(), to)).rejects.toThrow('No backup was made: there is no log');
  });

  const canTrace =
    process.platform === 'linux' &&
    spawnSync('strace', ['-qq', '-o', '/dev/null', '-e', 'trace=fsync', 'true'], { stdio: 'ignore' })
      .status === 0;

  test.runIf(canTrace)(
    'syncs the copy, the folder that it is in and the folder of all before it says that it is done (RL-32)',
    async () => {
      const [folder, to, trace] = [aFolder(), aFolder(), join(aFolder(), 'trace')];
      const log = aLog(openSqliteStore({ folder }));
      await log.act(adding({ id: 'a', added: 1 }));
      await log.close();
      const script = await compiled('server/commands/backup.ts');
      const calls = ['-f', '-y', '-qq', '-o', trace, '-e', 'trace=fsync,fdatasync,rename'];
      const { status } = spawnSync('strace', [...calls, process.execPath, script, to], {
        env: { ...process.env, YOKESIDE_DATA: folder },
      });
      expect(status).toBe(0);
      const lines = readFileSync(trace, 'utf8').split('\n');
      const named = lines.findIndex((line) => line.includes('rename(') && line.includes('.part'));
      const synced = (from: number, end: string) =>
        lines.slice(from).findIndex((line) => /f(data)?sync\(/.test(line) && line.includes(end));
      expect(synced(0, '.part/yokeside.sqlite>')).toBeGreaterThanOrEqual(0);
      expect(synced(0, '.part/yokeside.sqlite>')).toBeLessThan(named);
      expect(synced(0, '.part>')).toBeLessThan(named);
      expect(synced(0, '.part>')).toBeGreaterThanOrEqual(0);
      expect(synced(named, `${to}>`)).toBeGreaterThanOrEqual(0);
    },
  );

  test('clears away what a backup that was killed left a day ago, and nothing younger', async () => {
    const [folder, to] = [aFolder(), aFolder()];
    const log = aLog(openSqliteStore({ folder }));
    await log.act(adding({ id: 'a', added: 1 }));
    await log.close();
    const young = `yokeside-${new Date().toISOString().slice(0, 19).replaceAll(':', '-')}Z.part`;
    for (const name of ['yokeside-2024-01-15T08-00-00Z.part', 'of-somebody.part', young])
      mkdirSync(join(to, name));
    // A name of this second is taken: the copy waits for the next.
    await new Promise((resolve) => setTimeout(resolve, 1001));
    await copied(folder, to);
    const left = readdirSync(to).filter((name) => name.endsWith('.part'));
    expect(left.sort()).toEqual(['of-somebody.part', young].sort());
  });
});
