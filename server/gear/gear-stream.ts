import type { Json } from '../../procedures/json.ts';
import type { GearItem } from '../../procedures/test-gear/gear.ts';
import type { StreamKind } from '../log/stream-kind.ts';

/** One piece of test gear, as last saved. */
export interface Gear {
  readonly item: GearItem | null;
  readonly revision: number;
  readonly retired: boolean;
}

export const gearKind: StreamKind<Gear> = {
  kind: 'gear',
  initial: { item: null, revision: 0, retired: false },
  evolve: (gear, entry) => {
    if (entry.kind === 'gear-saved') {
      const { item } = entry.inputs as unknown as { readonly item: GearItem };
      return { item, revision: gear.revision + 1, retired: false };
    }
    return entry.kind === 'gear-retired' ? { ...gear, retired: true } : gear;
  },
  summarise: ({ item, revision, retired }, id) =>
    item === null ? null : { sort: id, body: { item, revision, retired } as unknown as Json },
};
