/** The door: whose PIN is it? All doors lead through here, so that all wrong tries are counted together. */
import { createHmac } from 'node:crypto';
import { z } from 'zod';
import { Refusal } from '../../safety/refusal.ts';
import { fingerprintOf } from '../log/chain.ts';
import type { SiteLog } from '../log/site-log.ts';
import { pinRefused, SITE_STREAM } from '../site-stream.ts';
import type { Store } from '../store/store.ts';
import { OutsideRecords } from './outside.ts';
import type { Person } from './person.ts';
import { hashedSchema, type PinHasher } from './pin-hash.ts';
import { afterFailure, heldForS, isTold, type Throttle, throttleSchema } from './throttle.ts';
import { Turns } from './turns.ts';

/** `pin`: chosen by the person; `code`: given to them, good once and not for long. */
const secretSchema = z.object({
  kind: z.enum(['pin', 'code']),
  hashed: hashedSchema,
  validUntil: z.iso.datetime().nullable(),
  /** The request that gave the code, kept with the PIN that came of it. */
  givenBy: z.string(),
});

export type Secret = z.output<typeof secretSchema>;

export interface AccountsOptions {
  readonly log: SiteLog;
  readonly store: Store;
  readonly hasher: PinHasher;
  readonly pepper: Uint8Array;
  now(): Date;
}

export interface Attempt {
  /** Nobody, for a name that nobody has. */
  readonly person: Person | undefined;
  readonly who: string;
  readonly secret: string;
  readonly screen: string;
}

/** Tries on names that nobody has are told at most this often. */
const STRANGERS_TOLD_EVERY_MS = 15 * 60_000;
const STRANGERS = 'strangers';
/** A throttle that held nothing back for so long is forgotten. */
const FORGOTTEN_AFTER_MS = 48 * 3_600_000;

export class Accounts {
  readonly #options: AccountsOptions;
  readonly #secrets: OutsideRecords<typeof secretSchema>;
  readonly #throttles: OutsideRecords<typeof throttleSchema>;
  readonly #turns = new Turns();

  constructor(options: AccountsOptions) {
    const { store } = options;
    this.#options = options;
    this.#secrets = new OutsideRecords({ store, kind: 'secret', schema: secretSchema });
    this.#throttles = new OutsideRecords({ store, kind: 'throttle', schema: throttleSchema });
  }

  /**
   * Which kind of secret it was.
   *
   * @throws Refusal PPL-001 no match, PPL-002 held back, PPL-003 too many wait
   */
  async prove(attempt: Attempt): Promise<Secret['kind']> {
    const account = this.#accountOf(attempt);
    return await this.#turns.take(account, async () => {
      const throttle = await this.#throttles.get(account);
      const waitS = heldForS(throttle, this.#options.now());
      if (waitS > 0) throw heldBack(waitS);
      const secret = attempt.person && (await this.#secrets.get(attempt.person.id));
      const matches = await this.#options.hasher.matches(attempt.secret, secret?.hashed);
      if (!matches || secret === undefined || this.#isOver(secret)) {
        await this.#countFailure({ attempt, account, throttle });
        throw noMatch();
      }
      await this.#forgive(account, attempt, throttle);
      await this.#rehash(attempt, secret);
      return secret.kind;
    });
  }

  async secretOf(id: string): Promise<Secret | undefined> {
    return await this.#secrets.get(id);
  }

  /** Puts a secret in the place of the one before, and opens the account again if it was held. */
  async replace(id: string, secret: { readonly text: string } & Omit<Secret, 'hashed'>): Promise<void> {
    const { text, ...kept } = secret;
    const account = this.#key(`person:${id}`);
    await this.#turns.take(account, async () => {
      await this.#secrets.put(id, { ...kept, hashed: await this.#options.hasher.hash(text) });
      await this.#throttles.delete(account);
    });
  }

  async remove(id: string): Promise<void> {
    await this.#secrets.delete(id);
  }

  #accountOf({ person, who }: Attempt): string {
    return this.#key(
      person === undefined ? `name:${who.normalize('NFC').toLowerCase()}` : `person:${person.id}`,
    );
  }

  /** Keyed, because people type their PIN into the wrong field. */
  #key(account: string): string {
    return createHmac('sha256', this.#options.pepper).update(account, 'utf8').digest('hex');
  }

  #isOver({ validUntil }: Secret): boolean {
    return validUntil !== null && Date.parse(validUntil) <= this.#options.now().getTime();
  }

  async #countFailure(of: {
    attempt: Attempt;
    account: string;
    throttle: Throttle | undefined;
  }): Promise<void> {
    const { attempt, account } = of;
    const now = this.#options.now();
    const throttle = afterFailure(of.throttle, now);
    if (attempt.person === undefined) {
      await this.#throttles.put(account, throttle);
      await this.#countStranger(attempt);
      return;
    }
    const told = isTold(throttle);
    await this.#throttles.put(account, told ? { ...throttle, told: throttle.failures } : throttle);
    if (told) await this.#tell({ person: attempt.person.id, inARow: throttle.failures }, attempt.screen);
  }

  async #countStranger(attempt: Attempt): Promise<void> {
    await this.#turns.take(STRANGERS, async () => {
      const now = this.#options.now();
      const before = await this.#throttles.get(STRANGERS);
      const lastToldMs = before === undefined ? 0 : Date.parse(before.lastAt);
      const failures = (before?.failures ?? 0) + 1;
      if (now.getTime() - lastToldMs < STRANGERS_TOLD_EVERY_MS) {
        await this.#throttles.put(STRANGERS, {
          failures,
          lastAt: before?.lastAt ?? now.toISOString(),
          told: 0,
        });
        return;
      }
      await this.#throttles.put(STRANGERS, { failures: 0, lastAt: now.toISOString(), told: 0 });
      await this.#forgetOld(now);
      await this.#tell({ person: null, inARow: failures }, attempt.screen);
    });
  }

  async #forgive(account: string, attempt: Attempt, throttle: Throttle | undefined): Promise<void> {
    if (throttle === undefined) return;
    await this.#throttles.delete(account);
    if (throttle.failures === throttle.told || attempt.person === undefined) return;
    await this.#tell({ person: attempt.person.id, inARow: throttle.failures }, attempt.screen);
  }

  async #forgetOld(now: Date): Promise<void> {
    for (const { id, body } of await this.#throttles.all()) {
      if (now.getTime() - Date.parse(body.lastAt) > FORGOTTEN_AFTER_MS) await this.#throttles.delete(id);
    }
  }

  async #tell(tries: Parameters<typeof pinRefused>[0], screen: string): Promise<void> {
    await this.#options.log.act({
      requestId: null,
      fingerprint: fingerprintOf({ ...tries }),
      person: null,
      screen,
      streams: [SITE_STREAM],
      decide: () => ({ entries: [pinRefused(tries)], answer: null }),
    });
  }

  async #rehash({ person, secret: text }: Attempt, secret: Secret): Promise<void> {
    if (person === undefined || !this.#options.hasher.isOutdated(secret.hashed)) return;
    await this.#secrets.put(person.id, { ...secret, hashed: await this.#options.hasher.hash(text) });
  }
}

function noMatch(): Refusal {
  return new Refusal({
    kind: 'not-allowed',
    code: 'PPL-001',
    what: 'Name and PIN do not belong together.',
    kept: 'Nothing was recorded in your name.',
    next: 'Try again. Forgotten: a supervisor or engineer gives you a new code.',
  });
}

function heldBack(waitS: number): Refusal {
  const wait = waitS < 120 ? `${waitS} seconds` : `${Math.ceil(waitS / 60)} minutes`;
  return new Refusal({
    kind: 'throttled',
    code: 'PPL-002',
    what: `Too many wrong tries in this name. The next one is looked at in ${wait}.`,
    kept: 'Nothing was recorded.',
    next: 'Wait, or ask a supervisor or engineer for a new code.',
  });
}
