/** Strokes, signals and steps. */
import { FIGURES } from '../../../../procedures/quantities.ts';
import { CYCLE_POINTS, pointField } from '../../../../procedures/rules/own-stroke.ts';
import type { Overrides } from '../../../builders/answers.ts';
import { PSI_PA } from '../../../builders/gear.ts';
import { aSheetOf } from '../../../builders/sheets.ts';
import {
  at,
  averages,
  figure,
  judged,
  POSITIONER,
  points,
  psi,
  READ,
  type Row,
  SUPPLY,
  travels,
} from './row.ts';

const positioner =
  (to: string, overrides: Overrides = {}) =>
  () =>
    at('positioner-calibration', {
      sheet: POSITIONER,
      overrides: { ...SUPPLY, strokeFound: travels, ...overrides },
      to,
    });

export const STROKES: readonly Row[] = [
  {
    what: 'largest error of a stroke by the signal',
    job: positioner('deadBand'),
    card: (job) => judged(job, 'strokeFound', 'errorWorstPercent'),
    page: ['cycle-percent', () => ({ points, reverse: 'no' }), 'errorMaxPercent'],
  },
  {
    what: 'hysteresis of a stroke by the signal',
    job: positioner('deadBand'),
    card: (job) => figure(job, 'strokeHysteresis'),
    page: ['cycle-percent', () => ({ points, reverse: 'no' }), 'hysteresisPercent'],
  },
  {
    what: 'zero',
    job: positioner('deadBand'),
    card: (job) => figure(job, 'strokeZero'),
    page: [
      'zero-and-span',
      () => ({ points: averages, reverse: 'no', heldPercent: '0.5 %' }),
      'zeroErrorPercent',
    ],
  },
  {
    what: 'span',
    job: positioner('deadBand'),
    card: (job) => figure(job, 'strokeSpan'),
    page: [
      'zero-and-span',
      () => ({ points: averages, reverse: 'no', heldPercent: '0.5 %' }),
      'spanErrorPercent',
    ],
  },
  {
    what: 'the straight line',
    job: positioner('deadBand'),
    card: (job) => figure(job, 'strokeLine'),
    page: ['cycle-percent', () => ({ points, reverse: 'no' }), 'terminalPercent'],
  },
  {
    what: 'air on the actuator at 30 % travel',
    job: () =>
      at('positioner-stroke', {
        sheet: POSITIONER,
        overrides: {
          ...SUPPLY,
          strokeFound: travels,
          airAtHalf: { actuatorAirPa: '6.6 psi', airTravelM: '30 %' },
        },
        to: 'nextPerson',
      }),
    card: (job) => judged(job, 'airAtHalf', 'expectedPa'),
    page: [
      'signal-at-percent',
      () => ({ percent: '30 %', rangeLow: '3 psi', rangeHigh: '15 psi', reverse: 'no' }),
      'signalPa',
    ],
    known: [6.6 * PSI_PA, 'by hand: 3 and 0.3 of 12 psi', 3],
  },
  {
    what: 'dead band',
    job: positioner('stepIt', {
      deadBand: { turnedAtPa: '9 psi', movedDownAtPa: '8.91 psi', movedUpAtPa: '8.97 psi' },
    }),
    card: (job) => figure(job, 'deadBandFound'),
    page: [
      'dead-band',
      () => ({ lastMovementUpPa: '9 psi', firstMovementDownPa: '8.91 psi', inputSpanPa: '12 psi' }),
      'deadBandPercent',
    ],
    known: [0.75, 'by hand: 0.09 of 12 psi', 9],
  },
  {
    what: 'overshoot of the step',
    job: positioner('nextPerson', {
      stepIt: { stepFromM: '45 %', stepFurthestM: '56.5 %', stepRestM: '55 %' },
    }),
    card: (job) => figure(job, 'overshootFound'),
    page: [
      'step-response',
      () => ({ samples: '0; 45\n1; 45\n2; 56.5\n3; 55\n4; 55', stepTimeS: '1 s' }),
      'overshootPercent',
    ],
    known: [15, 'by hand: one and a half past ten', 6],
  },
  {
    // A travel that runs a percent a second passes the mark as many seconds after the step as it is percents from it.
    what: 'the travel at which T63 is taken',
    job: positioner('stepIt'),
    card: (job) => Number.parseFloat(String(FIGURES.stepFirstTravel.of(job))) - 45,
    page: ['step-response', () => ({ samples: '0; 45\n5; 50\n10; 55', stepTimeS: '0 s' }), 't63S'],
    known: [6.32, '1 - 1/e (ISA-75.25.01, from memory)', 1],
  },
  {
    what: 'the travel at which T86 is taken',
    job: positioner('stepIt'),
    card: (job) => Number.parseFloat(String(FIGURES.stepSecondTravel.of(job))) - 45,
    page: ['step-response', () => ({ samples: '0; 45\n5; 50\n10; 55', stepTimeS: '0 s' }), 't86S'],
    known: [8.65, '1 - 1/e² (ISA-75.25.01, from memory)', 1],
  },
  {
    what: 'signal at the valve behind a converter, off by',
    job: () =>
      at('positioner-stroke', {
        sheet: aSheetOf({ electricalV: '24', electricalPoint: 'EB-1' }),
        overrides: {
          ...SUPPLY,
          signalAtValve: {
            terminalLowA: '4 mA',
            valveLowPa: '3 psi',
            terminalMiddleA: '10.4 mA',
            valveMiddlePa: '8.1 psi',
            terminalHighA: '20 mA',
            valveHighPa: '15 psi',
          },
        },
        to: 'signalOff',
      }),
    card: (job) => 8.1 * PSI_PA - (figure(job, 'signalOffBy') / 100) * 12 * PSI_PA,
    page: [
      'current-to-air',
      () => ({ signal: '10.4 mA', inLow: '4 mA', inHigh: '20 mA', outLow: '3 psi', outHigh: '15 psi' }),
      'signalPa',
    ],
    known: [7.8 * PSI_PA, 'a derived case: 10.4 mA through a linear converter to 3-15 psi', 3],
  },
  {
    what: 'converter at five points, off the most',
    job: () =>
      at('converter-calibration', {
        sheet: aSheetOf({
          electricalV: '24',
          electricalPoint: 'EB-1',
          supplyLowPa: '18',
          supplyHighPa: '22',
        }),
        overrides: {
          ...SUPPLY,
          pointsFound: Object.fromEntries(
            CYCLE_POINTS.map((point, index) => [
              pointField(point, 'output'),
              psi(3 + (12 * (READ[index] ?? 0)) / 100),
            ]),
          ),
        },
        to: 'setConverter',
      }),
    card: (job) => figure(job, 'strokeError'),
    page: ['cycle-percent', () => ({ points, reverse: 'no' }), 'errorMaxPercent'],
  },
];
