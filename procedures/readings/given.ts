import { testAirLimit } from '../../safety/limits.ts';
import { Refusal } from '../../safety/refusal.ts';
import { DIMENSIONS } from '../calculations/unit-table.ts';
import { preferredUnit } from '../calculations/units.ts';
import { standsSo } from '../facts.ts';
import type { Csv, Job, Reading, Words } from '../job.ts';
import { FIGURES } from '../quantities.ts';
import { fill, say } from '../say.ts';
import { isOverdue } from '../test-gear/fit.ts';
import type { GearItem } from '../test-gear/gear.ts';
import type { ChoiceField, Field, QuantityField, TextField } from '../vocabulary.ts';
import { readCsvField } from './given-csv.ts';
import { type NumberRead, type NumberRefused, readNumber } from './number-text.ts';

/** What a form or a JSON body gives: texts by field name. */
export type Given = Readonly<Record<string, string>>;

export interface Understood {
  readonly readings: Readonly<Record<string, Reading>>;
  readonly words: Words;
  readonly csv?: Csv;
  /** The highest reading above what this valve may have there. */
  readonly aboveLimitPa: number | null;
}

/** How far past full travel a scale may be read before it is held for a slip: 4 % of the stroke. */
const TRAVEL_PAST_END = 0.04;

/**
 * Turns what was typed into readings with unit, gauge and uncertainty, and into words.
 * @throws Refusal naming every wrong field; nothing typed is lost
 */
export function understand(
  fields: readonly Field[],
  { given, job, today }: { readonly given: Given; readonly job: Job; readonly today: string },
): Understood {
  const readings: Record<string, Reading> = {};
  const words: Record<string, string> = {};
  const csv: Record<string, string> = {};
  const wrong: Refusal[] = [];
  for (const one of fields.filter((some) => asked(some, job))) {
    const field = { ...one, label: fill(one.label, job) };
    try {
      if (field.type === 'quantity') {
        const reading = readQuantity(field, { given, job, today });
        if (reading !== null) readings[field.name] = reading;
      } else if (field.type === 'csv') {
        const table = readCsvField(field, given);
        if (table !== null) csv[field.name] = table;
      } else {
        const word = field.type === 'choice' ? readChoice(field, given) : readText(field, { given, job });
        if (word !== null) words[field.name] = word;
      }
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      wrong.push(error);
    }
  }
  if (wrong.length > 0) throw together(wrong);
  const tables = Object.keys(csv).length === 0 ? {} : { csv };
  return { readings, words, ...tables, aboveLimitPa: aboveLimit(fields, { readings, job }) };
}

/** A field is asked where its fact stands so. */
export function asked(field: Field, job: Job): boolean {
  return standsSo(field.when, job.facts);
}

function readQuantity(
  field: QuantityField,
  { given, job, today }: { readonly given: Given; readonly job: Job; readonly today: string },
): Reading | null {
  const typed = given[field.name] ?? '';
  if (typed.trim() === '' && (field.optional || (field.carried && job.readings[field.name] !== undefined)))
    return null;
  const number = numberFor(field, { typed, units: job.sheet.units });
  const ofScale = field.dimension === 'travel' && number.unit === '%';
  const valueSi = ofScale ? (number.valueSi / 100) * job.sheet.travelM : number.valueSi;
  const gear = gearFor(field, { given, job });
  // What this valve cannot do is said in its own words, before the gauge is asked whether it could show it.
  checkPlausible(field, { valueSi, job });
  if (gear !== null) checkGear(gear, { field, valueSi, today, job });
  return {
    field: field.name,
    valueSi,
    typed: number.typed.trim(),
    unit: number.unit,
    gauge: gear?.number ?? null,
    uncertaintySi: gear === null ? null : uncertaintyOf(gear),
    readBy: readerOf(field, given),
  };
}

/** By radio: who read this one, or else who read all of the card; null where it is who wrote it. */
function readerOf(field: QuantityField, given: Given): string | null {
  return (given[`${field.name}ReadBy`] ?? '').trim() || (given.readBy ?? '').trim() || null;
}

/** Travel is read in percent of the scale or as a length; everything else in its own dimension. */
function numberFor(
  field: QuantityField,
  { typed, units }: { readonly typed: string; readonly units: 'us' | 'si' },
): NumberRead {
  const read =
    field.dimension === 'travel'
      ? readTravel(typed)
      : readNumber(typed, { dimensions: [field.dimension], unit: preferredUnit(field.dimension, units) });
  if (read.ok) return read;
  throw wrongField(field, { code: read.code, what: `${field.label}: ${read.what}`, next: read.next });
}

function readTravel(typed: string): NumberRead | NumberRefused {
  return readNumber(typed, { dimensions: ['percent', 'length'], unit: '%' });
}

/** A gauge's accuracy as a rectangular half width, covered at 95 %: 2 a / sqrt 3 (JCGM 100:2008, 4.3.7 and 6.2.1). */
export function uncertaintyOf(gear: GearItem): number {
  return ((2 / Math.sqrt(3)) * gear.accuracyPercentOfSpan * (gear.rangeHighSi - gear.rangeLowSi)) / 100;
}

function gearFor(
  field: QuantityField,
  { given, job }: { readonly given: Given; readonly job: Job },
): GearItem | null {
  if (field.gauge === undefined) return null;
  const gear = job.gear[field.gauge];
  const named = (given[`${field.name}Gauge`] ?? '').trim();
  const found = named === '' ? gear : Object.values(job.gear).find((item) => item?.number === named);
  if (found === undefined) {
    throw wrongField(field, {
      code: 'GEA-110',
      what: `${field.label}: gauge "${named || field.gauge}" does not belong to this job.`,
      next: 'Name a gauge that was chosen when the job opened.',
    });
  }
  if (!isOfKind(found, field)) {
    throw wrongField(field, {
      code: 'GEA-111',
      what: `${field.label}: ${found.number} shows ${DIMENSIONS[found.dimension].title}.`,
      next: 'Name the gauge that this was read on.',
    });
  }
  return found;
}

/** Only another gauge that a reading names can be of another kind: those of a job were chosen for their place. */
function isOfKind({ dimension }: GearItem, field: QuantityField): boolean {
  return dimension === (field.dimension === 'travel' ? 'length' : field.dimension);
}

function checkGear(
  gear: GearItem,
  {
    field,
    valueSi,
    today,
    job,
  }: { readonly field: Field; readonly valueSi: number; readonly today: string; readonly job: Job },
): void {
  if (isOverdue(gear, today)) {
    throw wrongField(field, {
      code: 'GEA-102',
      what: `Gauge ${gear.number} was due for calibration on ${gear.dueOn}.`,
      next: 'Read on gear that is in date; open the job again with it if need be.',
    });
  }
  const span = gear.rangeHighSi - gear.rangeLowSi;
  if (valueSi < gear.rangeLowSi - 0.01 * span || valueSi > gear.rangeHighSi) {
    const range = (value: number) =>
      say({
        valueSi: value,
        dimension: gear.dimension,
        units: job.sheet.units,
      });
    throw wrongField(field, {
      code: 'GEA-103',
      what: `${field.label}: ${range(valueSi)} is beyond gauge ${gear.number}, ${range(gear.rangeLowSi)} to ${range(gear.rangeHighSi)}.`,
      next: 'Read the scale again, or write the unit.',
    });
  }
}

/** What may stand below its zero. */
const SIGNED: readonly QuantityField['dimension'][] = [
  'pressure',
  'travel',
  'temperature',
  'temperatureDifference',
  'percent',
  'ratio',
  'force',
];

function checkPlausible(
  field: QuantityField,
  { valueSi, job }: { readonly valueSi: number; readonly job: Job },
): void {
  const { travelM, units } = job.sheet;
  if (
    field.dimension === 'travel' &&
    (valueSi > travelM * (1 + TRAVEL_PAST_END) || valueSi < -travelM * TRAVEL_PAST_END)
  ) {
    const percent = Math.round((1000 * valueSi) / travelM) / 10;
    throw wrongField(field, {
      code: 'REA-005',
      what: `${percent} % is past this valve's travel, ${say({ valueSi: travelM, dimension: 'length', units })}.`,
      next: 'Read the scale again, or write it with its unit.',
    });
  }
  if (!SIGNED.includes(field.dimension) && valueSi < 0) {
    throw wrongField(field, {
      code: 'REA-006',
      what: `${field.label} cannot be negative.`,
      next: 'Write it without the minus; the direction stands on the card.',
    });
  }
}

function aboveLimit(
  fields: readonly Field[],
  { readings, job }: { readonly readings: Readonly<Record<string, Reading>>; readonly job: Job },
): number | null {
  const above = fields.flatMap((field) => {
    const limit = field.type === 'quantity' ? limitOf(field, job) : null;
    const valueSi = readings[field.name]?.valueSi ?? 0;
    return limit !== null && valueSi > limit ? [valueSi] : [];
  });
  return above.length === 0 ? null : Math.max(...above);
}

function limitOf({ onCase, most }: QuantityField, job: Job): number | null {
  if (onCase) return testAirLimit(job.sheet).limitPa;
  const limit = most === undefined ? null : FIGURES[most].of(job);
  return typeof limit === 'number' ? limit : null;
}

/** A list that is longer is not said over again: it stands below. */
const NAMED_MOST = 8;

function readChoice(field: ChoiceField, given: Given): string | null {
  const said = (given[field.name] ?? '').trim();
  if (said === '' && field.optional) return null;
  if (field.choices.some((choice) => choice.value === said)) return said;
  const allowed = field.choices.map((choice) => choice.label).join('; ');
  throw wrongField(field, {
    code: 'REA-007',
    what: `${field.label}: ${said === '' ? 'nothing chosen' : `"${said}" is not a choice`}.`,
    next:
      field.choices.length > NAMED_MOST ? 'Choose one of those on the card.' : `Choose one of: ${allowed}.`,
  });
}

const TEXT_MAX = 400;

function readText(
  field: TextField,
  { given, job }: { readonly given: Given; readonly job: Job },
): string | null {
  const text = (given[field.name] ?? '').trim();
  if (text === '') {
    if (field.optional || (field.carried && job.words[field.name] !== undefined)) return null;
    throw wrongField(field, { code: 'REA-008', what: `${field.label} is empty.`, next: 'Write it.' });
  }
  if (text.length > TEXT_MAX)
    throw wrongField(field, {
      code: 'REA-009',
      what: `${field.label} is longer than ${TEXT_MAX} letters.`,
      next: 'Shorten it.',
    });
  if (field.mustBe !== undefined) {
    const tag = FIGURES[field.mustBe].of(job);
    if (tag !== text.toUpperCase() && tag !== text) {
      throw wrongField(field, {
        code: 'REA-010',
        what: `"${text}" is not the tag of this step.`,
        next: `Go to ${tag} and read its label.`,
      });
    }
  }
  return text;
}

function wrongField(
  field: Field,
  { code, what, next }: { readonly code: string; readonly what: string; readonly next: string },
): Refusal {
  return new Refusal({
    kind: 'unreadable',
    code,
    what,
    kept: 'What you typed is still in its field; nothing was counted.',
    next,
    fields: { [field.name]: `${what} ${next}`.trim() },
  });
}

function together(wrong: readonly Refusal[]): Refusal {
  const [first] = wrong;
  if (first === undefined) throw new Error('no refusal to put together');
  const fields = Object.assign({}, ...wrong.map((refusal) => refusal.text.fields ?? {}));
  return new Refusal({ ...first.text, fields });
}
