/** A list of the store held in memory, each line cut down to what is looked for in all of them: for pages that must not grow slower with the site. */
import { setImmediate as letOthers } from 'node:timers/promises';
import type { Summary } from '../store/store.ts';
import type { SiteLog } from './site-log.ts';
import { splitStream } from './stream-kind.ts';

interface Kept<Line> {
  readonly log: SiteLog;
  /** Of which streams, `valve`. */
  readonly kind: string;
  /** What is kept of a line; the less, the better. */
  slim(summary: Summary): Line;
}

/** So many lines are read before others are let in. */
const PAGE_LINES = 500;

/**
 * Read whole when it is first asked for; from then on each commit marks the lines that it touched, and only those are read
 * again. It says nothing that the store does not say.
 *
 * @example const tags = new KeptList({ log, kind: 'valve', slim: ({ id }) => id });
 */
export class KeptList<Line> {
  readonly #of: Kept<Line>;
  readonly #lines = new Map<string, Line>();
  readonly #stale = new Set<string>();
  #read: Promise<void> | undefined;
  #sorted: readonly Line[] | undefined;

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
    this.#sorted ??= [...lines].sort(([one], [other]) => (one < other ? -1 : 1)).map(([, line]) => line);
    return this.#sorted;
  }

  async #readAll(): Promise<void> {
    const { log, kind, slim } = this.#of;
    this.#stale.clear();
    this.#lines.clear();
    this.#sorted = undefined;
    for (let after: Summary | undefined; ; await letOthers()) {
      const page = await log.summaries(kind, {
        limit: PAGE_LINES,
        ...(after === undefined ? {} : { after }),
      });
      for (const summary of page) this.#lines.set(summary.id, slim(summary));
      after = page.at(-1);
      if (page.length < PAGE_LINES) return;
    }
  }

  async #readStale(): Promise<void> {
    const { log, kind, slim } = this.#of;
    for (const id of [...this.#stale]) {
      // Taken off before it is read: what is committed meanwhile marks it again.
      this.#stale.delete(id);
      const summary = await log.summary(kind, id);
      if (summary === undefined) this.#lines.delete(id);
      else this.#lines.set(id, slim(summary));
      this.#sorted = undefined;
    }
  }
}
