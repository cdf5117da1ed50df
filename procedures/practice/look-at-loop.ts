import type { LoopRecord, Sample } from './loop.ts';

/** What a person sees in a record of the loop, without knowing what is behind it. */
export interface Swing {
  /** Peak to peak of output, per cent, and of the process as a share of its range. */
  readonly outputPercent: number;
  readonly process: number;
  readonly crossings: number;
  /** Share of the time that the process spends at its upper or lower end: square waves high, sines half. */
  readonly atEnds: number;
}

const TAIL_S = 150;

export function swingOf(samples: readonly Sample[]): Swing {
  const tail = samples.slice(-TAIL_S);
  const output = tail.map((one) => one.outputPercent);
  const process = tail.map((one) => one.process - one.setPoint);
  const middle = (Math.max(...process) + Math.min(...process)) / 2;
  const half = (Math.max(...process) - Math.min(...process)) / 2;
  const ends = process.filter((one) => Math.abs(one - middle) > 0.7 * half).length;
  return {
    outputPercent: Math.max(...output) - Math.min(...output),
    process: 2 * half,
    crossings: crossingsOf(output),
    atEnds: ends / process.length,
  };
}

/** How often it passes its own mean, small ripples left out. */
export function crossingsOf(values: readonly number[]): number {
  const mean = values.reduce((sum, one) => sum + one, 0) / values.length;
  const dead = 0.2 * (Math.max(...values) - Math.min(...values));
  let [count, side] = [0, 0];
  for (const value of values) {
    const now = value > mean + dead ? 1 : value < mean - dead ? -1 : side;
    if (side !== 0 && now !== side) count += 1;
    side = now;
  }
  return count;
}

const SWINGS_PERCENT = 3;

export function swings(swing: Swing): boolean {
  return swing.outputPercent > SWINGS_PERCENT && swing.crossings >= 3;
}

/** On a trend the process is seen as well: a slack controller hardly moves its output for a swing from elsewhere. */
export function swingsOnTrend(swing: Swing): boolean {
  return swings(swing) || (swing.process > SWINGS_PERCENT / 100 && swing.crossings >= 3);
}

function meanOf(samples: readonly Sample[], of: (one: Sample) => number): number {
  return samples.reduce((sum, one) => sum + of(one), 0) / Math.max(1, samples.length);
}

/** Off its set point at the end, as a share of the range; positive: too much. */
export function offSetPoint(record: LoopRecord): number {
  return meanOf(record.samples.slice(-30), (one) => one.process - one.setPoint);
}

/** At one time something changed, and stayed so. */
export function changedAtOnce(record: LoopRecord): boolean {
  const { samples, changedAtS, stepAtS } = record;
  const before = samples.slice(changedAtS - 25, changedAtS);
  const after = samples.slice(stepAtS - 25, stepAtS);
  const output = Math.abs(
    meanOf(after, (one) => one.outputPercent) - meanOf(before, (one) => one.outputPercent),
  );
  const process = Math.abs(meanOf(after, (one) => one.process) - meanOf(before, (one) => one.process));
  const calm = Math.max(...before.map((one) => one.process)) - Math.min(...before.map((one) => one.process));
  return (output > 6 || process > 0.04) && calm < 0.04;
}

/** Seconds until the process has done four fifths of the step of its set point; null: not in the record. */
export function answersAfterS(record: LoopRecord): number | null {
  const { samples, stepAtS } = record;
  const start = meanOf(samples.slice(stepAtS - 15, stepAtS), (one) => one.process);
  const goal = samples[stepAtS + 1]?.setPoint ?? 0;
  const wanted = start + 0.8 * (goal - start);
  const at = samples.slice(stepAtS).findIndex((one) => (goal - start) * (one.process - wanted) >= 0);
  return at < 0 ? null : at;
}
