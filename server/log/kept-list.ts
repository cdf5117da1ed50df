/** A list of the store held in memory, each line cut down to what is looked for in all of them: for pages that must not grow slower with the site. */
import { setImmediate as letOthers } from 'node:timers/promises';
import type { Summary } from '../store/store.ts';
import type { ListIndex } from './list-index.ts';
import type { SiteLog } from './site-log.ts';
import { splitStream } from './stream-kind.ts';

interface Kept<Line> {
  readonly log: SiteLog;
  /** Of which streams, `valve`. */
  readonly kind: string;
  /** What is kept of a line; the less, the better. Null for one that is left out. */
  slim(summary: Summary): Line | null;
}

/** So many lines are read before others are let in. */
const PAGE_LINES = 500;
/** Where more than so many lines changed, all are put in order anew. */
const PLACED_MAX = 50;

/**
 * Read whole when it is first asked for; from then on each commit marks the lines that it touched, and only those are read
 * again. It says nothing that the store does not say.
 *
 * @example const tags = new KeptList({ log, kind: 'valve', slim: ({ id }) => id });
 */
export class KeptList<Line> {
  readonly #of: Kept<Line>;
  readonly #lines = new Map<string, Line>();
  readonly #indexes: ListIndex<Line>[] = [];
  readonly #stale = new Set<string>();
  #read: Promise<void> | undefined;
  #sorted: Sorted<Line> | undefined;

  constructor(of: Kept<Line>) {
    this.#of = of;
    of.log.onCommit(({ stream }) => {
      const { kind, id } = splitStream(stream);
      if (kind === of.kind) this.#stale.add(id);
    });
  }

  /** By id, as last committed. */
  async byId(): Promise<ReadonlyMap<string, Line>> {
    // What other servers wrote is told as commits are.
    await this.#of.log.catchUp();
    // One after the other, so that nobody is told a list that is half read.
    this.#read = (this.#read ?? this.#readAll()).then(() => this.#readStale());
    try {
      await this.#read;
    } catch (error) {
      // The next one who asks begins anew.
      this.#read = undefined;
      throw error;
    }
    return this.#lines;
  }

  /** In order of their ids, compared letter by letter. */
  async inOrder(): Promise<readonly Line[]> {
    const lines = await this.byId();
    this.#sorted ??= sortedOf(lines);
    return this.#sorted.lines;
  }

  /**
   * Keeps an index of these lines, which is right from the first time that it is asked for.
   *
   * @returns the index, as last committed
   */
  indexed<Index extends ListIndex<Line>>(index: Index): () => Promise<Index> {
    for (const [id, line] of this.#lines) index.put(id, line);
    this.#indexes.push(index);
    return async () => {
      await this.byId();
      return index;
    };
  }

  async #readAll(): Promise<void> {
    const { log, kind, slim } = this.#of;
    this.#stale.clear();
    for (const id of [...this.#lines.keys()]) this.#put(id, null);
    this.#sorted = undefined;
    for (let after: Summary | undefined; ; await letOthers()) {
      const page = await log.summaries(kind, {
        limit: PAGE_LINES,
        ...(after === undefined ? {} : { after }),
      });
      for (const summary of page) this.#put(summary.id, slim(summary));
      after = page.at(-1);
      if (page.length < PAGE_LINES) return;
    }
  }

  async #readStale(): Promise<void> {
    const { log, kind, slim } = this.#of;
    if (this.#stale.size > PLACED_MAX) this.#sorted = undefined;
    for (const id of [...this.#stale]) {
      // Taken off before it is read: what is committed meanwhile marks it again.
      this.#stale.delete(id);
      const summary = await log.summary(kind, id);
      const line = summary === undefined ? null : slim(summary);
      this.#put(id, line);
      if (this.#sorted !== undefined) this.#sorted = placed(this.#sorted, { id, line });
    }
  }

  #put(id: string, line: Line | null): void {
    const before = this.#lines.get(id);
    for (const index of this.#indexes) {
      if (before !== undefined) index.drop(id, before);
      if (line !== null) index.put(id, line);
    }
    if (line === null) this.#lines.delete(id);
    else this.#lines.set(id, line);
  }
}

/** A list that changed is another one, for what is worked out of it. */
interface Sorted<Line> {
  readonly ids: readonly string[];
  readonly lines: readonly Line[];
}

function sortedOf<Line>(lines: ReadonlyMap<string, Line>): Sorted<Line> {
  const all = [...lines].sort(([one], [other]) => (one < other ? -1 : 1));
  return { ids: all.map(([id]) => id), lines: all.map(([, line]) => line) };
}

function placed<Line>(
  { ids, lines }: Sorted<Line>,
  { id, line }: { readonly id: string; readonly line: Line | null },
): Sorted<Line> {
  let [low, high] = [0, ids.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((ids[middle] as string) < id) low = middle + 1;
    else high = middle;
  }
  const isThere = ids[low] === id;
  if (isThere && line !== null) return { ids, lines: lines.with(low, line) };
  const [before, after] = [isThere ? 1 : 0, line === null ? [] : [line]];
  return {
    ids: ids.toSpliced(low, before, ...after.map(() => id)),
    lines: lines.toSpliced(low, before, ...after),
  };
}
