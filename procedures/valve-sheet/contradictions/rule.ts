import type { Dimension } from '../../calculations/unit-table.ts';
import type { ContradictionCode } from '../contradiction-codes.ts';
import type { FieldName } from '../field.ts';
import type { ValveSheet } from '../sheet.ts';
import { worded } from '../worded.ts';

export interface Contradiction {
  readonly code: ContradictionCode;
  /** The sheet is not saved while it says this. */
  readonly stops: boolean;
  readonly fields: readonly FieldName[];
  /** What stands against what, with numbers and units. */
  readonly what: string;
}

export interface Rule {
  readonly code: ContradictionCode;
  readonly fields: readonly FieldName[];
  /** The sentence, or null where the sheet agrees. Rules that only show are asked once no rule that stops applies. */
  says(sheet: ValveSheet): string | null;
}

/** Says figures of one sheet in its own units. */
export function wordsFor(
  sheet: Pick<ValveSheet, 'units'>,
  dimension: Dimension,
): (valueSi: number) => string {
  return (valueSi) => worded({ valueSi, dimension, units: sheet.units });
}

/** Rounding between units is no contradiction. */
export const HAIR = 1e-6;
