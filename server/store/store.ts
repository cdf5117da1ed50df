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

/** The entry and the very bytes that were hashed, which are the bytes stored. */
export interface SealedEntry {
  readonly entry: LogEntry;
  readonly bytes: string;
}

/** A line of a list, made from a stream's state in the transaction that wrote the entry; may be rebuilt at any time. */
export interface Summary {
  /** The stream's kind, `valve` of `valve:FV-214`. */
  readonly kind: string;
  readonly id: string;
  /** What the list is ordered by. */
  readonly sort: string;
  readonly body: Json;
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
  readonly answer: Json;
}

export interface Head {
  readonly seq: number;
  readonly hash: string;
}

export interface StreamHead {
  readonly place: number;
  readonly hash: string;
}

export interface Batch {
  readonly entries: readonly SealedEntry[];
  readonly summaries: readonly Summary[];
  readonly answers: readonly Answered[];
}

/**
 * Where the log is kept. A few verbs, so that another database can stand behind them.
 * `commit` is durable when it resolves, and whole or not at all.
 */
export interface Store {
  head(): Promise<Head>;
  streamHead(stream: string): Promise<StreamHead>;
  commit(batch: Batch): Promise<void>;
  stream(stream: string): Promise<readonly SealedEntry[]>;
  /** All entries in order of `seq` from `fromSeq` on, a page at a time, in constant memory. */
  entries(fromSeq: number): AsyncIterable<SealedEntry>;
  answered(requestId: string): Promise<Answered | undefined>;
  summaries(
    kind: string,
    page?: { readonly after?: string; readonly limit?: number },
  ): Promise<readonly Summary[]>;
  summary(kind: string, id: string): Promise<Summary | undefined>;
  replaceSummaries(all: AsyncIterable<Summary>): Promise<void>;
  outside(kind: string, id: string): Promise<Json | undefined>;
  outsideAll(kind: string): Promise<readonly Outside[]>;
  putOutside(record: Outside): Promise<void>;
  deleteOutside(kind: string, id: string): Promise<void>;
  close(): Promise<void>;
}
