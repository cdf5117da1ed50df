import { signalAtPercent } from './calculations/signal-travel.ts';
import { format, preferredUnit } from './calculations/units.ts';
import { actuatorAirPa, SIGNAL_CURRENT } from './commissioning-figures.ts';
import { cylinderExpected } from './cylinder-balance.ts';
import type { Figure } from './figure.ts';
import type { Job } from './job.ts';
import { STEP_FROM_PERCENT, STEP_TO_PERCENT, stepTravels } from './step-plan.ts';
import type { ValveSheet } from './valve-sheet/sheet.ts';

/** The widest dead band of a valve with its positioner, in percent of the signal (GB/T 4213, from memory). */
const DEAD_BAND_LIMIT_PERCENT = 1;

/** What a step may go past its end, in percent of the step (common practice, no source). */
export const OVERSHOOT_LIMIT_PERCENT = 20;

/** Never wider than hysteresis and dead band together may be by the sheet. */
export function deadBandLimit({ hysteresisTolerancePercent }: ValveSheet): {
  readonly percent: number;
  readonly because: string;
} {
  return hysteresisTolerancePercent < DEAD_BAND_LIMIT_PERCENT
    ? {
        percent: hysteresisTolerancePercent,
        because: 'what the sheet gives hysteresis and dead band together',
      }
    : {
        percent: DEAD_BAND_LIMIT_PERCENT,
        because: 'the mildest grade of a valve with positioner, from memory',
      };
}

/** Span of the signal that the positioner takes: A where it is a current, else Pa. */
export function signalSpan(sheet: ValveSheet): number {
  return sheet.positioner === 'electropneumatic'
    ? SIGNAL_CURRENT.highA - SIGNAL_CURRENT.lowA
    : sheet.signalHighPa - sheet.signalLowPa;
}

function signalAt(percent: number): Figure['of'] {
  return ({ sheet }) => {
    if (sheet.positioner === 'electropneumatic') {
      const { lowA: rangeLow, highA: rangeHigh } = SIGNAL_CURRENT;
      return format({ valueSi: signalAtPercent({ percent, rangeLow, rangeHigh }), unit: 'mA' });
    }
    const { signalLowPa: rangeLow, signalHighPa: rangeHigh, units } = sheet;
    const valueSi = signalAtPercent({ percent, rangeLow, rangeHigh });
    return format({ valueSi, unit: preferredUnit('pressure', units) });
  };
}

/** The dead band allowed, in the unit of the signal. */
function deadBandInSignal({ sheet }: Job): string {
  const valueSi = (deadBandLimit(sheet).percent / 100) * signalSpan(sheet);
  return format({
    valueSi,
    unit: sheet.positioner === 'electropneumatic' ? 'mA' : preferredUnit('pressure', sheet.units),
  });
}

/** What a rule worked out last, wherever it stands: as found until there is one as left. */
export function judgedFigure({ answers }: Pick<Job, 'answers'>, name: string): number | null {
  const answer = answers.findLast(({ figures, superseded }) => !superseded && name in figures);
  const value = answer?.figures[name];
  return typeof value === 'number' ? value : null;
}

const text = (label: string, of: Figure['of']): Figure => ({ label, dimension: 'text', of });
const percent = (label: string, of: Figure['of']): Figure => ({ label, dimension: 'percent', of });
const force = (label: string, of: Figure['of']): Figure => ({ label, dimension: 'force', of });
const judged =
  (name: string): Figure['of'] =>
  (job) =>
    judgedFigure(job, name) ?? 'not read';

/** Travel at a share of the step, as the indicator shows it. */
function travelAt(take: keyof ReturnType<typeof stepTravels>): Figure['of'] {
  return ({ sheet }) => {
    const openPercent = stepTravels(sheet)[take];
    const valueSi = (openPercent / 100) * sheet.travelM;
    const length = format({ valueSi, unit: preferredUnit('length', sheet.units) });
    return `${openPercent.toFixed(1)} %, ${length}`;
  };
}

/** A force as the pressure on the piston that makes it. */
function asPressurePa(job: Job, take: 'restAllowedN' | 'movingLeastN'): number {
  const expected = cylinderExpected(job);
  return expected[take] / expected.pistonAreaM2;
}

/** By how much the loaded side wins; nothing can be said where the body pressure moves the stem by itself. */
function movingWords(job: Job): string {
  if (job.sheet.springHeldBy !== 'no spring')
    return 'and its spring, counted in by the sheet, decides by how much; an end that nothing feeds has no gauge and stays blank';
  const leastPa = asPressurePa(job, 'movingLeastN');
  const unit = preferredUnit('pressure', job.sheet.units);
  return leastPa > 0
    ? `by ${format({ valueSi: leastPa, unit })} for the packing, more the faster it moves`
    : 'or nearly so where the body pressure helps';
}

/** What the air should be at half travel; a cylinder has two, and is read by its positioner calibration. */
function springWants({ sheet }: Job): string {
  const valueSi = actuatorAirPa(sheet, 50);
  return valueSi === null
    ? 'A cylinder has two pressures: they are read when its positioner is calibrated.'
    : `Without flow the spring wants ${format({ valueSi, unit: preferredUnit('pressure', sheet.units) })} at half travel.`;
}

/** What is judged of a positioner, and what it is judged by. */
export const POSITIONER_FIGURES = {
  strokeError: percent('largest error, of travel', judged('errorWorstPercent')),
  strokeHysteresis: percent('up and down apart by', judged('hysteresisPercent')),
  strokeZero: percent('zero off by', judged('zeroErrorPercent')),
  strokeSpan: percent('stroke too long, with a minus too short, by', judged('spanErrorPercent')),
  strokeLine: percent('off the straight line by', judged('linearityPercent')),
  strokeUncertainty: percent('the indicator cannot tell less than', judged('errorUncertaintyPercent')),
  signalMiddle: text('signal at the middle', signalAt(50)),
  deadBandLimit: text('dead band, at most', ({ sheet }) => `${deadBandLimit(sheet).percent} %`),
  deadBandSignal: text('that is of the signal', deadBandInSignal),
  deadBandBecause: text('by', ({ sheet }) => deadBandLimit(sheet).because),
  deadBandFound: percent('dead band', judged('deadBandPercent')),
  stepFrom: text('signal before the step', signalAt(STEP_FROM_PERCENT)),
  stepTo: text('signal after it', signalAt(STEP_TO_PERCENT)),
  stepFromTravel: text('travel before the step', travelAt('fromPercent')),
  stepToTravel: text('travel after it', travelAt('toPercent')),
  springWants: text('what the spring wants', springWants),
  signalOffBy: percent('signal off by, of its span', judged('signalErrorPercent')),
  airExpected: { label: 'the spring wants', dimension: 'pressure', of: judged('expectedPa') },
  airDiffers: { label: 'the air differs by', dimension: 'pressure', of: judged('differencePa') },
  airAllowed: { label: 'friction and tolerance explain', dimension: 'pressure', of: judged('allowedPa') },
  firstTime: text('time to the first mark', () => 'T63'),
  secondTime: text('time to the second', () => 'T86'),
  stepFirstTravel: text('T63 is taken at', travelAt('t63Percent')),
  stepSecondTravel: text('T86 is taken at', travelAt('t86Percent')),
  overshootLimit: percent('overshoot, at most, common practice', () => OVERSHOOT_LIMIT_PERCENT),
  overshootFound: percent('overshoot, of the step', judged('overshootPercent')),
  cylinderRest: {
    label: 'sides may differ at rest by',
    dimension: 'pressure',
    of: (job) => asPressurePa(job, 'restAllowedN'),
  },
  cylinderMoving: text('loaded side higher while it moves', movingWords),
  cylinderRestAllowed: force(
    'packing and body pressure explain',
    (job) => cylinderExpected(job).restAllowedN,
  ),
  cylinderRestFound: force('at rest the sides leave', judged('restN')),
  cylinderMovingFound: force('moving, the loaded side wins by', judged('movingN')),
} as const satisfies Record<string, Figure>;
