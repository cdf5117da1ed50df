/** The server’s own schedule of copies: when the next is due, and one after the other. */
import type { Store } from '../store/store.ts';
import { type GoodBackup, type Marks, markBackup, markFailedBackup, readMarks } from './marks.ts';

/** What the environment asks for. */
export interface BackupPlan {
  /** The folder of all copies; on another disk or machine it is worth more. */
  readonly to: string;
  readonly everyHours: number;
  readonly keepDays: number;
}

interface BackingUp {
  readonly plan: BackupPlan;
  readonly store: Store;
  now(): Date;
  /** Makes one copy and has it read whole. Rejects where that cannot be done, or when it is told to stop. */
  make(stop: AbortSignal): Promise<Omit<GoodBackup, 'at'>>;
  report(error: unknown): void;
  /** Told of each that is done. */
  done?(backup: GoodBackup): void;
}

const HOUR_MS = 3_600_000;
/** A start has other things to do first. */
const AFTER_START_MS = 5000;
/** After a copy that failed, where the next is not due before anyway. */
const AGAIN_MS = HOUR_MS;
/** The clock of a machine may be set, and one that slept has no timers: so it is asked anew each few minutes. */
const LOOK_MS = 5 * 60_000;

/**
 * When the next copy is due. A mark from the future, left by a clock that was set back, counts for nothing.
 *
 * @example nextDueMs({ backup: null, failed: null }, { everyHours: 24, nowMs: 5 }) // 5
 */
export function nextDueMs(
  { backup, failed }: Pick<Marks, 'backup' | 'failed'>,
  { everyHours, nowMs }: { readonly everyHours: number; readonly nowMs: number },
): number {
  const [lastMs, failedMs] = [backup, failed].map((mark) =>
    mark === null ? Number.NaN : Date.parse(mark.at),
  );
  const isKnown = (atMs: number | undefined): atMs is number => atMs !== undefined && atMs <= nowMs;
  const dueMs = isKnown(lastMs) ? lastMs + everyHours * HOUR_MS : nowMs;
  return isKnown(failedMs) ? Math.max(dueMs, failedMs + Math.min(AGAIN_MS, everyHours * HOUR_MS)) : dueMs;
}

/**
 * Makes a copy whenever one is due, for as long as the server runs. One that fails is marked, reported and tried again
 * within the hour; the log goes on as if nothing were.
 *
 * @returns what stops it, and the copy that is under way
 */
export function keepBackingUp(of: BackingUp): () => Promise<void> {
  const stopping = new AbortController();
  let timer: NodeJS.Timeout | undefined;
  let running = Promise.resolve();
  const look = async (): Promise<void> => {
    try {
      const nowMs = of.now().getTime();
      if (nextDueMs(await readMarks(of.store), { everyHours: of.plan.everyHours, nowMs }) <= nowMs)
        await backUpOnce(of, stopping.signal);
    } catch (error) {
      of.report(error);
    }
    again(LOOK_MS);
  };
  const again = (inMs: number): void => {
    if (stopping.signal.aborted) return;
    timer = setTimeout(() => {
      running = look();
    }, inMs).unref();
  };
  again(AFTER_START_MS);
  return async () => {
    stopping.abort();
    clearTimeout(timer);
    await running;
  };
}

/** One copy, marked whichever way it ends. */
async function backUpOnce(of: Omit<BackingUp, 'plan'>, stop: AbortSignal): Promise<void> {
  try {
    const backup = { ...(await of.make(stop)), at: of.now().toISOString() };
    await markBackup(of.store, backup);
    of.done?.(backup);
  } catch (error) {
    // A server that stops leaves a copy unmade; the next start makes it.
    if (stop.aborted) return;
    const why = error instanceof Error ? error.message : String(error);
    await markFailedBackup(of.store, { at: of.now().toISOString(), why: why.slice(0, 500) });
    of.report(error);
  }
}
