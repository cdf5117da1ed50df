/**
 * Finds lines of a list by something other than their id. A list tells it of each line that came or went; one that changed
 * goes as it was and comes as it is.
 */
export interface ListIndex<Line> {
  put(id: string, line: Line): void;
  drop(id: string, line: Line): void;
}

/** Ids by a key of their lines; the same id may stand under several. */
export class IdsByKey {
  readonly #ids = new Map<string, Set<string>>();

  /** @returns whether nothing stood under this key before */
  add(key: string, id: string): boolean {
    const ids = this.#ids.get(key);
    ids?.add(id);
    if (ids === undefined) this.#ids.set(key, new Set([id]));
    return ids === undefined;
  }

  /** @returns whether nothing stands under this key any more */
  remove(key: string, id: string): boolean {
    const ids = this.#ids.get(key);
    ids?.delete(id);
    return ids?.size === 0 && this.#ids.delete(key);
  }

  of(key: string): ReadonlySet<string> {
    return this.#ids.get(key) ?? NONE;
  }
}

const NONE: ReadonlySet<string> = new Set();

/**
 * Lines by what stands in them, such as the jobs of one valve.
 *
 * @example const byTag = jobs.indexed(new ByKeys(({ tag }) => [tag]));
 * [...(await byTag()).of('FV-214')] // ids of its jobs
 */
export class ByKeys<Line> implements ListIndex<Line> {
  readonly #keysOf: (line: Line) => readonly string[];
  readonly #ids = new IdsByKey();

  constructor(keysOf: (line: Line) => readonly string[]) {
    this.#keysOf = keysOf;
  }

  put(id: string, line: Line): void {
    for (const key of this.#keysOf(line)) this.#ids.add(key, id);
  }

  drop(id: string, line: Line): void {
    for (const key of this.#keysOf(line)) this.#ids.remove(key, id);
  }

  of(key: string): ReadonlySet<string> {
    return this.#ids.of(key);
  }
}
