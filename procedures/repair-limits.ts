import type { ValveSheet } from './valve-sheet/sheet.ts';

/** The share of the hysteresis allowed that the linkage may use up by its play (common practice, no source). */
const LINK_SHARE = 0.5;

/** Play of the feedback linkage at the stem, at most. */
export function linkPlayLimitM({ hysteresisTolerancePercent, travelM }: ValveSheet): number {
  return (LINK_SHARE * hysteresisTolerancePercent * travelM) / 100;
}

/** Signal on a bellows that is tried for leaks: the top of its own range, and no more. */
export function bellowsTestPa({ signalHighPa }: ValveSheet): number {
  return signalHighPa;
}
