import type { CalcResult, Calculation, Inputs, OutputSpec, Topic, ValuesOf } from './calculation-types.ts';
import { checkedValues } from './checked-values.ts';
import type { SourceId } from './sources.ts';

/**
 * A calculation for the registry.
 *
 * Shape: its data and a typed function in, the same with a function that takes anything and checks it first out.
 * Valid: every name of `outputs` is in what the function gives.
 * @param entry  data and function; the example is typed by the inputs
 * @returns calculation whose run refuses, by name, what is missing, unknown or of the wrong kind
 * @source none: a rule of this code
 * @example calculation({ id: 'double', title: 'Twice', topic: 'units', inputs: numbers('percent'), outputs: results('percent'),
 *   answers: ['percent'], equation: '2 x', validity: '', sources: [], example: { percent: 1 }, run: ({ percent }) => ({ percent: 2 * percent }) }).run({ percent: 4 })
 *   // { percent: 8 }
 */
export function calculation<const I extends Inputs>(entry: {
  readonly id: string;
  readonly title: string;
  readonly topic: Topic;
  readonly inputs: I;
  readonly outputs: Readonly<Record<string, OutputSpec>>;
  readonly answers: readonly string[];
  readonly equation: string;
  readonly validity: string;
  readonly sources: readonly SourceId[];
  readonly example: NoInfer<Partial<ValuesOf<I>>>;
  readonly run: (values: ValuesOf<I>) => object;
}): Calculation {
  return {
    ...entry,
    run: (values) => {
      // The check below has put every value of every input into its kind.
      const result = entry.run(checkedValues({ inputs: entry.inputs, values }) as ValuesOf<I>);
      return named(result as CalcResult, entry.outputs);
    },
  };
}

/** What is named among the outputs, and nothing else; so too in the rows of a table. */
function named(result: CalcResult, outputs: Readonly<Record<string, OutputSpec>>): CalcResult {
  const kept = Object.entries(result).flatMap(([name, value]) => {
    const spec = Object.hasOwn(outputs, name) ? outputs[name] : undefined;
    if (spec === undefined) return [];
    const { columns } = spec;
    const rows = columns !== undefined && Array.isArray(value);
    return [[name, rows ? value.map((row: CalcResult) => named(row, columns)) : value] as const];
  });
  return Object.fromEntries(kept);
}
