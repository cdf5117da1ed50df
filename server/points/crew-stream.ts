import { z } from 'zod';
import type { StreamKind } from '../log/stream-kind.ts';
import type { LogEntry } from '../store/store.ts';

/** Whether a joiner tried the energies again, or rests on what the first person read; either is allowed. */
export const VERIFIED = ['verified-self', 'relied-on-primary'] as const;

export type Verified = (typeof VERIFIED)[number];

export interface Member {
  readonly person: string;
  readonly since: string;
  readonly verified: Verified;
}

/** Who works on a job besides the person whose locks it stands on. */
export interface Crew {
  readonly members: readonly Member[];
}

const joined = z.object({ person: z.string(), verified: z.enum(VERIFIED) });
const left = z.object({ person: z.string() });
const handedOver = z.object({ to: z.string() });
const removed = z.object({ owner: z.string(), heir: z.string().nullable() });

const without = ({ members }: Crew, gone: readonly (string | null)[]): Crew => ({
  members: members.filter(({ person }) => !gone.includes(person)),
});

const CHANGES: Readonly<Record<string, (crew: Crew, entry: LogEntry) => Crew>> = {
  joined: (crew, { inputs, at }) => ({
    members: [...crew.members, { ...joined.parse(inputs), since: at }],
  }),
  left: (crew, { inputs }) => without(crew, [left.parse(inputs).person]),
  // Whoever takes the job on is the one whose locks it stands on, and no member beside them.
  'handed-over': (crew, { inputs }) => without(crew, [handedOver.parse(inputs).to]),
  'locks-removed': (crew, { inputs }) => {
    const { owner, heir } = removed.parse(inputs);
    return without(crew, [owner, heir]);
  },
};

/** The people of one job, by its number. */
export const crewKind: StreamKind<Crew> = {
  kind: 'crew',
  initial: { members: [] },
  evolve: (crew, entry) => CHANGES[entry.kind]?.(crew, entry) ?? crew,
  summarise: () => null,
};
