import { fingerprintOf } from './chain.ts';
import type { SiteLog } from './site-log.ts';

/** Less than this a machine may be put right by its time service in one go. */
const JUMP_MS_MIN = 60_000;
const LOOK_MS = 30_000;

export interface ClockReading {
  /** What the clock of the machine says. */
  readonly clockMs: number;
  /** A count that nobody sets. */
  readonly countMs: number;
}

/**
 * How far the clock moved beyond the time that went by: ahead above 0, back below; 0 where it went on as it should.
 *
 * @example movedMs({ clockMs: 0, countMs: 0 }, { clockMs: 3_605_000, countMs: 5000 }) // 3_600_000
 */
export function movedMs(before: ClockReading, now: ClockReading): number {
  const moved = now.clockMs - before.clockMs - (now.countMs - before.countMs);
  return Math.abs(moved) < JUMP_MS_MIN ? 0 : Math.round(moved);
}

interface Watching {
  readonly log: SiteLog;
  read(): ClockReading;
  report(error: unknown): void;
}

/**
 * Writes down each jump of the machine’s clock, with both times, as an entry of the site: waits, sessions and due dates go by
 * that clock. A machine that slept looks the same, and wants the same look. No work is refused for it.
 *
 * @returns what looks a last time and stops
 */
export function watchClock(watching: Watching): () => Promise<void> {
  let before = watching.read();
  let last = Promise.resolve();
  const look = async (): Promise<void> => {
    const now = watching.read();
    const moved = movedMs(before, now);
    const wasMs = now.clockMs - moved;
    before = now;
    if (moved === 0) return;
    try {
      await tellJump(watching.log, { wasMs, nowMs: now.clockMs });
    } catch (error) {
      watching.report(error);
    }
  };
  const timer = setInterval(() => {
    last = last.then(look);
  }, LOOK_MS).unref();
  return async () => {
    clearInterval(timer);
    last = last.then(look);
    await last;
  };
}

async function tellJump(log: SiteLog, at: { readonly wasMs: number; readonly nowMs: number }): Promise<void> {
  const inputs = {
    expectedAt: new Date(at.wasMs).toISOString(),
    clockAt: new Date(at.nowMs).toISOString(),
    bySeconds: Math.round((at.nowMs - at.wasMs) / 1000),
  };
  await log.act({
    requestId: null,
    fingerprint: fingerprintOf({ clockMoved: inputs }),
    person: null,
    screen: 'server',
    streams: ['site'],
    decide: () => ({
      entries: [{ stream: 'site', kind: 'clock-moved', inputs, outcome: {}, effects: {} }],
      answer: {},
    }),
  });
}
