/** The air of a bypassed valve taken off for work on what stands before the actuator, and brought back; the body stays shut. */
import type { EnergyControl, Step } from '../vocabulary.ts';
import { ACTUATOR_SHUT, AIR_LET_OFF, SHOWN_BY, yesNo } from './common.ts';
import { feedsBack } from './feeds-back.ts';
import { type AirShut, shutAir } from './isolate.ts';
import { notShown, zeroWays } from './isolate-parts.ts';
import { lookForKeptAir } from './other-energies.ts';

/** How such a job isolates; its use is its own. */
export function airOffControl(use: string): EnergyControl {
  return {
    use,
    isolation:
      'Loop in manual, flow on the bypass or the plant state agreed, both block valves shut. For work with the air off each feed is shut by its own cock and vented, kept air at its own vent, circuits at their breaker. The body stays shut and under pressure.',
    locks:
      'Who shuts a cock or a breaker hangs their own lock and tag there and writes its number; the same person takes it off. A valve that somebody else has locked is left alone. Local rules and the site lockout come first.',
    verification:
      'Supply and actuator on gauges that were seen alive there and read at most the stated limit, or by a vent watched twice; circuits tried dead. Air stays on only for checks that it needs, hands out of the yoke.',
  };
}

type Off =
  | AirShut
  | 'airKnown'
  | 'airNotKnown'
  | 'keptAir'
  | 'keptAirLeft'
  | 'circuitsOff'
  | 'circuitsNotSafe'
  | 'actuatorZero'
  | 'actuatorNotZero'
  | 'haltIsolating';

type Back =
  | 'lineLook'
  | 'lineZero'
  | 'lineBack'
  | 'lookBeforeAir'
  | 'supplyBack'
  | 'secondBack'
  | 'circuitsBack'
  | 'jointsLeak';

const makeSafe = 'haltIsolating' as const;

/** Each feed shut, locked and vented, kept air, circuits, and the actuator read at zero. It begins at `airKnown`. */
export function airAway<const Next extends string>({
  next,
}: {
  readonly next: Next;
}): Readonly<Record<Off, Step<Off | Next | 'lineLook'>>> {
  return {
    airKnown: {
      kind: 'reading',
      phase: 'isolate',
      title: 'Read what moves or hurts while the air goes off',
      how: 'Without air {tag} {failWanted}. The body stays under pressure between the block valves: it may push the stem.',
      why: 'As the air goes, spring and fluid move the stem, and what trips on it trips.',
      shows: [
        'energySupply',
        'energySecond',
        'energySignal',
        'energyKept',
        'energySpring',
        'energyElectrical',
        'energySafety',
      ],
      asks: [
        yesNo('airKnownYes', 'I know each of them, its size and how it is controlled'),
        yesNo('tripCovered', 'No trip needs this valve, or its override is in hand'),
      ],
      judge: { rule: 'allYes', with: { fields: 'airKnownYes tripCovered' } },
      ways: { yes: { to: 'shutSupply' }, no: { to: 'airNotKnown' } },
      makeSafe,
    },
    airNotKnown: notShown('An energy is not known, or a trip wants the valve', {
      how: 'Plate, manual or operator say what the sheet does not. A trip without its override keeps its air.',
      choices: {
        again: { label: 'Found out, override in hand: read the list again', to: 'airKnown' },
        keep: { label: 'The air stays on: look at the valve, then give it back', to: 'lineLook' },
      },
    }),
    ...shutAir(),
    ...lookForKeptAir('circuitsOff'),
    ...circuits(),
    ...zero(next),
    haltIsolating: {
      kind: 'question',
      phase: 'isolate',
      title: 'Stopped: leave every cock and every lock as it stands',
      how: 'Hands off the valve. What hangs loose is tied up, what is open is covered. The body is under pressure.',
      choices: {
        goOn: { label: 'Go on: shut off from the first cock again', to: 'airKnown' },
        giveBack: { label: 'Bring the air back', to: 'lineLook' },
      },
      makeSafe,
    },
  } as Readonly<Record<Off, Step<Off | Next | 'lineLook'>>>;
}

function circuits(): Readonly<Partial<Record<Off, Step<Off>>>> {
  return {
    circuitsOff: {
      kind: 'reading',
      phase: 'isolate',
      title: 'Look for circuits at positioner, solenoid, switches and heating',
      how: 'Electrical work has its own law and its own people: the breaker is locked and the circuit tried dead by whoever may. Recorded also where there is none.',
      why: 'Coil and heating are live without any air, and may switch by themselves.',
      shows: ['energyElectrical'],
      asks: [
        {
          name: 'electrical',
          label: 'Circuits at this valve',
          type: 'choice',
          choices: [
            { value: 'absent', label: 'Nothing electrical here' },
            { value: 'isolated', label: 'Locked off and tried dead' },
            { value: 'live', label: 'Not safe' },
          ],
        },
        {
          name: 'electricalHow',
          label: 'Breaker, lock, and who tried it dead',
          type: 'text',
          optional: true,
        },
      ],
      judge: { rule: 'others', with: { fields: 'electrical' } },
      ways: {
        'all safe': {
          to: 'actuatorZero',
          sets: { electrical: { from: 'electrical', among: ['isolated', 'absent'] } },
        },
        'one is not safe': { to: 'circuitsNotSafe' },
        'too hot to touch': { to: 'circuitsNotSafe' },
        'not said how': { to: 'circuitsNotSafe' },
        'the sheet has one': { to: 'circuitsNotSafe' },
      },
      makeSafe,
    },
    circuitsNotSafe: notShown('A circuit is not safe, not told how, or on the sheet', {
      how: 'The sheet says: {energyElectrical} A bare yes is not enough.',
      choices: { again: { label: 'Locked and tried dead: look again', to: 'circuitsOff' } },
    }),
  };
}

function zero<const Next extends string>(next: Next): Readonly<Partial<Record<Off, Step<Off | Next>>>> {
  return {
    actuatorZero: {
      kind: 'reading',
      phase: 'isolate',
      title: 'Read the actuator at zero',
      how: 'At most {signalSafeLimit} with the gauge counted in, or its drain cracked and watched twice. Wait until the stem has come to rest.',
      action: 'ventCase',
      caution: AIR_LET_OFF,
      asks: [
        {
          name: 'signalAfterPa',
          label: 'Signal gauge at the valve, now',
          type: 'quantity',
          dimension: 'pressure',
          gauge: 'signalGauge',
          optional: true,
        },
        ...SHOWN_BY,
      ],
      judge: {
        rule: 'showSafe',
        with: { energy: 'signalAir', before: 'signalBeforePa', after: 'signalAfterPa' },
      },
      ways: zeroWays<Off | Next>(
        { to: next, sets: { signalAir: 'isolated' } },
        { to: 'actuatorNotZero', sets: { signalAir: 'live' } },
      ),
      makeSafe,
    },
    actuatorNotZero: notShown('The air on the actuator is not shown gone', {
      choices: {
        again: { label: 'Vented at the actuator: read again', to: 'actuatorZero' },
        feeds: { label: 'It comes back: look for another feed', to: 'keptAir' },
      },
    }),
  } as Readonly<Partial<Record<Off, Step<Off | Next>>>>;
}

/**
 * Tubes on, a look, supply, second feed and circuits back. It begins at `lineLook`.
 * @param next  where the valve has its air again
 */
export function airOnAgain<const Next extends string>({
  next,
}: {
  readonly next: Next;
}): Readonly<Record<Back, Step<Back | Next | 'haltIsolating' | 'airKnown'>>> {
  return {
    ...tubesLooked(),
    ...tubesOn(),
    ...feedsBack<Back | 'haltIsolating'>({
      phase: 'airBack',
      next: 'circuitsBack',
      leaks: 'jointsLeak',
      makeSafe,
    }),
    ...afterFeeds(next),
  } as Readonly<Record<Back, Step<Back | Next | 'haltIsolating' | 'airKnown'>>>;
}

function tubesLooked(): Readonly<Partial<Record<Back, Step<Back | 'haltIsolating'>>>> {
  const phase = 'airBack';
  return {
    lineLook: {
      kind: 'question',
      phase,
      title: 'Look at the tubes: is one off?',
      how: 'It says which cards are left before the air comes back.',
      why: 'A tube that is off whips as air comes into it, and its valve stays where it is.',
      choices: {
        on: {
          label: 'Every tube is on',
          to: 'lookBeforeAir',
          sets: { controllerLine: 'connected', testAir: 'off' },
        },
        off: { label: 'A tube is off or capped', to: 'lineZero', sets: { controllerLine: 'capped' } },
      },
      makeSafe,
    },
    lineZero: {
      kind: 'reading',
      phase,
      title: 'Show that no air is on the actuator',
      action: 'ventCase',
      caution: AIR_LET_OFF,
      asks: [
        yesNo('testAirOff', 'No test air is connected'),
        {
          name: 'signalAfterPa',
          label: 'Signal gauge at the valve, now',
          type: 'quantity',
          dimension: 'pressure',
          gauge: 'signalGauge',
          optional: true,
        },
        ...SHOWN_BY,
      ],
      judge: {
        rule: 'showSafe',
        with: {
          energy: 'signalAir',
          before: 'signalBeforePa',
          after: 'signalAfterPa',
          also: 'testAirOff',
        },
      },
      ways: zeroWays({ to: 'lineBack', sets: { signalAir: 'isolated', testAir: 'off' } }, { to: 'lineLook' }),
      makeSafe,
    },
  };
}

function tubesOn(): Readonly<Partial<Record<Back, Step<Back | 'haltIsolating'>>>> {
  const phase = 'airBack';
  return {
    lineBack: {
      kind: 'reading',
      phase,
      title: 'Connect every tube that was off',
      how: 'Each to the port that it was marked for: crossed tubes drive the valve the wrong way.',
      action: 'reconnectSignalLine',
      do: [
        'Take the caps off.',
        'Connect the tubes to their marks.',
        'Tighten the joints by the turns of their maker.',
      ],
      asks: [yesNo('lineBackOn', 'Every tube on, to its own port, joints tight')],
      judge: { rule: 'allYes', with: { fields: 'lineBackOn' } },
      ways: {
        yes: { to: 'lookBeforeAir', sets: { controllerLine: 'connected', testAir: 'off' } },
        no: { to: 'lineLook' },
      },
      makeSafe,
    },
    lookBeforeAir: {
      kind: 'reading',
      phase,
      title: 'Look at {tag} before the air comes back',
      how: 'Air that comes back on a part left off drives the valve to its end.',
      why: 'What was left off is found now, or by the air.',
      asks: [
        yesNo('partsBack', 'Every part back, no screw left over, covers as the next card wants them'),
        yesNo('caseStillTight', ACTUATOR_SHUT),
        yesNo('toolsOut', 'Tools out of the yoke, people clear'),
      ],
      judge: { rule: 'allYes', with: { fields: 'partsBack caseStillTight toolsOut' } },
      ways: {
        yes: { to: 'supplyBack', sets: { spring: 'contained', closure: 'shut', clear: 'clear' } },
        no: { to: 'lineLook' },
      },
      makeSafe,
    },
  };
}

function afterFeeds<const Next extends string>(
  next: Next,
): Readonly<Partial<Record<Back, Step<Back | Next | 'haltIsolating' | 'airKnown'>>>> {
  const phase = 'airBack';
  return {
    circuitsBack: {
      kind: 'reading',
      phase,
      title: 'Have the circuits switched on again, where they were locked off',
      how: 'Covers shut first. Whoever locked the breaker takes the lock off. Where nothing was locked off, say yes.',
      action: 'switchBackOn',
      caution: {
        word: 'warning',
        hazard: 'Coil and positioner come alive, and the valve may move.',
        consequence: 'A finger in the yoke can be crushed.',
        avoid: 'Hands and tools out of the yoke; the operator told first.',
      },
      asks: [yesNo('circuitsOn', 'On again, covers shut, or none was off')],
      judge: { rule: 'allYes', with: { fields: 'circuitsOn' } },
      ways: { yes: { to: next, sets: { electrical: 'live' } }, no: { to: 'jointsLeak' } },
      makeSafe,
    },
    jointsLeak: {
      kind: 'question',
      phase,
      title: 'A joint leaks, or a circuit does not come back',
      how: 'Leave a joint under air alone: it is tightened with its feed shut.',
      choices: {
        tighten: { label: 'Shut the air off again and put it right', to: 'airKnown' },
        look: { label: 'Put right from outside: look and go on', to: 'lookBeforeAir' },
      },
      makeSafe,
    },
  } as Readonly<Partial<Record<Back, Step<Back | Next | 'haltIsolating' | 'airKnown'>>>>;
}
