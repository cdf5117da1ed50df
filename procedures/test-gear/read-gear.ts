import { unitsOf } from '../calculations/units.ts';
import { type Expected, type NumberRead, readNumber } from '../readings/number-text.ts';
import { unitWord } from '../readings/unit-words.ts';
import { GEAR_FIELDS, type GearFieldName } from './fields.ts';
import { GEAR_KINDS, type GearItem, type GearKind } from './gear.ts';

export type GearRead =
  | { readonly ok: true; readonly item: GearItem }
  | { readonly ok: false; readonly faults: Readonly<Record<string, string>> };

const NUMBER = /^[\p{L}\p{N}](?:[\p{L}\p{N}._ -]{0,38}[\p{L}\p{N}])?$/u;

/**
 * A piece of test gear from texts, every wrong field named.
 *
 * @param today  YYYY-MM-DD: nothing is calibrated tomorrow
 * @example readGear({ texts: { number: 'G-07', kind: 'pressure gauge', unit: 'psi', rangeLow: '0', rangeHigh: '30', ... }, today })
 */
export function readGear({
  texts,
  today,
}: {
  readonly texts: Readonly<Record<string, string>>;
  readonly today: string;
}): GearRead {
  const reading = new Reading(texts);
  const kind = reading.kind();
  const scale = kind === null ? null : reading.scale(kind);
  const item = {
    number: reading.number(),
    kind,
    accuracyPercentOfSpan: reading.accuracy(kind),
    ...scale,
    ...reading.dates(today),
    certificate: reading.text('certificate'),
    bleedsDown: reading.bleedsDown(kind),
    note: reading.text('note'),
  };
  const { faults } = reading;
  // Without a fault every field was read, so none of them is null any more.
  return Object.keys(faults).length === 0 ? { ok: true, item: item as GearItem } : { ok: false, faults };
}

class Reading {
  readonly faults: Record<string, string> = {};
  readonly #texts: Readonly<Record<string, string>>;

  constructor(texts: Readonly<Record<string, string>>) {
    this.#texts = texts;
    const known = new Set<string>(GEAR_FIELDS.map(({ name }) => name));
    for (const name of Object.keys(texts)) {
      if (!known.has(name)) this.faults[name] = `“${name}” is no field of test gear. Leave it out.`;
    }
  }

  number(): string {
    const number = this.#typed('number').normalize('NFC').toUpperCase();
    if (!NUMBER.test(number))
      this.faults.number = 'Write the number on its label: letters, digits, - . _, 40 at most.';
    return number;
  }

  kind(): GearKind | null {
    const kind = this.#typed('kind');
    if (Object.hasOwn(GEAR_KINDS, kind)) return kind as GearKind;
    this.faults.kind = `Choose one of: ${Object.keys(GEAR_KINDS).join(', ')}.`;
    return null;
  }

  scale(kind: GearKind): Partial<GearItem> {
    const dimension = GEAR_KINDS[kind];
    const meant = unitWord(this.#typed('unit'));
    const units = unitsOf(dimension);
    const unit = meant.kind === 'units' ? units.find(({ id }) => meant.units.includes(id)) : undefined;
    if (unit === undefined) {
      this.faults.unit = `Choose one of: ${units.map(({ id }) => id).join(', ')}.`;
      return {};
    }
    const expected: Expected = { dimensions: [dimension], unit: unit.id };
    const low = this.#quantity('rangeLow', expected);
    const high = this.#quantity('rangeHigh', expected);
    if (low !== null && high !== null && low.valueSi >= high.valueSi)
      this.faults.rangeHigh = 'The scale must end above where it begins.';
    return { dimension, unit: unit.id, rangeLowSi: low?.valueSi ?? 0, rangeHighSi: high?.valueSi ?? 0 };
  }

  accuracy(kind: GearKind | null): number {
    if (kind === 'regulator' && this.#typed('accuracyPercentOfSpan') === '') return 0;
    const possible = kind === 'regulator' ? { atLeastSi: 0, atMostSi: 50 } : { aboveSi: 0, atMostSi: 50 };
    return (
      this.#quantity('accuracyPercentOfSpan', { dimensions: ['percent'], unit: '%', possible })?.value ?? 0
    );
  }

  dates(today: string): Pick<GearItem, 'calibratedOn' | 'dueOn'> {
    const calibratedOn = this.#date('calibratedOn');
    const dueOn = this.#date('dueOn');
    if (calibratedOn > today)
      this.faults.calibratedOn = `${calibratedOn} is still to come. Write when it was.`;
    if (dueOn !== '' && dueOn <= calibratedOn) this.faults.dueOn = `It must be due after ${calibratedOn}.`;
    return { calibratedOn, dueOn };
  }

  bleedsDown(kind: GearKind | null): boolean | null {
    const typed = this.#typed('bleedsDown');
    if (kind !== 'regulator') {
      if (typed !== '') this.faults.bleedsDown = 'Only a regulator bleeds down. Leave it blank.';
      return null;
    }
    if (typed !== 'yes' && typed !== 'no')
      this.faults.bleedsDown = 'Write yes or no: try it with the line shut.';
    return typed === 'yes';
  }

  text(name: 'certificate' | 'note'): string {
    const typed = this.#typed(name);
    if (/[\p{Cc}\p{Cs}]/u.test(typed) || typed.length > 200)
      this.faults[name] = 'Write at most 200 plain characters.';
    return typed;
  }

  #typed(name: GearFieldName): string {
    return (this.#texts[name] ?? '').trim();
  }

  #quantity(name: GearFieldName, expected: Expected): NumberRead | null {
    const read = readNumber(this.#typed(name), expected);
    if (read.ok) return read;
    this.faults[name] = `${read.what} ${read.next}`;
    return null;
  }

  #date(name: 'calibratedOn' | 'dueOn'): string {
    const typed = this.#typed(name);
    if (isDate(typed)) return typed;
    this.faults[name] =
      `${typed === '' ? 'The date is missing' : `“${typed}” is no date`}. Write year, month, day: 2026-03-04.`;
    return '';
  }
}

/** A day that the calendar has, written YYYY-MM-DD. */
export function isDate(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const atMs = Date.parse(`${text}T00:00:00Z`);
  return !Number.isNaN(atMs) && new Date(atMs).toISOString().startsWith(text);
}
