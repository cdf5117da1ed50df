import { preferredUnit, unitFor } from '../../../procedures/calculations/units.ts';
import type { Job } from '../../../procedures/job.ts';
import { asked } from '../../../procedures/readings/given.ts';
import { fill, sayFigure } from '../../../procedures/say.ts';
import type { Field, QuantityField } from '../../../procedures/vocabulary.ts';

/** A field as the page draws it and as a JSON client is told it. */
export interface FieldView {
  readonly name: string;
  readonly label: string;
  readonly type: 'quantity' | 'choice' | 'text' | 'csv';
  readonly isTable: boolean;
  readonly unit: string;
  readonly gauge: string;
  readonly optional: boolean;
  readonly help: string;
  readonly value: string;
  readonly options: readonly { readonly value: string; readonly label: string; readonly checked: boolean }[];
  readonly error: string;
}

export interface Typed {
  readonly typed: Readonly<Record<string, string>>;
  readonly wrong: Readonly<Record<string, string>>;
}

export function fieldViews(
  fields: readonly Field[],
  { job, again }: { readonly job: Job; readonly again: Typed },
): readonly FieldView[] {
  return fields.filter((field) => asked(field, job)).map((field) => fieldView(field, { job, again }));
}

function fieldView(field: Field, { job, again }: { readonly job: Job; readonly again: Typed }): FieldView {
  const value = again.typed[field.name] ?? '';
  const gauge =
    field.type === 'quantity' && field.gauge !== undefined ? (job.gear[field.gauge]?.number ?? '') : '';
  return {
    name: field.name,
    label: fill(field.label, job),
    type: field.type,
    isTable: field.type === 'csv',
    unit: field.type === 'quantity' ? unitOf(field.dimension, job) : '',
    gauge,
    optional: field.optional === true || (field.carried === true && known(field.name, job) !== ''),
    help: helpFor(field, { job, gauge }),
    value,
    options:
      field.type === 'choice'
        ? field.choices.map((choice) => ({ ...choice, checked: choice.value === value }))
        : [],
    error: again.wrong[field.name] ?? '',
  };
}

/** What a record of the loop must hold, in a line. */
const TABLE_HELP =
  'Its first row names time, output and process (or t, OP, PV), and position and set point where they are there; output and position in percent. Comma, semicolon or tab between the cells; 5000 rows at most';

function unitOf(dimension: QuantityField['dimension'], job: Job): string {
  return dimension === 'travel' ? '%' : unitFor(preferredUnit(dimension, job.sheet.units)).label;
}

function known(name: string, job: Job): string {
  return job.readings[name]?.typed ?? job.words[name] ?? '';
}

function helpFor(field: Field, { job, gauge }: { readonly job: Job; readonly gauge: string }): string {
  const parts: string[] = [];
  if (gauge !== '') parts.push(`gauge ${gauge}`);
  if (field.type === 'quantity' && field.wanted !== undefined)
    parts.push(`wanted: ${sayFigure(field.wanted, job)}`);
  if (field.type === 'quantity' && field.most !== undefined)
    parts.push(`at most: ${sayFigure(field.most, job)}`);
  if (field.type === 'csv') parts.push(TABLE_HELP);
  if (field.type === 'text' && field.mustBe !== undefined) parts.push('as on its label');
  if (field.carried && known(field.name, job) !== '') parts.push(`blank: ${known(field.name, job)} stands`);
  else if (field.optional) parts.push('may stay blank');
  return parts.join('; ');
}
