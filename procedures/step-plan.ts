import { askedPercent } from './commissioning-figures.ts';
import type { ValveSheet } from './valve-sheet/sheet.ts';

/** Signal before and after the step, in percent of its range: a tenth, about the middle. */
export const STEP_FROM_PERCENT = 45;
export const STEP_TO_PERCENT = 55;

/** 1 − 1/e and 1 − 1/e²: the shares of the step at which T63 and T86 are taken (ISA-75.25.01, from memory). */
const SHARE_63 = 1 - Math.exp(-1);
const SHARE_86 = 1 - Math.exp(-2);

/** Travel in percent open before the step, after it, and where the two times are taken. */
export function stepTravels(sheet: ValveSheet): {
  readonly fromPercent: number;
  readonly toPercent: number;
  readonly t63Percent: number;
  readonly t86Percent: number;
} {
  const fromPercent = askedPercent(sheet, STEP_FROM_PERCENT);
  const toPercent = askedPercent(sheet, STEP_TO_PERCENT);
  const at = (share: number) => fromPercent + share * (toPercent - fromPercent);
  return { fromPercent, toPercent, t63Percent: at(SHARE_63), t86Percent: at(SHARE_86) };
}
