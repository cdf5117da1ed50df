import type { Json } from '../../procedures/json.ts';

/** One line of the site's log, as stored and hashed. `hash` is SHA-256 over the canonical JSON of all else. */
export interface LogEntry {
  /** Place in the one chain of the site, from 1, without gaps. */
  readonly seq: number;
  /** What the line belongs to: `job:137`, `valve:FV-214`, `person:t1`, `gear:G-07`, `point:HV-214A`, `procedure:…`, `site`. */
  readonly stream: string;
  /** Place in that stream, from 1, without gaps. */
  readonly place: number;
  /** The server's time, ISO 8601 in UTC. Data, not order: order is `seq`. */
  readonly at: string;
  /** Who acted; null for the server itself. */
  readonly person: string | null;
  /** The screen that it came from. */
  readonly screen: string;
  readonly kind: string;
  /** What was given, as typed and as understood. */
  readonly inputs: Json;
  /** What was decided about it. */
  readonly outcome: Json;
  /** What that changed. */
  readonly effects: Json;
  readonly codeVersion: string;
  /** The id that the request carried; null where no request stood behind it. */
  readonly requestId: string | null;
  readonly previousHash: string;
  readonly previousInStream: string;
  readonly hash: string;
}

/** The entry and the very bytes that were hashed, which are the bytes stored. `log/chain.ts` makes it. */
export interface SealedEntry {
  readonly entry: LogEntry;
  readonly bytes: string;
}

/**
 * An entry as the store holds it. Nothing of it is believed yet: somebody may have changed the database.
 * `unseal` of `log/chain.ts` turns it into an entry or says what is wrong with it.
 */
export interface StoredLine {
  readonly seq: number;
  readonly stream: string;
  readonly place: number;
  readonly hash: string;
  readonly bytes: string;
}

/**
 * A line of a list, made from a stream's state in the transaction that wrote the entry; may be rebuilt at any time.
 * The stream that it was made from is `kind:id`.
 */
export interface Summary {
  /** The stream's kind, `valve` of `valve:FV-214`. */
  readonly kind: string;
  readonly id: string;
  /** What the list is ordered by, compared byte by byte; then by id. */
  readonly sort: string;
  readonly body: Json;
}

export interface SummaryPage {
  /** The last line of the page before; its `sort` and `id` are what counts. */
  readonly after?: Pick<Summary, 'sort' | 'id'>;
  /** At most this many lines; without it, all. */
  readonly limit?: number;
  /** `down` for the latest first. */
  readonly order?: 'up' | 'down';
}

/** Something kept outside the log: PIN hashes, sessions, drafts, throttles. */
export interface Outside {
  readonly kind: string;
  readonly id: string;
  readonly body: Json;
}

/** The answer that a request got, so that the same request sent again gets it again. */
export interface Answered {
  readonly requestId: string;
  readonly person: string | null;
  /** Digest of what the request asked for. */
  readonly fingerprint: string;
  readonly answer: Json;
}

/** A photo, under the SHA-256 of its bytes. */
export interface StoredBlob {
  readonly hash: string;
  readonly bytes: Uint8Array;
}

export interface Head {
  /** 0 for an empty log. */
  readonly seq: number;
  readonly hash: string;
}

export interface StreamHead {
  /** 0 for a stream without entries. */
  readonly place: number;
  readonly hash: string;
}

/** All that one tick writes, as one transaction. */
export interface Batch {
  /** In order, following the head of the site and of each stream. */
  readonly entries: readonly SealedEntry[];
  readonly summaries: readonly Summary[];
  /** Lines that no longer belong in their list. */
  readonly withdrawn: readonly Pick<Summary, 'kind' | 'id'>[];
  readonly answers: readonly Answered[];
  /** What the entries name by hash; one that is there already stays as it is. */
  readonly blobs?: readonly StoredBlob[];
}

/**
 * Where the log is kept. A few verbs, so that another database can stand behind them.
 * `commit` is durable when it resolves, and whole or not at all; what cannot be written rejects with
 * `StorageUnavailable`. The empty log's head, and an empty stream's, has the hash `NO_HASH` of `log/chain.ts`.
 */
export interface Store {
  /** Whether other servers may write to the same log: what was read before may then be out of date. */
  readonly isShared: boolean;
  /**
   * Does `work` while no other server writes to the log: what it reads stays so until it calls `commit`, once at most.
   * Where the log is not shared there is nobody to hold off.
   */
  alone<T>(work: (commit: Store['commit']) => Promise<T>): Promise<T>;
  /** One after the other for each name, over all servers: for what is read, thought about and put back. */
  inTurn<T>(name: string, work: () => Promise<T>): Promise<T>;
  head(): Promise<Head>;
  streamHead(stream: string): Promise<StreamHead>;
  commit(batch: Batch): Promise<void>;
  /** All lines of one stream, in order of their place. */
  stream(stream: string): Promise<readonly StoredLine[]>;
  line(at: { readonly stream: string; readonly place: number }): Promise<StoredLine | undefined>;
  /** All lines in order of `seq` from `fromSeq` on, a page at a time, in constant memory. */
  lines(fromSeq: number): AsyncIterable<StoredLine>;
  /** The name of every stream that has an entry, in order. */
  streams(): AsyncIterable<string>;
  /** As it is stored: whoever takes it holds it against its hash. */
  blob(hash: string): Promise<Uint8Array | undefined>;
  answered(requestId: string): Promise<Answered | undefined>;
  summaries(kind: string, page?: SummaryPage): Promise<readonly Summary[]>;
  summary(kind: string, id: string): Promise<Summary | undefined>;
  /** Puts `all` in the place of every summary there is, at once when the last has come. Nothing else may write meanwhile. */
  replaceSummaries(all: AsyncIterable<Summary>): Promise<void>;
  outside(kind: string, id: string): Promise<Json | undefined>;
  outsideAll(kind: string): Promise<readonly Outside[]>;
  putOutside(record: Outside): Promise<void>;
  deleteOutside(kind: string, id: string): Promise<void>;
  close(): Promise<void>;
}
