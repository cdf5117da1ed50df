/** A valve in its line, tried on its own air: taken over on the bypass, blocked so that no flow follows it, and given back. */
import type { EnergyControl, Step } from '../vocabulary.ts';
import { OPERATOR, yesNo } from './common.ts';
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

/** Phases of such a job before and after its own. */
export const OWN_AIR_FRONT = [
  { id: 'ready', title: 'Get ready' },
  { id: 'bypass', title: 'Onto the bypass' },
] as const;
export const OWN_AIR_RETURN = { id: 'return', title: 'Back to the operator' } as const;

type Taken =
  | keyof ReturnType<typeof ontoBypass>
  | 'needs'
  | 'notStarted'
  | 'noLock'
  | 'blockForStroke'
  | 'lookBeforeStroke'
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
      ways: { yes: { to: 'consent' }, no: { to: 'notStarted' } },
      makeSafe: 'notStarted',
    },
    ...ontoBypass<Taken>({ next: 'blockForStroke', notStarted: 'notStarted' }),
    blockForStroke: {
      kind: 'reading',
      phase: 'bypass',
      title: 'Shut both block valves of {tag}',
      how: 'Inlet {inletPoint}, then outlet {outletPoint}, slowly: the operator watches the process. No lock: nothing is opened, and the body stays under pressure.',
      why: 'With flow in it a stroke would upset the process, and the flow would push the plug.',
      action: 'shutBlockValves',
      asks: [
        { name: 'inletTag', label: 'Tag on the inlet block valve', type: 'text', mustBe: 'inletPoint' },
        { name: 'outletTag', label: 'Tag on the outlet block valve', type: 'text', mustBe: 'outletPoint' },
        yesNo('blocksShut', 'Both are shut, and the process is held'),
      ],
      judge: { rule: 'allYes', with: { fields: 'blocksShut' } },
      ways: { yes: { to: 'lookBeforeStroke' }, no: { to: makeSafe } },
      makeSafe,
    },
    lookBeforeStroke: {
      kind: 'reading',
      phase: 'bypass',
      title: 'Look at {tag} before it moves',
      asks: [
        yesNo('caseTight', 'Case, bonnet and gland shut, every bolt in and tight'),
        yesNo('toolsOut', 'Tools out of the yoke, handwheel in neutral'),
        yesNo('peopleClear', 'People are clear, and told that it moves'),
      ],
      judge: { rule: 'allYes', with: { fields: 'caseTight toolsOut peopleClear' } },
      ways: {
        yes: { to: next, sets: { spring: 'contained', closure: 'shut', clear: 'clear' } },
        no: { to: makeSafe, sets: { clear: 'not looked at' } },
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
          label: 'Go on: look at it again first',
          to: 'lookBeforeStroke',
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

type Back =
  | 'nextPerson'
  | 'tellBack'
  | 'lookBack'
  | 'blocksBack'
  | 'bypassBack'
  | 'loopBack'
  | 'haltBack'
  | 'done';

/** Word to the next person, block valves, bypass and loop given back. */
export function giveBackStroked(): Readonly<Record<Back, Step<Back>>> {
  const phase = 'return';
  const halt = 'haltBack';
  return {
    nextPerson: {
      kind: 'reading',
      phase,
      title: 'Write down what the next person wants to know',
      asks: [{ name: 'nextNotes', label: 'What was set, what to watch', type: 'text' }],
      judge: { rule: 'record' },
      ways: { kept: { to: 'tellBack' } },
      makeSafe: halt,
    },
    tellBack: {
      kind: 'reading',
      phase,
      title: 'Have the operator set the output to where the process wants the valve',
      how: 'Say that the block valves come back next. The operator names the output.',
      asks: [
        { name: 'toldWho', label: 'Told, by role', type: 'text' },
        yesNo('outputSet', 'The output stands as the operator wants it, and the valve stands there'),
      ],
      judge: { rule: 'allYes', with: { fields: 'outputSet' } },
      ways: { yes: { to: 'lookBack', sets: { told: 'told' } }, no: { to: halt } },
      makeSafe: halt,
    },
    lookBack: {
      kind: 'reading',
      phase,
      title: 'Look at {tag} once more before flow goes through it',
      asks: [
        yesNo('caseTight', 'Case, bonnet and gland shut, every bolt in and tight'),
        yesNo('toolsOut', 'Tools and test gear off, covers on, people clear'),
      ],
      judge: { rule: 'allYes', with: { fields: 'caseTight toolsOut' } },
      ways: {
        yes: { to: 'blocksBack', sets: { spring: 'contained', closure: 'shut', clear: 'clear' } },
        no: { to: halt },
      },
      makeSafe: halt,
    },
    blocksBack: {
      kind: 'reading',
      phase,
      title: 'Open the block valves of {tag}',
      how: 'Outlet {outletPoint}, then inlet {inletPoint}, slowly; the bypass stays as it is.',
      action: 'openBlocksUnopened',
      caution: {
        word: 'warning',
        hazard: 'The process comes through the valve as it stands.',
        consequence: 'An upset process can hurt people elsewhere.',
        avoid: 'Stay on the radio with the operator all the while.',
      },
      asks: [yesNo('blocksOpen', 'Both block valves open, nothing leaks')],
      judge: { rule: 'allYes', with: { fields: 'blocksOpen' } },
      ways: {
        yes: { to: { by: 'bypassLine', ways: { fitted: 'bypassBack', none: 'loopBack' } } },
        no: { to: halt },
      },
      makeSafe: halt,
    },
    bypassBack: {
      kind: 'reading',
      phase,
      title: 'Shut the bypass {bypassPoint} slowly',
      how: 'The operator takes the flow on {tag} and holds the process value: no bump.',
      action: 'shutBypass',
      asks: [yesNo('bypassShut', 'Bypass shut, process value held')],
      judge: { rule: 'allYes', with: { fields: 'bypassShut' } },
      ways: {
        yes: { to: 'loopBack', sets: { bypass: 'shut', processFlow: 'needs the valve' } },
        no: { to: halt },
      },
      makeSafe: halt,
    },
    loopBack: {
      kind: 'reading',
      phase,
      title: 'Give the loop of {tag} back to the operator',
      how: 'The operator lines set point and process value up, then goes to automatic.',
      asks: [
        { name: 'takenBackBy', label: OPERATOR, type: 'text' },
        yesNo('takenBack', 'The operator has the loop back and says that it controls'),
      ],
      judge: { rule: 'allYes', with: { fields: 'takenBack' } },
      ways: {
        yes: {
          to: 'done',
          sets: { loop: 'automatic', commands: 'live', processFlow: 'needs the valve', consent: 'none' },
        },
        no: { to: halt },
      },
      makeSafe: halt,
    },
    haltBack: {
      kind: 'question',
      phase,
      title: 'Stopped on the way back: leave every point as it stands',
      how: 'Tell the operator where block valves and bypass stand.',
      choices: { goOn: { label: 'Go on: tell the operator first', to: 'tellBack' } },
      makeSafe: halt,
    },
    done: { kind: 'end', phase, title: 'The valve is back', closes: 'done' },
  };
}
