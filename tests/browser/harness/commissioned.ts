/** Commissioning jobs of the demo plant that the long run clicks whole, with what is read on each. */
import { CYCLE_POINTS, pointField } from '../../../procedures/rules/own-stroke.ts';
import { GEAR_IN_PSI } from '../../../server/demo/earlier-jobs.ts';
import type { AnyJob } from './do-job.ts';

type Read = Pick<AnyJob, 'tag' | 'procedure' | 'place' | 'overrides' | 'gear'>;

const travels = (of: (percent: number) => number) =>
  Object.fromEntries(
    CYCLE_POINTS.map((point) => [pointField(point, 'travel'), `${Math.min(100, of(point.percent))} %`]),
  );

const AS_LEFT = {
  strokeLeft: travels((percent) => percent),
  stepIt: {
    stepFromM: '45 %',
    stepFurthestM: '55.5 %',
    stepRestM: '55 %',
    stepT63S: '0.8 s',
    stepT86S: '1.3 s',
  },
};

/** A positioner that is found eight percent high, and set. */
export const POSITIONER_CALIBRATED: Read = {
  tag: 'LV-201',
  procedure: 'positioner-calibration',
  place: 'line',
  overrides: {
    supplyRead: { supplyReadPa: '27 psi' },
    strokeFound: travels((percent) => percent + 8),
    deadBand: { turnedAtPa: '9 psi', movedDownAtPa: '8.93 psi', movedUpAtPa: '8.98 psi' },
    ...AS_LEFT,
  },
};

/** A cylinder on the bench, both sides of it read. */
export const CYLINDER_CALIBRATED: Read = {
  tag: 'FV-202',
  procedure: 'positioner-calibration',
  place: 'bench',
  gear: { ...GEAR_IN_PSI, signalGauge: 'G-13' },
  overrides: {
    supplyRead: { supplyReadPa: '90 psi' },
    strokeFound: travels((percent) => percent),
    cylinderGauges: {
      topMovingPa: '40 psi',
      bottomMovingPa: '46 psi',
      topRestPa: '43 psi',
      bottomRestPa: '43.4 psi',
    },
    benchAirOff: { supplyBeforePa: '90 psi', supplyAfterPa: '0 psi' },
    ...AS_LEFT,
  },
};

/** Both ends of a bench set where two seating turns put them. */
export const BENCH_SET_READ: Read = {
  tag: 'FV-101',
  procedure: 'bench-set',
  place: 'line',
  overrides: {
    benchFound: {
      moves: 'yes',
      plugJoined: 'yes',
      benchLowUpPa: '4.9 psi',
      benchHighUpPa: '15.3 psi',
      benchHighDownPa: '14.7 psi',
      benchLowDownPa: '4.3 psi',
      benchTravelM: '0.65 in',
    },
  },
};
