import { CalcError } from './calc-error.ts';
import type { InputSpec, Inputs, NumberInput, RowsInput } from './calculation-types.ts';
import { ANY_NUMBER, oneOf, refuseCount, refuseOutside } from './checks.ts';

/**
 * The values of every input, each checked to be of its kind.
 *
 * Shape: specifications and anything in, values out; a blank becomes the usual value, or null where that is allowed.
 * @param inputs  specifications by name
 * @param values  as they came
 * @returns a value for each input
 * @throws CalcError by the name of the input: CALC-001 missing or no number, CALC-002 too large, CALC-004 no list of
 *   rows, CALC-005 a choice or a name that is not in its list
 * @source none: a rule of this code
 * @example checkedValues({ inputs: usualNumbers({ slope: 1 }), values: {} }) // { slope: 1 }
 * @example checkedValues({ inputs: numbers('turns'), values: { turns: 1, luck: 7 } }) // throws CALC-005
 */
export function checkedValues(of: {
  readonly inputs: Inputs;
  readonly values: Readonly<Record<string, unknown>>;
}): Readonly<Record<string, unknown>> {
  const known = Object.keys(of.inputs);
  for (const name of Object.keys(of.values)) oneOf({ name: 'input', value: name, choices: known });
  return Object.fromEntries(
    Object.entries(of.inputs).map(([name, spec]) => [
      name,
      checked({ name, spec, value: of.values[name] ?? null }),
    ]),
  );
}

interface Given<S> {
  readonly name: string;
  readonly spec: S;
  readonly value: unknown;
}

function checked({ name, spec, value }: Given<InputSpec>): unknown {
  switch (spec.kind) {
    case 'number':
      return checkedNumber({ name, spec, value });
    case 'choice':
      if (value === null && spec.optional) return null;
      return oneOf({ name, value: asText(value), choices: spec.choices });
    case 'yes-no':
      if (typeof value === 'boolean') return value;
      return oneOf({ name, value: asText(value), choices: ['true', 'false'] }) === 'true';
    case 'text':
      if (typeof value === 'string') return value;
      throw new CalcError({ code: 'CALC-001', name, value: null, range: 'a text', unit: '' });
    case 'rows':
      return checkedRows({ name, spec, value });
  }
}

function checkedNumber({ name, spec, value }: Given<NumberInput>): number | null {
  if (value === null && spec.usual !== undefined) return spec.usual;
  if (value === null && spec.optional) return null;
  refuseOutside({ [name]: value as number }, ANY_NUMBER);
  return value as number;
}

function checkedRows({ name, spec, value }: Given<RowsInput>): readonly unknown[] {
  if (!Array.isArray(value) || value.some((row) => typeof row !== 'object' || row === null)) {
    throw refuseCount({ name, value: 0, range: 'a list of rows' });
  }
  return value.map((row) => checkedValues({ inputs: spec.columns, values: row as Record<string, unknown> }));
}

function asText(value: unknown): string {
  // A list or an object is no choice, whatever text it would make.
  return typeof value === 'string'
    ? value
    : typeof value === 'number'
      ? String(value)
      : (null as unknown as string);
}
