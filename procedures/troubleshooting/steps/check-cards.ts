/** A card for each check of the list at each hub where it can be made. Its texts stand with the check, once. */
import type { ActionClass } from '../../../safety/action-classes.ts';
import type { WhenFact } from '../../facts.ts';
import { STEM_MOVES, TUBE_WHIPS, yesNo } from '../../phases/common.ts';
import type { Caution, ChoiceField, Field, ReadingStep, Step } from '../../vocabulary.ts';
import type { Check, Hub } from '../check.ts';
import { CHECK_READINGS } from '../check-readings.ts';
import { type CheckId, checkOf } from '../checks.ts';
import { checksAt, HUB_TAIL, LOOKED_ELSEWHERE, ON_TEST_AIR } from './hub-choices.ts';

/** What a check does to people where the table of action classes has a row for it; a look has none. */
const ACTION_OF: { readonly [C in CheckId]?: ActionClass } = {
  filterBowl: 'blowAirLineDown',
  flapperByHand: 'openPneumaticCover',
  flapperAgainstGauges: 'openPneumaticCover',
  bothFlappersAgainstGauges: 'openPneumaticCover',
  blockSourceSide: 'fitGaugeIntoLiveLine',
  blockActuatorSide: 'fitGaugeIntoLiveLine',
  positionerBench: 'breakSignalLine',
  strokeOnTestAir: 'strokeByTestAir',
  crossLeak: 'strokeByTestAir',
};

/** After these, hands and tools have been in the yoke or at a joint: it is looked over before anything moves. */
const HANDS_WERE_IN: readonly ActionClass[] = [
  'openPneumaticCover',
  'fitGaugeIntoLiveLine',
  'breakSignalLine',
];

const CAUTION_OF: { readonly [A in ActionClass]?: Caution } = {
  breakSignalLine: TUBE_WHIPS,
  openPneumaticCover: {
    word: 'warning',
    hazard: 'A flapper that is touched sends the valve to its end at full speed.',
    consequence: 'A finger in the yoke can be crushed.',
    avoid: 'Hands stay clear of stem and linkage; the cover stays on where the area does not allow it off.',
  },
  fitGaugeIntoLiveLine: {
    word: 'warning',
    hazard: 'The valve moves as its air is shut in or lost, and a joint can blow off.',
    consequence: 'A hand at the joint or in the yoke can be hurt.',
    avoid: 'Hands stay outside the yoke; stand beside the joint, and tell the operator first.',
  },
  blowAirLineDown: {
    word: 'caution',
    hazard: 'The drain throws oil, water and scale.',
    consequence: 'Eyes can be hurt.',
    avoid: 'Goggles on; the drain points away from people.',
  },
  setProcessForMovement: {
    word: 'warning',
    hazard: 'The valve moves, and the process with it.',
    consequence: 'A finger in the yoke can be crushed, and an upset process can hurt people elsewhere.',
    avoid: 'Hands stay outside the yoke; the operator is on the radio and agrees to each step.',
  },
  strokeByOwnAir: STEM_MOVES,
  strokeByTestAir: STEM_MOVES,
};

/** Soaped with the valve at work: the loop moves the stem without asking anybody. */
const AT_THE_STEM: Caution = {
  word: 'warning',
  hazard: 'The stem may move at any moment while air is on.',
  consequence: 'A finger in the yoke can be crushed.',
  avoid: 'Spray, or use a long brush; fingers stay outside the yoke.',
};

const CAUTION_OF_CHECK: { readonly [C in CheckId]?: Caution } = {
  fluidOutside: {
    word: 'danger',
    hazard: 'Hot or poisonous fluid may come out where it leaks.',
    consequence: 'It burns or poisons whoever comes near.',
    avoid: 'Stay upwind and at a distance. Where it is dangerous, go away and make safe.',
  },
  loopCurrent: {
    word: 'warning',
    hazard: 'The terminals are live, and a spark can ignite a classified area.',
    consequence: 'The valve jumps when the loop is broken.',
    avoid: 'Only with the permit for live terminals here; measure at the test points, break nothing.',
  },
  soapAdjuster: AT_THE_STEM,
  soapStemSeal: AT_THE_STEM,
  soapCylinder: AT_THE_STEM,
};

/** Where a check leads on from, and where its stop leads. */
export interface AtHub {
  readonly hub: Hub;
  readonly phase: string;
  readonly back: string;
  /** Where it goes on after hands were in. */
  readonly lookOver: string;
  readonly makeSafe: string;
}

export function checkStepId(check: CheckId, hub: Hub): string {
  return `${check}${HUB_TAIL[hub]}`;
}

/** The cards of all checks at one hub. */
export function checkCards(at: AtHub): Readonly<Record<string, Step>> {
  return Object.fromEntries(
    checksAt(at.hub)
      .filter((id) => !ON_TEST_AIR.includes(id))
      .map((id) => [checkStepId(id, at.hub), checkCard(id, at)]),
  );
}

/** The card of one check. */
export function checkCard(id: CheckId, at: AtHub): ReadingStep<string> {
  const check = checkOf(id);
  const action = actionOf(id, at.hub);
  const handsIn = action !== undefined && HANDS_WERE_IN.includes(action);
  const way = {
    to: handsIn ? at.lookOver : at.back,
    ...(handsIn ? { sets: { clear: 'not looked at' } as const } : {}),
  };
  const caution = CAUTION_OF_CHECK[id] ?? (action === undefined ? undefined : CAUTION_OF[action]);
  return {
    kind: 'reading',
    phase: at.phase,
    title: check.title,
    how: LOOKED_ELSEWHERE.includes(id) ? ONLY_WRITTEN : check.todo,
    ...(action === undefined ? {} : { action }),
    ...(caution === undefined ? {} : { caution }),
    asks: asksOf(id),
    judge: { rule: 'faultCheck', with: { check: id } },
    ways: { answered: way, 'cannot tell': way, skip: way },
    makeSafe: at.makeSafe,
  };
}

const ONLY_WRITTEN =
  'Only where it was opened since the complaint began: its own procedure does that, with its own holds. Write what it showed. Else skip.';

function actionOf(id: CheckId, hub: Hub): ActionClass | undefined {
  if (LOOKED_ELSEWHERE.includes(id)) return undefined;
  const own = ACTION_OF[id];
  if (own !== undefined || checkOf(id).consent !== true) return own;
  return hub === 'bypassed' ? 'strokeByOwnAir' : 'setProcessForMovement';
}

function onlyOn({ onlyOn: kinds = {} }: Check, outcome: string): { readonly when?: WhenFact } {
  const is = kinds[outcome];
  return is === undefined ? {} : { when: { fact: 'actuator', is } };
}

/** The one check that is answered by a table. */
const LOOP_ASKS: readonly Field[] = [
  {
    name: 'loopRecord',
    label: 'The table: a CSV file, or pasted',
    type: 'csv',
    of: 'loop record',
    optional: true,
  },
  {
    name: 'loopKind',
    label: 'What the loop holds',
    type: 'choice',
    optional: true,
    choices: [
      { value: 'settles', label: 'Flow, pressure or temperature: it settles by itself' },
      { value: 'integrates', label: 'A level, or another that goes on rising' },
    ],
  },
  {
    name: 'found',
    label: 'Or no table',
    type: 'choice',
    optional: true,
    choices: [
      { value: 'cannot tell', label: 'I cannot tell' },
      { value: 'skip', label: 'Skip it' },
    ],
  },
];

function asksOf(id: CheckId): readonly Field[] {
  if (id === 'loopRecord') return LOOP_ASKS;
  const check = checkOf(id);
  const numbers = CHECK_READINGS[id]?.asks ?? [];
  const found: ChoiceField = {
    name: 'found',
    label: numbers.length === 0 ? 'What was found' : 'Or what was found, where no number is written',
    type: 'choice',
    ...(numbers.length === 0 ? {} : { optional: true }),
    choices: [
      ...Object.entries(check.outcomes).map(([value, label]) => ({ value, label, ...onlyOn(check, value) })),
      { value: 'cannot tell', label: 'I cannot tell' },
      { value: 'skip', label: 'Skip it' },
    ],
  };
  const alive: ChoiceField = { ...yesNo('gaugeAlive', 'This gauge was seen to move today'), optional: true };
  return [
    ...numbers.map((one) => ({ ...one, type: 'quantity' as const, optional: true as const })),
    found,
    ...(check.zero === undefined ? [] : [alive]),
  ];
}
