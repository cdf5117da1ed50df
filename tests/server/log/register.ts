/** A small kind of stream for the tests of the log: a register that numbers are added to. */
import type { Json } from '../../../procedures/json.ts';
import type { Act, Read } from '../../../server/log/act.ts';
import { blobHash } from '../../../server/log/blobs.ts';
import { fingerprintOf } from '../../../server/log/chain.ts';
import { SiteLog } from '../../../server/log/site-log.ts';
import { type StreamKind, streamOf } from '../../../server/log/stream-kind.ts';
import type { LogEntry, Store } from '../../../server/store/store.ts';

export interface Register {
  readonly total: number;
  readonly numbers: readonly number[];
}

function addedIn(entry: LogEntry): number {
  const inputs = entry.inputs;
  if (typeof inputs !== 'object' || inputs === null || !('added' in inputs)) throw new Error('no number');
  return Number(inputs.added);
}

export const register: StreamKind<Register> = {
  kind: 'register',
  initial: { total: 0, numbers: [] },
  evolve: (state, entry) => ({
    total: state.total + addedIn(entry),
    numbers: [...state.numbers, addedIn(entry)],
  }),
  // A total of 13 is kept off the list, so that lines also get withdrawn.
  summarise: (state, id) =>
    state.total === 13
      ? null
      : {
          sort: String(state.total).padStart(8, '0'),
          body: { id, total: state.total, added: state.numbers.length },
        },
};

export const site: StreamKind<number> = {
  kind: 'site',
  initial: 0,
  evolve: (count) => count + 1,
  summarise: () => null,
};

export const kinds: readonly StreamKind<unknown>[] = [register, site];

/** A log whose clock moves on by one second at each look. */
export function aLog(store: Store, options: { cachedStreamsMax?: number } = {}): SiteLog {
  let ms = Date.UTC(2024, 0, 15, 8);
  const now = () => {
    ms += 1000;
    return new Date(ms);
  };
  return new SiteLog({ store, kinds, now, codeVersion: 'test', ...options });
}

let requests = 0;

export interface Addition {
  readonly id: string;
  readonly added: number;
  readonly requestId?: string;
  readonly person?: string;
  /** Kept beside the log, and named by the entry. */
  readonly photo?: Uint8Array;
  decide?(read: Read): void;
}

/** The act of adding a number to a register; it answers with the total. */
export function adding(addition: Addition): Act<{ total: number; place: number }> {
  const { id, added, person = 't1', photo } = addition;
  requests += 1;
  const blobs = photo === undefined ? [] : [{ hash: blobHash(photo), bytes: photo }];
  const named = photo === undefined ? {} : { blobs: blobs.map(({ hash }) => hash) };
  const inputs: Json = { id, added, ...named };
  return {
    requestId: addition.requestId ?? `request-${requests}`,
    fingerprint: fingerprintOf(inputs),
    person,
    screen: 'bench 1',
    streams: [streamOf('register', id)],
    decide: (read) => {
      addition.decide?.(read);
      const total = read.state(register, id).total + added;
      return {
        entries: [
          { stream: `register:${id}`, kind: 'number-added', inputs, outcome: { total }, effects: null },
        ],
        answer: { total, place: read.place(register, id) + 1 },
        blobs,
      };
    },
  };
}
