import type { Job } from '../../procedures/job.ts';
import { leftOf, type Named, namedIn } from '../../procedures/practice/bench/told.ts';
import { type CauseId, SOUND } from '../../procedures/troubleshooting/causes.ts';
import { repairFor } from '../../procedures/troubleshooting/repairs.ts';

export interface Verdict {
  /** Something that was wrong was found. */
  readonly rightly: boolean;
  readonly verdict: string;
}

/** How good it was, in words: what was mended on the spot counts as much as what was named for later. */
export function verdictOf(job: Pick<Job, 'answers'>, truth: readonly CauseId[]): Verdict {
  const named = namedIn(job, truth);
  if (truth.includes(SOUND)) return onSound(named);
  const left = leftOf(truth, job);
  const stays = left.filter((cause) => repairFor(cause) !== named?.repair);
  const [hasMended, hasNamed] = [left.length < truth.length, stays.length < left.length];
  if (hasMended && hasNamed)
    return { rightly: true, verdict: 'What you mended and what you named put it right.' };
  if (hasMended) return { rightly: true, verdict: stays.length === 0 ? MENDED.whole : MENDED.part };
  if (hasNamed) return { rightly: true, verdict: stays.length === 0 ? NAMED.whole : NAMED.part };
  return { rightly: false, verdict: named === null ? NOTHING : 'What you named does not put it right.' };
}

const NOTHING = 'Nothing was named.';
const MENDED = {
  whole: 'What you mended put it right.',
  part: 'What you mended put one of the two right.',
} as const;
const NAMED = {
  whole: 'What you named puts it right.',
  part: 'What you named puts one of the two right.',
} as const;

function onSound(named: Named | null): Verdict {
  if (named === null) return { rightly: false, verdict: NOTHING };
  return named.rightly
    ? { rightly: true, verdict: 'It was sound, and you left it alone.' }
    : { rightly: false, verdict: 'It was sound: what you named would have been in vain.' };
}
