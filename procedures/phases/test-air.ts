import type { QuantityField, Step, Way } from '../vocabulary.ts';
import { STEM_MOVES } from './common.ts';

const SIGNAL = { type: 'quantity', dimension: 'pressure', gauge: 'signalGauge', onCase: true } as const;

/** Two readings a minute apart: air is held only while it is steady. */
const HELD: readonly QuantityField[] = [
  { ...SIGNAL, name: 'heldPa', label: 'Signal now' },
  { ...SIGNAL, name: 'heldAgainPa', label: 'Signal a minute later' },
];

/** Sets a signal and holds it, the plug clear of its seat, so that hands may go to the stem. */
export function holdAir<const Id extends string>({
  phase,
  title,
  how,
  why = 'Turned on its seat, a plug scores it; air that changes drives the stem.',
  held,
  notHeld,
  danger,
  makeSafe,
}: {
  readonly phase: string;
  readonly title: string;
  readonly how: string;
  /** Where the stem is held for something else than being turned. */
  readonly why?: string;
  readonly held: Id;
  readonly notHeld: Id;
  readonly danger: Id;
  readonly makeSafe: Id;
}): Step<Id> {
  const lost: Way<Id> = { to: notHeld };
  return {
    kind: 'reading',
    phase,
    title,
    how,
    why,
    action: 'strokeByTestAir',
    caution: STEM_MOVES,
    asks: [
      ...HELD,
      {
        name: 'heldTravelM',
        label: 'Travel it stands at',
        type: 'quantity',
        dimension: 'travel',
        gauge: 'travelIndicator',
      },
    ],
    judge: { rule: 'heldOffSeat', with: { first: 'heldPa', again: 'heldAgainPa', travel: 'heldTravelM' } },
    ways: {
      held: { to: held, sets: { signalAir: 'held', plug: 'off seat' } },
      falls: lost,
      'too near its seat': lost,
      'above limit': { to: danger },
    },
    makeSafe,
  };
}

/** Contact with the seat, going both ways, by dial indicator. */
export function findContact<const Id extends string>(step: {
  readonly phase: string;
  readonly title: string;
  readonly rule: 'contact' | 'contactAfter';
  readonly ways: Readonly<Record<string, Way<Id>>>;
  readonly makeSafe: Id;
}): Step<Id> {
  const { phase, title, rule, ways, makeSafe } = step;
  return {
    kind: 'reading',
    phase,
    title,
    how: 'Dial indicator on the stem. Move the signal slowly one way until the plug leaves its seat, then back until it touches.',
    why: 'Friction parts the two; their middle is the contact.',
    action: 'strokeByTestAir',
    caution: STEM_MOVES,
    shows: ['testAirLimit', 'testAirBecause', 'benchSetLow', 'benchSetHigh', 'airAction'],
    asks: [
      {
        name: 'moves',
        label: 'The stem',
        type: 'choice',
        choices: [
          { value: 'yes', label: 'Moves' },
          { value: 'no', label: 'Does not move up to the limit' },
        ],
      },
      { ...SIGNAL, name: 'contactLeavesPa', label: 'Leaves its seat at', optional: true },
      { ...SIGNAL, name: 'contactTouchesPa', label: 'Touches its seat at', optional: true },
    ],
    judge: { rule },
    ways,
    makeSafe,
  };
}
