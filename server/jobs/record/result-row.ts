/** Words and numbers that the rows of the results share. */
import type { UnitId } from '../../../procedures/calculations/unit-table.ts';
import { fromSi, unitFor } from '../../../procedures/calculations/units.ts';
import type { Guarded } from '../../../procedures/cycle-verdict.ts';
import type { JobRecord } from './schema.ts';
import { WORDS } from './verdict-words.ts';

export type Result = JobRecord['results'][number];

export function verdictWords(found: Guarded | null, left: Guarded | null): string {
  if (found !== null && found === left) return `as found and as left ${WORDS[found]}`;
  const words = [
    ...(found === null ? [] : [`as found ${WORDS[found]}`]),
    ...(left === null ? [] : [`as left ${WORDS[left]}`]),
  ];
  return words.join(', ');
}

export function unjudged(label: string): Result {
  return { label, asFound: '', asLeft: '', foundOutside: false, leftOutside: false, limit: '', verdict: '' };
}

export function numberOf(value: number | string | null | undefined): number | null {
  return typeof value === 'number' ? value : null;
}

/** The number alone: its unit stands once, in the label. */
export function number(
  valueSi: number | null | undefined,
  { unit, signed = false }: { readonly unit: UnitId; readonly signed?: boolean },
): string {
  if (typeof valueSi !== 'number') return '';
  const text = Math.abs(fromSi({ valueSi, unit })).toFixed(unitFor(unit).decimals);
  if (Number(text) === 0) return text;
  return valueSi < 0 ? `\u2212${text}` : signed ? `+${text}` : text;
}
