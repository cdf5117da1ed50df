import type { UnitId } from '../calculations/unit-table.ts';
import { preferredUnit, unitFor } from '../calculations/units.ts';
import { rowPlan } from '../cycle-verdict.ts';
import type { Given } from '../readings/given.ts';
import { understand } from '../readings/given.ts';
import { unitWord } from '../readings/unit-words.ts';
import type { Field, QuantityField } from '../vocabulary.ts';
import type { Ask } from './ask.ts';
import { faultOf } from './values.ts';

/** What is read off a tape, a thermometer or a watch of one's own: no gauge of the job says in which unit. */
const BOTH_UNITS: { readonly [D in QuantityField['dimension']]?: readonly UnitId[] } = {
  temperature: ['degC', 'degF'],
  torque: ['N.m', 'lbf.ft'],
  length: ['mm', 'in'],
  time: ['s', 'min'],
};

/** So far from the setting in percent, and so near to it as a length, a bare travel may be the length. */
const FAR_PERCENT = 25;
const NEAR_PERCENT = 10;

const BARE = /^[+\-\u2212]?[\d.,]+$/;

/**
 * The same values in each unit that a bare number may have been read in; one alone where every unit is sure.
 *
 * @example inEachUnit({ bodyTemperatureK: '50' }, ask) // [{ … '50 °C' }, { … '50 °F' }]
 */
export function inEachUnit(given: Given, ask: Ask): readonly Given[] {
  return ask.fields.reduce<readonly Given[]>(
    (all, field) => {
      const value = (given[field.name] ?? '').trim();
      const units =
        field.type === 'quantity' && BARE.test(value) ? unitsFor(field, { value, given, ask }) : [];
      const texts = units
        .map((unit) => `${value} ${unitFor(unit).label}`)
        .filter((text) => faultOf(field, { text, ask }) === null);
      return texts.length < 2
        ? all
        : texts.flatMap((text) => all.map((one) => ({ ...one, [field.name]: text })));
    },
    [given],
  );
}

interface Of {
  readonly value: string;
  readonly given: Given;
  readonly ask: Ask;
}

function unitsFor(field: QuantityField, of: Of): readonly UnitId[] {
  if (field.dimension === 'travel') return isLengthToo(field, of) ? ['%', ownLength(of.ask)] : [];
  if (field.dimension === 'pressure') return unitsBeside(field, of);
  return field.gauge === undefined ? (BOTH_UNITS[field.dimension] ?? []) : [];
}

function ownLength({ job }: Ask): UnitId {
  return preferredUnit('length', job.sheet.units);
}

/** `10` at the row of 50 % of a travel of 20 mm. */
function isLengthToo(field: QuantityField, { value, ask }: Of): boolean {
  const plan = ask.step?.kind === 'table' ? rowPlan(ask.step, ask.job, ask.job.step) : undefined;
  if (plan === undefined) return false;
  const off = [`${value} %`, `${value} ${unitFor(ownLength(ask)).label}`].map((text) => {
    if (faultOf(field, { text, ask }) !== null) return Number.POSITIVE_INFINITY;
    const { readings } = understand([field], {
      given: { [field.name]: text },
      job: ask.job,
      today: ask.around.today,
    });
    const travelM = readings[field.name]?.valueSi ?? Number.NaN;
    return Math.abs((100 * travelM) / ask.job.sheet.travelM - plan.percent);
  });
  const [asPercent = 0, asLength = 0] = off;
  return asPercent > FAR_PERCENT && asLength <= NEAR_PERCENT;
}

/** `0.62 bar` on one gauge and `0.63` on the other: psi as the plant has it, or bar as the one beside it. */
function unitsBeside(field: QuantityField, { given, ask }: Of): readonly UnitId[] {
  const own = preferredUnit('pressure', ask.job.sheet.units);
  const beside = ask.fields
    .filter((other) => other.name !== field.name && isPressure(other))
    .flatMap((other) => writtenUnit(given[other.name] ?? ''));
  const [unit] = beside.filter((one) => one !== own);
  return unit === undefined ? [] : [own, unit];
}

function isPressure(field: Field): boolean {
  return field.type === 'quantity' && field.dimension === 'pressure';
}

function writtenUnit(text: string): readonly UnitId[] {
  const meant = unitWord(text.trim().replace(/^[+\-\u2212]?[\d.,]+\s*/, ''));
  return meant.kind === 'units' ? meant.units : [];
}
