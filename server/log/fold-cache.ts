import type { Folded } from './fold.ts';

/** The states used last, so that an open job is not read again for each of its steps. */
export class FoldCache {
  readonly #max: number;
  /** A Map keeps the order of insertion: the first is the one unused for longest. */
  readonly #byStream = new Map<string, Folded>();

  constructor(max: number) {
    this.#max = max;
  }

  get(stream: string): Folded | undefined {
    const found = this.#byStream.get(stream);
    if (found !== undefined) this.put(stream, found);
    return found;
  }

  put(stream: string, folded: Folded): void {
    this.#byStream.delete(stream);
    this.#byStream.set(stream, folded);
    if (this.#byStream.size <= this.#max) return;
    for (const oldest of this.#byStream.keys()) {
      this.#byStream.delete(oldest);
      return;
    }
  }

  delete(stream: string): void {
    this.#byStream.delete(stream);
  }

  clear(): void {
    this.#byStream.clear();
  }
}
