/** What engineers do with valve sheets: add one, save it anew, retire the valve. */

import type { UnitSystem } from '../../procedures/calculations/units.ts';
import type { Json } from '../../procedures/json.ts';
import { contradictionsOf, stoppingIn } from '../../procedures/valve-sheet/contradictions.ts';
import { readSheet } from '../../procedures/valve-sheet/read-sheet.ts';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import { wrongFields } from '../http/fields.ts';
import type { EntryDraft, Read } from '../log/act.ts';
import { canonical } from '../log/canonical.ts';
import { fingerprintOf } from '../log/chain.ts';
import type { SiteLog } from '../log/site-log.ts';
import { streamOf } from '../log/stream-kind.ts';
import type { By } from '../people/people.ts';
import {
  contradictsItself,
  jobIsOpen,
  noSuchValve,
  retiredAlready,
  savedMeanwhile,
  tagInUse,
} from './valve-refusals.ts';
import { type Valve, valveKind } from './valve-stream.ts';

interface To {
  readonly log: SiteLog;
  readonly by: By;
}

export interface SheetTyped {
  readonly texts: Readonly<Record<string, string>>;
  /** Which units numbers without a unit are in; left out: those that the sheet asks for. */
  readonly typedIn?: UnitSystem | undefined;
}

export interface Saved {
  readonly [name: string]: Json;
  readonly tag: string;
  readonly revision: number;
}

/**
 * Adds a valve by its sheet.
 *
 * @throws Refusal FRM-002 with every wrong field, a contradiction that stops, VAL-002 if the tag is in use
 */
export async function addValve(to: To, typed: SheetTyped): Promise<Saved> {
  const sheet = sheetOf(typed);
  return await record(to, {
    tag: sheet.tag,
    asks: { addValve: sheet.tag, texts: { ...typed.texts }, typedIn: typed.typedIn ?? null },
    draft: savedSheet(sheet, typed.texts),
    check: (valve) => {
      if (valve.sheet !== null) throw tagInUse(sheet.tag, valve);
    },
  });
}

/**
 * Saves a valve's sheet anew, and takes a retired valve back into use. Jobs that are open keep the sheet that they
 * were opened with. A sheet that says what was said before is not saved again.
 *
 * @param revision  the one that the form was drawn from
 * @throws Refusal FRM-002, a contradiction that stops, VAL-001, VAL-003 if somebody else saved it meanwhile
 */
export async function saveValve(
  to: To,
  { tag, revision, ...typed }: SheetTyped & { readonly tag: string; readonly revision: string },
): Promise<Saved> {
  const texts = { ...typed.texts, tag };
  const sheet = sheetOf({ ...typed, texts });
  return await record(to, {
    tag,
    asks: { saveValve: tag, revision, texts, typedIn: typed.typedIn ?? null },
    draft: savedSheet(sheet, texts),
    check: (valve) => {
      if (valve.sheet === null) throw noSuchValve(tag);
      if (String(valve.revision) !== revision) throw savedMeanwhile(tag);
    },
  });
}

/** Nothing is deleted: jobs that were done on it still name it. @throws Refusal VAL-001, VAL-004, VAL-005 */
export async function retireValve(
  to: To,
  { tag, why }: { readonly tag: string; readonly why: string },
): Promise<Saved> {
  return await record(to, {
    tag,
    asks: { retireValve: tag, why },
    draft: {
      stream: streamOf('valve', tag),
      kind: 'valve-retired',
      inputs: { why },
      outcome: {},
      effects: {},
    },
    check: (valve) => {
      if (valve.sheet === null) throw noSuchValve(tag);
      if (valve.retired) throw retiredAlready(tag);
      if (valve.openJob !== null) throw jobIsOpen(tag, valve.openJob);
    },
  });
}

/** @example isUnchanged(valve, sheet) // true for what stands there already, in use */
export function isUnchanged(valve: Valve, sheet: ValveSheet): boolean {
  return !valve.retired && valve.sheet !== null && sameSheet(valve.sheet, sheet);
}

function sameSheet(one: ValveSheet, other: ValveSheet): boolean {
  return canonical(one as unknown as Json) === canonical(other as unknown as Json);
}

/** An entry that saves a sheet, with what it says against itself and was still saved. */
export function savedSheet(sheet: ValveSheet, texts: Readonly<Record<string, string>>): EntryDraft {
  const typed = Object.fromEntries(Object.entries(texts).filter(([, text]) => text.trim() !== ''));
  return {
    stream: streamOf('valve', sheet.tag),
    kind: 'valve-sheet-saved',
    inputs: { sheet, typed } as unknown as Json,
    outcome: { contradictions: contradictionsOf(sheet).map(({ code }) => code) },
    effects: {},
  };
}

function sheetOf(typed: SheetTyped): ValveSheet {
  const read = readSheet(typed);
  if (!read.ok) throw wrongFields(read.faults);
  const stopping = stoppingIn(contradictionsOf(read.sheet));
  if (stopping.length > 0) throw contradictsItself(stopping);
  return read.sheet;
}

interface ValveAct {
  readonly tag: string;
  readonly asks: Json;
  readonly draft: EntryDraft;
  /** @throws Refusal to have nothing written */
  check(valve: Valve): void;
}

async function record({ log, by }: To, { tag, asks, draft, check }: ValveAct): Promise<Saved> {
  return await log.act({
    ...by,
    fingerprint: fingerprintOf(asks),
    streams: [draft.stream],
    decide: (read: Read) => {
      const valve = read.state(valveKind, tag);
      check(valve);
      const { sheet } = (draft.inputs ?? {}) as unknown as { readonly sheet?: ValveSheet };
      if (sheet !== undefined && isUnchanged(valve, sheet)) {
        return { entries: [], answer: { tag, revision: valve.revision } };
      }
      const revision = valve.revision + (sheet === undefined ? 0 : 1);
      return { entries: [draft], answer: { tag, revision } };
    },
  });
}
