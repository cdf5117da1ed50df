import type { Json } from '../../procedures/json.ts';
import type { LogEntry, StoredBlob } from '../store/store.ts';
import type { StreamKind } from './stream-kind.ts';

/** What a decision wants to have in the log; time, person, screen, place and hashes are added. */
export type EntryDraft = Pick<LogEntry, 'stream' | 'kind' | 'inputs' | 'outcome' | 'effects'>;

export interface Decision<Answer extends Json = Json> {
  /** In order; none is allowed: then only the answer is kept. */
  readonly entries: readonly EntryDraft[];
  /** What the same request gets when it is sent again. */
  readonly answer: Answer;
  /** Photos that the entries name; kept with them or not at all. */
  readonly blobs?: readonly StoredBlob[];
}

/** What a decision sees: the log up to and including the acts before it in the same batch. */
export interface Read {
  /** The server's time, ISO 8601 in UTC; the entries of this act carry it. */
  readonly now: string;
  /** @throws TypeError for a stream that the act did not name in `streams` */
  state<State>(kind: StreamKind<State>, id?: string): State;
  /** How many entries the stream has; 0 for one that does not exist yet. */
  place(kind: StreamKind<unknown>, id?: string): number;
}

export interface Act<Answer extends Json = Json> {
  /** The id that the request carries, unlike any other; null where no request stands behind it. */
  readonly requestId: string | null;
  /** `fingerprintOf` what the request asks for, PINs left out. */
  readonly fingerprint: string;
  readonly person: string | null;
  readonly screen: string;
  /** Every stream that `decide` reads or writes, by `streamOf`. */
  readonly streams: readonly string[];
  /**
   * Runs at once and to its end; no other act comes between what it reads and what it writes.
   *
   * @throws Refusal to have nothing written
   */
  decide(read: Read): Decision<Answer>;
}
