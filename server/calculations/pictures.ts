import { OWN_PICTURES } from './pictures/own-pictures.ts';
import type { Picture, Worked } from './pictures/picture.ts';
import { swept } from './pictures/sweeps.ts';

/** What is drawn beside a result, or null where a number says it all. */
export function pictureOf(worked: Worked): Picture | null {
  return OWN_PICTURES[worked.calculation.id]?.(worked) ?? swept(worked);
}
