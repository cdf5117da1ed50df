import { z } from 'zod';
import type { Json } from '../../procedures/json.ts';
import type { StreamKind } from '../log/stream-kind.ts';

/** Locks of one person that a supervisor took off while they were away. */
export interface Removal {
  /** Place of its entry: how the owner names it. */
  readonly place: number;
  readonly at: string;
  readonly by: string;
  readonly job: string;
  readonly locks: readonly { readonly point: string; readonly lock: string }[];
  /** How it was found out that the owner is not on site. */
  readonly foundOut: string;
  readonly attempts: string;
  /** Who tells the owner before the next shift, and how. */
  readonly toldBy: string;
  readonly reason: string;
  /** When the owner said that they know; null until then. */
  readonly knownAt: string | null;
}

export interface Absences {
  readonly removals: readonly Removal[];
}

const removed = z.object({
  job: z.string(),
  locks: z.array(z.object({ point: z.string(), lock: z.string() })),
  foundOut: z.string(),
  attempts: z.string(),
  toldBy: z.string(),
  reason: z.string(),
});
const known = z.object({ place: z.int() });

/** What happened to a person's locks without them, by the id of the person. */
export const absenceKind: StreamKind<Absences> = {
  kind: 'absence',
  initial: { removals: [] },
  evolve: ({ removals }, { kind, inputs, place, at, person }) => {
    if (kind === 'locks-removed')
      return {
        removals: [...removals, { ...removed.parse(inputs), place, at, by: person ?? '', knownAt: null }],
      };
    if (kind !== 'removal-known') return { removals };
    const about = known.parse(inputs).place;
    return { removals: removals.map((one) => (one.place === about ? { ...one, knownAt: at } : one)) };
  },
  summarise: ({ removals }, id) =>
    removals.length === 0 ? null : { sort: id, body: { owner: id, removals } as unknown as Json },
};
