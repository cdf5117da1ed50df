import type { Step } from '../vocabulary.ts';
import { OPERATOR, yesNo } from './common.ts';

export type ProcessBack =
  | 'openBlocks'
  | 'shutBypass'
  | 'loopBack'
  | 'haltProcess'
  | 'lookAgain'
  | 'signAgain'
  | 'haltUnsigned';

/** Locks off, block valves open, bypass shut, loop back to the operator; where it stops, the signature may be had again. */
export function processBack<const Next extends string>({
  done,
}: {
  readonly done: Next;
}): Readonly<Record<ProcessBack, Step<ProcessBack | Next>>> {
  const phase = 'return';
  const makeSafe = 'haltProcess';
  return {
    openBlocks: {
      kind: 'reading',
      phase,
      title: 'Take your locks off and open the block valves',
      how: 'Shut the drains first. Outlet {outletPoint}, then inlet {inletPoint}, slowly.',
      action: 'restoreProcess',
      caution: {
        word: 'warning',
        hazard: 'Process pressure returns to the body and its joints.',
        consequence: 'A leaking joint can burn or poison.',
        avoid: 'Open slowly, stand aside, look at every joint.',
      },
      asks: [
        yesNo('drainsShut', 'Drains shut and capped'),
        yesNo('blocksOpen', 'Both block valves open, joints tight'),
      ],
      judge: { rule: 'allYes', with: { fields: 'drainsShut blocksOpen' } },
      ways: {
        yes: {
          to: { by: 'bypassLine', ways: { fitted: 'shutBypass', none: 'loopBack' } },
          sets: { inletLock: 'off', outletLock: 'off', processInlet: 'live', processOutlet: 'live' },
        },
        no: { to: 'haltProcess', sets: { processInlet: 'live', processOutlet: 'live' } },
      },
      makeSafe,
    },
    shutBypass: {
      kind: 'reading',
      phase,
      title: 'Shut the bypass {bypassPoint} slowly',
      how: 'The operator takes the flow on {tag} and holds the process value.',
      action: 'shutBypass',
      asks: [yesNo('bypassShut', 'Bypass shut, process value held')],
      judge: { rule: 'allYes', with: { fields: 'bypassShut' } },
      ways: { yes: { to: 'loopBack', sets: { bypass: 'shut' } }, no: { to: 'haltProcess' } },
      makeSafe,
    },
    loopBack: {
      kind: 'reading',
      phase,
      title: 'Give the valve back to the operator',
      asks: [
        { name: 'takenBackBy', label: OPERATOR, type: 'text' },
        yesNo('takenBack', 'The operator has the loop back and says that it controls'),
      ],
      judge: { rule: 'allYes', with: { fields: 'takenBack' } },
      ways: { yes: { to: done, sets: { loop: 'automatic', consent: 'none' } }, no: { to: 'haltProcess' } },
      makeSafe,
    },
    haltProcess: {
      kind: 'question',
      phase,
      title: 'Stopped while the process comes back',
      how: 'The body may be live. Leave every joint alone; tell the operator.',
      choices: {
        goOn: { label: 'Go on from the block valves', to: 'openBlocks' },
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
        yesNo('caseStillTight', 'Case shut, every bolt in and tight'),
        yesNo('toolsOut', 'Tools out of the yoke, people clear'),
      ],
      judge: { rule: 'allYes', with: { fields: 'caseStillTight toolsOut' } },
      ways: { yes: { to: 'signAgain', sets: { spring: 'contained' } }, no: { to: 'haltUnsigned' } },
      makeSafe: 'haltUnsigned',
    },
    signAgain: {
      kind: 'hold',
      phase,
      title: 'Before the process goes on coming back',
      how: 'The signature for the return has run out. Somebody who did none of this work signs, or sends it back.',
      point: 'hold',
      criterion: 'Every case bolt in and tight, the controller line back on, people clear of yoke and body.',
      evidence: ['spring', 'controllerLine', 'supplyLock', 'inletLock', 'outletLock', 'bypass'],
      allows: ['restoreProcess'],
      signed: { to: 'openBlocks', sets: { returnSignOff: 'given' } },
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
