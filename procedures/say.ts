import type { Dimension } from './calculations/unit-table.ts';
import { format, preferredUnit } from './calculations/units.ts';
import type { Job } from './job.ts';
import { FIGURES, isFigureName } from './quantities.ts';

/**
 * A value in the unit that this plant's people read, with its label.
 * @example say({ valueSi: 62052.8, dimension: 'pressure', units: 'us' }) // '9.00 psi'
 * @example say({ valueSi: 1.25, dimension: 'turns', units: 'us' }) // '1.25 turns'
 */
export function say({
  valueSi,
  dimension,
  units,
}: {
  readonly valueSi: number;
  readonly dimension: Dimension;
  readonly units: 'us' | 'si';
}): string {
  if (dimension === 'turns') return sayTurns(valueSi);
  return format({ valueSi, unit: preferredUnit(dimension, units) });
}

/** Turns are counted, by quarters: nobody reads a hundredth of one. */
function sayTurns(turns: number): string {
  const counted = Number(turns.toFixed(2));
  return `${counted} ${counted === 1 ? 'turn' : 'turns'}`;
}

/** One figure of this valve in words, or `not on the sheet`. */
export function sayFigure(name: string, job: Job): string {
  if (!isFigureName(name)) return `{${name}}`;
  const figure = FIGURES[name];
  const value = figure.of(job);
  if (value === null) return 'not on the sheet';
  if (typeof value === 'string' || figure.dimension === 'text') return String(value);
  return say({ valueSi: value, dimension: figure.dimension, units: job.sheet.units });
}

const PLACEHOLDER = /\{(\w+)\}/g;

/** Puts this valve's numbers into a text. @example fill('Set {benchSetMid}.', job) // 'Set 9.00 psi.' */
export function fill(text: string, job: Job): string {
  return text.replaceAll(PLACEHOLDER, (_, name: string) => sayFigure(name, job));
}

/** Names of the placeholders in a text. */
export function placeholdersIn(text: string): readonly string[] {
  return [...text.matchAll(PLACEHOLDER)].map((match) => match[1] ?? '');
}
