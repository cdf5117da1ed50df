import { STEM_MOVES, yesNo } from '../phases/common.ts';
import type { QuantityField, Step, Way } from '../vocabulary.ts';

function end(name: string, label: string, wanted: 'benchSetLow' | 'benchSetHigh'): QuantityField {
  return {
    name,
    label,
    type: 'quantity',
    dimension: 'pressure',
    gauge: 'signalGauge',
    onCase: true,
    optional: true,
    wanted,
  };
}

type Outcome =
  | 'inside'
  | 'both ends shifted'
  | 'span differs'
  | 'seat end off'
  | 'too close'
  | 'does not move'
  | 'above limit';

/** Both ends, each read going up and coming down. */
export function readEnds<const Id extends string>(
  title: string,
  ways: Readonly<Record<Outcome, Way<Id>>>,
): Step<Id | 'ventNow'> {
  return {
    kind: 'reading',
    phase: 'asFound',
    title,
    how: 'By the sheet it starts to move at {benchSetLow} and ends its travel at {benchSetHigh}, each to {benchSetTolerance}. Dial indicator on the stem; a hair of movement counts.',
    why: 'Friction parts up and down alike: their middle is the spring.',
    action: 'strokeByTestAir',
    caution: STEM_MOVES,
    do: [
      'Raise the air slowly until the stem just moves.',
      'Raise it until the travel ends.',
      'Come back slowly until the stem just leaves its end.',
      'Come down until it rests again.',
    ],
    asks: [
      {
        name: 'moves',
        label: 'The stem',
        type: 'choice',
        choices: [
          { value: 'yes', label: 'Moves from end to end' },
          { value: 'no', label: 'Does not move, or not to its end, up to the limit' },
        ],
      },
      yesNo('plugJoined', 'It is joined to its plug, which meets its seat'),
      end('benchLowUpPa', 'Starts to move, air rising', 'benchSetLow'),
      end('benchHighUpPa', 'Travel ends, air rising', 'benchSetHigh'),
      end('benchHighDownPa', 'Leaves that end, air falling', 'benchSetHigh'),
      end('benchLowDownPa', 'Rests again, air falling', 'benchSetLow'),
      {
        name: 'benchTravelM',
        label: 'Travel from rest to end',
        type: 'quantity',
        dimension: 'travel',
        gauge: 'travelIndicator',
        optional: true,
        wanted: 'travel',
      },
    ],
    judge: { rule: 'benchSet' },
    ways,
    makeSafe: 'ventNow',
  };
}
