/** The door: whose PIN is it? All doors lead through here, so that all wrong tries are counted together. */
import { createHmac } from 'node:crypto';
import { z } from 'zod';
import { Refusal } from '../../safety/refusal.ts';
import { fingerprintOf } from '../log/chain.ts';
import type { SiteLog } from '../log/site-log.ts';
import { ALARM_TRIES, pinRefused, SITE_STREAM } from '../site-stream.ts';
import type { Store } from '../store/store.ts';
import { OutsideRecords } from './outside.ts';
import type { Person } from './person.ts';
import { hashedSchema, type PinHasher } from './pin-hash.ts';
import { afterFailure, heldForS, isTold, type Throttle, throttleSchema } from './throttle.ts';

/** `pin`: chosen by the person; `code`: given to them, good once and not for long. */
const secretSchema = z.object({
  kind: z.enum(['pin', 'code']),
  hashed: hashedSchema,
  validUntil: z.iso.datetime().nullable(),
  /** The request that gave the code, kept with the PIN that came of it. */
  givenBy: z.string(),
  /** Screens where they proved who they are, newest last: tries there are counted apart. */
  provedAt: z.array(z.string()).default([]),
});

export type Secret = z.output<typeof secretSchema>;
type NewSecret = Pick<Secret, 'kind' | 'validUntil' | 'givenBy'>;

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

/** Tries on names that nobody has are told at most this often, and once more when they become an alarm. */
const STRANGERS_TOLD_EVERY_MS = 15 * 60_000;
const STRANGERS = 'strangers';
/** A throttle that held nothing back for so long is forgotten. */
const FORGOTTEN_AFTER_MS = 48 * 3_600_000;
/** With ten tries a day at each and ten at all others together, far below the 100 of NIST SP 800-63B. */
const KNOWN_SCREENS_MAX = 5;

/** Somebody has a PIN or a code already, hashed with the key of now. */
export async function hasSecrets(store: Store): Promise<boolean> {
  return (await store.outsideAll('secret')).length > 0;
}

export class Accounts {
  readonly #options: AccountsOptions;
  readonly #secrets: OutsideRecords<typeof secretSchema>;
  readonly #throttles: OutsideRecords<typeof throttleSchema>;

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
    return await this.#inTurn(account, async () => {
      const secret = attempt.person && (await this.#secrets.get(attempt.person.id));
      const ownDoor = this.#doorOf(attempt, secret);
      const door = ownDoor ?? account;
      const throttle = await this.#throttles.get(door);
      const waitS = heldForS(throttle, this.#options.now());
      if (waitS > 0) throw heldBack(waitS);
      const proof = { hashed: secret?.hashed, isKnown: ownDoor !== undefined };
      const matches = await this.#options.hasher.matches(attempt.secret, proof);
      if (!matches || secret === undefined || this.#isOver(secret)) {
        await this.#countFailure({ attempt, door, throttle });
        throw noMatch();
      }
      await this.#forgive(door, attempt, throttle);
      await this.#rehash(attempt, secret);
      return secret.kind;
    });
  }

  /**
   * They proved who they are at this screen. From now on wrong tries there are counted by themselves: whoever types
   * wrong PINs in their name somewhere else cannot keep them from signing here.
   */
  async provedAt(id: string, screen: string): Promise<void> {
    await this.#inTurn(this.#key(`person:${id}`), async () => {
      const secret = await this.#secrets.get(id);
      if (secret === undefined || secret.provedAt.includes(screen)) return;
      const provedAt = [...secret.provedAt, screen].slice(-KNOWN_SCREENS_MAX);
      await this.#secrets.put(id, { ...secret, provedAt });
    });
  }

  async secretOf(id: string): Promise<Secret | undefined> {
    return await this.#secrets.get(id);
  }

  /** Puts a secret in the place of the one before, and opens the account again wherever it was held. */
  async replace(id: string, secret: { readonly text: string } & NewSecret): Promise<void> {
    const { text, ...kept } = secret;
    const account = this.#key(`person:${id}`);
    await this.#inTurn(account, async () => {
      const before = await this.#secrets.get(id);
      await this.#secrets.put(id, { ...kept, hashed: await this.#options.hasher.hash(text), provedAt: [] });
      const doors = (before?.provedAt ?? []).map((screen) => this.#key(`person:${id} at ${screen}`));
      for (const door of [account, ...doors]) await this.#throttles.delete(door);
    });
  }

  /** Nobody's PIN or code is good any more: the key that they were hashed with is gone. */
  async voidAll(): Promise<void> {
    for (const { id } of await this.#secrets.all()) await this.#secrets.delete(id);
  }

  async remove(id: string): Promise<void> {
    await this.#secrets.delete(id);
  }

  #inTurn<T>(account: string, work: () => Promise<T>): Promise<T> {
    return this.#options.store.inTurn(`account ${account}`, work);
  }

  #accountOf({ person, who }: Attempt): string {
    return this.#key(
      person === undefined ? `name:${who.normalize('NFC').toLowerCase()}` : `person:${person.id}`,
    );
  }

  /** A door of its own, where they proved themselves before. */
  #doorOf({ person, screen }: Attempt, secret: Secret | undefined): string | undefined {
    if (person === undefined || !secret?.provedAt.includes(screen)) return undefined;
    return this.#key(`person:${person.id} at ${screen}`);
  }

  /** Keyed, because people type their PIN into the wrong field. */
  #key(account: string): string {
    return createHmac('sha256', this.#options.pepper).update(account, 'utf8').digest('hex');
  }

  #isOver({ validUntil }: Secret): boolean {
    return validUntil !== null && Date.parse(validUntil) <= this.#options.now().getTime();
  }

  async #countFailure(of: { attempt: Attempt; door: string; throttle: Throttle | undefined }): Promise<void> {
    const { attempt, door } = of;
    const now = this.#options.now();
    const throttle = afterFailure(of.throttle, now);
    if (attempt.person === undefined) {
      await this.#throttles.put(door, throttle);
      await this.#countStranger(attempt);
      return;
    }
    const told = isTold(throttle);
    await this.#throttles.put(door, told ? { ...throttle, told: throttle.failures } : throttle);
    if (told) await this.#tell({ person: attempt.person.id, inARow: throttle.failures }, attempt.screen);
  }

  async #countStranger(attempt: Attempt): Promise<void> {
    await this.#inTurn(STRANGERS, async () => {
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
        if (failures === ALARM_TRIES) await this.#tell({ person: null, inARow: failures }, attempt.screen);
        return;
      }
      await this.#throttles.put(STRANGERS, { failures: 0, lastAt: now.toISOString(), told: 0 });
      await this.#forgetOld(now);
      await this.#tell({ person: null, inARow: failures }, attempt.screen);
    });
  }

  async #forgive(door: string, attempt: Attempt, throttle: Throttle | undefined): Promise<void> {
    if (throttle === undefined) return;
    await this.#throttles.delete(door);
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
    next: 'Wait, go to a screen where you have signed in before, or ask a supervisor or engineer for a new code.',
  });
}
