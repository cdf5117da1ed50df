import { isUnitId, unitFor } from '../../../procedures/calculations/units.ts';
import type { Job, Reading } from '../../../procedures/job.ts';

/** `09:19`, as the line shows it; the record prints the date and zone. */
export function clock(at: string): string {
  return at.slice(11, 16);
}

/** `t1` as it stands on a tag. */
export function short(person: string): string {
  return person.toUpperCase();
}

/** A reading as it was read: the number as typed, with its unit where none was typed. */
export function asRead(reading: Reading): string {
  const label = isUnitId(reading.unit) ? unitFor(reading.unit).label : reading.unit;
  return /[a-z%"°]/i.test(reading.typed) ? reading.typed : `${reading.typed} ${label}`;
}

/** What a person gave in an answer, in one short text. */
export function given(readings: readonly Reading[]): string {
  return readings.map(asRead).join(', ');
}

export function placeWords(job: Job): string {
  return job.facts.place === 'bench' ? 'on the bench' : 'in the line';
}
