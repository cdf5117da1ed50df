import type { Field, Step } from '../vocabulary.ts';
import { yesNo } from './common.ts';
import { handsOnOpen } from './taken-over.ts';

type Own =
  | 'springOld'
  | 'springNew'
  | 'springWrong'
  | 'springTooMuch'
  | 'springIn'
  | 'springNotIn'
  | 'windNew'
  | 'windNewWrong';

const LENGTHS: readonly Field[] = [
  {
    name: 'newLengthM',
    label: 'Free length of the new spring',
    type: 'quantity',
    dimension: 'length',
    when: { fact: 'springHeldBy', is: 'case' },
  },
  {
    name: 'springRoomM',
    label: 'Room that the case leaves it, plug at the start of its stroke',
    type: 'quantity',
    dimension: 'length',
    when: { fact: 'springHeldBy', is: 'case' },
  },
];

interface Ways<Next extends string> {
  readonly phase: string;
  readonly next: Next;
  readonly connect: Next;
  readonly makeSafe: Next;
  readonly haltShut: Next;
  /** Where a diaphragm that does not live through it is renewed, the case open as it is. */
  readonly toDiaphragm: Next;
  readonly stopLoaded: Next;
}

/** The old spring looked at, the new one held against the force balance before it goes in, and wound by count. */
export function changeSpring<const Next extends string>(
  ways: Ways<Next>,
): Readonly<Record<Own, Step<Own | Next>>> {
  return { ...foretold(ways), ...fitted(ways) } as Readonly<Record<Own, Step<Own | Next>>>;
}

function foretold<const Next extends string>({
  phase,
  makeSafe,
}: Ways<Next>): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  return {
    springOld: {
      kind: 'reading',
      phase,
      title: 'Look at the old spring and what holds it',
      why: 'How the old spring failed says whether a new one will, too.',
      asks: [
        yesNo('oldWhole', 'No coil is broken, none eaten by rust'),
        yesNo('seatsSound', 'Spring seats, button and adjuster thread are sound'),
        { name: 'oldNumber', label: 'Number or colour on it', type: 'text', optional: true },
      ],
      judge: { rule: 'record' },
      ways: { kept: { to: 'springNew' } },
      makeSafe,
    },
    springNew: {
      kind: 'reading',
      phase,
      title: 'Read the rate of the new spring, before it goes in',
      how: 'From its paper or its maker’s list. {benchSetLow} to {benchSetHigh} over {travel} on this area want {sheetSpringRate}. For another range the sheet is changed first, and the job opened on it.',
      why: 'Rate and area give the span. The adjuster only moves both ends.',
      shows: ['benchSetLow', 'benchSetHigh', 'sheetSpringRate', 'testAirLimit'],
      asks: [
        {
          name: 'newRateNPerM',
          label: 'Rate of the new spring',
          type: 'quantity',
          dimension: 'forcePerLength',
          wanted: 'sheetSpringRate',
        },
        ...LENGTHS,
        { name: 'newNumber', label: 'Number of the new spring', type: 'text' },
      ],
      judge: { rule: 'springFits' },
      ways: {
        fits: { to: 'springIn' },
        'wrong span': { to: 'springWrong' },
        'wrong low end': { to: 'springWrong' },
        'does not hold shut': { to: 'springWrong' },
        'too much for the case': { to: 'springTooMuch' },
        'not read': { to: 'springNew' },
      },
      makeSafe,
    },
    springWrong: {
      kind: 'question',
      phase,
      title: 'This spring does not give what the sheet has',
      how: 'It would give {newBenchLow} to {newBenchHigh} on the bench, {newInstalledLow} to {newInstalledHigh} with the process on, and leave {newSeatLoad} on the seat at the shut-off drop. A low end that is out in a case without adjuster is its room: seat, spacer, length.',
      choices: {
        again: { label: 'Another spring, or read again', to: 'springNew' },
        old: { label: 'The old one goes back until the right one is here', to: 'springIn', reason: true },
      },
      makeSafe,
    },
    springTooMuch: {
      kind: 'question',
      phase,
      title: 'This spring wants more air than the case may have',
      how: 'Its stroke would end at {newBenchHigh}; at most {testAirLimit} goes on this case: {testAirBecause}. It does not go in.',
      choices: {
        again: { label: 'Another spring, or read again', to: 'springNew' },
        old: { label: 'The old one goes back until the right one is here', to: 'springIn', reason: true },
      },
      makeSafe,
    },
  };
}

function fitted<const Next extends string>({
  phase,
  next,
  connect,
  makeSafe,
  haltShut,
  stopLoaded,
  toDiaphragm,
}: Ways<Next>): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  return {
    springIn: {
      kind: 'reading',
      phase,
      title: 'Set the spring on its seat',
      how: 'Both ends flat in their seats. The diaphragm is looked at while the case is open: a split, a hole, a crack or a tear wants a new one now.',
      action: 'workInCase',
      do: [
        'Check that the seats are clean.',
        'Set the spring on its seat.',
        'Look at the diaphragm, bent over.',
      ],
      asks: [
        yesNo('springUpright', 'It stands upright, both ends in their seats'),
        yesNo('diaphragmGood', 'The diaphragm shows no split, hole, crack or tear, or is renewed'),
      ],
      oneGo: true,
      judge: { rule: 'allYes', with: { fields: 'springUpright diaphragmGood' } },
      ways: { yes: { to: next }, no: { to: 'springNotIn' } },
      makeSafe,
    },
    springNotIn: {
      kind: 'question',
      phase,
      title: 'The spring stands askew, or the diaphragm is spent',
      how: 'A spring that stands askew has a seat that is worn or dirty, or is another one. A diaphragm that shows anything is renewed while the case is open.',
      choices: {
        again: { label: 'Stands upright now, diaphragm sound: look again', to: 'springIn' },
        other: { label: 'The spring does not fit its seats: read it again', to: 'springNew' },
        diaphragm: handsOnOpen('The diaphragm is renewed: go on as that job, the case open', toDiaphragm),
      },
      makeSafe,
    },
    windNew: {
      kind: 'reading',
      phase,
      title: 'Wind the spring adjuster until it touches, then {turnsFromTouch} more',
      how: 'From where the button meets the spring. By the force balance that gives {newBenchLow} to {newBenchHigh}; the stroke proves it.',
      action: 'windAdjusterBack',
      caution: {
        word: 'warning',
        hazard: 'The spring is loaded turn by turn, and moves the stem.',
        consequence: 'Fingers at the stem are crushed.',
        avoid: 'Hands outside the yoke; spanner from outside.',
      },
      shows: ['newBenchLow', 'newBenchHigh', 'newInstalledLow', 'newInstalledHigh', 'newSeatLoad'],
      asks: [
        {
          name: 'adjusterTurnsNew',
          label: 'Turns from where it touched',
          type: 'quantity',
          dimension: 'turns',
          wanted: 'turnsFromTouch',
        },
        yesNo('threadLeft', 'The adjuster has thread left both ways'),
      ],
      judge: { rule: 'allYes', with: { fields: 'threadLeft' } },
      ways: {
        yes: { to: connect, sets: { spring: 'contained' } },
        no: { to: 'windNewWrong', sets: { spring: 'contained' } },
      },
      makeSafe: haltShut,
    },
    windNewWrong: {
      kind: 'question',
      phase,
      title: 'The adjuster is at the end of its thread',
      how: 'A spring that fits stands near the middle of the adjuster. At its end, length or seat is another than before.',
      choices: {
        stroke: { label: 'Stroke it all the same, to see where it stands', to: connect },
        stop: { label: 'Stop here', to: stopLoaded },
      },
      makeSafe: stopLoaded,
    },
  };
}
