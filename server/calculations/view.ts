/** A calculation as its page draws it. */
import type { Calculation, InputSpec } from '../../procedures/calculations/calculation-types.ts';
import { SOURCES } from '../../procedures/calculations/sources.ts';
import { unitFor } from '../../procedures/calculations/units.ts';
import type { Asked } from './ask.ts';
import { figure } from './figure.ts';
import { choiceWords, inputText, isAbsolute, unitOfInput, unitWords } from './input-text.ts';
import { mayBeBlank } from './read-inputs.ts';
import { cellShape } from './schemas.ts';

export const pathOfCalculation = (id: string): string => `/calculations/${id}`;

/** Longer ones are cut by some programs on the way. */
export const ADDRESS_LETTERS_MAX = 4000;

/** The same question as an address. A blank field stands in it where the sheet would fill it again. */
export function addressOf(calculation: Calculation, { texts, units, valve, sheetTexts }: Asked): string {
  const fields = Object.entries(texts).filter(
    ([name, text]) => text !== '' || sheetTexts[name] !== undefined,
  );
  const pairs: [string, string][] = [['units', units], ...fields];
  if (valve !== '') pairs.splice(1, 0, ['valve', valve]);
  return `${pathOfCalculation(calculation.id)}?${new URLSearchParams(pairs)}`;
}

/**
 * The same question for a reader of the other units: a number that stood alone gets the unit that it was taken in, so
 * that nothing changes its meaning. A table keeps its own units only in its head, so with one there is no such address.
 */
export function addressInOtherUnits(calculation: Calculation, asked: Asked): string | null {
  const { texts, units } = asked;
  const told: Record<string, string> = {};
  for (const [name, spec] of Object.entries(calculation.inputs)) {
    const text = texts[name] ?? '';
    if (spec.kind === 'rows' && text !== '') return null;
    told[name] = spec.kind === 'rows' ? text : withUnit(text, { name, spec, units });
  }
  return addressOf(calculation, { ...asked, texts: told, units: units === 'us' ? 'si' : 'us' });
}

function withUnit(
  text: string,
  {
    name,
    spec,
    units,
  }: {
    readonly name: string;
    readonly spec: Exclude<InputSpec, { kind: 'rows' }>;
    readonly units: Asked['units'];
  },
): string {
  const read = inputText(text, { name, spec, units });
  if (read.kind !== 'read' || read.unit === null || read.unitWritten) return text;
  return `${text.trim()} ${unitFor(read.unit).label}`.trim();
}

export interface FieldView {
  readonly name: string;
  readonly label: string;
  readonly value: string;
  readonly unit: string;
  readonly help: string;
  /** What the sheet has to say. */
  readonly note: string;
  /** For a choice; null for a text. */
  readonly options:
    | readonly { readonly value: string; readonly label: string; readonly selected: boolean }[]
    | null;
  /** Lines of a table; 0 for a single line. */
  readonly lines: number;
}

export function fieldViews({ inputs }: Calculation, asked: Asked): readonly FieldView[] {
  return Object.entries(inputs).map(([name, spec]) => {
    const value = asked.texts[name] ?? '';
    return {
      name,
      label: spec.title,
      value,
      unit: spec.kind === 'number' ? unitWords({ name, unit: unitOfInput(spec, asked.units) }) : '',
      help: helpOf(name, { spec, asked }),
      note: noteOf(name, asked),
      options: optionsOf(spec, value),
      lines: spec.kind === 'rows' ? 8 : 0,
    };
  });
}

function helpOf(name: string, { spec, asked }: { readonly spec: InputSpec; readonly asked: Asked }): string {
  if (spec.kind === 'rows') {
    const columns = Object.entries(spec.columns).map(
      ([column, cell]) =>
        `${cell.title} (${cell.kind === 'number' ? columnUnit(column, { spec: cell, asked }) : cellShape(column, cell)})`,
    );
    return `A line each, in this order or under a head with these names: ${columns.join('; ')}. Comma, semicolon, tab or blanks between.`;
  }
  if (spec.kind === 'number' && spec.usual !== undefined) {
    const usual = figure({ valueSi: spec.usual, unit: unitOfInput(spec, asked.units) });
    return `Blank: ${usual}${isAbsolute(name) ? ' absolute' : ''}.`;
  }
  return mayBeBlank(spec) ? 'May stay blank.' : '';
}

function columnUnit(
  name: string,
  { spec, asked }: { readonly spec: Extract<InputSpec, { kind: 'number' }>; readonly asked: Asked },
): string {
  const words = unitWords({ name, unit: unitOfInput(spec, asked.units) });
  const blank = mayBeBlank(spec) ? ', may be blank' : '';
  return `${words === '' ? 'a number' : words}${blank}`;
}

function noteOf(name: string, { texts, sheetTexts, valve }: Asked): string {
  const onSheet = sheetTexts[name];
  if (onSheet === undefined) return '';
  return texts[name] === onSheet
    ? `As on the sheet of ${valve}.`
    : `The sheet of ${valve} has ${choiceWords(onSheet)}.`;
}

function optionsOf(spec: InputSpec, value: string): FieldView['options'] {
  if (spec.kind !== 'choice' && spec.kind !== 'yes-no') return null;
  const choices = spec.kind === 'choice' ? spec.choices : ['yes', 'no'];
  return [
    { value: '', label: 'not chosen', selected: value === '' },
    ...choices.map((choice) => ({ value: choice, label: choiceWords(choice), selected: choice === value })),
  ];
}

/** What stands behind it, for people. */
export function sourceViews({ sources }: Pick<Calculation, 'sources'>) {
  return sources.map((id) => ({ id, ...SOURCES[id] }));
}
