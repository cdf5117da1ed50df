import { ANY_NUMBER, refuseOutside } from './checks.ts';

export type LoopCurrentState = 'failed low' | 'saturated low' | 'normal' | 'saturated high' | 'failed high';

/** Bounds of the normal and of the failure band in A. */
const LOOP_CURRENT_A = { failedLow: 0.0036, low: 0.0038, high: 0.0205, failedHigh: 0.021 } as const;

/**
 * What a 4-20 mA current says about the device that sends it.
 *
 * Shape: a current in, a word out.
 * Valid: devices set to the usual failure levels.
 * @param currentA  as measured; any number
 * @returns failed at 3.6 mA and below or 21 mA and above, saturated below 3.8 or above 20.5 mA, else normal
 * @throws CalcError CALC-001 if the current is no number
 * @source [S-03] from memory
 * @example loopCurrentState(0.012) // 'normal'
 * @example loopCurrentState(0.0035) // 'failed low'
 */
export function loopCurrentState(currentA: number): LoopCurrentState {
  refuseOutside({ currentA }, ANY_NUMBER);
  if (currentA <= LOOP_CURRENT_A.failedLow) return 'failed low';
  if (currentA >= LOOP_CURRENT_A.failedHigh) return 'failed high';
  if (currentA < LOOP_CURRENT_A.low) return 'saturated low';
  return currentA > LOOP_CURRENT_A.high ? 'saturated high' : 'normal';
}
