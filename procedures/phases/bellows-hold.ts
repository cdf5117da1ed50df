import type { Step, Way } from '../vocabulary.ts';
import { yesNo } from './common.ts';

const BELLOWS_HOLD_S = 60;

type Outcome = 'holds' | 'falls' | 'too little signal' | 'above range' | 'still under air';

const SIGNAL = { type: 'quantity', dimension: 'pressure', gauge: 'signalGauge' } as const;

/** A bellows shut in is watched; what it loses in that time it loses in itself or at a joint. */
export function watchBellows<const Id extends string>(step: {
  readonly phase: string;
  readonly next: Id;
  readonly makeSafe: Id;
}): Step<Id> {
  return {
    kind: 'wait',
    phase: step.phase,
    title: 'Leave the bellows shut in and watch the gauge',
    how: 'Nothing is touched. Warm air that cools falls a little too: the gauge’s own doubt is allowed for.',
    why: 'A small leak shows in minutes, not at once.',
    waitS: BELLOWS_HOLD_S,
    next: { to: step.next },
    makeSafe: step.makeSafe,
  };
}

/** The two readings of a bellows that was shut in. */
export function readBellows<const Id extends string>(step: {
  readonly phase: string;
  readonly title: string;
  readonly how: string;
  /** What says that the air is where it belongs afterwards. */
  readonly after: string;
  readonly ways: Readonly<Record<Outcome, Way<Id>>>;
  readonly makeSafe: Id;
}): Step<Id> {
  return {
    kind: 'reading',
    phase: step.phase,
    title: step.title,
    how: step.how,
    why: 'A bellows that lets air by lets zero drift, though every screw is right.',
    asks: [
      { ...SIGNAL, name: 'bellowsStartPa', label: 'Signal gauge, before the wait', wanted: 'bellowsTest' },
      { ...SIGNAL, name: 'bellowsEndPa', label: 'Signal gauge, after it', wanted: 'bellowsTest' },
      yesNo('bellowsBled', step.after),
    ],
    judge: { rule: 'bellowsHold' },
    ways: step.ways,
    makeSafe: step.makeSafe,
  };
}

/** Air by hand on the bellows, the supply locked off. */
export function pressByHand<const Id extends string>(title: string, next: Id) {
  return {
    kind: 'instruction',
    phase: 'bellows',
    title,
    how: 'Slowly, at most {bellowsTest}: the top of its range.',
    action: 'pressInstrument',
    caution: {
      word: 'caution',
      hazard: 'A bellows that gets more than its range bursts.',
      consequence: 'Its pieces are thrown into the face.',
      avoid: 'Eye protection on, face away from it, the gauge in view.',
    },
    do: [
      'Connect the hand regulator to the signal port.',
      'Raise the air slowly to {bellowsTest}.',
      'Shut it off.',
    ],
    next: { to: next },
    makeSafe: 'haltIsolating',
  } as const;
}
