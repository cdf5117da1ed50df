/** One after the other, for each name by itself: what is looked at in a turn is still so at its end. */
export class Turns {
  readonly #last = new Map<string, Promise<unknown>>();

  async take<T>(name: string, work: () => Promise<T>): Promise<T> {
    const before = this.#last.get(name) ?? Promise.resolve();
    const mine = before.then(work, work);
    this.#last.set(name, mine);
    try {
      return await mine;
    } finally {
      if (this.#last.get(name) === mine) this.#last.delete(name);
    }
  }
}
