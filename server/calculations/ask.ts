/** What was asked of a calculation: the texts, with those of a valve sheet where nothing was typed. */
import type { Calculation } from '../../procedures/calculations/calculation-types.ts';
import type { UnitSystem } from '../../procedures/calculations/units.ts';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import { Refusal } from '../../safety/refusal.ts';
import { optionalText } from '../http/fields.ts';
import type { SiteLog } from '../log/site-log.ts';
import { valveKind } from '../valves/valve-stream.ts';
import { fromSheet } from './from-sheet.ts';
import type { Texts } from './read-inputs.ts';

const TAG = optionalText({ called: 'the tag of a valve' });

export interface Asked {
  /** By name of the input, those of the sheet included. */
  readonly texts: Texts;
  readonly units: UnitSystem;
  /** Tag of the valve whose sheet was asked; blank for none. */
  readonly valve: string;
  /** What the sheet says, by name of the input. */
  readonly sheetTexts: Texts;
  /** Did a person give anything of their own? */
  readonly given: boolean;
}

export type Query = Readonly<Record<string, string | undefined>>;

/**
 * A field that is not in the query is filled from the sheet; one that is there, and be it blank, is left as it is.
 *
 * @throws Refusal CAL-004 if there is no such valve
 */
export async function askedOf(
  calculation: Calculation,
  { query, log }: { readonly query: Query; readonly log: SiteLog },
): Promise<Asked> {
  const valve = (query.valve ?? '').trim();
  const sheet = valve === '' ? null : await sheetOf(log, valve);
  const units = systemOf(query.units) ?? sheet?.units ?? 'us';
  const sheetTexts = sheet === null ? {} : fromSheet(calculation, { sheet, units });
  const texts: Record<string, string> = {};
  let given = false;
  for (const name of Object.keys(calculation.inputs)) {
    const typed = query[name];
    texts[name] = typed ?? sheetTexts[name] ?? '';
    given ||= (typed ?? '').trim() !== '';
  }
  return { texts, units, valve, sheetTexts, given };
}

function systemOf(text: string | undefined): UnitSystem | null {
  return text === 'us' || text === 'si' ? text : null;
}

async function sheetOf(log: SiteLog, tag: string): Promise<ValveSheet> {
  // A form that is drawn again has its texts as they came, also those that no tag can be.
  const { data } = TAG.safeParse(tag);
  const { sheet } = data ? await log.state(valveKind, data) : valveKind.initial;
  if (sheet !== null) return sheet;
  throw new Refusal({
    kind: 'unreadable',
    code: 'CAL-004',
    what: `There is no valve ${tag}.`,
    kept: 'What you typed stands in the form; nothing was recorded.',
    next: 'Look in the list of valves, or leave the tag blank.',
    fields: { valve: `There is no valve ${tag}.` },
  });
}
