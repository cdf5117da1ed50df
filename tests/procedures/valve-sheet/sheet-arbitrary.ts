/** Any valve sheet that the form can make: texts in either system of units, every field filled or blank. */
import fc from 'fast-check';
import { preferredUnit, unitsOf } from '../../../procedures/calculations/units.ts';
import type { SheetField } from '../../../procedures/valve-sheet/field.ts';
import { FIELDS } from '../../../procedures/valve-sheet/fields.ts';

const words = fc
  .string({ unit: 'grapheme', minLength: 1, maxLength: 30 })
  .filter((text) => text.trim() !== '' && !/[\p{Cc}\p{Cs}]/u.test(text));

/** Texts that a table program would run, or that break rows and cells. */
const nasty = fc.constantFrom(
  '=1+1',
  '+1',
  "-cmd|' /C calc'!A0",
  '@SUM(A1)',
  "'=1",
  "''",
  'a;b',
  'a,b',
  '"a"',
  '"',
);

const lines = fc.oneof(words, nasty, fc.constant('first\nsecond, "third"\n\n=4'));

export const sheetTexts: fc.Arbitrary<Record<string, string>> = fc
  .record(Object.fromEntries(FIELDS.map((field) => [field.name, textFor(field)])))
  .map((texts) => ({ ...texts }));

function textFor(field: SheetField): fc.Arbitrary<string> {
  const filled = filledText(field);
  return mustBeFilled(field) ? filled : fc.option(filled, { nil: '' });
}

function mustBeFilled(field: SheetField): boolean {
  return (
    field.required === true ||
    field.kind === 'yes or no' ||
    (field.kind === 'choice' && field.blank === undefined)
  );
}

function filledText(field: SheetField): fc.Arbitrary<string> {
  switch (field.kind) {
    case 'choice':
      return fc.constantFrom(...field.choices.map(({ value }) => value));
    case 'yes or no':
      return fc.constantFrom('yes', 'no');
    case 'count':
      return fc.integer({ min: 1, max: field.atMost }).map(String);
    case 'thread':
      return fc.constantFrom('1/2-20', 'M12x1.25', '7/8-14', '1 1/4-12');
    case 'tag':
      return fc.stringMatching(/^[A-Z]{1,3}-\d{1,4}[A-Z]?$/);
    case 'long text':
      return lines;
    case 'text':
      return fc.oneof(words, nasty);
    default:
      return fc
        .tuple(
          fc.integer({ min: 1, max: 9999 }),
          fc.integer({ min: 0, max: 4 }),
          fc.constantFrom(...unitWords(field)),
        )
        .map(([digits, decimals, unit]) => `${(digits / 10 ** decimals).toFixed(decimals)}${unit}`)
        .map((text) => (within(field, text) ? text : smallText(field)));
  }
}

type Quantity = Extract<SheetField, { kind: 'quantity' }>;

function unitWords(field: Quantity): readonly string[] {
  const ids = unitsOf(field.dimension).map(({ id }) => id);
  return ['', ...ids.filter((id) => id !== '1').map((id) => ` ${id}`)];
}

/** Small numbers are possible for every field; whether a large one is, its own bound tells. */
function within(field: Quantity, text: string): boolean {
  if (field.name === 'caseRatingPa') return false;
  const value = Number(text.split(' ')[0]);
  return (
    value > 0 && value <= 0.4 && !/ (m|m2|MPa|ksi|K|degR)$/.test(text) && field.dimension !== 'temperature'
  );
}

function smallText(field: Quantity): string {
  if (field.dimension === 'temperature') return '20 degC';
  if (field.name === 'caseRatingPa') return '2.5 bar';
  return field.dimension === 'ratio' ? '0.5' : `0.25 ${preferredUnit(field.dimension, 'us')}`;
}
