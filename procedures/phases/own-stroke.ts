/** Cards of a valve stroked by its own signal, which setting and checking share. */
import { CYCLE_POINTS, pointField } from '../rules/own-stroke.ts';
import type { QuantityField, Step, Target, Way } from '../vocabulary.ts';
import { STEM_MOVES } from './common.ts';

const SIGNALS = {
  0: 'signalLow',
  25: 'signalQuarter',
  50: 'signalHalf',
  75: 'signalThreeQuarters',
  100: 'signalHigh',
} as const;

/** The same as the operator says them. */
const OUTPUTS = {
  0: 'outputLow',
  25: 'outputQuarter',
  50: 'outputHalf',
  75: 'outputThreeQuarters',
  100: 'outputHigh',
} as const;

function travelAtOutput(point: (typeof CYCLE_POINTS)[number]): QuantityField {
  const way = point.direction === 'up' ? 'going up' : 'coming down';
  return { ...travelAt(point), label: `Travel at an output of {${OUTPUTS[point.percent]}}, ${way}` };
}

function travelAt(point: (typeof CYCLE_POINTS)[number]): QuantityField {
  return {
    name: pointField(point, 'travel'),
    label: `Travel at {${SIGNALS[point.percent]}}, ${point.direction === 'up' ? 'going up' : 'coming down'}`,
    type: 'quantity',
    dimension: 'travel',
    gauge: 'travelIndicator',
    optional: true,
  };
}

/** The whole cycle on one card, up and down again without turning back in between. */
const CYCLE_CARD = {
  kind: 'reading',
  how: 'Come to each signal from the side named and never past it: a turn back hides the hysteresis. Rising signal {risingSignal} the valve. Error at most {errorTolerance}, hysteresis at most {hysteresisTolerance}.',
  why: 'Up and down at the same signal show what friction and slack take.',
  action: 'strokeByOwnAir',
  caution: STEM_MOVES,
  asks: CYCLE_POINTS.map(travelAt),
} as const;

interface CycleStep<Id extends string, Outcome extends string> {
  readonly phase: string;
  readonly title: string;
  readonly ways: Readonly<Record<Outcome, Way<Id>>>;
  readonly makeSafe: Id;
}

export function strokeBySignal<const Id extends string>(
  step: CycleStep<Id, 'inside' | 'outside' | 'too close' | 'not all read'>,
): Step<Id> {
  return { ...CYCLE_CARD, ...step, judge: { rule: 'ownStroke' } };
}

/** The same, the outputs set by the operator. */
export function strokeByOutput<const Id extends string>(
  step: CycleStep<Id, 'inside' | 'outside' | 'too close' | 'not all read'>,
): Step<Id> {
  return { ...strokeBySignal(step), asks: CYCLE_POINTS.map(travelAtOutput) } as Step<Id>;
}

/** The same for a positioner, with the name of what is off. */
export function positionerStrokeCard<const Id extends string>(
  step: CycleStep<
    Id,
    'inside' | 'zero off' | 'span off' | 'middle off' | 'apart up and down' | 'too close' | 'not all read'
  >,
): Step<Id> {
  return { ...CYCLE_CARD, ...step, judge: { rule: 'positionerStroke' } };
}

/** Supply at the valve on its own gauge, and what to do where it is outside its range. */
export function supplyFirst<const Next extends string, const Safe extends string>({
  phase,
  next,
  inside = next,
  makeSafe,
}: {
  readonly phase: string;
  readonly next: Next;
  /** Where the next card hangs on a fact of the valve. */
  readonly inside?: Target<Next>;
  readonly makeSafe: Safe;
}): Readonly<
  Record<'supplyRead' | 'supplyOut', Step<Next | Safe | 'supplyRead' | 'supplyOut' | 'nextPerson'>>
> {
  return {
    supplyRead: {
      kind: 'reading',
      phase,
      title: 'Read the supply at the valve, on a gauge of its own',
      how: 'Wanted: {supplyWantedLow} to {supplyWantedHigh}, {supplyWantedBecause}. The small gauge of the air set is no measurement.',
      why: 'A valve that is starved of air looks like one that sticks.',
      action: 'readGauge',
      asks: [
        {
          name: 'supplyReadPa',
          label: 'Supply at the valve, standing still',
          type: 'quantity',
          dimension: 'pressure',
          gauge: 'supplyGauge',
        },
      ],
      judge: { rule: 'supply' },
      ways: {
        inside: { to: inside },
        low: { to: 'supplyOut' },
        high: { to: 'supplyOut' },
        'no range': { to: inside },
      },
      makeSafe,
    },
    supplyOut: {
      kind: 'question',
      phase,
      title: 'The supply is not in its range',
      how: 'Low: filter, cock, tube too thin, other users. High: the regulator passes; actuator or positioner may be hurt, so set it down first.',
      choices: {
        again: { label: 'Set at the air set: read it again', to: 'supplyRead' },
        goOn: { label: 'Go on with it as it is', to: next, reason: true },
        leave: {
          label: 'Give the valve back; the job on its air set comes next',
          to: 'nextPerson',
          reason: true,
          comesNext: 'air-set',
        },
      },
      makeSafe,
    },
  };
}
