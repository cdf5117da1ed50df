import type { SeenBefore } from '../engine/evidence.ts';
import type { LastTime } from './last-time.ts';

/**
 * By so much a repair of last time says less than one of this job: what was renewed may have failed anew, the more the
 * longer ago, and one that its check proved is doubted sooner as a thing that came back than as a wrong finding. Judgement.
 */
const DOUBT = { proved: 0.6, unproved: 0.2 } as const;
const FORGOTTEN_DAYS = 365;
const DAY_MS = 86_400_000;

/** The evidence of it, where the technician let it count; none where no job shows that it was made. */
export function seenBefore(
  { repair, on, job, madeBy, proof }: LastTime,
  openedAt: string,
): readonly SeenBefore[] {
  if (madeBy === null) return [];
  const days = Math.max(0, (Date.parse(openedAt) - Date.parse(on)) / DAY_MS);
  const isProved = proof === null ? madeBy !== job : proof.sound;
  const least = isProved ? DOUBT.proved : DOUBT.unproved;
  const doubt = least + (1 - least) * Math.min(1, days / FORGOTTEN_DAYS);
  return [{ kind: 'seen before', repair, doubt, job, on }];
}
