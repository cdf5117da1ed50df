import type { Json } from '../../procedures/json.ts';
import type { GearItem } from '../../procedures/test-gear/gear.ts';
import type { StreamKind } from '../log/stream-kind.ts';

/** What somebody found out about a piece of gear that readings may rest on. Days as YYYY-MM-DD. */
export interface FoundWrong {
  readonly foundOn: string;
  /** The last day on which it was known to be right. */
  readonly rightUntil: string;
  /** How far off, in the words of whoever checked it. */
  readonly howFar: string;
  readonly at: string;
  readonly person: string | null;
}

/** One piece of test gear, as last saved. */
export interface Gear {
  readonly item: GearItem | null;
  readonly revision: number;
  readonly retired: boolean;
  /** Each time that it was found wrong, the oldest first. */
  readonly wrong: readonly FoundWrong[];
}

export const gearKind: StreamKind<Gear> = {
  kind: 'gear',
  initial: { item: null, revision: 0, retired: false, wrong: [] },
  evolve: (gear, entry) => {
    if (entry.kind === 'gear-saved') {
      const { item } = entry.inputs as unknown as { readonly item: GearItem };
      return { ...gear, item, revision: gear.revision + 1, retired: false };
    }
    if (entry.kind === 'gear-found-wrong') {
      const told = entry.inputs as unknown as Pick<FoundWrong, 'foundOn' | 'rightUntil' | 'howFar'>;
      const wrong = [...gear.wrong, { ...told, at: entry.at, person: entry.person }];
      // Nobody takes it along before it was put right and saved anew.
      return { ...gear, retired: true, wrong };
    }
    return entry.kind === 'gear-retired' ? { ...gear, retired: true } : gear;
  },
  summarise: ({ item, revision, retired }, id) =>
    item === null ? null : { sort: id, body: { item, revision, retired } as unknown as Json },
};
