import type { Step, Target } from '../vocabulary.ts';
import { BYPASS_OPENS, OPERATOR, PROCESS_BACK_HOLD, yesNo } from './common.ts';
import { finding, putRight } from './finding.ts';
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
  | 'haltUnsigned'
  | Finding
  | Again;
type Finding = 'locksNotOff' | 'notToldYet' | 'returnJoints' | 'notTaken' | 'notShutAgain';
type Again = 'bypassAgain' | 'plantAgain';

/** What stands once the locks are off: what is not locked counts as live, and nobody has been told yet. */
const UNLOCKED = {
  inletLock: 'off',
  outletLock: 'off',
  processInlet: 'live',
  processOutlet: 'live',
  told: 'nobody',
} as const;

/** Locks off, people told, block valves open, bypass shut, loop back to the operator; where it stops, the signature may be had again. */
export function processBack<const Next extends string>(ends: {
  readonly done: Next;
  /** Where a valve that cannot go back so begins again to be isolated. */
  readonly isolateAgain: Target<Next>;
}): Readonly<Record<ProcessBack, Step<ProcessBack | Next>>> {
  return {
    ...processOn(ends.done),
    ...signedAnew(),
    ...findings(),
    ...takenAgain(ends.isolateAgain),
  } as Readonly<Record<ProcessBack, Step<ProcessBack | Next>>>;
}

const phase = 'return';
const makeSafe = 'haltProcess';

function processOn<const Next extends string>(
  done: Next,
): Readonly<Partial<Record<ProcessBack, Step<ProcessBack | Next>>>> {
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
      ways: { yes: { to: 'tellPeople', sets: UNLOCKED }, no: { to: 'locksNotOff', sets: UNLOCKED } },
      makeSafe,
    },
    tellPeople: {
      kind: 'reading',
      phase,
      title: 'Tell the operator and everybody near that process comes back',
      how: 'After the locks are off, before anything is opened.',
      why: 'Pipe and valve move, heat up and make noise as process comes in: nobody has a hand near them then.',
      asks: [
        { name: 'toldWho', label: 'Told, by role', type: 'text' },
        yesNo('peopleClear', 'Tools are out and people are clear'),
      ],
      judge: { rule: 'allYes', with: { fields: 'peopleClear' } },
      ways: { yes: { to: 'openBlocks', sets: { told: 'told' } }, no: { to: 'notToldYet' } },
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
        no: { to: 'returnJoints', sets: { processInlet: 'live', processOutlet: 'live' } },
      },
      makeSafe,
    },
    shutBypass: bypassToValve<ProcessBack | Next>({
      phase,
      next: 'loopBack',
      otherwise: 'notTaken',
      makeSafe,
    }),
    loopBack: loopToOperator<ProcessBack | Next>({ phase, next: done, otherwise: 'notTaken', makeSafe }),
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
  };
}

function signedAnew(): Readonly<Partial<Record<ProcessBack, Step<ProcessBack>>>> {
  return {
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
        no: { to: 'notShutAgain' },
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

/** The process stands on the bypass again, or the plant is as agreed: from there the valve is isolated anew. */
const TAKEN_AGAIN = {
  told: 'nobody',
  loop: 'manual',
  commands: 'isolated',
  processFlow: 'set up',
  workSignOff: 'none',
  returnSignOff: 'none',
} as const;

const ISOLATE = {
  to: { by: 'bypassLine', ways: { fitted: 'bypassAgain', none: 'plantAgain' } },
} as const;

function findings(): Readonly<Record<Finding, Step<ProcessBack>>> {
  return {
    locksNotOff: putRight<ProcessBack>({
      phase,
      title: 'A drain is not shut, or a lock is not off',
      how: 'A drain that does not shut stays capped and is told. A lock that is not yours is taken off by its owner alone.',
      again: ['Drains shut and capped, locks off: look again', 'unlockBlocks'],
      stop: ['Leave it and stop', 'haltProcess'],
      makeSafe,
    }),
    notToldYet: putRight<ProcessBack>({
      phase,
      title: 'Somebody is not told, or not clear',
      how: 'Nothing is opened on somebody who does not know. Whoever is in the way is waited for.',
      again: ['Told and clear now: tell them once more', 'tellPeople'],
      stop: ['Leave it and stop', 'haltProcess'],
      makeSafe,
    }),
    returnJoints: finding<ProcessBack>({
      phase,
      title: 'A block valve does not open, or something leaks',
      how: 'Stand clear of a joint that leaks: no nut is touched with pressure on it. A gland that weeps has a careful job of its own.',
      choices: {
        again: { label: 'Freed, or dry now: open them', to: 'openBlocks' },
        weeps: {
          label: 'Only the gland weeps: it goes back so, the job on the live gland comes next',
          to: { by: 'bypassLine', ways: { fitted: 'shutBypass', none: 'loopBack' } },
          reason: true,
          comesNext: 'live-gland',
        },
        isolate: { label: 'A joint leaks: it is isolated again for it', ...ISOLATE },
        stop: { label: 'Leave it so and stop', to: 'haltProcess' },
      },
      makeSafe,
    }),
    notTaken: finding<ProcessBack>({
      phase,
      title: 'The operator does not have the process on {tag}',
      how: 'Have the bypass open again as far as the operator wants it, the loop in manual, before anything else.',
      choices: {
        again: { label: 'Held again: tell the operator, then once more, slower', to: 'tellPeople' },
        isolate: { label: 'It does not control: it is isolated again for that', ...ISOLATE },
        stop: { label: 'It stays as it is until it is known why', to: 'haltProcess' },
      },
      makeSafe,
    }),
    notShutAgain: putRight<ProcessBack>({
      phase,
      title: 'Something is slack, or somebody is not clear',
      how: 'The body may be live: no bolt is drawn up on it. Tell the operator that the block valves are to be shut, and stay clear.',
      again: ['Block valves shut, drawn up evenly, people clear: look again', 'lookAgain'],
      stop: ['Leave it and stop', 'haltUnsigned'],
      makeSafe: 'haltUnsigned',
    }),
  };
}

function takenAgain<const Next extends string>(
  isolateAgain: Target<Next>,
): Readonly<Record<Again, Step<ProcessBack | Next>>> {
  return {
    bypassAgain: {
      kind: 'reading',
      phase,
      title: 'Have the process on the bypass again',
      how: 'The bypass takes the flow, a little at a time, while the operator shuts {tag}. The loop stands in manual.',
      action: 'setProcessForMovement',
      caution: BYPASS_OPENS,
      asks: [
        { name: 'operator', label: OPERATOR, type: 'text', carried: true },
        yesNo('processHeld', 'The bypass carries the flow, the operator holds the process value'),
        yesNo('loopTagged', 'In manual and tagged; remote writes, trips and self-tests blocked'),
      ],
      judge: { rule: 'allYes', with: { fields: 'processHeld loopTagged' } },
      ways: {
        yes: { to: isolateAgain, sets: { bypass: 'open', ...TAKEN_AGAIN } },
        no: { to: 'notTaken', sets: { bypass: 'open', processFlow: 'needs the valve' } },
      },
      makeSafe,
    },
    plantAgain: {
      kind: 'reading',
      phase,
      title: 'Have the plant as it was agreed for the valve to be shut off',
      how: 'Without a bypass it is only blocked in again in a state of the plant that operations agree to.',
      action: 'setProcessForMovement',
      asks: [
        { name: 'plantAgreedWith', label: 'Agreed with, by role', type: 'text' },
        yesNo('plantHeld', 'The process is set up for the flow to stop'),
        yesNo('loopTagged', 'In manual and tagged; remote writes, trips and self-tests blocked'),
      ],
      judge: { rule: 'allYes', with: { fields: 'plantHeld loopTagged' } },
      ways: {
        yes: { to: isolateAgain, sets: { bypass: 'absent', ...TAKEN_AGAIN } },
        no: { to: 'notTaken', sets: { processFlow: 'needs the valve' } },
      },
      makeSafe,
    },
  };
}
