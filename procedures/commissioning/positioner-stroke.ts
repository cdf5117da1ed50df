import { anywhereControl, anywhereFrame, giveBackAnywhere, takeAnywhere } from '../phases/bench-air.ts';
import { STEM_MOVES, yesNo } from '../phases/common.ts';
import { strokeBySignal, supplyFirst } from '../phases/own-stroke.ts';
import type { SIGNAL_POINTS } from '../rules/signal-at-valve.ts';
import type { QuantityField } from '../vocabulary.ts';
import { procedure } from '../vocabulary.ts';

const makeSafe = 'haltStroke' as const;

/** A current is read with the air that comes of it, where there is one. */
const ON_SIGNAL = { by: 'electrical', ways: { fitted: 'signalPath', none: 'strokeFound' } } as const;

function current(point: (typeof SIGNAL_POINTS)[number], figure: string): readonly QuantityField[] {
  const common = { type: 'quantity', optional: true } as const;
  return [
    {
      ...common,
      name: `terminal${point}A`,
      label: `Current at the terminals, {current${figure}}`,
      dimension: 'current',
    },
    {
      ...common,
      name: `valve${point}Pa`,
      label: 'Signal at the valve, at that moment',
      dimension: 'pressure',
      gauge: 'signalGauge',
    },
  ];
}

/** A valve with its positioner or converter, stroked by the signal it works with. */
export const positionerStroke = procedure({
  id: 'positioner-stroke',
  title: 'Stroke check on the valve’s own air',
  energyControl: anywhereControl(
    'To check how a valve with its positioner or converter follows its signal, in its line, on its own air. Split and reverse ranges are those of the sheet.',
  ),
  revisions: [
    { letter: 'A', date: '2026-11-25', change: 'First issue.' },
    {
      letter: 'B',
      date: '2026-11-26',
      change:
        'After a stop the block valves are looked at again before the valve moves; what is not right on the way back is decided on a card of its own.',
    },
    {
      letter: 'C',
      date: '2026-11-26',
      change:
        'It is done on the bench as well, and on a valve that a converter feeds: the current at the terminals is read with the signal at the valve. Both ends are tried a little past its own part of the range. The card after a stroke says what it measured.',
    },
    {
      letter: 'D',
      date: '2026-11-26',
      change:
        'Give the reason where a cylinder leaves its air unread; on the bench let off both its ends before a hose comes off. Where a card is answered no, the next one says how it is put right and what else may be done: none leaves only a stop.',
    },
    { letter: 'E', date: '2026-11-26', change: 'Cards that gave no reason say why they stand open.' },
    {
      letter: 'F',
      date: '2026-11-26',
      change:
        'Stay on the radio with the operator while the bypass is shut. Hands and tools out of the yoke before the loop is given back.',
    },
  ],
  ...anywhereFrame([
    { id: 'air', title: 'Air' },
    { id: 'stroke', title: 'Stroke' },
  ]),
  steps: {
    ...takeAnywhere({
      title: 'Get ready to stroke {tag} by its signal',
      how: 'Its own part of the signal runs from {signalLow} to {signalHigh}; rising signal {risingSignal} the valve. In the line the operator may be the source.',
      bring: [
        'Bring a signal source for this valve.',
        'Bring a supply gauge, a gauge for the actuator and a travel indicator.',
      ],
      next: 'supplyRead',
    }),
    ...supplyFirst({ phase: 'air', inside: ON_SIGNAL, next: 'strokeFound', makeSafe }),
    signalPath: {
      kind: 'question',
      phase: 'air',
      title: 'What the signal comes through',
      how: 'Follow it from the terminals to the valve. A solenoid, a switch or a heater alone makes no signal.',
      choices: {
        converter: { label: 'A converter makes air of the current', to: 'signalAtValve' },
        direct: { label: 'The positioner takes the current itself', to: 'strokeFound' },
        air: { label: 'It comes as air', to: 'strokeFound' },
      },
      makeSafe,
    },
    signalAtValve: {
      kind: 'reading',
      phase: 'air',
      title: 'Read the current at the terminals and the signal at the valve together',
      how: 'Meter in series, gauge in the signal line beside the valve. {currentLow}, {currentHalf} and {currentHigh} stand for {signalLow}, {signalHalf} and {signalHigh}: at most {converterTolerance} of the span off, each against the current as it was read.',
      why: 'Current right and signal wrong is the converter; current wrong is loop or wiring.',
      action: 'strokeByOwnAir',
      caution: STEM_MOVES,
      asks: [...current('Low', 'Low'), ...current('Middle', 'Half'), ...current('High', 'High')],
      judge: { rule: 'signalAtValve' },
      ways: {
        inside: { to: 'strokeFound' },
        outside: { to: 'signalOff' },
        'too close': { to: 'strokeFound' },
        'not all read': { to: 'signalNotRead' },
      },
      makeSafe,
    },
    signalNotRead: {
      kind: 'question',
      phase: 'air',
      title: 'Current and signal were not read at all three',
      choices: {
        again: { label: 'Read them', to: 'signalAtValve' },
        leave: { label: 'The terminals may not be opened here: leave it', to: 'strokeFound', reason: true },
      },
      makeSafe,
    },
    signalOff: {
      kind: 'question',
      phase: 'air',
      title: 'The signal at the valve is not what the current asks for',
      how: 'All three off alike or in proportion: converter. One way only: its supply, or a leak in the signal line.',
      shows: ['signalOffBy', 'converterTolerance'],
      choices: {
        again: { label: 'A leak found and put right: read them again', to: 'signalAtValve' },
        goOn: { label: 'Write it down, and stroke it all the same', to: 'strokeFound', reason: true },
        leave: {
          label: 'Give it back; the calibration of its converter comes next',
          to: 'nextPerson',
          reason: true,
          comesNext: 'converter-calibration',
        },
      },
      makeSafe,
    },
    strokeFound: strokeBySignal({
      phase: 'stroke',
      title: 'Stroke it by its signal, up and down',
      ways: {
        inside: { to: 'pastEnds' },
        outside: { to: 'strokeOutside' },
        'too close': { to: 'strokeClose' },
        'not all read': { to: 'strokeNotRead' },
      },
      makeSafe,
    }),
    strokeNotRead: {
      kind: 'question',
      phase: 'stroke',
      title: 'Not every setting was read',
      choices: {
        again: { label: 'Read the cycle again', to: 'strokeFound' },
        stuck: { label: 'It does not reach them: it is outside', to: 'strokeOutside' },
      },
      makeSafe,
    },
    strokeClose: {
      kind: 'question',
      phase: 'stroke',
      title: 'Too close for this indicator to tell',
      how: 'It is no fault of the valve: a finer indicator may tell.',
      choices: {
        again: { label: 'Read the cycle again, with a finer one if there is one', to: 'strokeFound' },
        goOn: { label: 'Leave it so', to: 'pastEnds', reason: true },
      },
      makeSafe,
    },
    strokeOutside: {
      kind: 'question',
      phase: 'stroke',
      title: 'It does not follow its signal inside its limits',
      shows: [
        'strokeError',
        'strokeHysteresis',
        'strokeZero',
        'strokeSpan',
        'strokeLine',
        'strokeUncertainty',
      ],
      how: 'All points off alike: zero. Off more with travel: span, linkage. Apart up and down: packing, linkage slack, positioner gain. Read the air on the actuator before anything is set.',
      choices: {
        air: { label: 'Read the air on the actuator first', to: 'airAtHalf' },
        again: { label: 'Stroke it again', to: 'strokeFound' },
        calibrate: {
          label: 'Give it back; the calibration of its positioner comes next',
          to: 'nextPerson',
          reason: true,
          comesNext: 'positioner-calibration',
        },
        leave: { label: 'Leave it so', to: 'nextPerson', reason: true },
      },
      makeSafe,
    },
    pastEnds: {
      kind: 'reading',
      phase: 'stroke',
      title: 'Take the signal a little past both ends of its part, and look',
      how: 'Its own part runs from {signalLow} to {signalHigh}. Below and above, where the other valve of a split range works, it stands on its seat or its stop and stays there.',
      action: 'strokeByOwnAir',
      caution: STEM_MOVES,
      asks: [
        yesNo('standsBelow', 'A little below, it stands at that end and stays'),
        yesNo('standsAbove', 'A little above, it stands at the other end and stays'),
      ],
      judge: { rule: 'allYes', with: { fields: 'standsBelow standsAbove' } },
      ways: {
        yes: { to: { by: 'actuator', ways: { diaphragm: 'airAtHalf', piston: 'nextPerson' } } },
        no: { to: 'endsNotReached' },
      },
      makeSafe,
    },
    endsNotReached: {
      kind: 'question',
      phase: 'stroke',
      title: 'It does not stand at its end past its own part',
      how: 'Two valves of a split range then flow against each other, or neither flows. Zero, span, a travel stop, or a signal range that is not that of the sheet.',
      choices: {
        again: { label: 'Put right from outside: look again', to: 'pastEnds' },
        leave: {
          label: 'Give it back; the calibration of its positioner comes next',
          to: 'nextPerson',
          reason: true,
          comesNext: 'positioner-calibration',
        },
        goOn: { label: 'Write it down, and read the air as well', to: 'airAtHalf', reason: true },
      },
      makeSafe,
    },
    airAtHalf: {
      kind: 'reading',
      phase: 'stroke',
      title: 'Read the air on the actuator at a travel that you read as well',
      how: 'A travel near the middle, standing still. {springWants}',
      why: 'A positioner gives whatever air it takes: travel that agrees never clears the actuator.',
      action: 'strokeByOwnAir',
      caution: STEM_MOVES,
      asks: [
        {
          name: 'actuatorAirPa',
          label: 'Air on the actuator',
          type: 'quantity',
          dimension: 'pressure',
          gauge: 'signalGauge',
          optional: true,
        },
        {
          name: 'airTravelM',
          label: 'Travel there',
          type: 'quantity',
          dimension: 'travel',
          gauge: 'travelIndicator',
          optional: true,
        },
      ],
      judge: { rule: 'actuatorAir' },
      ways: {
        'as expected': { to: 'nextPerson' },
        'more than expected': { to: 'airOff' },
        'less than expected': { to: 'airOff' },
        'not read': { to: 'airNotRead' },
      },
      makeSafe,
    },
    airNotRead: {
      kind: 'question',
      phase: 'stroke',
      title: 'The air on the actuator was not read',
      how: 'Without it nothing is said of diaphragm, spring or packing.',
      onCylinder: {
        how: 'A cylinder stands between two pressures: one gauge says nothing of its seals or its packing.',
        choices: { none: 'It has no spring, or no gauge there' },
      },
      choices: {
        again: { label: 'Read it', to: 'airAtHalf' },
        none: { label: 'There is no gauge there', to: 'nextPerson', reason: true },
      },
      makeSafe,
    },
    airOff: {
      kind: 'question',
      phase: 'stroke',
      title: 'The actuator wants other air than its spring says',
      shows: ['airExpected', 'airDiffers', 'airAllowed'],
      how: 'More: tight packing, a spring wound too far or a wrong one. Less: a slack or broken spring. A leaking diaphragm shows as a positioner that hisses all the time.',
      onCylinder: {
        how: 'More: tight packing or rod seal, a spring wound too far or a wrong one. Less: a slack or broken spring. Worn seals show as a positioner that hisses all the time.',
      },
      choices: {
        leave: { label: 'Write it down for the overhaul, and give it back', to: 'nextPerson', reason: true },
        again: { label: 'Read it again at another travel', to: 'airAtHalf' },
      },
      makeSafe,
    },
    ...giveBackAnywhere(),
  },
});
