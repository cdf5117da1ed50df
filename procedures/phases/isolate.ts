import type { Caution, Field, QuantityField, Step, Way } from '../vocabulary.ts';
import { SHOWN_BY, yesNo } from './common.ts';

const PRESSURE = { type: 'quantity', dimension: 'pressure' } as const;

const LINE_OPENS: Caution = {
  word: 'warning',
  hazard: 'What is left in the body comes out at the drain.',
  consequence: 'Hot, toxic or fast fluid can burn, poison or blind.',
  avoid: 'Stand aside, face shield down, drain to where the site says.',
};

type Own =
  | 'shutInlet'
  | 'shutOutlet'
  | 'drainInlet'
  | 'inletNotShown'
  | 'drainOutlet'
  | 'outletNotShown'
  | 'shutSupply'
  | 'ventSupply'
  | 'supplyNotShown'
  | 'otherEnergies'
  | 'othersNotSafe'
  | 'breakSignalLine'
  | 'signalNotShown'
  | 'benchRecord'
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
  return { ...process(), ...air(), ...rest(ends) } as Readonly<Record<Own, Step<Own | Next>>>;
}

const phase = 'isolate';
const makeSafe = 'haltIsolating';

function lockField(name: string): Field {
  return { name, label: 'Number of my lock', type: 'text', carried: true };
}

function before(name: string, gauge: QuantityField['gauge']): QuantityField {
  return {
    ...PRESSURE,
    name,
    label: 'Gauge, while it is alive',
    carried: true,
    ...(gauge === undefined ? {} : { gauge }),
  };
}

function after(name: string, gauge: QuantityField['gauge']): QuantityField {
  return {
    ...PRESSURE,
    name,
    label: 'Same gauge, now',
    optional: true,
    ...(gauge === undefined ? {} : { gauge }),
  };
}

function notShown(
  title: string,
  choices: Readonly<Record<string, { readonly label: string; readonly to: Own }>>,
): Step<Own> {
  const how =
    'A zero counts on a gauge that this job saw alive there, with its uncertainty inside the limit; else watch the vent twice.';
  return {
    kind: 'question',
    phase,
    title,
    how,
    choices: { ...choices, stop: { label: 'Leave it and stop', to: makeSafe } },
    makeSafe,
  };
}

function zeroWays(shown: Way<Own>, otherwise: Own): Readonly<Record<string, Way<Own>>> {
  const back = { to: otherwise };
  return { shown, 'not shown': back, 'gauge not seen alive': back, 'gauge too coarse': back };
}

function process(): Readonly<Partial<Record<Own, Step<Own>>>> {
  return {
    shutInlet: {
      kind: 'reading',
      phase,
      title: 'Shut and lock the inlet block valve {inletPoint}',
      how: 'Read the drain gauge first, while the side is alive.',
      why: 'The lock keeps it shut; the gauge seen alive makes a later zero mean something.',
      action: 'shutBlockValves',
      do: ['Read the tag and the gauge.', 'Shut the valve.', 'Hang your lock and tag.'],
      asks: [
        before('inletBeforePa', 'inletGauge'),
        { name: 'inletTag', label: 'Tag on the valve', type: 'text', mustBe: 'inletPoint', carried: true },
        lockField('inletLockNumber'),
      ],
      judge: { rule: 'record' },
      ways: { kept: { to: 'shutOutlet', sets: { inletLock: 'on', processInlet: 'live' } } },
      makeSafe,
    },
    shutOutlet: {
      kind: 'reading',
      phase,
      title: 'Shut and lock the outlet block valve {outletPoint}',
      how: 'Read the drain gauge first, while the side is alive.',
      action: 'shutBlockValves',
      do: ['Read the tag and the gauge.', 'Shut the valve.', 'Hang your lock and tag.'],
      asks: [
        before('outletBeforePa', 'outletGauge'),
        { name: 'outletTag', label: 'Tag on the valve', type: 'text', mustBe: 'outletPoint', carried: true },
        lockField('outletLockNumber'),
      ],
      judge: { rule: 'record' },
      ways: { kept: { to: 'drainInlet', sets: { outletLock: 'on', processOutlet: 'live' } } },
      makeSafe,
    },
    drainInlet: {
      kind: 'reading',
      phase,
      title: 'Drain the inlet side and read zero',
      how: 'At most {processSafeLimit} with the gauge counted in. Tried twice: shut the drain, wait, crack it again.',
      action: 'drainProcess',
      caution: LINE_OPENS,
      asks: [after('inletAfterPa', 'inletGauge'), ...SHOWN_BY],
      judge: {
        rule: 'showSafe',
        with: { energy: 'processInlet', before: 'inletBeforePa', after: 'inletAfterPa' },
      },
      ways: zeroWays({ to: 'drainOutlet', sets: { processInlet: 'isolated' } }, 'inletNotShown'),
      makeSafe,
    },
    inletNotShown: notShown('The inlet side is not shown safe', {
      again: { label: 'Drain and read again', to: 'drainInlet' },
      shutAgain: { label: 'Shut the block valve again, it may pass', to: 'shutInlet' },
    }),
    drainOutlet: {
      kind: 'reading',
      phase,
      title: 'Drain the outlet side and read zero',
      how: 'A plug on its seat parts the two sides: each has its own drain and its own zero. At most {processSafeLimit}.',
      action: 'drainProcess',
      caution: LINE_OPENS,
      asks: [after('outletAfterPa', 'outletGauge'), ...SHOWN_BY],
      judge: {
        rule: 'showSafe',
        with: { energy: 'processOutlet', before: 'outletBeforePa', after: 'outletAfterPa' },
      },
      ways: zeroWays({ to: 'shutSupply', sets: { processOutlet: 'isolated' } }, 'outletNotShown'),
      makeSafe,
    },
    outletNotShown: notShown('The outlet side is not shown safe', {
      again: { label: 'Drain and read again', to: 'drainOutlet' },
      shutAgain: { label: 'Shut the block valve again, it may pass', to: 'shutOutlet' },
    }),
  };
}

function air(): Readonly<Partial<Record<Own, Step<Own>>>> {
  return {
    shutSupply: {
      kind: 'reading',
      phase,
      title: 'Shut and lock the supply cock {supplyPoint}',
      how: 'Read supply and signal first. Without air {tag} {failPosition}.',
      action: 'shutSupply',
      caution: {
        word: 'warning',
        hazard: 'The stem moves as the air goes.',
        consequence: 'A finger in the yoke can be crushed.',
        avoid: 'Hands stay outside the yoke.',
      },
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
      asks: [after('supplyAfterPa', 'supplyGauge'), ...SHOWN_BY],
      judge: {
        rule: 'showSafe',
        with: { energy: 'supplyAir', before: 'supplyBeforePa', after: 'supplyAfterPa' },
      },
      ways: zeroWays({ to: 'otherEnergies', sets: { supplyAir: 'isolated' } }, 'supplyNotShown'),
      makeSafe,
    },
    supplyNotShown: notShown('The supply air is not shown safe', {
      again: { label: 'Vent and read again', to: 'ventSupply' },
      shutAgain: { label: 'Shut the cock again, it may pass', to: 'shutSupply' },
    }),
    breakSignalLine: {
      kind: 'reading',
      phase,
      title: 'Take the controller line off the case and cap it',
      how: 'Loosen the joint slowly and let it bleed. At most {signalSafeLimit} left on the case.',
      action: 'breakSignalLine',
      caution: {
        word: 'caution',
        hazard: 'A tube end under pressure whips.',
        consequence: 'It can cut or bruise.',
        avoid: 'Loosen until it hisses, wait, then take it off.',
      },
      do: ['Loosen the joint at the case.', 'Cap the controller line.', 'Fit the signal gauge to the case.'],
      asks: [
        after('signalAfterPa', 'signalGauge'),
        ...SHOWN_BY,
        yesNo('lineCapped', 'Line off, both ends capped'),
      ],
      judge: {
        rule: 'showSafe',
        with: { energy: 'signalAir', before: 'signalBeforePa', after: 'signalAfterPa', also: 'lineCapped' },
      },
      ways: zeroWays(
        { to: 'springLook', sets: { signalAir: 'isolated', controllerLine: 'capped' } },
        'signalNotShown',
      ),
      makeSafe,
    },
    signalNotShown: notShown('The air on the case is not shown gone', {
      again: { label: 'Bleed and read again', to: 'breakSignalLine' },
    }),
  };
}

function other(name: string, label: string, states: readonly [string, string]): Field {
  return {
    name,
    label,
    type: 'choice',
    choices: [
      { value: 'absent', label: 'Nothing of it here' },
      { value: states[1], label: `Made safe: ${states[1]}` },
      { value: states[0], label: 'Not safe' },
    ],
  };
}

function rest<const Next extends string>({
  next,
  giveBack,
}: Ends<Next>): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  return {
    otherEnergies: {
      kind: 'reading',
      phase,
      title: 'Look for everything else that can hurt',
      how: 'Each one is recorded, also where there is nothing of it.',
      why: 'Spring, air and process are not the whole list.',
      asks: [
        other('trappedAir', 'Trapped air: volume tank, booster, lock-up relay', ['live', 'isolated']),
        other('temperature', 'Temperature: body, tracing, jacket', ['hot', 'safe']),
        {
          name: 'bodyTemperatureK',
          label: 'Body temperature, where it was measured',
          type: 'quantity',
          dimension: 'temperature',
          optional: true,
        },
        other('weight', 'Weight that this work could let go', ['free', 'hung']),
        other('residue', 'Residue in drains, bonnet, packing', ['present', 'cleared']),
        other('electrical', 'Electrical parts that this work touches', ['live', 'isolated']),
        other('safetyFunction', 'Safety function of this valve', ['armed', 'overridden']),
        {
          name: 'othersHow',
          label: 'How made safe, permit or override number',
          type: 'text',
          optional: true,
        },
      ],
      judge: {
        rule: 'others',
        with: { fields: 'trappedAir temperature weight residue electrical safetyFunction' },
      },
      ways: {
        'all safe': {
          to: { by: 'place', ways: { bench: 'springLook', line: 'breakSignalLine' } },
          sets: {
            trappedAir: { from: 'trappedAir', among: ['isolated', 'absent'] },
            temperature: { from: 'temperature', among: ['safe', 'absent'] },
            weight: { from: 'weight', among: ['hung', 'absent'] },
            residue: { from: 'residue', among: ['cleared', 'absent'] },
            electrical: { from: 'electrical', among: ['isolated', 'absent'] },
            safetyFunction: { from: 'safetyFunction', among: ['overridden', 'absent'] },
          },
        },
        'one is not safe': { to: 'othersNotSafe' },
        'too hot to touch': { to: 'othersNotSafe' },
      },
      makeSafe,
    },
    othersNotSafe: notShown('One of them is not safe', {
      again: { label: 'Make it safe, then look again', to: 'otherEnergies' },
    }),
    benchRecord: {
      kind: 'reading',
      phase,
      title: 'Record that the valve stands free on the bench',
      how: 'No pipe, no supply, no controller line; the case port is open to the air.',
      why: 'What is absent is recorded by a person, not assumed.',
      asks: [
        yesNo('noProcess', 'Both flanges are open and clean inside'),
        yesNo('noLines', 'No supply and no controller line is connected'),
        yesNo('portOpen', 'The case port is open, nothing hisses, the stem rests'),
        yesNo('clampedDown', 'The valve is held so that it cannot roll'),
      ],
      judge: { rule: 'allYes', with: { fields: 'noProcess noLines portOpen clampedDown' } },
      ways: {
        yes: {
          to: 'otherEnergies',
          sets: {
            processInlet: 'absent',
            processOutlet: 'absent',
            supplyAir: 'absent',
            signalAir: 'isolated',
            controllerLine: 'absent',
            loop: 'absent',
            bypass: 'absent',
          },
        },
        no: { to: 'haltIsolating' },
      },
      makeSafe,
    },
    springLook: {
      kind: 'reading',
      phase,
      title: 'Look at the case that holds the spring',
      how: 'Write the adjuster height and the exposed stem thread as found: the next person wants them.',
      why: 'A case with a slack bolt does not hold its spring.',
      asks: [
        yesNo('caseTight', 'Case shut, every bolt in and tight'),
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
        yes: { to: next, sets: { spring: 'contained' } },
        no: { to: 'springNotShut', sets: { spring: 'loaded' } },
      },
      makeSafe,
    },
    springNotShut: notShown('The case does not hold its spring', {
      again: { label: 'Bolts tightened evenly: look again', to: 'springLook' },
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
