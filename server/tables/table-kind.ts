import type { Json } from '../../procedures/json.ts';
import type { RowFault, TableForm, TableRow } from '../../procedures/tables/table-form.ts';
import type { EntryDraft } from '../log/act.ts';
import type { StreamKind } from '../log/stream-kind.ts';

/** What a row would do. The last three save nothing. */
export type RowChange =
  | 'new'
  | 'changed'
  | 'taken back into use'
  | 'unchanged'
  | 'stays out of use'
  | 'opened already';

export const ROW_CHANGES: readonly RowChange[] = [
  'new',
  'changed',
  'taken back into use',
  'stays out of use',
  'opened already',
  'unchanged',
];

const SAVED: readonly RowChange[] = ['new', 'changed', 'taken back into use'];

export function isSaved(change: RowChange): boolean {
  return SAVED.includes(change);
}

/** One stream that a row is held against. */
export interface Beside {
  // The state of each is asked for by the kind itself.
  readonly kind: StreamKind<unknown>;
  readonly id: string;
}

/** The streams as they stand. */
export interface Standing {
  state<State>(kind: StreamKind<State>, id: string): State;
}

export interface RowLooked {
  readonly change: RowChange;
  /** Each field that would change, with what it was; what the row says against itself. */
  readonly says: readonly string[];
  /** Changes whenever what the row is held against was saved. */
  readonly stands: Json;
  /** What the site has against the row: a valve that is not there. */
  readonly faults?: readonly RowFault[];
}

/** How one kind of thing comes in by tables. Everything else about it is the same for all kinds. */
export interface TableKind<Item> {
  /** @param today  YYYY-MM-DD */
  form(today: string): TableForm<Item>;
  /** Largest text. */
  readonly bytesMax: number;
  /** Under which name the text that was shown is kept, one for each person. */
  readonly keptAs: string;
  /** Codes of its two refusals: cells are wrong; not what was shown. */
  readonly codes: { readonly cells: string; readonly other: string };
  /** `No sheet was changed` */
  readonly kept: string;
  /** Every stream that `look` asks for; the first is the row's own. */
  beside(item: Item): readonly [Beside, ...Beside[]];
  look(standing: Standing, item: Item): RowLooked;
  draft(row: TableRow<Item>): EntryDraft;
}

/** @example changed([['note', '', 'shop']]) // ['note: blank becomes shop.'] */
export function changed(
  fields: readonly (readonly [name: string, was: string, is: string])[],
): readonly string[] {
  return fields
    .filter(([, was, is]) => was !== is)
    .map(([name, was, is]) => `${name}: ${was || 'blank'} becomes ${is || 'blank'}.`);
}
