import { STEM_MOVES } from '../phases/common.ts';
import { OWN_AIR_FRONT, OWN_AIR_SAFE_AT, ownAirControl, takeForStroke } from '../phases/own-air.ts';
import { readSupply, strokeBySignal, supplyWrong } from '../phases/own-stroke.ts';
import { giveBackStroked, OWN_AIR_RETURN } from '../phases/stroked-back.ts';
import { procedure } from '../vocabulary.ts';

const makeSafe = 'haltStroke' as const;

/** A valve with its positioner or converter, stroked by the signal it works with. */
export const positionerStroke = procedure({
  id: 'positioner-stroke',
  title: 'Stroke check on the valve’s own air',
  energyControl: ownAirControl(
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
  ],
  phases: [...OWN_AIR_FRONT, { id: 'air', title: 'Air' }, { id: 'stroke', title: 'Stroke' }, OWN_AIR_RETURN],
  start: 'needs',
  safe: OWN_AIR_SAFE_AT,
  steps: {
    ...takeForStroke({
      title: 'Get ready to stroke {tag} by its signal',
      how: 'Signal from {signalLow} to {signalHigh}; rising signal {risingSignal} the valve.',
      bring: [
        'Bring a signal source for this valve, or have the operator on the radio to set the output.',
        'Bring a supply gauge, a gauge for the actuator and a travel indicator.',
      ],
      next: 'supplyRead',
    }),
    supplyRead: readSupply({
      phase: 'air',
      ways: {
        inside: { to: 'strokeFound' },
        low: { to: 'supplyOut' },
        high: { to: 'supplyOut' },
        'no range': { to: 'strokeFound' },
      },
      makeSafe,
    }),
    supplyOut: supplyWrong({
      phase: 'air',
      again: 'supplyRead',
      goOn: 'strokeFound',
      leave: 'nextPerson',
      makeSafe,
    }),
    strokeFound: strokeBySignal({
      phase: 'stroke',
      title: 'Stroke it by its signal, up and down',
      ways: {
        inside: { to: 'airAtHalf' },
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
        goOn: { label: 'Leave it so', to: 'airAtHalf', reason: true },
      },
      makeSafe,
    },
    strokeOutside: {
      kind: 'question',
      phase: 'stroke',
      title: 'It does not follow its signal inside its limits',
      how: 'All points off alike: zero. Off more with travel: span, linkage. Apart up and down: packing, linkage slack, positioner gain. Read the air on the actuator before anything is set.',
      choices: {
        air: { label: 'Read the air on the actuator first', to: 'airAtHalf' },
        again: { label: 'Stroke it again', to: 'strokeFound' },
        calibrate: {
          label: 'The positioner wants calibration: give it back, open that job',
          to: 'nextPerson',
          reason: true,
        },
        leave: { label: 'Leave it so', to: 'nextPerson', reason: true },
      },
      makeSafe,
    },
    airAtHalf: {
      kind: 'reading',
      phase: 'stroke',
      title: 'Read the air on the actuator at a travel that you read as well',
      how: 'A travel near the middle, standing still. Without flow the spring wants {actuatorAirHalf} at half travel; a cylinder has two pressures and is read by its positioner calibration.',
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
      choices: {
        again: { label: 'Read it', to: 'airAtHalf' },
        none: { label: 'There is no gauge there, or it is a cylinder', to: 'nextPerson', reason: true },
      },
      makeSafe,
    },
    airOff: {
      kind: 'question',
      phase: 'stroke',
      title: 'The actuator wants other air than its spring says',
      how: 'More: tight packing, a spring wound too far or a wrong one. Less: a slack or broken spring. A leaking diaphragm shows as a positioner that hisses all the time.',
      choices: {
        leave: { label: 'Write it down for the overhaul, and give it back', to: 'nextPerson', reason: true },
        again: { label: 'Read it again at another travel', to: 'airAtHalf' },
      },
      makeSafe,
    },
    ...giveBackStroked(),
  },
});
