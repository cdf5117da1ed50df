import type { Step, Target } from '../vocabulary.ts';
import { AIR_LET_OFF, AIR_TO_ZERO, PROCESS_BACK_HOLD, yesNo } from './common.ts';
import { feedsBack } from './feeds-back.ts';
import { finding } from './finding.ts';
import { type ProcessBack, processBack } from './process-back.ts';

type Own =
  | ProcessBack
  | 'airOff'
  | 'airNotGone'
  | 'disconnectAir'
  | 'finalCheck'
  | 'nextPerson'
  | 'signBench'
  | 'backCheck'
  | 'lookBeforeBack'
  | 'zeroBeforeBack'
  | 'reconnect'
  | 'supplyBack'
  | 'returnLeaks'
  | 'finalNotRight'
  | 'secondBack'
  | 'signReturn'
  | 'haltAirAway'
  | 'haltReturn'
  | 'haltOnAir';

interface Ends<Next extends string> {
  readonly done: Next;
  /** Where a valve that is back in its line goes on, where that is not done yet. */
  readonly inLine?: Next;
  /** Where a valve begins again to be isolated. */
  readonly isolateAgain: Target<Next>;
}

/** In the line from the first lock, on the bench from what is recorded there. */
export const ISOLATE_AGAIN = {
  by: 'place',
  ways: { bench: 'benchRecord', line: 'shutInlet' },
} as const;

/** Air away, hands checked, controller line, supply, signature, locks, word, process, bypass, loop: in this order. */
export function giveBack<const Next extends string>(
  ends: Ends<Next>,
): Readonly<Record<Own, Step<Own | Next>>> {
  return {
    ...airAway(ends),
    ...onAir(ends),
    ...processBack({ done: ends.inLine ?? ends.done, isolateAgain: ends.isolateAgain }),
  } as Readonly<Record<Own, Step<Own | Next>>>;
}

function airAway<const Next extends string>({
  done,
  isolateAgain,
}: Ends<Next>): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  const phase = 'airAway';
  const makeSafe = 'haltAirAway';
  return {
    airOff: {
      kind: 'reading',
      phase,
      title: 'Bleed the test air to zero and read it',
      how: 'One reading alive, one at zero: at most {signalSafeLimit} with the gauge counted in.',
      ...AIR_TO_ZERO,
      ways: {
        shown: { to: 'disconnectAir', sets: { signalAir: 'isolated', plug: 'seat unknown' } },
        'not shown': { to: 'airNotGone', sets: { signalAir: 'live' } },
        'gauge not seen alive': { to: 'airNotGone', sets: { signalAir: 'live' } },
        'gauge too coarse': { to: 'airNotGone', sets: { signalAir: 'live' } },
      },
      makeSafe,
    },
    airNotGone: {
      kind: 'question',
      phase,
      title: 'The air on the case is not shown gone',
      how: 'A regulator that does not bleed keeps air on the case. Crack the joint at the case and watch it twice.',
      choices: {
        again: { label: 'Bleed and read again', to: 'airOff' },
        stop: { label: 'Leave it and stop', to: 'haltAirAway' },
      },
      makeSafe,
    },
    disconnectAir: {
      kind: 'instruction',
      phase,
      title: 'Take the test air off the case',
      action: 'disconnectTestAir',
      do: ['Disconnect the test air.', 'Take off what was fitted for it: gauge, dial indicator.'],
      next: { to: 'finalCheck', sets: { testAir: 'off' } },
      makeSafe,
    },
    finalCheck: {
      kind: 'reading',
      phase,
      title: 'Check the valve before it goes back',
      why: 'Air and process come next: a loose nut or a tool left in is found now, or under pressure.',
      asks: [
        yesNo('nutsTight', 'Lock nuts and connector tight'),
        yesNo('indicatorRight', 'Travel indicator stands right'),
        yesNo('caseStillTight', 'Case, bonnet and gland shut, every bolt in and tight'),
        yesNo('toolsOut', 'Tools out of the yoke, people clear'),
      ],
      judge: { rule: 'allYes', with: { fields: 'nutsTight indicatorRight caseStillTight toolsOut' } },
      ways: {
        yes: { to: 'nextPerson', sets: { spring: 'contained', closure: 'shut', clear: 'clear' } },
        no: { to: 'finalNotRight' },
      },
      makeSafe,
    },
    finalNotRight: finding<Own | Next>({
      phase,
      title: 'Something is not right yet',
      how: 'No air is on it and the locks hang: nuts, connector, pointer and tools are put right now. A joint that was never closed wants more than a spanner.',
      choices: {
        again: { label: 'Put right: check again', to: 'finalCheck' },
        more: {
          label: 'It wants more work: isolate it again as it stands, and have it signed',
          to: isolateAgain,
          sets: { workSignOff: 'none', returnSignOff: 'none' },
        },
        stop: { label: 'Leave it and stop', to: 'haltAirAway' },
      },
      makeSafe,
    }),
    nextPerson: {
      kind: 'reading',
      phase,
      title: 'Write down what the next person wants to know',
      why: 'Whoever opens the next job on this valve reads it first.',
      asks: [
        {
          name: 'exposedThreadLeftM',
          label: 'Exposed stem thread, as left',
          type: 'quantity',
          dimension: 'length',
          optional: true,
        },
        {
          name: 'adjusterHeightLeftM',
          label: 'Adjuster height, as left',
          type: 'quantity',
          dimension: 'length',
          optional: true,
          when: { fact: 'springHeldBy', is: 'adjuster' },
        },
        {
          name: 'nextNotes',
          label: 'Rings in the box, where the points are, what to watch',
          type: 'text',
          optional: true,
        },
      ],
      judge: { rule: 'record' },
      ways: { kept: { to: { by: 'place', ways: { bench: 'signBench', line: 'backCheck' } } } },
      makeSafe,
    },
    signBench: {
      kind: 'hold',
      phase: 'return',
      title: 'Before the valve leaves the bench',
      how: 'Somebody who did none of this work reads the record as left, and signs it or sends it back.',
      point: 'hold',
      criterion:
        'No air on the case, every case bolt in and tight, and what was found and left is in the record.',
      evidence: ['signalAir', 'spring'],
      allows: [],
      signed: { to: done },
      sentBack: { to: 'haltAirAway' },
      makeSafe,
    },
    haltAirAway: {
      kind: 'question',
      phase,
      title: 'Stopped on the way back: hands off the stem',
      how: 'Bleed the regulator to zero. Locks stay on.',
      choices: {
        goOn: { label: 'Go on: read the air at zero', to: 'airOff' },
      },
      makeSafe,
    },
    backCheck: {
      kind: 'question',
      phase: 'return',
      title: 'Look at the controller line',
      how: 'It says which cards are left before supply and process come back.',
      why: 'Into a line that is off supply air blows free; into one that is on it moves the valve.',
      choices: {
        off: { label: 'It is off and capped', to: 'zeroBeforeBack', sets: { controllerLine: 'capped' } },
        connected: {
          label: 'It was never taken off',
          to: 'lookBeforeBack',
          sets: { controllerLine: 'connected', testAir: 'off' },
        },
      },
      makeSafe: 'haltReturn',
    },
    zeroBeforeBack: {
      kind: 'reading',
      phase: 'return',
      title: 'Show that no air is on the case',
      action: 'ventCase',
      caution: AIR_LET_OFF,
      asks: [
        yesNo('testAirOff', 'No test air is connected'),
        {
          name: 'flowFirst',
          label: 'Case port, first look',
          type: 'choice',
          choices: [
            { value: 'no flow', label: 'No flow' },
            { value: 'flow', label: 'It flows' },
          ],
        },
        {
          name: 'flowAgain',
          label: 'Case port, second look',
          type: 'choice',
          choices: [
            { value: 'no flow', label: 'No flow' },
            { value: 'flow', label: 'It flows' },
          ],
        },
        {
          name: 'method',
          label: 'Shown by',
          type: 'choice',
          choices: [{ value: 'vent', label: 'The port, watched twice' }],
        },
      ],
      judge: {
        rule: 'showSafe',
        with: { energy: 'signalAir', before: 'signalBeforePa', after: 'signalAfterPa', also: 'testAirOff' },
      },
      ways: {
        shown: { to: 'reconnect', sets: { signalAir: 'isolated', testAir: 'off' } },
        'not shown': { to: 'backCheck' },
        'gauge not seen alive': { to: 'backCheck' },
        'gauge too coarse': { to: 'backCheck' },
      },
      makeSafe: 'haltReturn',
    },
    lookBeforeBack: {
      kind: 'reading',
      phase: 'return',
      title: 'Look at the case before the air comes back',
      asks: [
        yesNo('caseStillTight', 'Case, bonnet and gland shut, every bolt in and tight'),
        yesNo('toolsOut', 'Tools out of the yoke, people clear'),
      ],
      judge: { rule: 'allYes', with: { fields: 'caseStillTight toolsOut' } },
      ways: {
        yes: { to: 'supplyBack', sets: { spring: 'contained', closure: 'shut', clear: 'clear' } },
        no: { to: 'backCheck' },
      },
      makeSafe: 'haltReturn',
    },
    haltReturn: {
      kind: 'question',
      phase,
      title: 'Stopped: locks stay on',
      how: 'Nothing is under test air. Step back from the valve.',
      choices: { goOn: { label: 'Go on: look at the controller line', to: 'backCheck' } },
      makeSafe: 'haltReturn',
    },
  };
}

function onAir<const Next extends string>({
  isolateAgain,
}: Ends<Next>): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  const phase = 'return';
  const makeSafe = 'haltOnAir';
  return {
    reconnect: {
      kind: 'reading',
      phase,
      title: 'Connect the controller line again',
      action: 'reconnectSignalLine',
      do: ['Take the caps off.', 'Connect the controller line to the case.', 'Tighten the joint.'],
      asks: [
        yesNo('lineBack', 'Line on, joint tight'),
        yesNo('caseStillTight', 'Case, bonnet and gland shut, every bolt in and tight'),
        yesNo('toolsOut', 'Tools out of the yoke, people clear'),
      ],
      judge: { rule: 'allYes', with: { fields: 'lineBack caseStillTight toolsOut' } },
      ways: {
        yes: {
          to: 'supplyBack',
          sets: { controllerLine: 'connected', spring: 'contained', closure: 'shut', clear: 'clear' },
        },
        no: { to: 'backCheck' },
      },
      makeSafe: 'haltReturn',
    },
    ...feedsBack<Own>({ phase, next: 'signReturn', leaks: 'returnLeaks', makeSafe }),
    returnLeaks: finding<Own | Next>({
      phase,
      title: 'A joint leaks, or the air does not come as it should',
      how: 'Leave a joint under air alone: it is tightened with its feed shut and vented. The process is locked out still.',
      choices: {
        again: { label: 'It was soap or gauge, nothing leaks: read it again', to: 'supplyBack' },
        isolate: {
          label: 'Shut the air off again, from the first lock, and put it right',
          to: isolateAgain,
          sets: { workSignOff: 'none', returnSignOff: 'none' },
        },
      },
      makeSafe,
    }),
    signReturn: {
      ...PROCESS_BACK_HOLD,
      phase,
      title: 'Before the process goes back',
      how: 'Somebody who did none of this work reads the valve as left, and signs it or sends it back.',
      criterion:
        'Every case bolt in and tight, the controller line back on, the block valves still locked, people clear.',
      signed: { to: 'unlockBlocks', sets: { returnSignOff: 'given' } },
      sentBack: { to: 'haltOnAir' },
      makeSafe,
    },
    haltOnAir: {
      kind: 'question',
      phase,
      title: 'Stopped: the process stays locked out',
      how: 'Leave the block valves locked. The air is on or may be: stay out of the yoke.',
      choices: {
        goOn: { label: 'Put it right, then go on from the supply', to: 'supplyBack' },
        isolate: {
          label: 'Isolate again for more work',
          to: isolateAgain,
          sets: { workSignOff: 'none', returnSignOff: 'none' },
        },
      },
      makeSafe,
    },
  };
}
