import { format, isUnitId, unitFor } from '../../../procedures/calculations/units.ts';
import type { Job, Reading } from '../../../procedures/job.ts';

/** `09:19`, as the line shows it; the record prints the date and zone. */
export function clock(at: string): string {
  return at.slice(11, 16);
}

/** `t1` as it stands on a tag. */
export function short(person: string): string {
  return person.toUpperCase();
}

/** Longer than this, a typed number is shown rounded on the screen; the log and the record keep every digit. */
const TYPED_MAX = 12;

const NUMBER_THEN_UNIT = /^([-+\u2212]?[\d.,'/ ]*\d)\s*[a-z%"°\u00b2\u00b3./ ]*$/i;

/** A reading as it was read: the number as typed, with its unit as it is printed everywhere. @example asRead(read) // '38 °C', of '38 C' */
export function asRead(reading: Reading): string {
  const unit = isUnitId(reading.unit) ? reading.unit : null;
  const label = unit === null ? reading.unit : unitFor(unit).label;
  if (reading.typed.length > TYPED_MAX && unit !== null && unit !== '%') {
    return format({ valueSi: reading.valueSi, unit });
  }
  const [, number] = NUMBER_THEN_UNIT.exec(reading.typed) ?? [];
  return number === undefined ? reading.typed : `${number.trim()} ${label}`;
}

/** Before and after, the unit said once where it is the same. @example wasIs(before, after) // '62', of '62 to 0 psi' */
export function wasBefore(before: Reading, after: Reading): string {
  return before.unit === after.unit ? asRead(before).replace(/\s*[a-z%"°/]+$/i, '') : asRead(before);
}

/** What a person gave in an answer, in one short text. */
export function given(readings: readonly Reading[]): string {
  return readings.map(asRead).join(', ');
}

export function placeWords(job: Job): string {
  return job.facts.place === 'bench' ? 'on the bench' : 'in the line';
}

/** The people of the site by id; retired ones too. */
export type Names = ReadonlyMap<string, string>;

/** @example nameOf('t1', names) // 'Technician 1 (T1)' */
export function nameOf(person: string, names: Names): string {
  const name = names.get(person);
  return name === undefined ? short(person) : `${name} (${short(person)})`;
}

/** @example day('2026-03-04T08:22:00.000Z') // '2026-03-04' */
export function day(at: string): string {
  return at.slice(0, 10);
}

export function percent(value: number): string {
  return value.toFixed(1);
}

/** With its sign; a true minus, and none before a zero. @example signedPercent(-7.21) // '−7.2' */
export function signedPercent(value: number): string {
  const text = Math.abs(value).toFixed(1);
  if (Number(text) === 0) return text;
  return value < 0 ? `\u2212${text}` : `+${text}`;
}

/** How a job closed, in words; blank while it is open. */
export function closedWords({ closedAs, goesOnAs }: Pick<Job, 'closedAs' | 'goesOnAs'>): string {
  if (closedAs === null) return '';
  if (closedAs === 'handed over') return `went on as job ${goesOnAs}`;
  return closedAs === 'done' ? 'work done' : 'stopped';
}
