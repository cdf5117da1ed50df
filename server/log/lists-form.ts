import type { Store } from '../store/store.ts';
import { LogDamaged } from './chain.ts';
import { rebuildSummaries } from './rebuild.ts';
import type { StreamKind } from './stream-kind.ts';

/** Raised whenever a line of any list is made otherwise than before: each start compares it with what the folder has. */
export const LISTS_FORM = 6;

const KEPT = { kind: 'lists-form', id: 'lists' } as const;

export type ListsRenewed = 'today’s already' | 'made anew' | 'left: the log is damaged';

export interface RenewOptions {
  readonly store: Store;
  readonly kinds: readonly StreamKind<unknown>[];
  /** The form of this program, unless a test says otherwise. */
  readonly form?: number;
  /** Told before the long part. */
  beforeRebuild?(): void;
}

/**
 * Makes the lists anew where another release made them, so that no page meets a line that it cannot read. On a damaged
 * log they stay as they are, and the next start tries again.
 */
export async function renewLists({
  store,
  kinds,
  form = LISTS_FORM,
  beforeRebuild,
}: RenewOptions): Promise<ListsRenewed> {
  const kept = await store.outside(KEPT.kind, KEPT.id);
  if (isForm(kept, form)) return 'today’s already';
  const { seq } = await store.head();
  try {
    if (seq > 0) {
      beforeRebuild?.();
      await rebuildSummaries(store, kinds);
    }
  } catch (error) {
    if (!(error instanceof LogDamaged)) throw error;
    return 'left: the log is damaged';
  }
  await markLists(store, form);
  return seq > 0 ? 'made anew' : 'today’s already';
}

/** Writes down that the lists have this form. */
export async function markLists(store: Store, form: number = LISTS_FORM): Promise<void> {
  await store.putOutside({ ...KEPT, body: { form } });
}

function isForm(kept: unknown, form: number): boolean {
  return typeof kept === 'object' && kept !== null && 'form' in kept && kept.form === form;
}
