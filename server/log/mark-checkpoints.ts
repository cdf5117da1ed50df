import { fingerprintOf } from './chain.ts';
import type { Checkpoints } from './checkpoints.ts';
import type { SiteLog } from './site-log.ts';

/** So long after an entry there is a checkpoint of it. */
const MARK_MS = 60_000;

interface Marking {
  readonly log: SiteLog;
  readonly checkpoints: Checkpoints;
  now(): Date;
  report(error: unknown): void;
}

/**
 * Keeps the checkpoints up with the log: one at once, one at the latest a minute after an entry, and one at the end. A
 * clock that was set back gets an entry of its own, once, and no checkpoint until it has caught up.
 *
 * @returns what marks a last time and stops
 */
export function keepMarking(marking: Marking): () => Promise<void> {
  const { log, report } = marking;
  let timer: NodeJS.Timeout | undefined;
  let toldBack = false;
  let last = Promise.resolve();
  const markOnce = async (): Promise<void> => {
    timer = undefined;
    try {
      const isBack = marking.checkpoints.mark(await log.head(), marking.now()) === 'clock set back';
      if (isBack && !toldBack) {
        toldBack = true;
        await tellSetBack(marking);
      } else if (!isBack) toldBack = false;
    } catch (error) {
      // The log itself is good; whoever looks after the server hears that its anchor is not kept.
      report(error);
    }
  };
  /** One after the other: the last one must not be through before an earlier one is. */
  const mark = (): Promise<void> => {
    last = last.then(markOnce);
    return last;
  };
  const off = log.onCommit(() => {
    timer ??= setTimeout(() => void mark(), MARK_MS).unref();
  });
  void mark();
  return async () => {
    off();
    clearTimeout(timer);
    await mark();
  };
}

async function tellSetBack({ log, checkpoints, now }: Marking): Promise<void> {
  const inputs = { checkpointAt: checkpoints.latest?.at ?? '', clockAt: now().toISOString() };
  const entry = { stream: 'site', kind: 'clock-set-back', inputs, outcome: {}, effects: {} };
  await log.act({
    requestId: null,
    fingerprint: fingerprintOf({ clockSetBack: inputs }),
    person: null,
    screen: 'server',
    streams: ['site'],
    decide: () => ({ entries: [entry], answer: {} }),
  });
}
