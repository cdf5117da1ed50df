/** All inputs of a calculation, from the texts of a form or an address. */
import type { Calculation, InputSpec } from '../../procedures/calculations/calculation-types.ts';
import type { UnitSystem } from '../../procedures/calculations/units.ts';
import { type InputRead, inputText } from './input-text.ts';
import { tableText } from './table-text.ts';

export type Texts = Readonly<Record<string, string>>;

export interface InputsRead {
  /** SI under the names of the inputs; what may be blank and is, stands as null. */
  readonly values: Readonly<Record<string, unknown>>;
  /** What each number was taken in. */
  readonly read: Readonly<Record<string, InputRead>>;
  /** Why a text cannot be read, by name. */
  readonly wrong: Readonly<Record<string, string>>;
  /** Names of what still has to be written. */
  readonly missing: readonly string[];
}

/** May it be left blank, for a usual value or for none? */
export function mayBeBlank(spec: InputSpec): boolean {
  if (spec.kind === 'number') return spec.optional === true || spec.usual !== undefined;
  return spec.kind === 'choice' && spec.optional === true;
}

export function readInputs(
  { inputs }: Pick<Calculation, 'inputs'>,
  { texts, units }: { readonly texts: Texts; readonly units: UnitSystem },
): InputsRead {
  const values: Record<string, unknown> = {};
  const read: Record<string, InputRead> = {};
  const wrong: Record<string, string> = {};
  const missing: string[] = [];
  for (const [name, spec] of Object.entries(inputs)) {
    const text = texts[name] ?? '';
    const got =
      spec.kind === 'rows' ? tableText(text, { spec, units }) : inputText(text, { name, spec, units });
    if (got.kind === 'wrong') wrong[name] = got.what;
    else if (got.kind === 'blank') {
      values[name] = null;
      if (!mayBeBlank(spec)) missing.push(name);
    } else if ('rows' in got) values[name] = got.rows;
    else {
      values[name] = got.value;
      read[name] = got;
    }
  }
  return { values, read, wrong, missing };
}
