/** From what was typed to a result, or to a refusal that names each field in the words of its form. */
import { CalcError } from '../../procedures/calculations/calc-error.ts';
import type { CalcResult, Calculation, InputSpec } from '../../procedures/calculations/calculation-types.ts';
import { checkedValues } from '../../procedures/calculations/checked-values.ts';
import { unitOfName } from '../../procedures/calculations/checks.ts';
import { dimensionOfName } from '../../procedures/calculations/quantity-names.ts';
import { QUANTITY_TITLES } from '../../procedures/calculations/quantity-titles.ts';
import type { UnitId } from '../../procedures/calculations/unit-table.ts';
import { preferredUnit, type UnitSystem } from '../../procedures/calculations/units.ts';
import { Refusal } from '../../safety/refusal.ts';
import { figure } from './figure.ts';
import { unitOfInput } from './input-text.ts';
import { type InputsRead, readInputs, type Texts } from './read-inputs.ts';

export interface WorkedOut extends Pick<InputsRead, 'read'> {
  /** SI, with what is usual where that was left blank. */
  readonly values: InputsRead['values'];
  readonly result: CalcResult;
}

const STANDS = 'What you typed stands in the form; nothing was recorded.';

/**
 * @throws Refusal CAL-001 where something is missing, CAL-002 where a text cannot be read, CAL-003 where a value
 *   cannot be, each with the fields by name
 */
export function workOut(
  calculation: Calculation,
  of: { readonly texts: Texts; readonly units: UnitSystem },
): WorkedOut {
  const { values, read, wrong, missing } = readInputs(calculation, of);
  const unread = Object.keys(wrong).length;
  if (unread > 0) throw unreadable(wrong);
  if (missing.length > 0) throw notWritten(missing);
  try {
    const result = calculation.run(values);
    return { values: checkedValues({ inputs: calculation.inputs, values }), read, result };
  } catch (error) {
    if (error instanceof CalcError)
      throw impossible(error, { calculation, units: of.units, texts: of.texts });
    throw error;
  }
}

function unreadable(wrong: Readonly<Record<string, string>>): Refusal {
  const count = Object.keys(wrong).length;
  return new Refusal({
    kind: 'unreadable',
    code: 'CAL-002',
    what: count === 1 ? 'One field cannot be read.' : `${count} fields cannot be read.`,
    kept: STANDS,
    next: 'Write it anew; a number may carry its unit.',
    fields: wrong,
  });
}

function notWritten(missing: readonly string[]): Refusal {
  return new Refusal({
    kind: 'unreadable',
    code: 'CAL-001',
    what: missing.length === 1 ? 'One field is blank.' : `${missing.length} fields are blank.`,
    kept: STANDS,
    next: 'Write what is missing.',
    fields: Object.fromEntries(missing.map((name) => [name, 'Write this.'])),
  });
}

interface Around {
  readonly calculation: Calculation;
  readonly units: UnitSystem;
  readonly texts: Texts;
}

/** An input that the equations cannot take, in the words of the form. */
function impossible({ detail }: CalcError, { calculation, units, texts }: Around): Refusal {
  const { inputs } = calculation;
  const { name, value, range } = detail;
  const spec = inputs[name];
  const field = spec === undefined ? fieldOf(name, inputs) : name;
  const title = spec?.title ?? QUANTITY_TITLES[name] ?? name;
  const typed = spec === undefined || spec.kind === 'rows' ? '' : (texts[name] ?? '').trim();
  const unit = unitOf(name, { spec, units });
  const said = typed === '' ? inWords(String(value ?? 'nothing'), { unit }) : typed;
  // A range with units of its own, as of a table, does not come with the unit of the name.
  const isSi = detail.unit === unitOfName(name);
  const allowed = inWords(withTitles(range, inputs), { unit: isSi ? unit : null });
  // Left blank where the others do not ask for it, and these do.
  const fault = typed === '' && value === null ? 'it is needed here' : `${said} cannot be`;
  const message = `${title}: ${fault}. Allowed: ${allowed}.`;
  return new Refusal({
    kind: 'unreadable',
    code: 'CAL-003',
    what: message,
    kept: STANDS,
    next: 'Put it right.',
    fields: field === null ? {} : { [field]: message },
  });
}

/** What is wrong inside a table, or follows from several inputs, is said at the table or else above the form. */
function fieldOf(name: string, inputs: Calculation['inputs']): string | null {
  const table = Object.entries(inputs).find(
    ([, spec]) => spec.kind === 'rows' && Object.hasOwn(spec.columns, name),
  );
  return table?.[0] ?? null;
}

function unitOf(
  name: string,
  { spec, units }: { readonly spec: InputSpec | undefined; readonly units: UnitSystem },
): UnitId | null {
  if (spec?.kind === 'number') return unitOfInput(spec, units);
  return spec === undefined ? preferredUnit(dimensionOfName(name), units) : null;
}

/** `benchSetLowPa` becomes the title of that field. */
function withTitles(range: string, inputs: Calculation['inputs']): string {
  return range.replaceAll(/[a-z]+[A-Z]\w*/g, (name) => inputs[name]?.title.toLowerCase() ?? name);
}

const NUMBER = /(?<![\w/.-])-?\d+(?:\.\d+)?(?:e[+-]?\d+)?(?![\w/-])/g;

/** The numbers of a text, which are SI, in a unit that people read. */
function inWords(text: string, { unit }: { readonly unit: UnitId | null }): string {
  if (unit === null) return text;
  return text.replaceAll(NUMBER, (digits) => figure({ valueSi: Number(digits), unit }));
}
