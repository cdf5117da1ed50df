import { isUnitId, unitFor } from '../calculations/units.ts';
import type { Given } from '../readings/given.ts';
import { understand } from '../readings/given.ts';
import { say } from '../say.ts';
import type { Field, QuantityField } from '../vocabulary.ts';
import type { Ask } from './ask.ts';
import { nameOf } from './labels.ts';
import { ownGauge } from './places.ts';
import type { Cell } from './reply.ts';

/** What was understood, in one line that can be typed again. @example 'Signal: 9 psi; Travel: 50 %' */
export function saidOf(given: Given, ask: Ask): string {
  return ask.fields
    .filter((field) => (given[field.name] ?? '') !== '')
    .map((field) => `${nameOf(field, ask.fields)}: ${valueWords(field, { given, ask })}`)
    .join('; ');
}

/** The same as cells of the card: which gauge it stands for, and the value in the plant's unit where it was read in another. */
export function cellsOf(given: Given, ask: Ask): readonly Cell[] {
  return ask.fields
    .filter((field) => (given[field.name] ?? '') !== '')
    .map((field) => {
      const gauge = given[`${field.name}Gauge`] ?? ownGauge(field.name, ask);
      const value = field.type === 'quantity' ? withOwnUnit(field, { given, ask }) : plainValue(field, given);
      return { label: gauge === '' ? field.label : `${field.label}, on ${gauge}`, value };
    });
}

interface Of {
  readonly given: Given;
  readonly ask: Ask;
}

function valueWords(field: Field, { given, ask }: Of): string {
  if (field.type !== 'quantity') return plainValue(field, given);
  const gauge = given[`${field.name}Gauge`] ?? '';
  return `${asTyped(field, { given, ask })}${gauge === '' ? '' : ` on ${gauge}`}`;
}

function plainValue(field: Field, given: Given): string {
  const value = given[field.name] ?? '';
  if (field.type !== 'choice') return value;
  return field.choices.find((choice) => choice.value === value)?.label ?? value;
}

/** As typed, with the unit that it is taken in where none was typed. */
function asTyped(field: QuantityField, of: Of): string {
  const reading = readingOf(field, of);
  const typed = (of.given[field.name] ?? '').trim();
  if (reading === null || !isUnitId(reading.unit)) return typed;
  return /[^\d\s.,+\-\u2212]/.test(typed) ? typed : `${typed} ${unitFor(reading.unit).label}`.trim();
}

function withOwnUnit(field: QuantityField, of: Of): string {
  const typed = asTyped(field, of);
  const reading = readingOf(field, of);
  if (reading === null) return typed;
  const { units } = of.ask.job.sheet;
  const dimension = field.dimension === 'travel' ? 'length' : field.dimension;
  const own = say({ valueSi: reading.valueSi, dimension, units });
  const isOther = unitOf(own) !== unitOf(typed);
  return isOther ? `${typed}, ${own}` : typed;
}

function readingOf(field: QuantityField, { given, ask }: Of) {
  const only = { [field.name]: given[field.name] ?? '' };
  const { readings } = understand([field], { given: only, job: ask.job, today: ask.around.today });
  return readings[field.name] ?? null;
}

function unitOf(text: string): string {
  return text
    .replace(/^[+\-\u2212]?[\d.,]+\s*/, '')
    .trim()
    .toLowerCase();
}
