/** The sheet as a form: its fields with what was typed or saved. */
import { type UnitSystem, unitFor } from '../../procedures/calculations/units.ts';
import type { SheetField } from '../../procedures/valve-sheet/field.ts';
import { fieldText } from '../../procedures/valve-sheet/field-text.ts';
import { FIELDS, SECTIONS } from '../../procedures/valve-sheet/fields.ts';
import { unitOf } from '../../procedures/valve-sheet/read-field.ts';
import type { Valve } from './valve-stream.ts';

export type Texts = Readonly<Record<string, string>>;

interface FieldView {
  readonly name: string;
  readonly label: string;
  readonly value: string;
  readonly help: string;
  readonly required: boolean;
  /** Printed behind the field: what a number without a unit is in. */
  readonly unit: string;
  readonly kind: 'text' | 'long text' | 'number' | 'select';
  readonly options: readonly { readonly value: string; readonly label: string; readonly selected: boolean }[];
}

export interface SheetFormView {
  readonly typedIn: UnitSystem;
  readonly sections: readonly { readonly title: string; readonly fields: readonly FieldView[] }[];
}

/**
 * @param typedIn  the units that numbers without a unit are in
 * @param without  fields that are not asked, since they stand fast
 */
export function sheetForm({
  texts,
  typedIn,
  without = [],
}: {
  readonly texts: Texts;
  readonly typedIn: UnitSystem;
  readonly without?: readonly string[];
}): SheetFormView {
  return {
    typedIn,
    sections: SECTIONS.map(({ title, fields }) => ({
      title,
      fields: fields
        .filter(({ name }) => !without.includes(name))
        .map((field) => fieldView(field, { value: texts[field.name] ?? '', typedIn })),
    })),
  };
}

/**
 * What the form shows of a saved sheet: sent back unchanged, it gives the very same sheet. What was left blank and
 * stands for something is blank again, so that it is not taken for something that was written.
 */
export function textsOf({ sheet, typed }: Valve): Texts {
  if (sheet === null) return {};
  return Object.fromEntries(
    FIELDS.map((field) => {
      const standsFor = ('usual' in field && field.usual) || ('blank' in field && field.blank);
      const left = standsFor && (typed[field.name] ?? '') === '';
      return [field.name, left ? '' : fieldText(field, { value: sheet[field.name], system: sheet.units })];
    }),
  );
}

function fieldView(field: SheetField, { value, typedIn }: { value: string; typedIn: UnitSystem }): FieldView {
  return {
    name: field.name,
    label: field.label,
    value,
    help: helpOf(field),
    required: field.required === true,
    unit: field.kind === 'quantity' ? unitFor(unitOf(field, typedIn)).label : '',
    kind: kindOf(field),
    options: optionsOf(field).map((option) => ({ ...option, selected: option.value === value })),
  };
}

function helpOf(field: SheetField): string {
  const help = field.help ?? '';
  if (field.kind !== 'quantity' || field.usual === undefined) return help;
  return `${help} Blank: ${field.usual.text} (${field.usual.mark}).`.trim();
}

function kindOf(field: SheetField): FieldView['kind'] {
  switch (field.kind) {
    case 'choice':
    case 'yes or no':
      return 'select';
    case 'long text':
      return 'long text';
    case 'quantity':
    case 'count':
      return 'number';
    default:
      return 'text';
  }
}

function optionsOf(field: SheetField): readonly { readonly value: string; readonly label: string }[] {
  if (field.kind === 'choice') return [{ value: '', label: field.blank ?? 'choose' }, ...field.choices];
  if (field.kind !== 'yes or no') return [];
  return [
    { value: '', label: 'choose' },
    { value: 'yes', label: 'yes' },
    { value: 'no', label: 'no' },
  ];
}
