/** Cards of test air on a diaphragm case that several overhauls share. */
import type { Field, Step, Way } from '../vocabulary.ts';
import { AIR_TO_ZERO, STEM_MOVES, yesNo } from './common.ts';

/** Air may come on at any moment from here: what hands and tools do in the yoke is looked at afresh afterwards. */
export const TEST_AIR_ON = { testAir: 'connected', signalAir: 'live', clear: 'not looked at' } as const;

/** One regulator and its gauge put on the case of an isolated valve. */
export function connectCase<const Id extends string>(step: {
  readonly phase: string;
  readonly title: string;
  readonly do: readonly string[];
  readonly next: Id;
  readonly ventNow: Id;
}): Step<Id> {
  const { phase, title, next, ventNow } = step;
  return {
    kind: 'reading',
    phase,
    title,
    how: 'One source, in your hand. At most {testAirLimit} goes on this case: {testAirBecause}.',
    action: 'connectTestAir',
    caution: STEM_MOVES,
    do: step.do,
    asks: [yesNo('peopleClear', 'Tools out of the yoke, people clear and told')],
    judge: { rule: 'allYes', with: { fields: 'peopleClear' } },
    ways: { yes: { to: next, sets: TEST_AIR_ON }, no: { to: ventNow, sets: TEST_AIR_ON } },
    makeSafe: ventNow,
  };
}

/** The air bled off again before hands go to the case, read alive and at zero. */
export function bleedCase<const Id extends string>(step: {
  readonly phase: string;
  readonly title: string;
  readonly next: Id;
  readonly notGone: Id;
  readonly ventNow: Id;
}): Step<Id> {
  const { phase, title, next, notGone, ventNow } = step;
  const lost: Way<Id> = { to: notGone, sets: { signalAir: 'live' } };
  return {
    ...AIR_TO_ZERO,
    kind: 'reading',
    phase,
    title,
    how: 'Leave the regulator shut. At most {signalSafeLimit} with the gauge counted in, or the joint cracked and watched twice.',
    ways: {
      shown: { to: next, sets: { signalAir: 'isolated', plug: 'seat unknown' } },
      'not shown': lost,
      'gauge not seen alive': lost,
      'gauge too coarse': lost,
    },
    makeSafe: ventNow,
  };
}

/** What to do where the air that was bled is not shown gone. */
export function airStays<const Id extends string>(step: {
  readonly phase: string;
  readonly again: Id;
  readonly ventNow: Id;
}): Step<Id> {
  return {
    kind: 'question',
    phase: step.phase,
    title: 'The air on the case is not shown gone',
    how: 'A regulator that does not bleed keeps air on the case. Crack the joint at the case and watch it twice.',
    choices: {
      again: { label: 'Bleed and read again', to: step.again },
      stop: { label: 'Leave it and stop', to: step.ventNow },
    },
    makeSafe: step.ventNow,
  };
}

function bubbles(name: string, label: string): Field {
  return {
    name,
    label,
    type: 'choice',
    choices: [
      { value: 'no', label: 'None' },
      { value: 'yes', label: 'Bubbles or a draught' },
    ],
  };
}

/** The case soaped under test air: joint, adjuster and vent of the spring side, stem seal. */
export function soapCase<const Id extends string>(step: {
  readonly phase: string;
  readonly title: string;
  readonly ways: Readonly<
    Record<'tight' | 'case joint' | 'diaphragm' | 'stem seal' | 'too little air' | 'above limit', Way<Id>>
  >;
  readonly ventNow: Id;
}): Step<Id> {
  return {
    kind: 'reading',
    phase: step.phase,
    title: step.title,
    how: 'Soap the whole joint and wait at each spot: a small leak takes a while to blow its bubble. Hose and gauge joints too.',
    why: 'Bubbles at the joint are nuts or bead. Air at the adjuster or the vent has come through the diaphragm.',
    action: 'strokeByTestAir',
    caution: STEM_MOVES,
    do: [
      'Set {soapPressure}.',
      'Look at the joint all round.',
      'Look at the adjuster, or at the vent of the spring side.',
      'Look where the stem enters the case.',
    ],
    asks: [
      {
        name: 'soapPa',
        label: 'Signal gauge, while it was soaped',
        type: 'quantity',
        dimension: 'pressure',
        gauge: 'signalGauge',
        onCase: true,
        wanted: 'soapPressure',
      },
      bubbles('caseJointAir', 'Case joint and bolts'),
      bubbles('springSideAir', 'Adjuster, or vent of the spring side'),
      bubbles('stemSealAir', 'Where the stem enters the case'),
    ],
    judge: { rule: 'soapCase' },
    ways: step.ways,
    makeSafe: step.ventNow,
  };
}
