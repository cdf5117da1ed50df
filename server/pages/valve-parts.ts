/** What the pages of valves share. */
import { z } from 'zod';
import type { Contradiction } from '../../procedures/valve-sheet/contradictions/rule.ts';
import { contradictionsOf } from '../../procedures/valve-sheet/contradictions.ts';
import { FIELDS } from '../../procedures/valve-sheet/fields.ts';
import { writeSheetsJson } from '../../procedures/valve-sheet/json.ts';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import type { BareCall } from '../http/route.ts';
import type { Person, Role } from '../people/person.ts';
import { noSuchValve } from '../valves/valve-refusals.ts';
import { type Valve, valveKind } from '../valves/valve-stream.ts';

/** Who keeps the valve sheets. */
export const SHEET_KEEPERS = ['engineer'] as const satisfies readonly Role[];

export const mayKeepSheets = (person: Person | null): boolean =>
  SHEET_KEEPERS.some((role) => role === person?.role);

export type SavedValve = Valve & { readonly sheet: ValveSheet };

/** @throws Refusal VAL-001 */
export async function valveAt({ services, params }: BareCall): Promise<SavedValve> {
  const tag = params.tag ?? '';
  const valve = await services.log.state(valveKind, tag);
  if (valve.sheet === null) throw noSuchValve(tag);
  return { ...valve, sheet: valve.sheet };
}

export const pathOfValve = (tag: string): string => `/valves/${encodeURIComponent(tag)}`;

/** A sheet for programs: texts with units, as they may be sent back. */
const sheetTextsAnswer = z.object(
  Object.fromEntries(FIELDS.map((field) => [field.name, z.string().describe(field.label)])),
);

const contradictionAnswer = z.object({
  code: z.string(),
  stops: z.boolean(),
  fields: z.array(z.string()),
  what: z.string(),
});

export const valveAnswer = z.object({
  tag: z.string(),
  revision: z.int(),
  retired: z.boolean(),
  openJob: z.string().nullable(),
  sheet: sheetTextsAnswer,
  contradictions: z.array(contradictionAnswer),
});

export function answerOf({ sheet, revision, retired, openJob }: SavedValve): z.input<typeof valveAnswer> {
  const [texts = {}] = writeSheetsJson([sheet]).valveSheets;
  return {
    tag: sheet.tag,
    revision,
    retired,
    openJob,
    sheet: texts,
    contradictions: contradictionsOf(sheet).map(asAnswer),
  };
}

function asAnswer({ code, stops, fields, what }: Contradiction): z.input<typeof contradictionAnswer> {
  return { code, stops, fields: [...fields], what };
}
