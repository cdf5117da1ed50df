/** A valve that was tried on its own air given back: word, output, block valves, bypass and loop. */
import type { Step } from '../vocabulary.ts';
import { ACTUATOR_SHUT, yesNo } from './common.ts';
import { finding } from './finding.ts';
import { bypassToValve, loopToOperator } from './to-operator.ts';

/** The phase of such a job behind its own. */
export const OWN_AIR_RETURN = { id: 'return', title: 'Back to the operator' } as const;

type Back =
  | 'nextPerson'
  | 'tellBack'
  | 'outputNotSet'
  | 'lookBack'
  | 'notReadyBack'
  | 'blocksBack'
  | 'blocksLeak'
  | 'bypassBack'
  | 'loopBack'
  | 'notTaken'
  | 'haltBack'
  | 'done';

const phase = 'return';
const makeSafe = 'haltBack';

/** Word to the next person, block valves, bypass and loop given back. */
export function giveBackStroked(): Readonly<Record<Back, Step<Back>>> {
  return { ...told(), ...flowBack(), ...controlBack() } as Readonly<Record<Back, Step<Back>>>;
}

function told(): Readonly<Partial<Record<Back, Step<Back>>>> {
  return {
    nextPerson: {
      kind: 'reading',
      phase,
      title: 'Write down what the next person wants to know',
      why: 'Whoever opens the next job on this valve reads it first.',
      asks: [{ name: 'nextNotes', label: 'What was set, what to watch', type: 'text' }],
      judge: { rule: 'record' },
      ways: { kept: { to: 'tellBack' } },
      makeSafe,
    },
    tellBack: {
      kind: 'reading',
      phase,
      title: 'Have the operator set the output to where the process wants the valve',
      how: 'Say that the block valves come back next. The operator names the output.',
      why: 'The output may stand anywhere by now: flow would jump as it comes back through the valve.',
      asks: [
        { name: 'toldWho', label: 'Told, by role', type: 'text' },
        yesNo('outputSet', 'The output stands as the operator wants it, and the valve stands there'),
      ],
      judge: { rule: 'allYes', with: { fields: 'outputSet' } },
      ways: { yes: { to: 'lookBack', sets: { told: 'told' } }, no: { to: 'outputNotSet' } },
      makeSafe,
    },
    outputNotSet: {
      kind: 'question',
      phase,
      title: 'The valve does not stand where the operator wants it',
      how: 'Block valves that open on a valve at the wrong end give the process a blow.',
      choices: {
        again: { label: 'It stands there now: go on', to: 'tellBack' },
        asItIs: {
          label: 'It does not go there; the operator takes it as it stands, on the block valves',
          to: 'lookBack',
          sets: { told: 'told' },
          reason: true,
        },
        stop: { label: 'Leave it blocked in, on the bypass', to: 'haltBack' },
      },
      makeSafe,
    },
    lookBack: {
      kind: 'reading',
      phase,
      title: 'Look at {tag} once more before flow goes through it',
      why: 'Once flow is back, a part that was left off or loose is out of reach.',
      asks: [
        yesNo('caseTight', ACTUATOR_SHUT),
        yesNo('toolsOut', 'Tools and test gear off, covers on, people clear'),
      ],
      judge: { rule: 'allYes', with: { fields: 'caseTight toolsOut' } },
      ways: {
        yes: { to: 'blocksBack', sets: { spring: 'contained', closure: 'shut', clear: 'clear' } },
        no: { to: 'notReadyBack' },
      },
      makeSafe,
    },
    notReadyBack: finding<Back>({
      phase,
      title: '{tag} is not ready for flow',
      how: 'Tools, covers and people are put right now. A slack bolt is no job for a valve that has its air and its pressure.',
      choices: {
        again: { label: 'Tools off, covers on, people clear: look again', to: 'lookBack' },
        slack: {
          label: 'A bolt is slack: it stays blocked in until it is isolated for it',
          to: 'haltBack',
          comesNext: 'case-nuts',
        },
      },
      makeSafe,
    }),
  };
}

function flowBack(): Readonly<Partial<Record<Back, Step<Back>>>> {
  return {
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
        no: { to: 'blocksLeak' },
      },
      makeSafe,
    },
    blocksLeak: {
      kind: 'question',
      phase,
      title: 'A block valve does not open, or something leaks',
      how: 'Stand clear of a joint that leaks: no nut is touched with pressure on it. A gland that weeps has a careful job of its own.',
      choices: {
        again: { label: 'Freed, or dry now: open them', to: 'blocksBack' },
        weeps: {
          label: 'Only the gland weeps: it goes back so, the job on the live gland comes next',
          to: { by: 'bypassLine', ways: { fitted: 'bypassBack', none: 'loopBack' } },
          reason: true,
          comesNext: 'live-gland',
        },
        shut: { label: 'Shut again, on the bypass; it is isolated for what leaks', to: 'haltBack' },
      },
      makeSafe,
    },
  };
}

function controlBack(): Readonly<Partial<Record<Back, Step<Back>>>> {
  return {
    bypassBack: bypassToValve<Back>({ phase, next: 'loopBack', otherwise: 'notTaken', makeSafe }),
    loopBack: loopToOperator<Back>({
      how: 'The operator lines set point and process value up, then goes to automatic.',
      phase,
      next: 'done',
      otherwise: 'notTaken',
      makeSafe,
    }),
    notTaken: {
      kind: 'question',
      phase,
      title: 'The operator does not have the process on {tag}',
      how: 'Have the bypass open again as far as the operator wants it, the loop in manual, before anything else.',
      choices: {
        again: {
          label: 'Held again: tell the operator, then once more, slower',
          to: 'tellBack',
        },
        stop: { label: 'It stays on the bypass until it is known why', to: 'haltBack' },
      },
      makeSafe,
    },
    haltBack: {
      kind: 'question',
      phase,
      title: 'Stopped on the way back: leave every point as it stands',
      how: 'Tell the operator where block valves and bypass stand. What is not right is put right before it goes on.',
      choices: { goOn: { label: 'Go on: tell the operator first', to: 'tellBack' } },
      makeSafe,
    },
    done: { kind: 'end', phase, title: 'The valve is back', closes: 'done' },
  };
}
