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
  readonly lastSignedInAt: string | null;
  readonly pinSetAt: string | null;
  /** What they chose to read; null as long as they chose nothing. */
  readonly language: string | null;
}

const added = z.object({ name: z.string(), role: z.enum(ROLES) });

/** What each entry changes; the others (signed out, code given, rule accepted) only tell. */
const CHANGES: Readonly<Record<string, (entry: LogEntry) => Partial<PersonState>>> = {
  'person-added': ({ inputs }) => added.parse(inputs),
  'person-renamed': ({ inputs }) => added.pick({ name: true }).parse(inputs),
  'role-changed': ({ inputs }) => added.pick({ role: true }).parse(inputs),
  'person-retired': () => ({ retired: true }),
  'pin-set': ({ at }) => ({ pinSetAt: at }),
  'signed-in': ({ at }) => ({ lastSignedInAt: at }),
  'language-chosen': ({ inputs }) => z.object({ language: z.string() }).parse(inputs),
};

/** The person, without anything secret: what proves them is kept outside the log. */
export const personKind: StreamKind<PersonState> = {
  kind: 'person',
  initial: { role: null, name: '', retired: false, lastSignedInAt: null, pinSetAt: null, language: null },
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
  | 'rule-accepted'
  | 'signed-in'
  | 'signed-out'
  | 'language-chosen';

/** An entry of a person's stream. */
export function personEntry(
  id: string,
  { kind, inputs = {} }: { readonly kind: PersonEntry; readonly inputs?: EntryDraft['inputs'] },
): EntryDraft {
  return { stream: streamOf('person', id), kind, inputs, outcome: {}, effects: {} };
}
