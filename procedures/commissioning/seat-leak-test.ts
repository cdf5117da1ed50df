import { airLimits } from '../phases/air-limits.ts';
import { connectCase } from '../phases/case-air.ts';
import { STEM_MOVES, yesNo } from '../phases/common.ts';
import { giveBack, ISOLATE_AGAIN } from '../phases/give-back.ts';
import { frontOf, isolatedControl, SAFE_AT } from '../phases/overhaul-frame.ts';
import { inletOpen, LIVE, letOff, MEASURED, testPressure, UNDER_PRESSURE } from '../phases/seat-pressure.ts';
import { isolatedAt, takeOver } from '../phases/taken-over.ts';
import { whereOn, workHold } from '../phases/work-hold.ts';
import { procedure } from '../vocabulary.ts';

/** How long the pressure stands before anything is measured, in seconds (common practice, no source). */
const STANDS_S = 120;

const BRING = [
  'Bring {seatMedium} with a regulator of its own, a vent, and a relief that opens at {seatTestMost} at most.',
  'Bring a gauge for the test pressure, a measuring glass or a flow meter, a stop watch.',
  'Bring a regulator that bleeds and its gauge for the case.',
] as const;

/** What the seat of a valve lets through, by the class of its sheet. */
export const seatLeakTest = procedure({
  id: 'seat-leak-test',
  title: 'Seat leakage test',
  energyControl: isolatedControl(
    'To measure what the shut seat of a spring-and-diaphragm valve lets through, against the class of its sheet, in the line or on the bench. It opens neither case nor body.',
  ),
  revisions: [
    { letter: 'A', date: '2026-11-25', change: 'First issue.' },
    {
      letter: 'B',
      date: '2026-11-26',
      change:
        'The verdict on the seat is looked at by a second person; the work goes on meanwhile, and the job does not close before.',
    },
    { letter: 'C', date: '2026-11-26', change: 'It may go on where another job left the valve locked out.' },
    {
      letter: 'D',
      date: '2026-11-26',
      change: 'The card after a leak says what was measured, what is allowed, and the load on the seat.',
    },
    {
      letter: 'E',
      date: '2026-11-26',
      change:
        'Look for kept air on the other side of the actuator too, on a cylinder at its other end. Where a card is answered no, the next one says how it is put right and what else may be done: none leaves only a stop.',
    },
    {
      letter: 'F',
      date: '2026-11-26',
      change: 'Hands stay out of the yoke while the air is bled off.',
    },
    { letter: 'G', date: '2026-11-26', change: 'Cards that gave no reason say why they stand open.' },
    {
      letter: 'H',
      date: '2026-11-26',
      change:
        'Eye protection on, and hands outside the yoke, wherever air is let off. Stay on the radio with the operator while the bypass is shut. Hands and tools out of the yoke before the loop is given back.',
    },
  ],
  phases: [
    { id: 'ready', title: 'Get ready' },
    { id: 'bypass', title: 'Onto the bypass' },
    { id: 'isolate', title: 'Take off line' },
    { id: 'asFound', title: 'Shut the valve' },
    { id: 'seat', title: 'Seat' },
    { id: 'airAway', title: 'Air away' },
    { id: 'return', title: 'Return to service' },
  ],
  start: 'needs',
  takesOver: { isolated: isolatedAt('takenOver') },
  safe: [...SAFE_AT, 'ventSeat'],
  steps: {
    ...frontOf({
      bring: BRING,
      next: 'holdWork',
    }),
    takenOver: takeOver({
      phase: 'isolate',
      title: 'Go on with {tag} as it stands: its seat under test',
      bring: BRING,
      next: 'holdWork',
      makeSafe: 'haltIsolating',
    }),
    holdWork: workHold({
      phase: 'isolate',
      title: 'Before test pressure goes on the seat',
      allows: ['connectTestAir', 'strokeByTestAir', 'pressTest'],
      next: 'connectAir',
      halt: 'haltIsolating',
    }),
    connectAir: connectCase({
      phase: 'asFound',
      title: 'Connect one regulator and its gauge to the case',
      do: ['Set the regulator to zero.', 'Connect it to the case.'],
      next: 'strokeSeat',
      ventNow: 'ventNow',
    }),
    strokeSeat: {
      kind: 'reading',
      phase: 'asFound',
      title: 'Stroke the valve end to end, then leave it shut as in service',
      how: 'Three strokes, dirt is thrown off so. Then {seatShutBy}: no hand and no handwheel helps it.',
      why: 'A seat is judged by the force that it has in service, no more and no less.',
      action: 'strokeByTestAir',
      caution: STEM_MOVES,
      asks: [
        {
          name: 'lastAirPa',
          label: 'Signal gauge, at the open end',
          type: 'quantity',
          dimension: 'pressure',
          gauge: 'signalGauge',
          onCase: true,
          wanted: 'openEndSignal',
        },
        {
          name: 'shutPa',
          label: 'Signal gauge, as it stands shut',
          type: 'quantity',
          dimension: 'pressure',
          gauge: 'signalGauge',
          onCase: true,
        },
        yesNo('standsShut', 'It runs evenly and stands on its seat, handwheel in neutral'),
      ],
      judge: { rule: 'allYes', with: { fields: 'standsShut' } },
      ways: {
        yes: { to: { by: 'place', ways: { bench: 'rigBench', line: 'rigLine' } } },
        no: { to: 'notShut' },
        'above limit': { to: 'ventFirst' },
      },
      makeSafe: 'ventNow',
    },
    notShut: {
      kind: 'question',
      phase: 'asFound',
      title: 'It does not run to its seat',
      how: 'Handwheel, travel stop, bench set, packing, something in the seat. What does not shut needs no leak test.',
      choices: {
        again: { label: 'Put right from outside: stroke it again', to: 'strokeSeat' },
        leave: { label: 'It wants its bench set or an overhaul: give it back', to: 'airOff', reason: true },
      },
      makeSafe: 'ventNow',
    },
    rigBench: {
      kind: 'reading',
      phase: 'seat',
      title: 'Make the test ready on the bench',
      how: 'Blind flange with the test hose on the inlet, every bolt in; the outlet open, or with the hose to the glass. Flow {flowOverPlug}: the arrow says which side is the inlet.',
      why: 'A joint of the rig that leaks is counted as the seat; a flange short of bolts is thrown off.',
      asks: [
        yesNo('rigRight', 'On the inlet by the arrow, every bolt in, vent and relief on the hose'),
        yesNo('bodyFull', 'For water: filled until no air comes; for air: no water in it'),
        yesNo('nobodyInFront', 'Nobody stands in front of an open end'),
      ],
      judge: { rule: 'allYes', with: { fields: 'rigRight bodyFull nobodyInFront' } },
      ways: {
        yes: { to: 'nothingComes', sets: { processFlow: 'absent' } },
        no: { to: 'rigNotRight' },
      },
      makeSafe: 'ventNow',
    },
    rigLine: {
      kind: 'reading',
      phase: 'seat',
      title: 'Make the test ready between the block valves',
      how: 'Test hose on the drain of the inlet side, the glass or the meter on the drain of the outlet side. Both block valves stay locked.',
      why: 'What leaks past hose or meter, or runs out of a body that is not empty, is counted as the seat.',
      asks: [
        yesNo(
          'rigRight',
          'Hose on the inlet drain, with vent and relief; the outlet drain open to the glass',
        ),
        yesNo('bodyEmpty', 'No fluid in the body: it would be counted as leak'),
        yesNo('nobodyInFront', 'Nobody stands in front of an open end'),
      ],
      judge: { rule: 'allYes', with: { fields: 'rigRight bodyEmpty nobodyInFront' } },
      ways: { yes: { to: 'nothingComes' }, no: { to: 'rigNotRight' } },
      makeSafe: 'ventNow',
    },
    rigNotRight: {
      kind: 'question',
      phase: 'seat',
      title: 'The test is not ready',
      how: 'Drains that are plugged are rodded by the site’s own rule, then read at zero again.',
      choices: {
        again: {
          label: 'Put right: look at it again',
          to: { by: 'place', ways: { bench: 'rigBench', line: 'rigLine' } },
        },
        leave: { label: 'It cannot be tested here: give it back', to: 'airOff', reason: true },
      },
      makeSafe: 'ventNow',
    },
    nothingComes: {
      kind: 'reading',
      phase: 'seat',
      title: 'Watch the outlet before any test pressure is on',
      why: 'What comes now is no leak of the seat: a block valve that passes, or a body that warms up.',
      asks: [yesNo('nothingComes', 'Watched for a minute: nothing comes')],
      judge: { rule: 'allYes', with: { fields: 'nothingComes' } },
      ways: { yes: { to: 'pressOn' }, no: { to: 'somethingComes' } },
      makeSafe: 'ventNow',
    },
    somethingComes: {
      kind: 'question',
      phase: 'seat',
      title: 'Something comes without test pressure',
      how: 'A block valve that passes is no isolation: then nothing more is done here. A body in the sun breathes for a while.',
      choices: {
        again: { label: 'It was warming up: watch it again', to: 'nothingComes' },
        passes: { label: 'A block valve passes: stop here, give it back', to: 'airOff', reason: true },
      },
      makeSafe: 'ventNow',
    },
    pressOn: {
      kind: 'reading',
      phase: 'seat',
      title: 'Put {seatTestPressure} of {seatMedium} on the inlet side, slowly',
      how: 'Class {leakageClass} by {seatStandard}. At most {seatTestMost}. On flammable service nitrogen in place of air. Soap bonnet, gland and hose: what leaks there is missing at the glass.',
      action: 'pressTest',
      caution: UNDER_PRESSURE,
      shows: [
        'leakageClass',
        'seatStandard',
        'seatMedium',
        'seatTestPressure',
        'seatTestMost',
        'allowedLeak',
      ],
      asks: [testPressure, yesNo('jointsTight', 'Bonnet, gland, flanges and hose are tight')],
      judge: { rule: 'seatPressure' },
      ways: {
        stands: { to: 'seatWait', sets: LIVE },
        'too little': { to: 'pressureFails', sets: LIVE },
        'joint leaks': { to: 'pressureFails', sets: LIVE },
        'above limit': { to: 'ventSeat', sets: LIVE },
      },
      makeSafe: 'ventSeat',
    },
    pressureFails: {
      kind: 'question',
      phase: 'seat',
      title: 'The test pressure does not stand, or a joint leaks',
      how: 'No nut is touched under pressure. A seat that takes all that the source gives is a leak that needs no glass.',
      choices: {
        off: { label: 'A joint or the hose: let the pressure off, put it right', to: 'letOffAgain' },
        seat: { label: 'It all goes through the seat', to: 'letOffLeaking', reason: true },
      },
      makeSafe: 'ventSeat',
    },
    seatWait: {
      kind: 'wait',
      phase: 'seat',
      title: 'Let the pressure stand, and the first air come out',
      how: 'What lay in the outlet and in the hose comes first. Leave the regulator alone.',
      waitS: STANDS_S,
      next: { to: 'measure' },
      makeSafe: 'ventSeat',
    },
    measure: {
      kind: 'reading',
      phase: 'seat',
      title: 'Measure what comes through the seat',
      how: 'It may leak {allowedLeak}; bubbles a minute with the tube of the standard: {bubblesAllowed}. A minute at least; the smaller the leak, the longer. Shut in: only where the volume is known.',
      why: 'Worked out for this valve: class {leakageClass} by {seatStandard}, at {seatTestPressure}.',
      action: 'readGauge',
      caution: UNDER_PRESSURE,
      asks: MEASURED,
      judge: { rule: 'seatLeak' },
      ways: {
        'tight enough': { to: 'letOffTight', sets: LIVE },
        leaks: { to: 'letOffLeaking', sets: LIVE },
        'too close': { to: 'measureAgain', sets: LIVE },
        'too little pressure': { to: 'pressureFails', sets: LIVE },
        'too short': { to: 'measureAgain', sets: LIVE },
        'way does not fit': { to: 'measureAgain', sets: LIVE },
        'not read': { to: 'measureAgain', sets: LIVE },
        'above limit': { to: 'ventSeat', sets: LIVE },
      },
      makeSafe: 'ventSeat',
    },
    measureAgain: {
      kind: 'question',
      phase: 'seat',
      title: 'Nothing can be said from this yet',
      how: 'Too short or too close: watch it longer, collect more. Bubbles count only where the table of the standard gives them; shutting in only for air, and with the volume known.',
      choices: {
        again: { label: 'Measure it again', to: 'measure' },
        leave: { label: 'It stays too close to tell: leave it so', to: 'letOffTight', reason: true },
      },
      makeSafe: 'ventSeat',
    },
    letOffTight: letOff({
      title: 'Let the test pressure off and read zero',
      shown: { by: 'place', ways: { bench: 'inletOpenTight', line: 'leakReview' } },
      notShown: 'letOffTight',
    }),
    inletOpenTight: inletOpen('leakReview'),
    letOffLeaking: letOff({
      title: 'Let the test pressure off before the leak is looked into',
      shown: { by: 'place', ways: { bench: 'inletOpenLeaking', line: 'seatLeaks' } },
      notShown: 'letOffLeaking',
    }),
    inletOpenLeaking: inletOpen('seatLeaks'),
    letOffAgain: letOff({
      title: 'Let the test pressure off before a joint is touched',
      shown: { by: 'place', ways: { bench: 'inletOpenAgain', line: 'rigLine' } },
      notShown: 'letOffAgain',
    }),
    inletOpenAgain: inletOpen('rigBench'),
    seatLeaks: {
      kind: 'question',
      phase: 'seat',
      title: 'The seat leaks more than its class',
      shows: ['leakFound', 'allowedLeak', 'seatLoadExpected', 'seatLoadNeed'],
      how: 'Likely first: dirt on the seat; too little load on it, {seatLoadExpected} of {seatLoadNeed} wanted; a bench set that is shifted. Then a cut seat or plug, a seat gasket, the seal of a balanced plug or its cage.',
      choices: {
        stroke: { label: 'Dirt: stroke it hard a few times, test it again', to: 'strokeSeat' },
        load: {
          label: 'Load: give it back, open the job that sets plug or bench set',
          to: 'leakReview',
          reason: true,
        },
        seat: { label: 'Seat or gasket: it wants an overhaul, give it back', to: 'leakReview', reason: true },
        known: { label: 'Operations take it as it is', to: 'leakReview', reason: true },
      },
      makeSafe: 'ventNow',
    },
    leakReview: {
      kind: 'hold',
      phase: 'seat',
      title: 'Have the verdict on the seat looked at',
      how: 'The work goes on meanwhile. With the rig still on, it is soon measured again.',
      point: 'review',
      criterion:
        'The way of measuring suits {allowedLeak}, it was watched long enough, and the verdict follows from it.',
      shows: ['leakFound', 'allowedLeak', 'leakageClass', 'seatStandard', 'seatTestPressure'],
      evidence: [],
      allows: [],
      signed: { to: 'rigOff' },
      sentBack: { to: { by: 'place', ways: { bench: 'rigBench', line: 'rigLine' } } },
      makeSafe: 'ventNow',
    },
    rigOff: {
      kind: 'instruction',
      phase: 'seat',
      title: 'Take the test rig off the body',
      do: [
        'Take hose, glass and meter off.',
        'Shut the drains that were used.',
        'Drain what is left of the test water, where it was water.',
      ],
      next: { to: 'airOff' },
      makeSafe: 'ventNow',
    },
    ventSeat: letOff({
      title: 'Let the test pressure off now, and read zero',
      shown: { by: 'place', ways: { bench: 'inletOpenStop', line: 'ventNow' } },
      notShown: 'ventSeat',
    }),
    inletOpenStop: inletOpen('ventNow'),
    ...airLimits({ connect: 'connectAgain', signAgain: 'holdWork', giveBack: 'disconnectAir' }),
    connectAgain: connectCase({
      phase: 'asFound',
      title: 'Check that one regulator and its gauge are on the case',
      do: ['Set the regulator to zero.', 'Check the joint at the case.'],
      next: 'whereOn',
      ventNow: 'ventNow',
    }),
    whereOn: whereOn({
      phase: 'asFound',
      choices: { stroke: ['Stroke it and shut it, then test', 'strokeSeat'] },
      makeSafe: 'ventNow',
    }),
    ...giveBack({ done: 'done', isolateAgain: ISOLATE_AGAIN }),
    done: { kind: 'end', phase: 'return', title: 'The valve is back', closes: 'done' },
  },
});
