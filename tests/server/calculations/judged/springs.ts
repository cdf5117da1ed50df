/** Both ends of a bench set, and what follows from them. */
import { FIGURES } from '../../../../procedures/quantities.ts';
import { PSI_PA } from '../../../builders/gear.ts';
import { aSheet } from '../../../builders/sheets.ts';
import {
  area,
  at,
  figure,
  IN2_M2,
  INCH_M,
  judged,
  LBF_N,
  metres,
  newtons,
  pa,
  type Row,
  type Texts,
} from './row.ts';

const ENDS = {
  moves: 'yes',
  plugJoined: 'yes',
  benchLowUpPa: '5.2 psi',
  benchHighUpPa: '15.6 psi',
  benchHighDownPa: '14.4 psi',
  benchLowDownPa: '4 psi',
  benchTravelM: '0.65 in',
};
const bench = (benchFound: Texts, to: string) => () =>
  at('bench-set', { sheet: aSheet(), overrides: { benchFound }, to });

export const SPRING: readonly Row[] = [
  {
    what: 'friction at the ends of a bench set',
    job: bench(ENDS, 'lineExpected'),
    card: (job) => judged(job, 'benchFound', 'frictionN'),
    page: [
      'friction-two-pressures',
      () => ({ effectiveAreaM2: '100 in2', risingPa: '15.6 psi', fallingPa: '14.4 psi' }),
      'frictionN',
    ],
    known: [60 * LBF_N, 'a derived case: 1.2 psi between up and down on 100 in² are 60 lbf', 3],
  },
  {
    what: 'upper end of a bench set without friction',
    job: bench(ENDS, 'lineExpected'),
    card: (job) => judged(job, 'benchFound', 'benchHighFoundPa'),
    page: [
      'friction-two-pressures',
      () => ({ effectiveAreaM2: '100 in2', risingPa: '15.6 psi', fallingPa: '14.4 psi' }),
      'balancedPa',
    ],
    known: [15 * PSI_PA, 'by hand: their middle', 3],
  },
  {
    what: 'spring rate from both ends',
    job: bench(ENDS, 'lineExpected'),
    card: (job) => judged(job, 'benchFound', 'springRateFoundNPerM'),
    page: [
      'bench-set',
      () => ({
        effectiveAreaM2: '100 in2',
        benchSetLowPa: '4.6 psi',
        benchSetHighPa: '15 psi',
        travelM: '0.65 in',
      }),
      'springRateNPerM',
    ],
    known: [(1600 * LBF_N) / INCH_M, 'a derived case: 12 psi over 0.75 in on 100 in² are 1600 lbf/in', 1],
  },
  {
    what: 'contact with the seat after two turns',
    job: bench(ENDS, 'lineExpected'),
    card: (job) =>
      judged(job, 'benchFound', 'benchLowFoundPa') - judged(job, 'benchFound', 'seatEndDifferencePa'),
    page: [
      'seating-turns',
      () => ({
        plugCloses: 'down',
        airAction: 'air-to-open',
        effectiveAreaM2: '100 in2',
        benchSetLowPa: '3 psi',
        benchSetHighPa: '15 psi',
        travelM: '0.75 in',
        springRateNPerM: '1600 lbf/in',
        threadPitchM: '0.05 in',
        turns: '2',
      }),
      'contactPa',
    ],
    known: [4.6 * PSI_PA, 'a derived case: two turns of 1/2-20 on 1600 lbf/in and 100 in²', 3],
  },
  {
    what: 'turns of the adjuster',
    job: bench(
      {
        ...ENDS,
        benchHighUpPa: '16.6 psi',
        benchHighDownPa: '15.4 psi',
        benchLowUpPa: '6.2 psi',
        benchLowDownPa: '5 psi',
      },
      'adjusterNote',
    ),
    card: (job) => figure(job, 'adjusterTurns'),
    page: [
      'adjuster-turns-wanted',
      () => ({
        springRateNPerM: '1600 lbf/in',
        effectiveAreaM2: '100 in2',
        threadPitchM: metres(INCH_M / 18),
        wantedShiftPa: '-1 psi',
      }),
      'turns',
    ],
    known: [1.125, 'by hand: 1600/18 lbf on 100 in² are 0.889 psi a turn', 4],
  },
  {
    what: 'first lift in the line, flow under the plug',
    job: bench(ENDS, 'lineExpected'),
    card: (job) =>
      Number.parseFloat(/([\d.]+) psi/.exec(String(FIGURES.shutEndInLine.of(job)))?.[1] ?? '') * PSI_PA,
    page: [
      'shut-end',
      ({ sheet }) => ({
        airAction: 'air-to-open',
        effectiveAreaM2: area(sheet.effectiveAreaM2),
        benchSetLowPa: pa(sheet.benchSetLowPa),
        benchSetHighPa: pa(sheet.benchSetHighPa),
        plugForceOpeningN: newtons(100 * PSI_PA * (Math.PI / 4) * IN2_M2),
        frictionN: newtons(50 * LBF_N),
        supplyPa: '15 psi',
        portDiameterM: '1 in',
      }),
      'firstLiftPa',
    ],
    // Said with two digits of a psi.
    known: [2.71 * PSI_PA, 'by hand: 3 and (50 - 78.5)/100 psi', -2],
  },
];
