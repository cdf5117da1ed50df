/** Many pieces of test gear at once: shown first, then saved as they were shown, all in one act or none. */
import type { Json } from '../../procedures/json.ts';
import {
  type GearRow,
  type GearTableRead,
  readGearCsv,
  readGearJson,
  refusedGear,
} from '../../procedures/test-gear/gear-table.ts';
import { gearText } from '../../procedures/test-gear/gear-text.ts';
import { tableFault } from '../../procedures/valve-sheet/import-rows.ts';
import { Refusal } from '../../safety/refusal.ts';
import type { EntryDraft, Read } from '../log/act.ts';
import { parseStrict } from '../log/canonical.ts';
import { fingerprintOf } from '../log/chain.ts';
import type { SiteLog } from '../log/site-log.ts';
import { streamOf } from '../log/stream-kind.ts';
import type { By } from '../people/people.ts';
import type { Store } from '../store/store.ts';
import { type Gear, gearKind } from './gear-stream.ts';

/** 2,000 pieces with long notes. */
export const GEAR_TABLE_BYTES_MAX = 2 * 1024 * 1024;

const KEPT_KIND = 'gear-table';

export type GearChange = 'new' | 'changed' | 'unchanged' | 'taken back into use' | 'stays out of use';

/** What a row does that is not saved. */
const NOT_SAVED: readonly GearChange[] = ['unchanged', 'stays out of use'];

export interface PlannedGear {
  readonly row: number;
  readonly number: string;
  readonly change: GearChange;
  /** Each field that would change, with what it was. */
  readonly says: string;
}

export interface GearPlan {
  readonly rows: readonly PlannedGear[];
  /** Stands for the text and what it would change now: what is confirmed is what was shown. */
  readonly digest: string;
}

/** A text that begins like JSON is JSON, anything else a table. */
export function readGearTable(text: string, today: string): GearTableRead {
  if (!/^\s*[[{]/.test(text)) return readGearCsv(text, today);
  try {
    return readGearJson(parseStrict(text), today);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return refusedGear([tableFault(`It begins like JSON and cannot be read as JSON: ${why}`)]);
  }
}

/** What the rows would change, compared with the gear as it is now; keeps the text for the one who looks. */
export async function showGearPlan(
  { log, store, person }: { readonly log: SiteLog; readonly store: Store; readonly person: string },
  { text, rows }: { readonly text: string; readonly rows: readonly GearRow[] },
): Promise<GearPlan> {
  const gear = await Promise.all(rows.map(({ item }) => log.state(gearKind, item.number)));
  await store.putOutside({ kind: KEPT_KIND, id: person, body: { text } });
  return planned({ text, rows, gear });
}

/**
 * Saves what was shown, in a single commit in which each piece has its own entry.
 *
 * @param of  the digest of the plan that was shown, and today as YYYY-MM-DD
 * @returns how many pieces were saved
 * @throws Refusal GEA-007 if the text was not kept, or would now change something else than was shown
 */
export async function saveShownGear(
  { log, store, by }: { readonly log: SiteLog; readonly store: Store; readonly by: By },
  { digest, today }: { readonly digest: string; readonly today: string },
): Promise<{ readonly saved: number }> {
  const person = by.person ?? '';
  const kept = await store.outside(KEPT_KIND, person);
  const text = kept === undefined ? '' : (kept as { readonly text: string }).text;
  const { rows } = readGearTable(text, today);
  const answer = await log.act({
    ...by,
    fingerprint: fingerprintOf({ importGear: digest }),
    streams: rows.map(({ item }) => streamOf(gearKind.kind, item.number)),
    decide: (read: Read) => {
      const gear = rows.map(({ item }) => read.state(gearKind, item.number));
      const plan = planned({ text, rows, gear });
      if (rows.length === 0 || plan.digest !== digest) throw notWhatWasShown();
      const entries = rows.flatMap(({ item }, at): readonly EntryDraft[] =>
        NOT_SAVED.includes(plan.rows[at]?.change ?? 'unchanged')
          ? []
          : [
              {
                stream: streamOf(gearKind.kind, item.number),
                kind: 'gear-saved',
                inputs: { item } as unknown as Json,
                outcome: {},
                effects: {},
              },
            ],
      );
      return { entries, answer: { saved: entries.length } };
    },
  });
  await store.deleteOutside(KEPT_KIND, person);
  return answer;
}

function planned(of: {
  readonly text: string;
  readonly rows: readonly GearRow[];
  readonly gear: readonly Gear[];
}): GearPlan {
  const rows = of.rows.map(({ row, item }, at) => ({
    row,
    number: item.number,
    ...changeOf(of.gear[at], item),
  }));
  const revisions: Json = of.gear.map(({ revision, retired }) => [revision, retired]);
  const digest = fingerprintOf({ text: of.text, changes: rows.map(({ change }) => change), revisions });
  return { rows, digest };
}

function changeOf(gear: Gear | undefined, item: GearRow['item']): Pick<PlannedGear, 'change' | 'says'> {
  const before = gear?.item ?? null;
  if (gear === undefined || before === null) return { change: 'new', says: '' };
  const [was, is] = [gearText(before), gearText(item)];
  const says = (Object.keys(is) as (keyof typeof is)[])
    .filter((name) => was[name] !== is[name])
    .map((name) => `${name}: ${was[name] || 'blank'} becomes ${is[name] || 'blank'}.`)
    .join(' ');
  const wrong = gear.wrong.at(-1);
  // A table of last month must not bring back what was found wrong since and not calibrated again.
  if (gear.retired && wrong !== undefined && item.calibratedOn <= wrong.foundOn)
    return {
      change: 'stays out of use',
      says: `Found wrong on ${wrong.foundOn}, and not calibrated since. Save it on its own page once it is right.`,
    };
  if (gear.retired) return { change: 'taken back into use', says };
  return { change: says === '' ? 'unchanged' : 'changed', says };
}

function notWhatWasShown(): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'GEA-007',
    what: 'What would be saved is no longer what was shown.',
    kept: 'No test gear was changed.',
    next: 'Look at the table again, and confirm what it shows then.',
  });
}
