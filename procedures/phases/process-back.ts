import type { Step } from '../vocabulary.ts';
import { PROCESS_BACK_HOLD, yesNo } from './common.ts';
import { bypassToValve, loopToOperator } from './to-operator.ts';

export type ProcessBack =
  | 'unlockBlocks'
  | 'tellPeople'
  | 'openBlocks'
  | 'shutBypass'
  | 'loopBack'
  | 'haltProcess'
  | 'lookAgain'
  | 'signAgain'
  | 'haltUnsigned';

/** What stands once the locks are off: what is not locked counts as live, and nobody has been told yet. */
const UNLOCKED = {
  inletLock: 'off',
  outletLock: 'off',
  processInlet: 'live',
  processOutlet: 'live',
  told: 'nobody',
} as const;

/** Locks off, people told, block valves open, bypass shut, loop back to the operator; where it stops, the signature may be had again. */
export function processBack<const Next extends string>({
  done,
}: {
  readonly done: Next;
}): Readonly<Record<ProcessBack, Step<ProcessBack | Next>>> {
  const phase = 'return';
  const makeSafe = 'haltProcess';
  return {
    unlockBlocks: {
      kind: 'reading',
      phase,
      title: 'Take your locks off the block valves; open nothing yet',
      how: 'Drains first: shut and capped. Then the locks off {outletPoint} and {inletPoint}.',
      action: 'unlockProcess',
      asks: [
        yesNo('drainsShut', 'Drains shut and capped'),
        yesNo('locksOff', 'My locks and tags are off, the block valves still shut'),
      ],
      judge: { rule: 'allYes', with: { fields: 'drainsShut locksOff' } },
      ways: { yes: { to: 'tellPeople', sets: UNLOCKED }, no: { to: 'haltProcess', sets: UNLOCKED } },
      makeSafe,
    },
    tellPeople: {
      kind: 'reading',
      phase,
      title: 'Tell the operator and everybody near that process comes back',
      how: 'After the locks are off, before anything is opened.',
      asks: [
        { name: 'toldWho', label: 'Told, by role', type: 'text' },
        yesNo('peopleClear', 'Tools are out and people are clear'),
      ],
      judge: { rule: 'allYes', with: { fields: 'peopleClear' } },
      ways: { yes: { to: 'openBlocks', sets: { told: 'told' } }, no: { to: 'haltProcess' } },
      makeSafe,
    },
    openBlocks: {
      kind: 'reading',
      phase,
      title: 'Open the block valves',
      how: 'Outlet {outletPoint}, then inlet {inletPoint}, slowly; the bypass stays as it is.',
      action: 'restoreProcess',
      caution: {
        word: 'warning',
        hazard: 'Process pressure returns to the body and its joints.',
        consequence: 'A leaking joint can burn or poison.',
        avoid: 'Open slowly, stand aside, look at every joint.',
      },
      asks: [yesNo('blocksOpen', 'Both block valves open, joints tight')],
      judge: { rule: 'allYes', with: { fields: 'blocksOpen' } },
      ways: {
        yes: {
          to: { by: 'bypassLine', ways: { fitted: 'shutBypass', none: 'loopBack' } },
          sets: { processInlet: 'live', processOutlet: 'live' },
        },
        no: { to: 'haltProcess', sets: { processInlet: 'live', processOutlet: 'live' } },
      },
      makeSafe,
    },
    shutBypass: bypassToValve<ProcessBack | Next>({
      phase,
      next: 'loopBack',
      otherwise: 'haltProcess',
      makeSafe,
    }),
    loopBack: loopToOperator<ProcessBack | Next>({ phase, next: done, otherwise: 'haltProcess', makeSafe }),
    haltProcess: {
      kind: 'question',
      phase,
      title: 'Stopped while the process comes back',
      how: 'The body may be live. Leave every joint alone; tell the operator.',
      choices: {
        goOn: { label: 'Go on from the locks of the block valves', to: 'unlockBlocks' },
        signAgain: {
          label: 'The signature has run out: have it signed again',
          to: 'lookAgain',
          sets: { returnSignOff: 'none' },
        },
      },
      makeSafe,
    },
    lookAgain: {
      kind: 'reading',
      phase,
      title: 'Look at the valve again before it is signed again',
      asks: [
        yesNo('caseStillTight', 'Case, bonnet and gland shut, every bolt in and tight'),
        yesNo('toolsOut', 'Tools out of the yoke, people clear'),
      ],
      judge: { rule: 'allYes', with: { fields: 'caseStillTight toolsOut' } },
      ways: {
        yes: { to: 'signAgain', sets: { spring: 'contained', closure: 'shut', clear: 'clear' } },
        no: { to: 'haltUnsigned' },
      },
      makeSafe: 'haltUnsigned',
    },
    signAgain: {
      ...PROCESS_BACK_HOLD,
      phase,
      title: 'Before the process goes on coming back',
      how: 'The signature for the return has run out. Somebody who did none of this work signs, or sends it back.',
      criterion: 'Every case bolt in and tight, the controller line back on, people clear of yoke and body.',
      signed: { to: 'unlockBlocks', sets: { returnSignOff: 'given' } },
      sentBack: { to: 'haltUnsigned' },
      makeSafe: 'haltUnsigned',
    },
    haltUnsigned: {
      kind: 'question',
      phase,
      title: 'Stopped: nothing more is opened without a signature',
      how: 'The body may be live. Leave every joint and every block valve alone; tell the operator.',
      choices: { again: { label: 'Look again and have it signed', to: 'lookAgain' } },
      makeSafe: 'haltUnsigned',
    },
  };
}
