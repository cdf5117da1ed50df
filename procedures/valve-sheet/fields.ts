import type { FieldName, Section, SheetField } from './field.ts';
import { actuatorSection, movesSection, signalSection, valveSection } from './fields/actuator-fields.ts';
import { packingSection, stemSection, trimSection } from './fields/body-fields.ts';
import { lineSection, notesSection, tolerancesSection } from './fields/line-fields.ts';

/** The whole valve sheet as a form shows it, in order. Form, JSON, CSV and the fact list are all drawn from it. */
export const SECTIONS: readonly Section[] = [
  valveSection,
  movesSection,
  actuatorSection,
  signalSection,
  trimSection,
  stemSection,
  packingSection,
  tolerancesSection,
  lineSection,
  notesSection,
];

export const FIELDS: readonly SheetField[] = SECTIONS.flatMap(({ fields }) => fields);

const BY_NAME: ReadonlyMap<string, SheetField> = new Map(FIELDS.map((field) => [field.name, field]));

/** @example fieldNamed('travelM')?.label // 'Rated travel' */
export function fieldNamed(name: string): SheetField | undefined {
  return BY_NAME.get(name);
}

/** @example labelOf('travelM') // 'Rated travel' */
export function labelOf(name: FieldName): string {
  return BY_NAME.get(name)?.label ?? name;
}
