import { createHmac, randomBytes, scrypt, timingSafeEqual } from 'node:crypto';
import { z } from 'zod';
import { Refusal } from '../../safety/refusal.ts';
import type { HashCost } from '../settings.ts';

const SALT_BYTES = 16;
const HASH_BYTES = 32;

/** A hashed PIN with all that is needed to check it, but for the pepper. */
export const hashedSchema = z.object({
  algorithm: z.literal('scrypt'),
  N: z.int(),
  r: z.int(),
  p: z.int(),
  salt: z.string(),
  hash: z.string(),
});

export type Hashed = z.output<typeof hashedSchema>;

export interface PinHasherOptions {
  readonly cost: HashCost;
  /** A key from outside the database: whoever copies that alone cannot try PINs on it. */
  readonly pepper: Uint8Array;
  readonly atOnceMax: number;
  readonly waitingMax: number;
}

/** Hashes PINs slowly, a few at once, so that a crowd at the door cannot take all the memory. */
export class PinHasher {
  readonly #options: PinHasherOptions;
  /** Those at a screen where they proved themselves before go first. */
  readonly #waiting = { known: [] as (() => void)[], others: [] as (() => void)[] };
  #running = 0;

  constructor(options: PinHasherOptions) {
    this.#options = options;
  }

  /** @throws Refusal PPL-003 if too many wait already */
  async hash(pin: string): Promise<Hashed> {
    const salt = randomBytes(SALT_BYTES);
    const { N, r, p } = this.#options.cost;
    const hash = await this.#derive(pin, { salt, N, r, p, isKnown: true });
    return { algorithm: 'scrypt', N, r, p, salt: salt.toString('base64'), hash: hash.toString('base64') };
  }

  /**
   * Is it this PIN? Without a hash the same work is done for nothing, so that an unknown name takes as long.
   *
   * @param hashed `isKnown`: they proved themselves at this screen before; a crowd of others does not keep them waiting
   * @throws Refusal PPL-003 if too many wait already
   */
  async matches(
    pin: string,
    { hashed, isKnown = false }: { readonly hashed: Hashed | undefined; readonly isKnown?: boolean },
  ): Promise<boolean> {
    const salt = hashed === undefined ? randomBytes(SALT_BYTES) : Buffer.from(hashed.salt, 'base64');
    const { N, r, p } = hashed ?? this.#options.cost;
    const derived = await this.#derive(pin, { salt, N, r, p, isKnown });
    const wanted = hashed === undefined ? randomBytes(HASH_BYTES) : Buffer.from(hashed.hash, 'base64');
    return wanted.length === derived.length && timingSafeEqual(derived, wanted) && hashed !== undefined;
  }

  /** Was it hashed at another cost than now? */
  isOutdated({ N, r, p }: Hashed): boolean {
    const { cost } = this.#options;
    return N !== cost.N || r !== cost.r || p !== cost.p;
  }

  async #derive(
    pin: string,
    { salt, N, r, p, isKnown }: HashCost & { salt: Uint8Array; isKnown: boolean },
  ): Promise<Buffer> {
    await this.#takeTurn(isKnown);
    try {
      const keyed = createHmac('sha256', this.#options.pepper).update(pin, 'utf8').digest();
      // Node allows 32 MiB by default, less than the 128 * N * r that this needs.
      const options = { N, r, p, maxmem: 256 * N * r };
      return await new Promise((resolve, reject) => {
        scrypt(keyed, salt, HASH_BYTES, options, (error, key) => (error ? reject(error) : resolve(key)));
      });
    } finally {
      this.#running -= 1;
      (this.#waiting.known.shift() ?? this.#waiting.others.shift())?.();
    }
  }

  async #takeTurn(isKnown: boolean): Promise<void> {
    const { atOnceMax, waitingMax } = this.#options;
    const { known, others } = this.#waiting;
    if (this.#running >= atOnceMax) {
      // Half of the places are kept for the known ones.
      const isFull =
        known.length + others.length >= waitingMax || (!isKnown && others.length >= waitingMax / 2);
      if (isFull) throw tooManyAtTheDoor();
      await new Promise<void>((resolve) => (isKnown ? known : others).push(resolve));
    }
    this.#running += 1;
  }
}

function tooManyAtTheDoor(): Refusal {
  return new Refusal({
    kind: 'throttled',
    code: 'PPL-003',
    what: 'Too many people are proving who they are at this moment.',
    kept: 'Nothing was recorded.',
    next: 'Try again in a few seconds.',
  });
}
