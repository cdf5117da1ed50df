import type { UnitSystem } from '../calculations/units.ts';
import { airActionOf, failPositionOf } from './derived.ts';
import { FIELDS, fieldNamed } from './fields.ts';
import { type FieldValue, readField } from './read-field.ts';
import type { ValveSheet } from './sheet.ts';

export interface SheetTexts {
  /** By field name, as a form, a JSON body or a row of a table gives them; a missing field is a blank one. */
  readonly texts: Readonly<Record<string, string>>;
  /** Which units numbers without a unit are in; left out: those that the sheet itself asks for. */
  readonly typedIn?: UnitSystem | undefined;
}

/** What is wrong, and what to write instead, by the name of the field. */
export type FieldFaults = Readonly<Record<string, string>>;

export type SheetRead =
  | { readonly ok: true; readonly sheet: ValveSheet }
  | { readonly ok: false; readonly faults: FieldFaults };

/**
 * A valve sheet from texts. Every wrong field is named, not only the first; whether the fields agree with each
 * other is told by `contradictionsOf`.
 *
 * @example readSheet({ texts: { tag: 'FV-214', units: 'us', travelM: '0.75', ... } }) // { ok: true, sheet: { travelM: 0.01905, ... } }
 */
export function readSheet({ texts, typedIn }: SheetTexts): SheetRead {
  const system = typedIn ?? (texts.units?.trim() === 'si' ? 'si' : 'us');
  const values: Record<string, FieldValue> = {};
  const faults: Record<string, string> = {};
  for (const field of FIELDS) {
    const read = readField(field, { text: texts[field.name] ?? '', system });
    if ('fault' in read) faults[field.name] = read.fault;
    else {
      values[field.name] = read.value;
      if (field.kind === 'thread') values[field.pitchName] = read.pitchM ?? null;
    }
  }
  for (const name of Object.keys(texts)) {
    if (fieldNamed(name) === undefined)
      faults[name] = `“${name}” is no field of a valve sheet. Leave it out.`;
  }
  if (Object.keys(faults).length > 0) return { ok: false, faults };
  // Every field was read to the type that its kind has in the sheet.
  return { ok: true, sheet: workedOut(values as unknown as ValveSheet) };
}

/** What is not on the plate follows from how plug, air and spring move. */
function workedOut(sheet: ValveSheet): ValveSheet {
  const airAction = sheet.airAction ?? airActionOf(sheet);
  const failPosition = sheet.failPosition ?? failPositionOf({ ...sheet, airAction });
  return { ...sheet, airAction, failPosition };
}
