import { curveFitIndex } from './curve-fit.ts';
import { type Oscillation, oscillationOf } from './half-periods.ts';
import { relayFitIndex } from './relay-fit.ts';
import { type LoopSample, reachOf, withoutDrift } from './samples.ts';
import { shapeOnPosition } from './shape-on-position.ts';

/** Flow, pressure, most temperatures settle by themselves; a level goes on rising while more comes than leaves. */
export const LOOP_KINDS = ['settles', 'integrates'] as const;
export type LoopKind = (typeof LOOP_KINDS)[number];

/** Why a record says nothing; `agree` where two methods do and it says something. */
export type LoopReason =
  | 'agree'
  | 'disagree'
  | 'one method'
  | 'open'
  | 'no swing'
  | 'few periods'
  | 'not regular'
  | 'too coarse'
  | 'gaps'
  | 'at its limit';

export type Says = 'sticks' | 'does not' | 'open';

export interface LoopVerdict {
  readonly verdict: 'sticks' | 'no sign' | 'no verdict';
  readonly reason: LoopReason;
  readonly periodS: number | null;
  /** Highest less lowest controller output. */
  readonly swingPercent: number;
  readonly regularity: number | null;
  readonly halfPeriods: number;
  readonly curveFit: number | null;
  readonly relayFit: number | null;
  readonly shape: number | null;
}

/** Smallest swing of the output that is looked at: below it a valve need not move. Judgement. */
const SWING_LEAST_PERCENT = 0.5;
/** Half periods that a regular swing must show: judgement. */
const HALVES_LEAST = 6;
/** Samples in a half period; the methods want so many (common practice). */
const SAMPLES_A_HALF = 10;
/** Times the usual interval that may lie between two rows: judgement. */
const GAP_TIMES = 5;
/** Share of the rows in which the output may stand at the end of its range: judgement. */
const AT_LIMIT_SHARE = 0.05;

/**
 * Does the valve stick? Two published methods must agree, and none may say otherwise; else there is no verdict. Which
 * methods a record allows depends on what it holds: the shape of output (or, where the process integrates, of process
 * value), the shape of the error, and output against position. One record never proves a fault: a field test does.
 */
export function judgeLoop(samples: readonly LoopSample[], kind: LoopKind): LoopVerdict {
  const output = withoutDrift(samples.map((one) => one.outputPercent));
  const error = withoutDrift(samples.map((one) => one.process - (one.setPoint ?? 0)));
  const swing = oscillationOf(output);
  const eachS = usualStepS(samples);
  const seen = {
    periodS: swing.halfPeriods > 1 ? swing.periodSamples * eachS : null,
    swingPercent: reachOf(samples.map((one) => one.outputPercent)),
    regularity: swing.halfPeriods > 2 ? swing.regularity : null,
    halfPeriods: swing.halfPeriods,
  };
  const unfit = unfitBecause(samples, { swing, swingPercent: reachOf(output), eachS });
  if (unfit !== null)
    return { verdict: 'no verdict', reason: unfit, ...seen, curveFit: null, relayFit: null, shape: null };
  const indices = {
    curveFit: curveFitIndex(kind === 'settles' ? output : error),
    // Behind an integral the error of a sticking valve and of a swinging one look alike to a relay.
    relayFit: kind === 'settles' ? relayFitIndex(error) : null,
    shape: positionShape(samples, swing),
  };
  return { ...together(saysOf(indices)), ...seen, ...indices };
}

type Indices = Pick<LoopVerdict, 'curveFit' | 'relayFit' | 'shape'>;

/** Limits of the methods, each by its source; of the last the paper gives the upper one alone, the lower is judgement. */
export const LOOP_LIMITS = {
  curveFit: { sticksFrom: 0.6, notTo: 0.4 },
  relayFit: { sticksFrom: 0.21, notTo: -0.21 },
  shape: { sticksFrom: 0.25, notTo: 0.1 },
} as const satisfies Readonly<Record<keyof Indices, Limits>>;

interface Limits {
  readonly sticksFrom: number;
  readonly notTo: number;
}

/** What each method says by its published limits; null where the record does not allow it. */
export function saysOf(indices: Indices): readonly (Says | null)[] {
  return (['curveFit', 'relayFit', 'shape'] as const).map((name) => said(indices[name], LOOP_LIMITS[name]));
}

function said(value: number | null, { sticksFrom, notTo }: Limits): Says | null {
  if (value === null) return null;
  return value >= sticksFrom ? 'sticks' : value <= notTo ? 'does not' : 'open';
}

function together(says: readonly (Says | null)[]): Pick<LoopVerdict, 'verdict' | 'reason'> {
  const count = (what: Says) => says.filter((one) => one === what).length;
  const [sticks, doesNot] = [count('sticks'), count('does not')];
  if (sticks > 0 && doesNot > 0) return { verdict: 'no verdict', reason: 'disagree' };
  if (sticks >= 2) return { verdict: 'sticks', reason: 'agree' };
  if (doesNot >= 2) return { verdict: 'no sign', reason: 'agree' };
  const made = says.filter((one) => one !== null).length;
  return { verdict: 'no verdict', reason: made < 2 ? 'one method' : 'open' };
}

function unfitBecause(
  samples: readonly LoopSample[],
  of: { readonly swing: Oscillation; readonly swingPercent: number; readonly eachS: number },
): LoopReason | null {
  const longestS = samples.reduce(
    (most, { timeS }, at) => Math.max(most, at === 0 ? 0 : timeS - (samples[at - 1]?.timeS ?? timeS)),
    0,
  );
  if (of.swingPercent < SWING_LEAST_PERCENT) return 'no swing';
  if (longestS > GAP_TIMES * of.eachS) return 'gaps';
  const atLimit = samples.filter(({ outputPercent }) => outputPercent <= 0 || outputPercent >= 100).length;
  if (atLimit > AT_LIMIT_SHARE * samples.length) return 'at its limit';
  if (of.swing.halfPeriods < HALVES_LEAST) return 'few periods';
  if (of.swing.regularity <= 1) return 'not regular';
  return of.swing.periodSamples < 2 * SAMPLES_A_HALF ? 'too coarse' : null;
}

/** The interval that half of the rows keep. */
function usualStepS(samples: readonly LoopSample[]): number {
  const steps = samples
    .slice(1)
    .map(({ timeS }, at) => timeS - (samples[at]?.timeS ?? timeS))
    .sort((a, b) => a - b);
  return steps[Math.floor(steps.length / 2)] ?? 0;
}

function positionShape(samples: readonly LoopSample[], { periodSamples }: Oscillation): number | null {
  const position = samples.flatMap(({ positionPercent }) =>
    positionPercent === null ? [] : [positionPercent],
  );
  if (position.length < samples.length) return null;
  const output = samples.map((one) => one.outputPercent);
  return shapeOnPosition({ output, position, every: Math.max(1, Math.round(periodSamples / 20)) });
}
