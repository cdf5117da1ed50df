import { createHash } from 'node:crypto';
import { makeLists } from '../lists.ts';
import { followOthers } from '../log/follow-others.ts';
import { SiteLog } from '../log/site-log.ts';
import type { StreamKind } from '../log/stream-kind.ts';
import { WordSearch } from '../log/word-search.ts';
import { faultDetails } from '../operations-log.ts';
import type { Services } from '../services.ts';
import { LiveChannel } from '../signing/live.ts';
import { Nonces } from '../signing/nonces.ts';
import type { Store } from '../store/store.ts';
import { streamKinds } from '../streams.ts';
import { benchValves } from './bench-valves.ts';
import { besideCard } from './beside.ts';
import { exerciseKind } from './exercise-stream.ts';
import { benchViews } from './links.ts';

export interface PracticeOptions {
  /** Of the real site, whose people, clock and settings it shares; nothing else. */
  readonly real: Omit<Services, 'practice'>;
  /** A database of its own. */
  readonly store: Store;
  readonly pepper: Uint8Array;
  readonly codeVersion: string;
}

/** Every kind of stream that the log of the bench knows. */
export const practiceKinds: readonly StreamKind<unknown>[] = [...streamKinds, exerciseKind];

/**
 * The practice bench as a site of its own: own database, own chain, own news. Who is signed in is asked of the real
 * one, so that nobody has a second PIN; a PIN is never asked for here.
 */
export function practiceSite({ real, store, pepper, codeVersion }: PracticeOptions): Services {
  const { now, operations } = real;
  const log = new SiteLog({
    store,
    kinds: practiceKinds,
    now,
    codeVersion,
    report: (error) => operations.write('fault', faultDetails(error)),
  });
  if (store.isShared) followOthers(log, (error) => operations.write('fault', faultDetails(error)));
  const live = new LiveChannel();
  log.onCommit((committed) => live.tell(committed));
  // A page of the bench proves nothing on the real site, and the other way round.
  const own = createHash('sha256').update('practice bench').update(pepper).digest();
  const valves = benchValves(real.log);
  const valvesByWords = new WordSearch(valves);
  const site: Services = {
    ...real,
    log,
    lists: makeLists(log),
    store,
    checkpoints: null,
    live,
    nonces: new Nonces({ pepper: own, now }),
    views: benchViews(real.views),
    bench: { real: real.log, valves, valvesByWords, beside: (of) => besideCard(site, of) },
    practice: { site: () => site, close: async () => {} },
  };
  return site;
}
