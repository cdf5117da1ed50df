import type { Step } from '../vocabulary.ts';
import { airStays, bleedCase, connectCase } from './case-air.ts';
import { STEM_MOVES } from './common.ts';
import { type EaseGland, easeGland } from './ease-gland.ts';

type Own = EaseGland | 'settleStem' | 'bleedForGland' | 'glandAirStays' | 'glandAgain' | 'connectProof';

interface Ways<Next extends string> {
  /** The proof of the stroke as left. */
  readonly next: Next;
  readonly ventNow: Next;
}

const phase = 'asLeft';

/** New packing stroked until its rings have settled, the gland looked at again without air, and air on for the proof. */
export function settleGland<const Next extends string>({
  next,
  ventNow,
}: Ways<Next>): Readonly<Record<Own, Step<Own | Next>>> {
  return {
    settleStem: {
      kind: 'instruction',
      phase,
      title: 'Stroke it through its whole travel, to settle the rings',
      how: 'Ten times, slowly (common practice, no source). At most {testAirLimit}.',
      action: 'strokeByTestAir',
      caution: STEM_MOVES,
      do: ['Raise the air slowly to {benchSetHigh}.', 'Lower it slowly to zero.', 'Count the strokes.'],
      next: { to: 'bleedForGland' },
      makeSafe: ventNow,
    },
    bleedForGland: bleedCase<Own | Next>({
      phase,
      title: 'Bleed the air off before the gland is touched again',
      next: 'glandAgain',
      notGone: 'glandAirStays',
      ventNow,
    }),
    glandAirStays: airStays<Own | Next>({ phase, again: 'bleedForGland', ventNow }),
    glandAgain: {
      kind: 'question',
      phase,
      title: 'Look at the gland after the strokes',
      how: 'Rings that settled take a little more: {glandLoad}. Where friction was too high, the gland may be let off a little now, nothing is behind it.',
      why: 'Packing settles in its first strokes, and the load on it falls.',
      choices: {
        same: { label: 'Load as it was', to: 'connectProof' },
        more: { label: 'It took more: loaded again', to: 'glandReload' },
        ease: { label: 'Too tight: ease it', to: 'glandEase' },
      },
      makeSafe: ventNow,
    },
    ...easeGland<Own | Next>({ phase, next: 'connectProof', makeSafe: ventNow }),
    connectProof: connectCase<Own | Next>({
      phase,
      title: 'Check the rig, and put air on for the stroke as left',
      do: ['Set the regulator to zero.', 'Check the joint at the case.'],
      next,
      ventNow,
    }),
  } as Readonly<Record<Own, Step<Own | Next>>>;
}
