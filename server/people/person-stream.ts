import { z } from 'zod';
import type { EntryDraft } from '../log/act.ts';
import { type StreamKind, streamOf } from '../log/stream-kind.ts';
import type { LogEntry } from '../store/store.ts';
import { ROLES, type Role } from './person.ts';

export interface PersonState {
  /** Null for nobody yet. */
  readonly role: Role | null;
  readonly name: string;
  readonly retired: boolean;
}

const added = z.object({ name: z.string(), role: z.enum(ROLES) });

/** What each entry changes; the others (PIN set, signed in or out, code given) change nothing that is shown. */
const CHANGES: Readonly<Record<string, (entry: LogEntry) => Partial<PersonState>>> = {
  'person-added': ({ inputs }) => added.parse(inputs),
  'person-renamed': ({ inputs }) => added.pick({ name: true }).parse(inputs),
  'role-changed': ({ inputs }) => added.pick({ role: true }).parse(inputs),
  'person-retired': () => ({ retired: true }),
};

/** The person, without anything secret: what proves them is kept outside the log. */
export const personKind: StreamKind<PersonState> = {
  kind: 'person',
  initial: { role: null, name: '', retired: false },
  evolve: (state, entry) => ({ ...state, ...CHANGES[entry.kind]?.(entry) }),
  summarise: (state, id) =>
    state.role === null
      ? null
      : {
          sort: state.name.toLowerCase(),
          body: { id, name: state.name, role: state.role, retired: state.retired },
        },
};

/** The line of a person in the list. */
export const personSchema = z.object({
  id: z.string(),
  name: z.string(),
  role: z.enum(ROLES),
  retired: z.boolean(),
});

export type PersonEntry =
  | 'person-added'
  | 'person-renamed'
  | 'role-changed'
  | 'person-retired'
  | 'pin-set'
  | 'code-given'
  | 'signed-in'
  | 'signed-out';

/** An entry of a person's stream. */
export function personEntry(
  id: string,
  { kind, inputs = {} }: { readonly kind: PersonEntry; readonly inputs?: EntryDraft['inputs'] },
): EntryDraft {
  return { stream: streamOf('person', id), kind, inputs, outcome: {}, effects: {} };
}
