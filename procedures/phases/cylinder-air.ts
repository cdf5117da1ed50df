/** Test air on one end of a cylinder, the other end open to the room. */
import type { ChoiceField, Step, Way } from '../vocabulary.ts';
import { TEST_AIR_ON } from './case-air.ts';
import { STEM_MOVES, yesNo } from './common.ts';

/** What makes a cylinder weak or still by itself. */
export const STANDS: readonly ChoiceField[] = [
  {
    name: 'equaliserStands',
    label: 'Equalising valve',
    type: 'choice',
    choices: [
      { value: 'shut', label: 'Shut' },
      { value: 'none', label: 'There is none' },
      { value: 'open', label: 'Open' },
    ],
  },
  {
    name: 'handwheelStands',
    label: 'Handwheel',
    type: 'choice',
    choices: [
      { value: 'neutral', label: 'In neutral' },
      { value: 'none', label: 'There is none' },
      { value: 'in', label: 'Engaged' },
    ],
  },
];

function air(name: string, label: string): ChoiceField {
  return {
    name,
    label,
    type: 'choice',
    choices: [
      { value: 'none', label: 'None, or a last puff that stops' },
      { value: 'flow', label: 'Bubbles, or air that goes on' },
    ],
  };
}

/** One regulator and its gauge put on one end, the other end left open. */
export function connectEnd<const Id extends string>(step: {
  readonly phase: string;
  readonly title: string;
  readonly next: Id;
  readonly ventNow: Id;
}): Step<Id> {
  return {
    kind: 'reading',
    phase: step.phase,
    title: step.title,
    how: 'One source, in your hand. At most {testAirLimit} goes on this cylinder: {testAirBecause}. The port of the other end stays open, pointed away.',
    action: 'connectTestAir',
    caution: STEM_MOVES,
    do: [
      'Set the regulator to zero.',
      'Connect it to the port of that end.',
      'Leave the other port open.',
      'Look where the stem stands on the travel scale.',
    ],
    asks: [yesNo('peopleClear', 'Tools out of the yoke, people clear and told')],
    judge: { rule: 'allYes', with: { fields: 'peopleClear' } },
    ways: { yes: { to: step.next, sets: TEST_AIR_ON }, no: { to: step.ventNow, sets: TEST_AIR_ON } },
    makeSafe: step.ventNow,
  };
}

type Leak = 'tight' | 'passes' | 'rod seal' | 'end cap' | 'equaliser' | 'too little air' | 'above limit';

/** What passes the piston, the rod seal or an end cap, with the stem at its end. */
export function blowBy<const Id extends string>(step: {
  readonly phase: string;
  readonly title: string;
  readonly ways: Readonly<Record<Leak, Way<Id>>>;
  readonly ventNow: Id;
}): Step<Id> {
  return {
    kind: 'reading',
    phase: step.phase,
    title: step.title,
    how: 'Let the stem come to its end first: what the moving piston pushes out is no leak. Then air that goes on at the open port has passed the piston, or the equalising valve.',
    action: 'strokeByTestAir',
    caution: STEM_MOVES,
    do: [
      'Raise the air slowly to {soapPressure}.',
      'Wait until the stem stands.',
      'Look at the open port, a film of soap over it.',
      'Look at rod seal and end caps, soaped.',
    ],
    asks: [
      {
        name: 'cylinderPa',
        label: 'Signal gauge, while it was looked at',
        type: 'quantity',
        dimension: 'pressure',
        gauge: 'signalGauge',
        onCase: true,
        wanted: 'soapPressure',
      },
      yesNo('equaliserShutNow', 'The equalising valve is shut, or there is none'),
      air('openEndAir', 'At the open port'),
      air('rodSealAir', 'At the rod seal'),
      air('capAir', 'At end caps and tubes'),
    ],
    judge: { rule: 'blowBy' },
    ways: step.ways,
    makeSafe: step.ventNow,
  };
}

/** The stroke that this end makes, read off the stem. */
export function strokeOneEnd<const Id extends string>(step: {
  readonly phase: string;
  readonly title: string;
  readonly whole: Id;
  readonly short: Id;
  readonly danger: Id;
  readonly ventNow: Id;
}): Step<Id> {
  return {
    kind: 'reading',
    phase: step.phase,
    title: step.title,
    how: 'On the travel scale, from the mark of the far end to where it stands now: {travel} by the sheet, wherever the stem began. Raised slowly, nothing knocks at the end where the cushion works.',
    action: 'strokeByTestAir',
    caution: STEM_MOVES,
    asks: [
      {
        name: 'strokePa',
        label: 'Signal gauge, at the end of the stroke',
        type: 'quantity',
        dimension: 'pressure',
        gauge: 'signalGauge',
        onCase: true,
        wanted: 'soapPressure',
      },
      {
        name: 'strokeMadeM',
        label: 'Stroke made, read off the stem',
        type: 'quantity',
        dimension: 'length',
        gauge: 'travelIndicator',
        wanted: 'travel',
      },
    ],
    judge: { rule: 'strokeMade' },
    ways: {
      whole: { to: step.whole },
      short: { to: step.short },
      'above limit': { to: step.danger },
    },
    makeSafe: step.ventNow,
  };
}
