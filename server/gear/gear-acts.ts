/** What engineers and supervisors do with test gear: add it, save it anew, retire it. */
import type { Json } from '../../procedures/json.ts';
import { isDate, readGear } from '../../procedures/test-gear/read-gear.ts';
import { Refusal } from '../../safety/refusal.ts';
import { wrongFields } from '../http/fields.ts';
import type { EntryDraft, Read } from '../log/act.ts';
import { fingerprintOf } from '../log/chain.ts';
import type { SiteLog } from '../log/site-log.ts';
import { streamOf } from '../log/stream-kind.ts';
import type { By } from '../people/people.ts';
import { type FoundWrong, type Gear, gearKind } from './gear-stream.ts';

export type GearTexts = Readonly<Record<string, string>>;

interface GearAct {
  readonly number: string;
  readonly asks: Json;
  readonly kind: 'gear-saved' | 'gear-retired' | 'gear-found-wrong';
  readonly inputs: Json;
  /** @throws Refusal to have nothing written */
  check(gear: Gear): void;
}

/**
 * Adds a piece of test gear.
 *
 * @param today  YYYY-MM-DD
 * @returns its number
 * @throws Refusal FRM-002 with every wrong field, GEA-002 if its number is in use
 */
export async function addGear(
  { log, by, today }: { readonly log: SiteLog; readonly by: By; readonly today: string },
  texts: GearTexts,
): Promise<string> {
  const item = itemOf(texts, today);
  return await record(
    { log, by },
    {
      number: item.number,
      asks: { addGear: item.number, texts: { ...texts } },
      kind: 'gear-saved',
      inputs: { item } as unknown as Json,
      check: (gear) => {
        if (gear.item !== null) throw numberInUse(item.number, gear);
      },
    },
  );
}

/**
 * Saves a piece of test gear as it is now, and takes it back into use if it was retired.
 *
 * @param revision  the one that the form was drawn from
 * @throws Refusal GEA-001, GEA-003 if somebody else saved it meanwhile, FRM-002 with every wrong field
 */
export async function saveGear(
  { log, by, today }: { readonly log: SiteLog; readonly by: By; readonly today: string },
  {
    number,
    revision,
    texts,
  }: { readonly number: string; readonly revision: string; readonly texts: GearTexts },
): Promise<string> {
  const item = itemOf({ ...texts, number }, today);
  return await record(
    { log, by },
    {
      number,
      asks: { saveGear: number, revision, texts: { ...texts } },
      kind: 'gear-saved',
      inputs: { item } as unknown as Json,
      check: (gear) => {
        if (gear.item === null) throw noSuchGear(number);
        if (String(gear.revision) !== revision) throw savedMeanwhile(number);
      },
    },
  );
}

/** Nothing is deleted: jobs that used it still name it. @throws Refusal GEA-001, GEA-004 if it is retired already */
export async function retireGear(
  { log, by }: { readonly log: SiteLog; readonly by: By },
  { number, why }: { readonly number: string; readonly why: string },
): Promise<string> {
  return await record(
    { log, by },
    {
      number,
      asks: { retireGear: number, why },
      kind: 'gear-retired',
      inputs: { why },
      check: (gear) => {
        if (gear.item === null) throw noSuchGear(number);
        if (gear.retired) throw retiredAlready(number);
      },
    },
  );
}

/**
 * Records that a piece of gear was found wrong, and takes it out of use until it is saved anew.
 *
 * @param today  YYYY-MM-DD
 * @throws Refusal GEA-001, FRM-002 with every wrong field
 */
export async function foundWrong(
  { log, by, today }: { readonly log: SiteLog; readonly by: By; readonly today: string },
  { number, ...told }: { readonly number: string } & Pick<FoundWrong, 'foundOn' | 'rightUntil' | 'howFar'>,
): Promise<string> {
  const { foundOn, rightUntil } = told;
  const faults: Record<string, string> = {};
  if (!isDate(foundOn)) faults.foundOn = 'Write year, month, day: 2026-03-04.';
  else if (foundOn > today) faults.foundOn = `${foundOn} is still to come. Write when it was.`;
  if (!isDate(rightUntil)) faults.rightUntil = 'Write year, month, day: 2026-03-04.';
  else if (isDate(foundOn) && rightUntil > foundOn)
    faults.rightUntil = `It must not be after ${foundOn}, when it was found wrong.`;
  if (Object.keys(faults).length > 0) throw wrongFields(faults);
  return await record(
    { log, by },
    {
      number,
      asks: { foundWrong: number, ...told },
      kind: 'gear-found-wrong',
      inputs: { ...told },
      check: (gear) => {
        if (gear.item === null) throw noSuchGear(number);
      },
    },
  );
}

async function record({ log, by }: { log: SiteLog; by: By }, act: GearAct): Promise<string> {
  const { number, asks, kind, inputs, check } = act;
  const stream = streamOf(gearKind.kind, number);
  const draft: EntryDraft = { stream, kind, inputs, outcome: {}, effects: {} };
  const done = await log.act({
    ...by,
    fingerprint: fingerprintOf(asks),
    streams: [stream],
    decide: (read: Read) => {
      check(read.state(gearKind, number));
      return { entries: [draft], answer: { number } };
    },
  });
  return done.number;
}

function itemOf(texts: GearTexts, today: string) {
  const read = readGear({ texts, today });
  if (!read.ok) throw wrongFields(read.faults);
  return read.item;
}

export function noSuchGear(number: string): Refusal {
  return new Refusal({
    kind: 'not-found',
    code: 'GEA-001',
    what: `There is no test gear ${number}.`,
    kept: 'Nothing was recorded.',
    next: 'Look in the list of test gear.',
  });
}

function numberInUse(number: string, { retired }: Gear): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'GEA-002',
    what: `There is a piece of gear ${number} already${retired ? ', retired' : ''}.`,
    kept: 'What you typed stands in the form; nothing was recorded.',
    next: 'Save that one anew, or put another number on the label.',
    fields: { number: 'This number is in use.' },
  });
}

function savedMeanwhile(number: string): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'GEA-003',
    what: `Somebody else saved ${number} since this form was loaded.`,
    kept: 'What you typed stands in the form; nothing was recorded.',
    next: 'Read below what they changed, put yours right and save again.',
  });
}

function retiredAlready(number: string): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'GEA-004',
    what: `${number} is retired already.`,
    kept: 'Nothing was recorded.',
    next: 'Save it anew to take it back into use.',
  });
}
