import { endingOf } from '../../../procedures/calculations/name-endings.ts';
import type { Answer, Job } from '../../../procedures/job.ts';
import { say } from '../../../procedures/say.ts';

/** Why a line has the number and the verdict that it has: what was worked out then, and how. */
export interface WorkingView {
  readonly rows: readonly { readonly label: string; readonly value: string }[];
  readonly how: readonly string[];
  /** Id of the calculation that shows the whole working; blank for none. */
  readonly calculation: string;
}

interface Told {
  readonly label: string;
  readonly how?: string;
  readonly calculation?: string;
}

/** Numbers that rules leave in the entry, in the order in which they are read. What stands not here is for programs. */
const TOLD: Readonly<Record<string, Told>> = {
  safeLimitPa: {
    label: 'Limit for safe',
    how: 'Shown safe where the reading, with all that the gauge may be wrong by, is at most this limit.',
    calculation: 'gauge-uncertainty',
  },
  bodyTemperatureK: { label: 'Read on the body' },
  differencePa: {
    label: 'Difference of the two gauges',
    how: 'They agree where the difference is at most what both may be wrong by together.',
    calculation: 'gauge-uncertainty',
  },
  changePa: {
    label: 'Change between the two readings',
    how: 'Steady where the change is at most what the gauge may be wrong by.',
    calculation: 'gauge-uncertainty',
  },
  contactPa: {
    label: 'Seat contact at',
    how: 'The middle of the signal where the plug leaves its seat and where it touches it.',
  },
  breakawayPa: { label: 'From the middle to either' },
  expectedContactPa: {
    label: 'Contact that the turns should give',
    how: 'The contact before, and what the turns move it by: spring rate × turns × pitch / area.',
    calculation: 'seating-turns',
  },
  turns: { label: 'Turns' },
  signalShiftPa: { label: 'Signal that the turns are worth' },
  plugShiftM: { label: 'Plug moved by' },
  liftLeftM: { label: 'Lift left' },
  liftPercent: { label: 'Lift' },
  seatLoadN: { label: 'Seat load' },
  seatLoadNeedN: { label: 'Seat load that the class needs' },
  errorWorstPercent: {
    label: 'Largest error',
    how: 'The largest of the differences between wanted and read travel. Inside only where it stays within the limit with all that gauge and scale may be wrong by.',
    calculation: 'cycle-percent',
  },
  errorUncertaintyPercent: { label: 'Gauge and scale may be wrong by' },
  hysteresisPercent: { label: 'Hysteresis and dead band' },
  repeatabilityPercent: { label: 'Repeatability at mid-range' },
  frictionN: {
    label: 'Friction each way',
    how: 'Friction: area × half the gap between the signal going up and coming down, at one travel.',
    calculation: 'stroke-friction',
  },
  frictionUncertaintyN: { label: 'The gap may be wrong by' },
  benchSetShiftPa: {
    label: 'Shift of the spring',
    how: 'The middle of up and down, against the bench set of the sheet.',
    calculation: 'stroke-friction',
  },
  benchSetShiftUncertaintyPa: { label: 'The shift may be wrong by' },
  leakM3PerS: {
    label: 'Leak',
    how: 'Held against what the class of the seat allows, with what gauge and watch may be wrong by.',
  },
  uncertaintyM3PerS: { label: 'The leak may be wrong by' },
  allowedM3PerS: { label: 'Allowed by the class' },
  bubblesPerMin: { label: 'Bubbles in a minute' },
  bubblesAllowedPerMin: { label: 'Bubbles allowed in a minute' },
  fallByLeakPa: {
    label: 'Fall by a leak',
    how: 'What fell, less what the temperature took.',
    calculation: 'pressure-decay',
  },
  fallByTemperaturePa: { label: 'Fall by temperature' },
  fallUncertaintyPa: { label: 'The fall may be wrong by' },
  fallLimitPa: { label: 'Fall allowed' },
  deadBandPercent: {
    label: 'Dead band',
    how: 'The change of signal that turns the stem round, in percent of its span.',
    calculation: 'dead-band',
  },
  limitPercent: { label: 'Limit' },
  swingPa: { label: 'Swing of the pressure' },
  supplyPa: { label: 'Supply' },
  leastPa: { label: 'Least supply wanted' },
  uncertaintyPa: { label: 'The gauge may be wrong by' },
  sagPercent: { label: 'Sag of the supply' },
  wantedPa: { label: 'Wanted' },
  wantedNm: { label: 'Torque wanted' },
  expectedPa: { label: 'Expected' },
  runOutMaxM: { label: 'Run-out' },
  clearanceM: { label: 'Clearance' },
  clearanceMaxM: { label: 'Clearance allowed' },
  allowedPa: { label: 'Allowed' },
};

/**
 * The working behind a folded line, from what its entry keeps: what was decided stays told as it was decided.
 * @returns null where the line rests on no number
 */
export function lineWorking({ figures }: Pick<Answer, 'figures'>, { sheet }: Job): WorkingView | null {
  const told = Object.entries(TOLD).flatMap(([name, of]) => {
    const value = figures[name];
    return typeof value === 'number' ? [{ name, value, of }] : [];
  });
  if (told.length === 0) return null;
  const inWords = (name: string, valueSi: number) => {
    const dimension = endingOf(name)?.dimension ?? (name === 'turns' ? 'turns' : 'ratio');
    return say({ valueSi, dimension, units: sheet.units });
  };
  return {
    rows: told.map(({ name, value, of }) => ({ label: of.label, value: inWords(name, value) })),
    how: told.flatMap(({ of }) => of.how ?? []),
    calculation: told.findLast(({ of }) => of.calculation !== undefined)?.of.calculation ?? '',
  };
}
