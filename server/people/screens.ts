import { z } from 'zod';
import type { Store } from '../store/store.ts';
import { digestOf, newToken, OutsideRecords } from './outside.ts';

const screenSchema = z.object({ number: z.int() });

export interface Screen {
  readonly token: string;
  readonly name: string;
}

/** What a screen is called before anybody has signed in there. */
export const UNNUMBERED = 'unnumbered screen';

/** The screens that people have signed in at, numbered as they came, known again by a cookie. */
export class Screens {
  readonly #records: OutsideRecords<typeof screenSchema>;
  readonly #store: Store;

  constructor(store: Store) {
    this.#store = store;
    this.#records = new OutsideRecords({ store, kind: 'screen', schema: screenSchema });
  }

  /** The screen's name, for a token that we gave it. */
  async nameOf(token: string): Promise<string | undefined> {
    const screen = await this.#records.get(digestOf(token));
    return screen === undefined ? undefined : `screen ${screen.number}`;
  }

  /** The names of all, in the order of their numbers. */
  async list(): Promise<readonly string[]> {
    const numbers = (await this.#records.all()).map(({ body }) => body.number);
    return numbers.sort((one, other) => one - other).map((number) => `screen ${number}`);
  }

  /** The screen again, or a new one with the next number: a token that we did not give is not taken. */
  async recognise(token: string | undefined): Promise<Screen> {
    const name = token === undefined ? undefined : await this.nameOf(token);
    if (token !== undefined && name !== undefined) return { token, name };
    return await this.#store.inTurn('numbering of screens', async () => {
      const numbers = (await this.#records.all()).map(({ body }) => body.number);
      const number = Math.max(0, ...numbers) + 1;
      const fresh = newToken();
      await this.#records.put(digestOf(fresh), { number });
      return { token: fresh, name: `screen ${number}` };
    });
  }
}
