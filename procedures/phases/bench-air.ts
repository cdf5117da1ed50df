/** A valve stroked on the bench: shop air and a signal source in place of its line, and away again. */
import type { Caution, EnergyControl, Step } from '../vocabulary.ts';
import { TEST_AIR_ON } from './case-air.ts';
import { SHOWN_BY, STEM_MOVES, yesNo } from './common.ts';
import { putRight } from './finding.ts';
import { OWN_AIR_SAFE_AT, takeForStroke } from './own-air.ts';
import { giveBackStroked } from './stroked-back.ts';

/** What a job of a valve on its own air says of its energies, in the line and on the bench. */
export function anywhereControl(use: string): EnergyControl {
  return {
    use,
    isolation:
      'None: nothing is opened. In the line: loop in manual, flow on the bypass or the plant state agreed, both block valves shut so that no flow follows the stem. On the bench: one shop air and one signal source, both at zero until everybody is clear.',
    locks:
      'None are hung, and none may hang: a valve that somebody has locked is never stroked. Local rules and the site permit come first.',
    verification:
      'Case, bonnet and gland seen shut, tools out and people clear before the first stroke; in the line the operator agrees each time. On the bench the shop air is read alive and at zero before a hose comes off.',
  };
}

interface Phase {
  readonly id: string;
  readonly title: string;
}

/** Phases of such a job around its own, where it starts, and where nothing more has to be done to be safe. */
export function anywhereFrame<const Safe extends string = never>(
  own: readonly Phase[],
  safe: readonly Safe[] = [],
) {
  return {
    phases: [
      { id: 'ready', title: 'Get ready' },
      { id: 'bypass', title: 'Take it over' },
      ...own,
      { id: 'return', title: 'Give it back' },
    ],
    start: 'needs',
    safe: [...OWN_AIR_SAFE_AT, 'haltBench', ...safe],
  } as const;
}

const KEPT: Caution = {
  word: 'warning',
  hazard: 'Tank and lock-up relay keep their air after the supply is off.',
  consequence: 'The stem jumps, or a tube whips, as it is parted.',
  avoid: 'Hands out of the yoke; each is let off at its own vent, away from the face.',
};

type BenchFront = 'benchFree' | 'benchNotFree' | 'benchAir' | 'benchNotZero' | 'benchAirOn' | 'benchAirNotUp';

/** What stands on the bench is recorded, air and signal are connected at zero, and the air is raised once it is clear. */
function ontoShopAir<const Next extends string>(
  next: Next,
): Readonly<
  Record<
    BenchFront,
    Step<BenchFront | Next | 'lookBeforeStroke' | 'haltStroke' | 'notStarted' | 'benchAirOff'>
  >
> {
  const phase = 'bypass';
  const makeSafe = 'haltStroke';
  return {
    benchFree: {
      kind: 'reading',
      phase,
      title: 'Record that {tag} stands free on the bench',
      how: 'No pipe, no supply, no signal; nothing hisses, the stem rests.',
      why: 'What is absent is recorded by a person, not assumed.',
      asks: [
        yesNo('noProcess', 'Both flanges are open and clean inside'),
        yesNo('noLines', 'No supply, no second feed and no signal is connected'),
        yesNo('clampedDown', 'The valve is held so that it cannot roll or fall'),
        yesNo('benchAgreed', 'Whoever works at this bench knows that it is going to move'),
      ],
      judge: { rule: 'allYes', with: { fields: 'noProcess noLines clampedDown benchAgreed' } },
      ways: {
        yes: {
          to: 'benchAir',
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
            processFlow: 'absent',
            consent: 'given',
          },
        },
        no: { to: 'benchNotFree' },
      },
      makeSafe: 'notStarted',
    },
    benchNotFree: putRight({
      phase,
      title: '{tag} does not stand free on the bench yet',
      how: 'Lines off, flanges open, held fast, and everybody at the bench told.',
      again: ['Put right: record it again', 'benchFree'],
      stop: ['Not now', 'notStarted'],
      makeSafe: 'notStarted',
    }),
    benchAir: {
      kind: 'reading',
      phase,
      title: 'Connect shop air and a signal source, both at zero',
      how: 'Clean dry air, one regulator that bleeds, the supply gauge behind it. A second feed is fed from there as well.',
      action: 'connectShopAir',
      do: [
        'Set regulator and signal source to zero.',
        'Connect the air to the supply port.',
        'Connect the signal source.',
        'Fit the gauges and the travel indicator.',
      ],
      asks: [yesNo('bothAtZero', 'Both stand at zero, every joint is tight')],
      judge: { rule: 'allYes', with: { fields: 'bothAtZero' } },
      ways: {
        yes: { to: 'lookBeforeStroke', sets: TEST_AIR_ON },
        no: { to: 'benchNotZero', sets: TEST_AIR_ON },
      },
      makeSafe,
    },
    benchNotZero: putRight({
      phase,
      title: 'A source is not at zero, or a joint is not tight',
      how: 'Regulator wound out, its vent silent, signal source at its low end; hose joints drawn up while nothing stands on them.',
      again: ['Both at zero, joints tight: go on', 'lookBeforeStroke'],
      stop: ['Let the air off and take the hoses away', 'benchAirOff'],
      makeSafe,
    }),
    benchAirOn: {
      kind: 'reading',
      phase,
      title: 'Raise the shop air slowly to what this valve is fed with',
      how: 'From {supplyWantedLow} to {supplyWantedHigh}, {supplyWantedBecause}. The stem may jump as the air comes.',
      action: 'strokeByOwnAir',
      caution: STEM_MOVES,
      asks: [yesNo('airStands', 'The supply gauge stands there and nothing blows off')],
      judge: { rule: 'allYes', with: { fields: 'airStands' } },
      ways: { yes: { to: next }, no: { to: 'benchAirNotUp', sets: { clear: 'not looked at' } } },
      makeSafe,
    },
    benchAirNotUp: putRight({
      phase,
      title: 'The air does not stand there, or something blows off',
      how: 'Cock and regulator of the bench first. A joint is drawn up with the air at zero; what blows at the actuator is a finding of its own.',
      again: ['Put right at the bench: look at it and raise the air again', 'lookBeforeStroke'],
      stop: ['Let the air off', 'benchAirOff'],
      makeSafe,
    }),
  } as Readonly<
    Record<
      BenchFront,
      Step<BenchFront | Next | 'lookBeforeStroke' | 'haltStroke' | 'notStarted' | 'benchAirOff'>
    >
  >;
}

type BenchBack =
  | 'benchStillKept'
  | 'benchAirOff'
  | 'benchAirThere'
  | 'benchKept'
  | 'benchLinesOff'
  | 'haltBench'
  | 'doneBench';

/** Shop air to zero, kept air let off, hoses away. */
function offShopAir(): Readonly<Record<BenchBack, Step<BenchBack>>> {
  return { ...airToZero(), ...hosesOff() } as Readonly<Record<BenchBack, Step<BenchBack>>>;
}

function airToZero(): Readonly<Partial<Record<BenchBack, Step<BenchBack>>>> {
  const phase = 'return';
  const makeSafe = 'haltBench';
  const there = { to: 'benchAirThere', sets: { signalAir: 'live' } } as const;
  return {
    benchAirOff: {
      kind: 'reading',
      phase,
      title: 'Set the shop air to zero and read it',
      how: 'One reading alive, one at zero: at most {supplySafeLimit} with the gauge counted in. The valve goes where its spring or its own weight takes it.',
      action: 'ventShopAir',
      caution: STEM_MOVES,
      asks: [
        {
          name: 'supplyBeforePa',
          label: 'Supply gauge, before',
          type: 'quantity',
          dimension: 'pressure',
          gauge: 'supplyGauge',
          optional: true,
        },
        {
          name: 'supplyAfterPa',
          label: 'Supply gauge, now',
          type: 'quantity',
          dimension: 'pressure',
          gauge: 'supplyGauge',
          optional: true,
        },
        ...SHOWN_BY,
      ],
      judge: {
        rule: 'showSafe',
        with: { energy: 'supplyAir', before: 'supplyBeforePa', after: 'supplyAfterPa' },
      },
      ways: {
        shown: { to: 'benchKept', sets: { signalAir: 'isolated' } },
        'not shown': there,
        'gauge not seen alive': there,
        'gauge too coarse': there,
      },
      makeSafe,
    },
    benchAirThere: {
      kind: 'question',
      phase,
      title: 'The shop air is not shown gone',
      how: 'A regulator that does not bleed keeps it on the valve: shut the cock before it, then let it off at a vent that is watched twice.',
      choices: { again: { label: 'Let off: read it again', to: 'benchAirOff' } },
      makeSafe,
    },
  };
}

function hosesOff(): Readonly<Partial<Record<BenchBack, Step<BenchBack>>>> {
  const phase = 'return';
  const makeSafe = 'haltBench';
  return {
    benchKept: {
      kind: 'reading',
      phase,
      title: 'Let off what tank and lock-up relay keep',
      action: 'ventShopAir',
      caution: KEPT,
      asks: [yesNo('keptGone', 'Nothing is left in any of them, or it has none')],
      judge: { rule: 'allYes', with: { fields: 'keptGone' } },
      ways: { yes: { to: 'benchLinesOff' }, no: { to: 'benchStillKept' } },
      onCylinder: {
        title: 'Let off what tank, lock-up relay and both ends of the cylinder keep',
        caution: { ...KEPT, hazard: 'Tank, relay and cylinder keep their air after the supply is off.' },
      },
      makeSafe,
    },
    benchStillKept: putRight<BenchBack>({
      phase,
      title: 'Something still keeps air',
      how: 'A lock-up relay is let off at its own screw, a tank at its drain, each side of the actuator at its port, away from the face.',
      again: ['Let off: look again', 'benchKept'],
      stop: ['Leave it and stop', 'haltBench'],
      makeSafe,
    }),
    benchLinesOff: {
      kind: 'instruction',
      phase,
      title: 'Take the hoses and the test gear off',
      action: 'disconnectTestAir',
      do: ['Disconnect the supply.', 'Disconnect the signal source.', 'Cap the ports against dirt.'],
      next: { to: 'doneBench', sets: { testAir: 'off', consent: 'none' } },
      makeSafe,
    },
    haltBench: {
      kind: 'question',
      phase,
      title: 'Stopped on the bench: hands out of the yoke',
      how: 'It may still have its air. Nothing is parted before the air is read at zero.',
      choices: { goOn: { label: 'Go on: set the shop air to zero', to: 'benchAirOff' } },
      makeSafe,
    },
    doneBench: { kind: 'end', phase, title: 'The job on the bench is over', closes: 'done' },
  };
}

type Front = Parameters<typeof takeForStroke>[0];
type Taken<Next extends string> = keyof ReturnType<typeof takeForStroke<Next>> | BenchFront;

/** As `takeForStroke`, and on the bench as well: shop air in place of consent, bypass and block valves. */
export function takeAnywhere<const Next extends string>(
  front: Front & { readonly next: Next /** Where it goes on there instead. */; readonly onBench?: Next },
): Readonly<Record<Taken<Next>, Step<Taken<Next> | Next | 'tellBack' | 'benchAirOff'>>> {
  const line = takeForStroke<Next>(front);
  const { noLock, lookBeforeStroke, notClearYet, haltStroke } = line;
  if (
    noLock.kind !== 'reading' ||
    lookBeforeStroke.kind !== 'reading' ||
    notClearYet.kind !== 'question' ||
    haltStroke.kind !== 'question'
  )
    throw new Error('the cards before a stroke are not those that the bench goes on from');
  return {
    ...line,
    noLock: {
      ...noLock,
      ways: {
        ...noLock.ways,
        yes: { to: { by: 'place', ways: { bench: 'benchFree', line: 'consent' } } },
      },
    },
    ...ontoShopAir<Next>(front.onBench ?? front.next),
    lookBeforeStroke: {
      ...lookBeforeStroke,
      ways: {
        ...lookBeforeStroke.ways,
        yes: {
          to: { by: 'place', ways: { bench: 'benchAirOn', line: front.next } },
          sets: { spring: 'contained', closure: 'shut', clear: 'clear' },
        },
      },
    },
    notClearYet: {
      ...notClearYet,
      choices: {
        ...notClearYet.choices,
        giveBack: {
          label: 'Something is loose or leaks: give the valve back',
          to: { by: 'place', ways: { bench: 'benchAirOff', line: 'tellBack' } },
        },
      },
    },
    haltStroke: {
      ...haltStroke,
      how: 'In the line the body is under pressure between the block valves; on the bench the shop air may be on. Leave every joint alone.',
      choices: {
        goOn: {
          label: 'Go on: in the line the block valves first, then a look at it',
          to: { by: 'place', ways: { bench: 'lookBeforeStroke', line: 'blockForStroke' } },
          sets: { clear: 'not looked at' },
        },
        giveBack: {
          label: 'Give the valve back as it is; on the bench: let its air off',
          to: { by: 'place', ways: { bench: 'benchAirOff', line: 'tellBack' } },
        },
      },
    },
  } as Readonly<Record<Taken<Next>, Step<Taken<Next> | Next | 'tellBack' | 'benchAirOff'>>>;
}

type Back = keyof ReturnType<typeof giveBackStroked> | BenchBack;

/** As `giveBackStroked`, and away from the bench as well. */
export function giveBackAnywhere(): Readonly<Record<Back, Step<Back>>> {
  const line = giveBackStroked();
  const { nextPerson, haltBack } = line;
  if (nextPerson.kind !== 'reading' || haltBack.kind !== 'question')
    throw new Error('the cards on the way back are not those that the bench goes on from');
  return {
    ...line,
    nextPerson: {
      ...nextPerson,
      ways: {
        kept: { to: { by: 'place', ways: { bench: 'benchAirOff', line: 'tellBack' } } },
      },
    },
    haltBack: {
      ...haltBack,
      how: 'In the line: tell the operator where block valves and bypass stand. On the bench it may still have its air.',
      choices: {
        goOn: {
          label: 'Go on: tell the operator first; on the bench: let its air off',
          to: { by: 'place', ways: { bench: 'benchAirOff', line: 'tellBack' } },
        },
      },
    },
    ...offShopAir(),
  };
}
