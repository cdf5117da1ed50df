import { anywhereControl, anywhereFrame, giveBackAnywhere, takeAnywhere } from '../phases/bench-air.ts';
import { bypassedInLineAt, takeOverOnBypass } from '../phases/bypass-taken-over.ts';
import { STEM_MOVES, yesNo } from '../phases/common.ts';
import { supplyFirst } from '../phases/own-stroke.ts';
import { CYCLE_POINTS, pointField } from '../rules/own-stroke.ts';
import type { QuantityField, Step, Way } from '../vocabulary.ts';
import { procedure } from '../vocabulary.ts';

const makeSafe = 'haltStroke' as const;

const BRING = [
  'Bring a loop calibrator that is fit for the area.',
  'Bring a gauge for the output and one for the supply.',
  'Have the area permit for opening a terminal box, where it asks for one.',
] as const;

const CURRENTS = {
  0: 'currentLow',
  25: 'currentQuarter',
  50: 'currentHalf',
  75: 'currentThreeQuarters',
  100: 'currentHigh',
} as const;

function outputAt(point: (typeof CYCLE_POINTS)[number]): QuantityField {
  return {
    name: pointField(point, 'output'),
    label: `Output at {${CURRENTS[point.percent]}}, ${point.direction === 'up' ? 'going up' : 'coming down'}`,
    type: 'quantity',
    dimension: 'pressure',
    gauge: 'signalGauge',
    optional: true,
  };
}

function fivePoints<const Id extends string>(
  title: string,
  ways: Readonly<Record<'inside' | 'outside' | 'too close' | 'not all read', Way<Id>>>,
): Step<Id | 'haltStroke'> {
  return {
    kind: 'reading',
    phase: 'points',
    title,
    how: 'Meter in series at the terminals, output on a gauge of its own. Come to each current from the side named. At most {converterTolerance} of the span off.',
    why: 'Up and down at one current show what the converter itself adds to the hysteresis of the loop.',
    action: 'strokeByOwnAir',
    caution: STEM_MOVES,
    asks: CYCLE_POINTS.map(outputAt),
    judge: { rule: 'converter' },
    ways,
    makeSafe,
  };
}

/** An I/P converter at five points, up and down, in its place. */
export const converterCalibration = procedure({
  id: 'converter-calibration',
  title: 'Converter calibration',
  energyControl: anywhereControl(
    'To check and set an I/P converter on its valve, in the line or on the bench, five points up and down. Its electric cover is opened only by the rules of the area; low-voltage loop current is no shock, but may be a spark.',
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
        'It is done on the bench as well. The card after five points says by how much it is off, and what it may be off.',
    },
    {
      letter: 'D',
      date: '2026-11-26',
      change:
        'On the bench let off both ends of a cylinder before a hose comes off. Where a card is answered no, the next one says how it is put right and what else may be done: none leaves only a stop.',
    },
    {
      letter: 'E',
      date: '2026-11-26',
      change: 'It may go on where a job that looked for the fault left the valve on its bypass.',
    },
    {
      letter: 'F',
      date: '2026-11-26',
      change:
        'Zero and span are set under the warning that the stem moves. Cards that gave no reason say why they stand open.',
    },
    {
      letter: 'G',
      date: '2026-11-26',
      change:
        'Stay on the radio with the operator while the bypass is shut. Hands and tools out of the yoke before the loop is given back.',
    },
  ],
  ...anywhereFrame([
    { id: 'air', title: 'Air' },
    { id: 'points', title: 'Five points' },
  ]),
  takesOver: { bypassed: bypassedInLineAt('takenOver') },
  steps: {
    ...takeAnywhere({
      title: 'Get ready to calibrate the converter of {tag}',
      how: 'Current from {currentLow} to {currentHigh} gives {signalLow} to {signalHigh} of air where the valve has a pneumatic signal.',
      bring: BRING,
      next: 'supplyRead',
    }),
    ...takeOverOnBypass({ what: 'the calibration of its converter', bring: BRING }),
    ...supplyFirst({ phase: 'air', next: 'exhaust', makeSafe }),
    exhaust: {
      kind: 'reading',
      phase: 'air',
      title: 'Look at exhaust and vent of the converter',
      how: 'An exhaust that is painted over, iced or full of insects shifts every point.',
      why: 'A plugged exhaust makes a sound converter slow.',
      asks: [yesNo('exhaustFree', 'Exhaust and vent are free, no oil in them')],
      judge: { rule: 'allYes', with: { fields: 'exhaustFree' } },
      ways: { yes: { to: 'pointsFound' }, no: { to: 'exhaustBlocked' } },
      makeSafe,
    },
    exhaustBlocked: {
      kind: 'question',
      phase: 'air',
      title: 'The exhaust is not free',
      how: 'Oil or water in it comes from the air: the air set wants looking at too.',
      choices: {
        cleaned: { label: 'Cleaned: look again', to: 'exhaust' },
        leave: { label: 'It cannot be cleaned here: give it back', to: 'nextPerson', reason: true },
      },
      makeSafe,
    },
    pointsFound: fivePoints('Read five points up and down, as found', {
      inside: { to: 'nextPerson' },
      outside: { to: 'setConverter' },
      'too close': { to: 'pointsClose' },
      'not all read': { to: 'pointsNotRead' },
    }),
    pointsNotRead: {
      kind: 'question',
      phase: 'points',
      title: 'Not every point was read',
      choices: {
        again: { label: 'Read them again', to: 'pointsFound' },
        dead: { label: 'It gives no output there: it is outside', to: 'setConverter' },
      },
      makeSafe,
    },
    pointsClose: {
      kind: 'question',
      phase: 'points',
      title: 'Too close for this gauge to tell',
      how: 'It is no fault of the converter: a finer gauge may tell.',
      choices: {
        again: { label: 'Read them again, on a finer gauge', to: 'pointsFound' },
        goOn: { label: 'Leave it so', to: 'nextPerson', reason: true },
      },
      makeSafe,
    },
    setConverter: {
      kind: 'question',
      phase: 'points',
      title: 'The converter is outside its limits',
      how: 'Zero at the low end, then span at the high end, in turn until both stand: one moves the other. What is off in the middle only is not cured by either.',
      caution: STEM_MOVES,
      shows: ['strokeError', 'strokeHysteresis', 'converterTolerance'],
      choices: {
        set: { label: 'Zero and span set by its manual: read it again', to: 'pointsLeft' },
        leave: {
          label: 'It does not set, or drifts: give it back, renew it',
          to: 'nextPerson',
          reason: true,
        },
      },
      makeSafe,
    },
    pointsLeft: fivePoints('Read five points up and down, as left', {
      inside: { to: 'nextPerson' },
      outside: { to: 'setConverter' },
      'too close': { to: 'pointsClose' },
      'not all read': { to: 'pointsLeftNotRead' },
    }),
    pointsLeftNotRead: {
      kind: 'question',
      phase: 'points',
      title: 'Not every point was read as left',
      how: 'A point that was passed over is come to from the same side as the others, never from beyond.',
      choices: { again: { label: 'Read them again', to: 'pointsLeft' } },
      makeSafe,
    },
    ...giveBackAnywhere(),
  },
});
