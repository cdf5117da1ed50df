/** Runs of the writer (`writer.ts`) as a program of its own, and what must stand in its log afterwards. */
import { spawnSync } from 'node:child_process';
import { expect } from 'vitest';
import { verifyStore } from '../../server/log/verify.ts';
import { openSqliteStore } from '../../server/store/sqlite-store.ts';
import { adding, aLog } from '../server/log/register.ts';

export type Command = readonly [program: string, ...parameters: string[]];

export interface WriterRun {
  /** How many answers it gave. */
  readonly acknowledged: number;
  /** What it reported when the store failed; empty if it was killed. */
  readonly failure: string;
  readonly status: number | null;
  readonly signal: NodeJS.Signals | null;
}

export function runWriter([program, ...parameters]: Command): WriterRun {
  const { stdout, status, signal } = spawnSync(program, parameters, {
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
    stdio: ['ignore', 'pipe', 'inherit'],
    timeout: 60_000,
  });
  const lines = stdout.trimEnd().split('\n');
  return {
    acknowledged: lines.filter((line) => line.startsWith('ack ')).length,
    failure: lines.filter((line) => line.startsWith('failed ')).join(),
    status,
    signal,
  };
}

/** The same of a run that ends by itself because the store failed. */
export function failedRun(command: Command): Pick<WriterRun, 'acknowledged' | 'failure'> {
  const { status, ...run } = runWriter(command);
  expect(status).toBe(3);
  return run;
}

/**
 * All that was answered stands in the log, at most one entry more, and the log goes on.
 * @param answered  with what was answered while it failed, which may stand there or not
 */
export async function expectAllKept(
  folder: string,
  acknowledged: number,
  answered = acknowledged,
): Promise<void> {
  const store = openSqliteStore({ folder });
  const { entries, fault, photos } = await verifyStore(store, []);
  expect([fault, photos]).toEqual([null, []]);
  expect(entries).toBeGreaterThanOrEqual(acknowledged);
  // The one that failed may have reached the disk before the failure was known.
  expect(entries).toBeLessThanOrEqual(answered + 1);
  const log = aLog(store);
  await log.act(adding({ id: '0', added: 1 }));
  expect((await log.head()).seq).toBe(entries + 1);
  await log.close();
}
