/** A result in words: every number in both systems, the working in the order in which it is done. */
import type { CalcResult, Calculation, OutputSpec } from '../../procedures/calculations/calculation-types.ts';
import { preferredUnit } from '../../procedures/calculations/units.ts';
import { figure } from './figure.ts';
import { choiceWords, isAbsolute } from './input-text.ts';

export interface ResultLine {
  readonly name: string;
  readonly title: string;
  readonly si: string;
  readonly us: string;
  /** What was asked for; the others are the working. */
  readonly asked: boolean;
}

export interface ResultTable {
  readonly title: string;
  readonly columns: readonly { readonly label: string; readonly number: boolean }[];
  readonly si: readonly (readonly string[])[];
  readonly us: readonly (readonly string[])[];
}

const NOT_SAID = 'not said by these figures';

/** In a table a dash says that the row has none. */
const NO_CELL = '\u2013';

type Both = Pick<ResultLine, 'si' | 'us'>;

const alike = (text: string): Both => ({ si: text, us: text });

function both(value: unknown, { name, spec }: { readonly name: string; readonly spec: OutputSpec }): Both {
  if (value === null || value === undefined) return alike(NOT_SAID);
  if (typeof value === 'boolean') return alike(value ? 'yes' : 'no');
  if (Array.isArray(value)) return alike(value.length === 0 ? 'none' : value.map(itemWords).join(', '));
  if (typeof value !== 'number') return alike(choiceWords(String(value)));
  const dimension = spec.dimension ?? 'ratio';
  const absolute = isAbsolute(name) ? ' absolute' : '';
  const say = (system: 'us' | 'si') =>
    figure({ valueSi: value, unit: preferredUnit(dimension, system) }) + absolute;
  return { si: say('si'), us: say('us') };
}

const itemWords = (item: unknown): string =>
  typeof item === 'number' ? String(Number(item.toPrecision(6))) : choiceWords(String(item));

/** The numbers that it was worked out from, what is usual included: a slip of the unit shows here. */
export function takenLines(
  { inputs }: Pick<Calculation, 'inputs'>,
  values: Readonly<Record<string, unknown>>,
): readonly Pick<ResultLine, 'title' | 'si' | 'us'>[] {
  return Object.entries(inputs).flatMap(([name, { kind, title, ...spec }]) => {
    if (kind !== 'number' || values[name] === null || !('dimension' in spec)) return [];
    return [{ title, ...both(values[name], { name, spec: { kind, title, dimension: spec.dimension } }) }];
  });
}

/** Every output that is no table. */
export function resultLines(
  { outputs, answers }: Pick<Calculation, 'outputs' | 'answers'>,
  result: CalcResult,
): readonly ResultLine[] {
  return Object.entries(outputs)
    .filter(([, spec]) => spec.kind !== 'rows')
    .map(([name, spec]) => ({
      name,
      title: spec.title,
      ...both(result[name], { name, spec }),
      asked: answers.includes(name),
    }));
}

export function resultTables(
  { outputs }: Pick<Calculation, 'outputs'>,
  result: CalcResult,
): readonly ResultTable[] {
  return Object.entries(outputs)
    .filter(([, spec]) => spec.kind === 'rows')
    .map(([name, spec]) => {
      const columns = Object.entries(spec.columns ?? {});
      const rows = (result[name] ?? []) as readonly Readonly<Record<string, unknown>>[];
      const cells = rows.map((row) =>
        columns.map(([column, of]) =>
          row[column] === null ? alike(NO_CELL) : both(row[column], { name: column, spec: of }),
        ),
      );
      return {
        title: spec.title,
        columns: columns.map(([, { title, kind }]) => ({ label: title, number: kind === 'number' })),
        si: cells.map((row) => row.map(({ si }) => si)),
        us: cells.map((row) => row.map(({ us }) => us)),
      };
    });
}
