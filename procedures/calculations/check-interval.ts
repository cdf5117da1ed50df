import { ANY_NUMBER, refuseOutside } from './checks.ts';
import {
  type DatedValue,
  type DriftLine,
  driftLine,
  type Leaving,
  leavingTolerance,
  noSurerThanGauges,
} from './drift.ts';

export interface History {
  readonly points: readonly DatedValue[];
  readonly limitLowSi: number | null;
  readonly limitHighSi: number | null;
}

export interface CheckInterval {
  readonly line: DriftLine;
  readonly leaving: Leaving;
  /** 0: the limit lies within the uncertainty of the line already. */
  readonly intervalS: number;
  /** The interval ends where the history is no longer than it, not at the limit. */
  readonly isCapped: boolean;
}

/** From fewer points, or over less than a year, no interval is proposed. */
const INTERVAL_POINTS_MIN = 5;
const INTERVAL_HISTORY_S = 365 * 24 * 3600;

/**
 * How long a valve may go until its next check, by how it drifted so far.
 *
 * Shape: a history with its limits in, the line, the time of leaving and an interval out; null where the history is too
 * short. The interval runs from the last point to the earliest time of leaving, and is never longer than the history.
 * Valid: the drift goes on as it went, and nothing was set between the points.
 * @param points       of one quantity, since the valve was last set
 * @param limitLowSi   blank: none
 * @param limitHighSi  blank: none; at least one
 * @returns the interval in seconds, or null with fewer than 5 points or a year or less between the first and the last
 * @throws CalcError as `driftLine` and `leavingTolerance` do
 * @source [S-36] control chart method, with the early end of the interval in the place of the line
 * @example checkInterval({ points: [{ timeS: 0, valueSi: 1, uncertaintySi: 1 }], limitLowSi: null, limitHighSi: 5 }) // null
 */
export function checkInterval({ points, limitLowSi, limitHighSi }: History): CheckInterval | null {
  for (const { timeS } of points) refuseOutside({ timeS }, ANY_NUMBER);
  const times = points.map(({ timeS }) => timeS);
  const historyS = Math.max(...times) - Math.min(...times);
  if (points.length < INTERVAL_POINTS_MIN || !(historyS > INTERVAL_HISTORY_S)) return null;
  const line = noSurerThanGauges({ line: driftLine(points), points });
  const leaving = leavingTolerance({ line, limitLowSi, limitHighSi, fromTimeS: line.lastTimeS });
  const untilS =
    leaving.earliestTimeS === null ? Number.POSITIVE_INFINITY : leaving.earliestTimeS - line.lastTimeS;
  return { line, leaving, intervalS: Math.min(untilS, historyS), isCapped: untilS > historyS };
}
