/** The three hubs, what is mended at them, and the card that names the cause. */
import { capital } from '../../capital.ts';
import { STEM_MOVES, yesNo } from '../../phases/common.ts';
import type { RuleName } from '../../rules/registry.ts';
import type { ReadingStep, Step, Way } from '../../vocabulary.ts';
import type { Hub } from '../check.ts';
import { REPAIR_IDS, type RepairId, repairOf } from '../repairs.ts';
import { type AtHub, checkStepId } from './check-cards.ts';
import { GOES_ON_AS, goesOnStepId } from './goes-on.ts';
import {
  checksAt,
  choicesAt,
  HUB_TAIL,
  mendChoice,
  mendsAt,
  ON_TEST_AIR,
  type WayOn,
} from './hub-choices.ts';

export const HUB_STEP: Readonly<Record<Hub, string>> = {
  'in service': 'inService',
  bypassed: 'onBypass',
  isolated: 'isolated',
};

const TITLE: Readonly<Record<Hub, string>> = {
  'in service': 'In service: what to look at next',
  bypassed: 'On the bypass: what to look at next',
  isolated: 'Isolated: what to look at next',
};

const HOW: Readonly<Record<Hub, string>> = {
  'in service': 'Nothing is opened here. What moves the process wants the operator’s word each time.',
  bypassed: 'The air is on and the line is live. Nothing of the valve is opened here.',
  isolated: 'Locks stay on. Air goes on the actuator only behind a hold.',
};

const RULE = {
  'in service': 'hubInService',
  bypassed: 'hubOnBypass',
  isolated: 'hubIsolated',
} as const satisfies Readonly<Record<Hub, string>>;

/** The card of a hub: each check that the valve allows, a mend on the spot, or a way on. */
export function hubCard(
  at: AtHub,
  { ways, testAir }: { readonly ways: { readonly [W in WayOn]?: string }; readonly testAir?: string },
): ReadingStep<string> {
  const { hub } = at;
  const toCheck = checksAt(hub).map((id): [string, Way<string>] => [
    id,
    { to: ON_TEST_AIR.includes(id) && testAir !== undefined ? testAir : checkStepId(id, hub) },
  ]);
  return {
    kind: 'reading',
    phase: at.phase,
    title: TITLE[hub],
    how: HOW[hub],
    why: 'The order is advice: the best information for its minutes first. Any check that the valve allows may be made.',
    asks: [{ name: 'hubChoice', label: 'Next', type: 'choice', choices: choicesAt(hub) }],
    judge: { rule: RULE[hub] },
    ways: {
      ...Object.fromEntries(Object.entries(ways).map(([way, to]) => [way, { to }])),
      ...Object.fromEntries(toCheck),
      ...Object.fromEntries(mendsAt(hub).map((id) => [mendChoice(id), { to: mendStepId(id, hub) }])),
    },
    makeSafe: at.makeSafe,
  };
}

/** Apart from the cards of checks: a check and a mend may go by the same name. */
export function mendStepId(id: RepairId, hub: Hub): string {
  return `mend${capital(id)}${HUB_TAIL[hub]}`;
}

/** The cards of what is put right on the spot; the check that proves it is advised next. */
export function mendCards(at: AtHub): Readonly<Record<string, Step>> {
  const action = at.hub === 'bypassed' ? 'strokeByOwnAir' : 'setProcessForMovement';
  return Object.fromEntries(
    mendsAt(at.hub).map((id): [string, Step] => [
      mendStepId(id, at.hub),
      {
        kind: 'reading',
        phase: at.phase,
        title: repairOf(id).words,
        how: repairOf(id).todo,
        why: 'Whether it helped, the next check says: not cured is evidence as well.',
        action,
        caution: STEM_MOVES,
        asks: [
          yesNo('made', 'It was made'),
          { name: 'mendNote', label: 'What was found and done', type: 'text', optional: true },
        ],
        judge: { rule: 'faultMended', with: { repair: id } },
        ways: {
          made: {
            to: at.lookOver,
            ...(at.hub === 'bypassed' ? { sets: { clear: 'not looked at' } as const } : {}),
          },
          'not made': { to: at.back },
        },
        makeSafe: at.makeSafe,
      },
    ]),
  );
}

const NAMING: Readonly<Record<Hub, { readonly rule: RuleName; readonly how: string }>> = {
  'in service': {
    rule: 'causeNamed',
    how: 'The likeliest stands first. What opens the valve is made by its own procedure, after this valve was given back.',
  },
  bypassed: {
    rule: 'causeNamedOnBypass',
    how: 'The likeliest stands first. A repair that is made on the bypass may go on from here as its own job. One that wants locks is better named behind them: go back and isolate first.',
  },
  isolated: {
    rule: 'causeNamedIsolated',
    how: 'The likeliest stands first. A repair that wants these locks may go on as its own job without undoing them.',
  },
};

/** Names the cause and the repair to do; from here the valve goes back, or as it stands into the repair itself. */
export function nameCard(at: AtHub, giveBack: string): ReadingStep<string> {
  const { hub } = at;
  const { rule, how } = NAMING[hub];
  const onAs = hub === 'in service' ? [] : GOES_ON_AS[hub];
  return {
    kind: 'reading',
    phase: at.phase,
    title: 'Name the repair that {tag} wants',
    how,
    asks: [
      {
        name: 'repairToDo',
        label: 'Repair to do',
        type: 'choice',
        choices: REPAIR_IDS.map((id) => ({ value: id, label: repairOf(id).words })),
      },
      { name: 'causeSeen', label: 'What was found, in your words', type: 'text', optional: true },
    ],
    judge: { rule, ...(hub === 'in service' ? { with: { hub } } : {}) },
    ways: {
      named: { to: giveBack },
      ...Object.fromEntries(onAs.map((id) => [id, { to: goesOnStepId(id) }])),
    },
    makeSafe: at.makeSafe,
  };
}
