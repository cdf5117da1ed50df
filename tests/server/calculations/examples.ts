import type { Calculation, CellInput } from '../../../procedures/calculations/calculation-types.ts';
import { DIMENSIONS } from '../../../procedures/calculations/unit-table.ts';
import { fromSi, unitFor } from '../../../procedures/calculations/units.ts';
import { plainDigits } from '../../../procedures/readings/exact-digits.ts';

/** The example of a calculation as a person would type it, every number with its unit, in SI or in the units of the other half. */
export function exampleTexts(
  { inputs, example }: Calculation,
  system: 'us' | 'si' = 'si',
): Readonly<Record<string, string>> {
  const texts: Record<string, string> = {};
  for (const [name, spec] of Object.entries(inputs)) {
    const value = example[name];
    if (value === undefined || value === null) continue;
    if (spec.kind !== 'rows') texts[name] = cellText(value, { spec, system });
    else {
      const rows = value as readonly Readonly<Record<string, unknown>>[];
      texts[name] = rows
        .map((row) =>
          Object.entries(spec.columns)
            .map(([column, cell]) => cellText(row[column], { spec: cell, system }))
            .join('; '),
        )
        .join('\n');
    }
  }
  return texts;
}

function cellText(
  value: unknown,
  { spec, system }: { readonly spec: CellInput; readonly system: 'us' | 'si' },
): string {
  if (value === undefined || value === null) return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value !== 'number' || spec.kind !== 'number') return String(value);
  const unit = DIMENSIONS[spec.dimension][system];
  const digits = plainDigits(Number(fromSi({ valueSi: value, unit }).toPrecision(12)));
  return `${digits} ${unitFor(unit).label}`.trim();
}
