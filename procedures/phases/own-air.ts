/** A valve in its line, tried on its own air: taken over on the bypass, and blocked so that no flow follows it. */
import type { EnergyControl, Step } from '../vocabulary.ts';
import { ACTUATOR_SHUT, yesNo } from './common.ts';
import { ontoBypass } from './onto-bypass.ts';

/** What such a job says of its energies; its use is its own. */
export function ownAirControl(use: string): EnergyControl {
  return {
    use,
    isolation:
      'None: nothing is opened. Loop in manual, flow on the bypass or the plant state agreed, both block valves shut so that no flow follows the stem.',
    locks:
      'None are hung, and none may hang: a valve that somebody has locked is never stroked. Local rules and the site permit come first.',
    verification:
      'Case, bonnet and gland seen shut, tools out and people clear before the first stroke; the operator agrees each time.',
  };
}

/** Where nothing more has to be done to be safe. */
export const OWN_AIR_SAFE_AT = ['haltBypass', 'haltStroke', 'haltBack'] as const;

/** Phases of such a job before its own. */
export const OWN_AIR_FRONT = [
  { id: 'ready', title: 'Get ready' },
  { id: 'bypass', title: 'Onto the bypass' },
] as const;

type Taken =
  | keyof ReturnType<typeof ontoBypass>
  | 'needs'
  | 'notStarted'
  | 'noLock'
  | 'lockedByOthers'
  | 'blockForStroke'
  | 'blocksNotHeld'
  | 'lookBeforeStroke'
  | 'notClearYet'
  | 'haltStroke';

interface Front<Next extends string> {
  readonly title: string;
  readonly how?: string;
  /** Lines of what is needed, behind the manual and before the permit. */
  readonly bring: readonly string[];
  readonly next: Next;
}

const makeSafe = 'haltStroke';

/** Needs, consent, loop, bypass, block valves and a look, up to the first stroke. */
export function takeForStroke<const Next extends string>({
  title,
  how,
  bring,
  next,
}: Front<Next>): Readonly<Record<Taken, Step<Taken | Next | 'tellBack'>>> {
  return {
    needs: {
      kind: 'instruction',
      phase: 'ready',
      title,
      why: 'What is missing is fetched later, with the work half done and the valve out of use.',
      ...(how === undefined ? {} : { how }),
      do: [
        'Read the maker’s manual for this valve: it outranks this card.',
        ...bring,
        'Have the site permit in hand: local rules and the site lockout come first.',
      ],
      next: { to: 'noLock' },
      makeSafe: 'notStarted',
    },
    noLock: {
      kind: 'reading',
      phase: 'ready',
      title: 'Look whether anybody has locked {tag} or works on it',
      why: 'A lock is somebody’s life: a valve that is locked is not moved.',
      asks: [yesNo('notLocked', 'No lock and no tag hangs on its points, nobody works on it')],
      judge: { rule: 'allYes', with: { fields: 'notLocked' } },
      ways: { yes: { to: 'consent' }, no: { to: 'lockedByOthers' } },
      makeSafe: 'notStarted',
    },
    lockedByOthers: {
      kind: 'question',
      phase: 'ready',
      title: 'Somebody has locked {tag}, or works on it',
      how: 'Only the owner takes a lock off. Find out who it is and how long it takes.',
      choices: {
        again: { label: 'They are done, and their lock is off: look again', to: 'noLock' },
        stop: { label: 'They work on: come back later', to: 'notStarted' },
      },
      makeSafe: 'notStarted',
    },
    ...ontoBypass<Taken>({ next: 'blockForStroke', notStarted: 'notStarted' }),
    blockForStroke: {
      kind: 'reading',
      phase: 'bypass',
      title: 'Shut both block valves of {tag}',
      how: 'Inlet {inletPoint}, then outlet {outletPoint}, slowly: the operator watches the process. After a stop, look that they are shut still. No lock: nothing is opened, and the body stays under pressure.',
      why: 'With flow in it a stroke would upset the process, and the flow would push the plug.',
      action: 'shutBlockValves',
      asks: [
        {
          name: 'inletTag',
          label: 'Tag on the inlet block valve',
          type: 'text',
          mustBe: 'inletPoint',
          carried: true,
        },
        {
          name: 'outletTag',
          label: 'Tag on the outlet block valve',
          type: 'text',
          mustBe: 'outletPoint',
          carried: true,
        },
        yesNo('blocksShut', 'Both are shut, and the process is held'),
      ],
      judge: { rule: 'allYes', with: { fields: 'blocksShut' } },
      ways: { yes: { to: 'lookBeforeStroke' }, no: { to: 'blocksNotHeld' } },
      makeSafe,
    },
    blocksNotHeld: {
      kind: 'question',
      phase: 'bypass',
      title: 'A block valve does not shut, or the process is not held',
      how: 'Nothing is stroked with flow in it. The operator says where both stand until it is decided.',
      choices: {
        again: { label: 'Process held again: shut them, slower', to: 'blockForStroke' },
        giveBack: { label: 'It cannot be blocked in: give the valve back', to: 'tellBack' },
      },
      makeSafe,
    },
    lookBeforeStroke: {
      kind: 'reading',
      phase: 'bypass',
      title: 'Look at {tag} before it moves',
      why: 'The stem moves as soon as air or signal changes: what is in the yoke then is crushed.',
      asks: [
        yesNo('caseTight', ACTUATOR_SHUT),
        yesNo('toolsOut', 'Tools out of the yoke, handwheel in neutral'),
        yesNo('peopleClear', 'People are clear, and told that it moves'),
      ],
      judge: { rule: 'allYes', with: { fields: 'caseTight toolsOut peopleClear' } },
      ways: {
        yes: { to: next, sets: { spring: 'contained', closure: 'shut', clear: 'clear' } },
        no: { to: 'notClearYet', sets: { clear: 'not looked at' } },
      },
      makeSafe,
    },
    notClearYet: {
      kind: 'question',
      phase: 'bypass',
      title: '{tag} is not ready to move',
      how: 'A slack bolt or a leaking gland is no job for a valve that has its air and its pressure: it is isolated for it.',
      choices: {
        again: { label: 'Tools out, neutral, people clear: look again', to: 'lookBeforeStroke' },
        giveBack: { label: 'Something is loose or leaks: give the valve back', to: 'tellBack' },
      },
      makeSafe,
    },
    haltStroke: {
      kind: 'question',
      phase: 'bypass',
      title: 'Stopped: hands out of the yoke, the valve has its air',
      how: 'The body is under pressure between the block valves. Leave every joint alone.',
      choices: {
        goOn: {
          label: 'Go on: the block valves first, then a look at it',
          to: 'blockForStroke',
          sets: { clear: 'not looked at' },
        },
        giveBack: { label: 'Give the valve back as it is', to: 'tellBack' },
      },
      makeSafe,
    },
    notStarted: {
      kind: 'end',
      phase: 'ready',
      title: 'Stopped before anything was changed',
      closes: 'stopped',
    },
  } as Readonly<Record<Taken, Step<Taken | Next | 'tellBack'>>>;
}
