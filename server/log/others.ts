/** What other servers wrote to the same log. */
import { StorageUnavailable } from '../store/storage-unavailable.ts';
import type { Head, Store } from '../store/store.ts';

export interface Written {
  readonly head: Head;
  /** The streams that have new entries, each with its newest place, in the order in which they came. */
  readonly streams: ReadonlyMap<string, number>;
}

/**
 * What stands in the log beyond `known`.
 *
 * @throws StorageUnavailable where `known` is not in it: the database was put back to an earlier day, or is another one
 */
export async function writtenSince(store: Store, known: Head): Promise<Written> {
  const now = await store.head();
  const streams = new Map<string, number>();
  if (now.seq === known.seq && now.hash === known.hash) return { head: known, streams };
  let head = known;
  for await (const { seq, hash, stream, place } of store.lines(Math.max(known.seq, 1))) {
    if (head === known && known.seq > 0) {
      if (seq !== known.seq || hash !== known.hash) throw otherLog();
      head = { seq, hash };
      continue;
    }
    head = { seq, hash };
    streams.set(stream, place);
  }
  // Shorter than it was.
  if (head === known) throw otherLog();
  return { head, streams };
}

function otherLog(): StorageUnavailable {
  return new StorageUnavailable(
    'the database no longer holds what this server has confirmed; nothing more is written until it is started again',
  );
}

/** Work that may be asked for often: it runs once for all who asked before it began. */
export class Shared {
  readonly #work: () => Promise<void>;
  #running: Promise<void> | undefined;
  #next: Promise<void> | undefined;

  constructor(work: () => Promise<void>) {
    this.#work = work;
  }

  /** Resolves when the work was done once from beginning to end after this call. */
  done(): Promise<void> {
    if (this.#running === undefined) return this.#run();
    this.#next ??= this.#running.then(
      () => this.#runNext(),
      () => this.#runNext(),
    );
    return this.#next;
  }

  #runNext(): Promise<void> {
    this.#next = undefined;
    return this.#run();
  }

  #run(): Promise<void> {
    const running = this.#work().finally(() => {
      if (this.#running === running) this.#running = undefined;
    });
    this.#running = running;
    return running;
  }
}
