import type { Step } from '../vocabulary.ts';
import { AIR_GOES, AIR_LET_OFF, SHOWN_BY, TUBE_WHIPS, yesNo } from './common.ts';
import { type Drained, drainProcess } from './drain-process.ts';
import { after, before, lockField, notShown, zeroWays } from './isolate-parts.ts';
import { lookForOthers, type Others } from './other-energies.ts';

const PRESSURE = { type: 'quantity', dimension: 'pressure' } as const;

export type AirShut =
  | 'shutSupply'
  | 'ventSupply'
  | 'supplyNotShown'
  | 'shutSecond'
  | 'ventSecond'
  | 'secondNotShown'
  | 'noSecondFeed'
  | 'secondFound';

type Own =
  | Drained
  | AirShut
  | 'breakSignalLine'
  | 'signalNotShown'
  | Others
  | 'benchRecord'
  | 'benchNotFree'
  | 'springLook'
  | 'springNotShut'
  | 'haltIsolating';

interface Ends<Next extends string> {
  readonly next: Next;
  readonly giveBack: { readonly bench: Next; readonly line: Next };
}

/** Blocks in, drains, locks, vents and caps: each energy of a valve shown safe, or recorded absent. */
export function isolate<const Next extends string>(
  ends: Ends<Next>,
): Readonly<Record<Own, Step<Own | Next>>> {
  return {
    ...drainProcess<Own>({ next: 'shutSupply', heldNext: 'breakSignalLine' }),
    ...shutAir(),
    ...signalLine(),
    ...lookForOthers<Own>({ bench: 'springLook', line: 'waitDrained' }),
    ...rest(ends),
  } as Readonly<Record<Own, Step<Own | Next>>>;
}

const phase = 'isolate';
const makeSafe = 'haltIsolating';

/** Every air feed shut, locked and shown empty, each by itself; then what keeps air is looked for. */
export function shutAir(): Readonly<Record<AirShut, Step<AirShut | 'keptAir' | 'haltIsolating'>>> {
  return { ...air(), ...secondFeed() } as Readonly<
    Record<AirShut, Step<AirShut | 'keptAir' | 'haltIsolating'>>
  >;
}

function air(): Readonly<Partial<Record<Own, Step<Own>>>> {
  return {
    shutSupply: {
      kind: 'reading',
      phase,
      title: 'Shut and lock the supply cock {supplyPoint}',
      how: 'Read supply and signal first. Without air {tag} {failPosition}.',
      action: 'shutSupply',
      caution: AIR_GOES,
      do: ['Read both gauges and the tag.', 'Shut the cock.', 'Hang your lock and tag.'],
      asks: [
        before('supplyBeforePa', 'supplyGauge'),
        {
          ...PRESSURE,
          name: 'signalBeforePa',
          label: 'Signal gauge at the valve, while it is alive',
          gauge: 'signalGauge',
          carried: true,
        },
        { name: 'supplyTag', label: 'Tag on the cock', type: 'text', mustBe: 'supplyPoint', carried: true },
        lockField('supplyLockNumber'),
      ],
      judge: { rule: 'record' },
      ways: { kept: { to: 'ventSupply', sets: { supplyLock: 'on', supplyAir: 'live' } } },
      makeSafe,
    },
    ventSupply: {
      kind: 'reading',
      phase,
      title: 'Vent the supply line and read zero',
      how: 'Vent behind the cock, at the air set. At most {supplySafeLimit} with the gauge counted in.',
      action: 'ventCase',
      caution: AIR_LET_OFF,
      asks: [after('supplyAfterPa', 'supplyGauge'), ...SHOWN_BY],
      judge: {
        rule: 'showSafe',
        with: { energy: 'supplyAir', before: 'supplyBeforePa', after: 'supplyAfterPa' },
      },
      ways: zeroWays(
        {
          to: { by: 'secondFeed', ways: { fitted: 'shutSecond', none: 'noSecondFeed' } },
          sets: { supplyAir: 'isolated' },
        },
        { to: 'supplyNotShown' },
      ),
      makeSafe,
    },
    supplyNotShown: notShown('The supply air is not shown safe', {
      choices: {
        again: { label: 'Vent and read again', to: 'ventSupply' },
        shutAgain: { label: 'Shut the cock again, it may pass', to: 'shutSupply' },
      },
    }),
  };
}

function secondFeed(): Readonly<Partial<Record<Own, Step<Own>>>> {
  return {
    shutSecond: {
      kind: 'reading',
      phase,
      title: 'Shut and lock the cock of the second feed {secondSupplyPoint}',
      how: 'It counts by itself: a first feed that is shut proves nothing of this one.',
      why: 'Booster, solenoid or positioner may be fed from elsewhere, and move the stem all the same.',
      action: 'shutSupply',
      caution: AIR_GOES,
      do: ['Read the gauge and the tag.', 'Shut the cock.', 'Hang your lock and tag.'],
      asks: [
        before('secondBeforePa', 'supplyGauge'),
        {
          name: 'secondTag',
          label: 'Tag on the cock',
          type: 'text',
          mustBe: 'secondSupplyPoint',
          carried: true,
        },
        lockField('secondSupplyLockNumber'),
      ],
      judge: { rule: 'record' },
      ways: { kept: { to: 'ventSecond', sets: { secondSupplyLock: 'on', secondSupply: 'live' } } },
      makeSafe,
    },
    ventSecond: {
      kind: 'reading',
      phase,
      title: 'Vent the second feed and read zero',
      how: 'Vent behind its own cock. At most {supplySafeLimit} with the gauge counted in.',
      action: 'ventCase',
      caution: AIR_LET_OFF,
      asks: [after('secondAfterPa', 'supplyGauge'), ...SHOWN_BY],
      judge: {
        rule: 'showSafe',
        with: { energy: 'secondSupply', before: 'secondBeforePa', after: 'secondAfterPa' },
      },
      ways: zeroWays({ to: 'keptAir', sets: { secondSupply: 'isolated' } }, { to: 'secondNotShown' }),
      makeSafe,
    },
    secondNotShown: notShown('The second feed is not shown safe', {
      choices: {
        again: { label: 'Vent and read again', to: 'ventSecond' },
        shutAgain: { label: 'Shut the cock again, it may pass', to: 'shutSecond' },
      },
    }),
    noSecondFeed: {
      kind: 'reading',
      phase,
      title: 'Make sure that nothing else feeds air to {tag}',
      how: 'Booster, solenoid, positioner: each tube is followed to where it comes from.',
      why: 'The sheet has one feed. What is absent is recorded by a person, not assumed.',
      asks: [yesNo('oneFeed', 'Every tube followed: nothing else feeds it')],
      judge: { rule: 'allYes', with: { fields: 'oneFeed' } },
      ways: { yes: { to: 'keptAir', sets: { secondSupply: 'absent' } }, no: { to: 'secondFound' } },
      makeSafe,
    },
    secondFound: notShown('A second feed that the sheet does not have', {
      how: 'Nothing goes on by memory: have the sheet put right, then open the job again on it.',
      choices: { again: { label: 'It was none: follow the tubes again', to: 'noSecondFeed' } },
    }),
  };
}

function signalLine(): Readonly<Partial<Record<Own, Step<Own>>>> {
  return {
    breakSignalLine: {
      kind: 'reading',
      phase,
      title: 'Take the controller line off the case and cap it',
      how: 'Loosen the joint slowly and let it bleed. At most {signalSafeLimit} left on the case.',
      action: 'breakSignalLine',
      caution: TUBE_WHIPS,
      do: ['Loosen the joint at the case.', 'Cap the controller line.', 'Fit the signal gauge to the case.'],
      asks: [
        after('signalAfterPa', 'signalGauge'),
        ...SHOWN_BY,
        yesNo('lineCapped', 'Controller line off and capped; only the signal gauge hangs on the case'),
      ],
      judge: {
        rule: 'showSafe',
        with: { energy: 'signalAir', before: 'signalBeforePa', after: 'signalAfterPa', also: 'lineCapped' },
      },
      ways: zeroWays(
        {
          to: 'springLook',
          sets: { signalAir: 'isolated', controllerLine: 'capped', clear: 'not looked at' },
        },
        { to: 'signalNotShown', sets: { clear: 'not looked at' } },
      ),
      makeSafe,
    },
    signalNotShown: notShown('The air on the case is not shown gone', {
      choices: { again: { label: 'Bleed and read again', to: 'breakSignalLine' } },
    }),
  };
}

function rest<const Next extends string>({
  next,
  giveBack,
}: Ends<Next>): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  return {
    benchRecord: {
      kind: 'reading',
      phase,
      title: 'Record that the valve stands free on the bench',
      how: 'No pipe, no supply, no controller line; the case port is open to the air.',
      why: 'What is absent is recorded by a person, not assumed.',
      asks: [
        yesNo('noProcess', 'Both flanges are open and clean inside'),
        yesNo('noLines', 'No supply, no second feed and no controller line is connected'),
        yesNo('portOpen', 'The case port is open, nothing hisses, the stem rests'),
        yesNo('clampedDown', 'The valve is held so that it cannot roll'),
      ],
      judge: { rule: 'allYes', with: { fields: 'noProcess noLines portOpen clampedDown' } },
      ways: {
        yes: {
          to: 'keptAir',
          sets: {
            processInlet: 'absent',
            processOutlet: 'absent',
            supplyAir: 'absent',
            secondSupply: 'absent',
            signalAir: 'isolated',
            controllerLine: 'absent',
            loop: 'absent',
            commands: 'absent',
            bypass: 'absent',
          },
        },
        no: { to: 'benchNotFree' },
      },
      makeSafe,
    },
    benchNotFree: notShown('The valve does not stand free on the bench', {
      how: 'Lines off, ports open, rinsed, held fast: whatever is not so is put right before anything is opened.',
      choices: { again: { label: 'Put right: record it again', to: 'benchRecord' } },
    }) as Step<Own | Next>,
    springLook: {
      kind: 'reading',
      phase,
      title: 'Look at case, bonnet and gland',
      how: 'Measure what is asked below as it was found: the next person wants it.',
      why: 'A case with a slack bolt does not hold its spring.',
      asks: [
        yesNo('caseTight', 'All shut, every bolt in and tight'),
        {
          name: 'adjusterHeightM',
          label: 'Adjuster height, as found',
          type: 'quantity',
          dimension: 'length',
          optional: true,
          when: { fact: 'springHeldBy', is: 'adjuster' },
        },
        {
          name: 'exposedThreadM',
          label: 'Exposed stem thread, as found',
          type: 'quantity',
          dimension: 'length',
          optional: true,
        },
      ],
      judge: { rule: 'allYes', with: { fields: 'caseTight' } },
      ways: {
        yes: { to: next, sets: { spring: 'contained', closure: 'shut' } },
        no: { to: 'springNotShut', sets: { spring: 'loaded', closure: 'open' } },
      },
      makeSafe,
    },
    springNotShut: notShown('Case, bonnet or gland is not shut and tight', {
      how: 'A case with a slack bolt does not hold its spring. Bolts are tightened evenly, crosswise.',
      choices: { again: { label: 'Tightened evenly: look again', to: 'springLook' } },
    }) as Step<Own | Next>,
    haltIsolating: {
      kind: 'question',
      phase,
      title: 'Stopped: locks stay on, nothing is opened',
      how: 'Step back from the valve. Whatever is locked stays locked.',
      choices: {
        goOn: {
          label: 'Go on isolating, from the first lock',
          to: { by: 'place', ways: { bench: 'benchRecord', line: 'shutInlet' } },
        },
        giveBack: { label: 'Give the valve back as it is', to: { by: 'place', ways: giveBack } },
      },
      makeSafe,
    },
  };
}
