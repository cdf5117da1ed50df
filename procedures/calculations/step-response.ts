import { CalcError } from './calc-error.ts';
import { ABOVE_ZERO, ANY_NUMBER, refuseCount, refuseOutside, ZERO_OR_MORE } from './checks.ts';
import { most } from './numbers.ts';

export interface Sample {
  readonly timeS: number;
  readonly travelPercent: number;
}

export interface StepResponse {
  readonly initialPercent: number;
  readonly finalPercent: number;
  /** With sign; results differ with the size of the step, so it is always stated. */
  readonly stepPercent: number;
  /** From the input step to the first movement that stands out. */
  readonly deadTimeS: number;
  /** From the input step to 63.2 % and 86.5 % of the change; both hold the dead time. */
  readonly t63S: number;
  readonly t86S: number;
  readonly peakPercent: number;
  readonly overshootPercent: number;
}

/** 1 − 1/e and 1 − 1/e². */
const SHARE_63 = 1 - Math.exp(-1);
const SHARE_86 = 1 - Math.exp(-2);

/** More samples than a recorder gives for one step. */
const MOST_SAMPLES = 100_000;

/**
 * Dead time, T63, T86 and overshoot from a recorded step.
 *
 * Shape: samples and the moment of the input step in; times counted from that moment out, linear between samples.
 * Valid: the first sample is the start, the last the settled end; the step is large against the noise.
 * @param samples      time and travel, times rising; from 3 to 100 000
 * @param stepTimeS    when the input stepped, on the samples' clock; not before the first, before the last
 * @param noisePercent change of travel that counts as movement, in percent of travel; 0 or more, below the step
 * @returns start, end and size of the step, dead time, T63, T86, peak and overshoot in percent of the step
 * @throws CalcError CALC-001 or CALC-002 by the name of the input; CALC-004 if there are too few samples or times do
 *   not rise; CALC-006 if the travel ends where it began
 * @source [S-05] times from the input step, dead time included
 * @example stepResponse({ samples: [{ timeS: 0, travelPercent: 50 }, { timeS: 1.2, travelPercent: 50 },
 *   { timeS: 2.2, travelPercent: 60 }, { timeS: 4, travelPercent: 60 }], stepTimeS: 1, noisePercent: 0 })
 *   // { initialPercent: 50, finalPercent: 60, stepPercent: 10, deadTimeS: 0.2, t63S: 0.832121, t86S: 1.064665,
 *   //   peakPercent: 60, overshootPercent: 0 }
 */
export function stepResponse(input: {
  readonly samples: readonly Sample[];
  readonly stepTimeS: number;
  readonly noisePercent: number;
}): StepResponse {
  const { samples, stepTimeS, noisePercent } = input;
  const { first, last } = checkedEnds(samples);
  refuseOutside({ stepTimeS }, { atLeast: first.timeS, below: last.timeS });
  const stepPercent = last.travelPercent - first.travelPercent;
  if (Math.abs(stepPercent) < 1e-9) {
    throw new CalcError({
      code: 'CALC-006',
      name: 'samples',
      value: stepPercent,
      range: 'a step that moves the travel',
      unit: '%',
    });
  }
  refuseOutside({ noisePercent }, { atLeast: 0, below: Math.abs(stepPercent) * SHARE_63 });
  const shares = samples.map(({ timeS, travelPercent }) => ({
    timeS,
    share: (travelPercent - first.travelPercent) / stepPercent,
  }));
  const after = (share: number) => crossing({ shares, share, stepTimeS }) - stepTimeS;
  const peakShare = most(shares.map(({ share }) => share));
  return {
    initialPercent: first.travelPercent,
    finalPercent: last.travelPercent,
    stepPercent,
    deadTimeS: after(noisePercent / Math.abs(stepPercent)),
    t63S: after(SHARE_63),
    t86S: after(SHARE_86),
    peakPercent: first.travelPercent + peakShare * stepPercent,
    overshootPercent: overshootPercent({
      initialPercent: first.travelPercent,
      finalPercent: last.travelPercent,
      peakPercent: first.travelPercent + peakShare * stepPercent,
    }),
  };
}

/**
 * Overshoot in percent of the step.
 *
 * Shape: three numbers in, one out. 100 · (peak − final)/(final − initial)
 * Valid: the peak lies beyond the final value on the side of the step; otherwise there is no overshoot and it is 0.
 * @param initialPercent  before the step
 * @param finalPercent    settled after it; not the same
 * @param peakPercent     furthest value reached
 * @returns percent of the step, 0 or more
 * @throws CalcError CALC-001 by the name of the input; CALC-006 if the travel ends where it began
 * @source [S-05] overshoot
 * @example overshootPercent({ initialPercent: 40, finalPercent: 50, peakPercent: 52.1 }) // 21
 * @example overshootPercent({ initialPercent: 60, finalPercent: 50, peakPercent: 49.2 }) // 8
 */
export function overshootPercent(input: {
  readonly initialPercent: number;
  readonly finalPercent: number;
  readonly peakPercent: number;
}): number {
  const { initialPercent, finalPercent, peakPercent } = input;
  refuseOutside({ initialPercent, finalPercent, peakPercent }, ANY_NUMBER);
  const stepPercent = finalPercent - initialPercent;
  if (Math.abs(stepPercent) < 1e-9) {
    throw new CalcError({
      code: 'CALC-006',
      name: 'finalPercent',
      value: finalPercent,
      range: 'not the initial value',
      unit: '%',
    });
  }
  return Math.max(0, (100 * (peakPercent - finalPercent)) / stepPercent);
}

/**
 * T63 and T86 of a first-order lag behind a dead time.
 *
 * Shape: two times in, two out. T63 = dead time + τ; T86 = dead time + 2τ
 * Valid: a model to compare a record with; a sticky valve does not follow it.
 * @param deadTimeS      0 or more
 * @param timeConstantS  above 0
 * @returns both times from the input step
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-05] 1 − e⁻¹ = 63.2 % and 1 − e⁻² = 86.5 %
 * @example firstOrderTimes({ deadTimeS: 0.2, timeConstantS: 0.5 }) // { t63S: 0.7, t86S: 1.2 }
 */
export function firstOrderTimes(input: { readonly deadTimeS: number; readonly timeConstantS: number }): {
  readonly t63S: number;
  readonly t86S: number;
} {
  const { deadTimeS, timeConstantS } = input;
  refuseOutside({ deadTimeS }, ZERO_OR_MORE);
  refuseOutside({ timeConstantS }, ABOVE_ZERO);
  return { t63S: deadTimeS + timeConstantS, t86S: deadTimeS + 2 * timeConstantS };
}

/**
 * Stroking time against its limit.
 *
 * Shape: stroke, time and a limit in, mean speed and a yes or no out.
 * Valid: from the order to move until the stop is reached, air supply as in service.
 * @param travelM     stroke; above 0
 * @param strokeS     time taken; above 0
 * @param strokeSMax  longest allowed; above 0, or blank
 * @returns mean speed in m/s, and whether it is within the limit; null without one
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-05] stroking time
 * @example strokingTime({ travelM: 0.05, strokeS: 4, strokeSMax: 5 }) // { meanSpeedMPerS: 0.0125, withinLimit: true }
 */
export function strokingTime(input: {
  readonly travelM: number;
  readonly strokeS: number;
  readonly strokeSMax?: number | null;
}): { readonly meanSpeedMPerS: number; readonly withinLimit: boolean | null } {
  const { travelM, strokeS, strokeSMax = null } = input;
  refuseOutside({ travelM, strokeS }, ABOVE_ZERO);
  if (strokeSMax !== null) refuseOutside({ strokeSMax }, ABOVE_ZERO);
  return {
    meanSpeedMPerS: travelM / strokeS,
    withinLimit: strokeSMax === null ? null : strokeS <= strokeSMax,
  };
}

function checkedEnds(samples: readonly Sample[]): { readonly first: Sample; readonly last: Sample } {
  const [first, last] = [samples[0], samples.at(-1)];
  if (samples.length < 3 || samples.length > MOST_SAMPLES || first === undefined || last === undefined) {
    throw refuseCount({ name: 'samples', value: samples.length, range: `from 3 to ${MOST_SAMPLES} samples` });
  }
  for (const [at, { timeS, travelPercent }] of samples.entries()) {
    refuseOutside({ timeS, travelPercent }, ANY_NUMBER);
    const before = samples[at - 1];
    if (before !== undefined && timeS <= before.timeS) {
      throw refuseCount({
        name: 'samples',
        value: timeS,
        range: `times that rise (${before.timeS} s stands before)`,
      });
    }
  }
  return { first, last };
}

interface Crossing {
  readonly shares: readonly { readonly timeS: number; readonly share: number }[];
  readonly share: number;
  readonly stepTimeS: number;
}

/** When the response first passes a share of the step, linear between samples. */
function crossing({ shares, share, stepTimeS }: Crossing): number {
  for (const [at, next] of shares.entries()) {
    const before = shares[at - 1];
    if (before === undefined || next.timeS <= stepTimeS || next.share <= share) continue;
    if (before.share > share) return Math.max(stepTimeS, before.timeS);
    const part = (share - before.share) / (next.share - before.share);
    return Math.max(stepTimeS, before.timeS + part * (next.timeS - before.timeS));
  }
  return shares.at(-1)?.timeS ?? stepTimeS;
}
