import { z } from 'zod';
import type { Settings } from '../settings.ts';
import type { Store } from '../store/store.ts';
import { digestOf, newToken, OutsideRecords } from './outside.ts';

const sessionSchema = z.object({
  person: z.string(),
  screen: z.string(),
  startedAt: z.iso.datetime(),
  seenAt: z.iso.datetime(),
});

export type Session = z.output<typeof sessionSchema>;

/** As times of the server's clock. */
export interface SessionEnds {
  readonly untouchedMs: number;
  readonly inAnyCaseMs: number;
}

/** So long it stays known whose an ended session was, so that what they typed into it can be kept for them. */
const KNOWN_AFTERWARDS_MS = 12 * 3_600_000;

/** So that not every request writes to the disk; a session may end this much early. */
const SEEN_AGAIN_AFTER_MS = 60_000;

export interface SessionsOptions {
  readonly store: Store;
  readonly settings: Pick<Settings, 'sessionIdleMinutesMax' | 'sessionHoursMax'>;
  now(): Date;
}

/** Who is signed in where. A session ends by signing out, by nobody touching the screen, or with the shift. */
export class Sessions {
  readonly #options: SessionsOptions;
  readonly #records: OutsideRecords<typeof sessionSchema>;

  constructor(options: SessionsOptions) {
    this.#options = options;
    // Each request names one, and a site has no more of them than screens in a shift.
    this.#records = new OutsideRecords({
      store: options.store,
      kind: 'session',
      schema: sessionSchema,
      isKept: true,
    });
  }

  /** @returns the token for the cookie */
  async start(of: Pick<Session, 'person' | 'screen'>): Promise<string> {
    await this.#sweep();
    const token = newToken();
    const now = this.#options.now().toISOString();
    await this.#records.put(digestOf(token), { ...of, startedAt: now, seenAt: now });
    return token;
  }

  /** @param background nobody touched the screen */
  async find(token: string, { background }: { readonly background: boolean }): Promise<Session | undefined> {
    const id = digestOf(token);
    const session = await this.#records.get(id);
    if (session === undefined || this.#isOver(session)) return undefined;
    const now = this.#options.now();
    if (!background && now.getTime() - Date.parse(session.seenAt) > SEEN_AGAIN_AFTER_MS) {
      await this.#touch(id, now);
    }
    return session;
  }

  /** When it ends if nobody touches the screen, and when it ends in any case; nothing where it is over. */
  async endsOf(token: string): Promise<SessionEnds | undefined> {
    const session = await this.#records.get(digestOf(token));
    return session === undefined || this.#isOver(session) ? undefined : this.#endsOf(session);
  }

  async end(token: string): Promise<Session | undefined> {
    const id = digestOf(token);
    return await this.#inTurn(id, async () => {
      const session = await this.#records.get(id);
      if (session !== undefined) await this.#records.delete(id);
      return session;
    });
  }

  /** Whose session it was that ended by itself, by its token; nothing after signing out, or much later. */
  async endedOwner(token: string): Promise<string | undefined> {
    const session = await this.#records.get(digestOf(token));
    return session !== undefined && this.#isOver(session) ? session.person : undefined;
  }

  /** Those that are open now. */
  async open(): Promise<readonly Session[]> {
    return (await this.#records.all()).map(({ body }) => body).filter((session) => !this.#isOver(session));
  }

  async endAllOf(person: string): Promise<void> {
    for (const { id, body } of await this.#records.all()) {
      if (body.person === person) await this.#inTurn(id, () => this.#records.delete(id));
    }
  }

  /** In a turn of its own, so that a session that ends meanwhile does not come back. */
  async #touch(id: string, now: Date): Promise<void> {
    await this.#inTurn(id, async () => {
      const session = await this.#records.get(id);
      if (session !== undefined) await this.#records.put(id, { ...session, seenAt: now.toISOString() });
    });
  }

  #inTurn<T>(id: string, work: () => Promise<T>): Promise<T> {
    return this.#options.store.inTurn(`session ${id}`, work);
  }

  #isOver(session: Session): boolean {
    return this.#overForMs(session) >= 0;
  }

  /** Below 0 while it is open. */
  #overForMs(session: Session): number {
    const { untouchedMs, inAnyCaseMs } = this.#endsOf(session);
    return this.#options.now().getTime() - Math.min(untouchedMs, inAnyCaseMs);
  }

  #endsOf({ startedAt, seenAt }: Session): SessionEnds {
    const { settings } = this.#options;
    return {
      untouchedMs: Date.parse(seenAt) + settings.sessionIdleMinutesMax * 60_000,
      inAnyCaseMs: Date.parse(startedAt) + settings.sessionHoursMax * 3_600_000,
    };
  }

  async #sweep(): Promise<void> {
    for (const { id, body } of await this.#records.all()) {
      if (this.#overForMs(body) >= KNOWN_AFTERWARDS_MS) await this.#records.delete(id);
    }
  }
}
