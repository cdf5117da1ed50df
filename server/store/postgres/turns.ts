/** Turns that hold over all servers on one database. */
import { setTimeout as after } from 'node:timers/promises';
import pg from 'pg';
import { StorageUnavailable } from '../storage-unavailable.ts';
import { Turns } from '../turns.ts';
import { type Place, settingsOf } from './connections.ts';
import { lockKey } from './keys.ts';
import { notWritten } from './postgres-error.ts';

/** A PIN is hashed within a turn: that is the longest. */
const WAIT_MS_MAX = 10_000;
const LOOK_AGAIN_MS = 15;

/**
 * One session holds the locks of all turns that this server has, and asks again for one that another server has: to
 * wait in the session itself would keep those from being given back that the others wait for. Where the session is
 * lost, the database gives its locks back.
 */
export class SharedTurns {
  readonly #place: Place;
  readonly #own = new Turns();
  #session: Promise<pg.Client> | undefined;

  constructor(place: Place) {
    this.#place = place;
  }

  /** @throws StorageUnavailable where another server does not let go, or the database is not there */
  async take<T>(name: string, work: () => Promise<T>): Promise<T> {
    return await this.#own.take(name, async () => {
      const key = lockKey(this.#place.schema, `turn ${name}`);
      await this.#lock(key);
      try {
        return await work();
      } finally {
        await this.#unlock(key);
      }
    });
  }

  async close(): Promise<void> {
    const session = this.#session;
    this.#session = undefined;
    await (await session?.catch(() => undefined))?.end();
  }

  async #lock(key: string): Promise<void> {
    const untilMs = performance.now() + WAIT_MS_MAX;
    while (!(await this.#asked('SELECT pg_try_advisory_lock($1) AS got', key))) {
      if (performance.now() > untilMs) throw new StorageUnavailable('another server does not let go of it');
      await after(LOOK_AGAIN_MS);
    }
  }

  async #unlock(key: string): Promise<void> {
    try {
      await this.#asked('SELECT pg_advisory_unlock($1) AS got', key);
    } catch {
      // The session is gone, and the lock with it; what was done in the turn stands.
    }
  }

  async #asked(text: string, key: string): Promise<boolean> {
    try {
      const session = await this.#open();
      const { rows } = await session.query<{ got: boolean }>(text, [key]);
      return rows[0]?.got === true;
    } catch (error) {
      await this.close();
      throw notWritten(error);
    }
  }

  #open(): Promise<pg.Client> {
    this.#session ??= this.#connected();
    return this.#session;
  }

  async #connected(): Promise<pg.Client> {
    const session = new pg.Client(settingsOf(this.#place));
    session.on('error', () => {
      // Lost while nobody asked: the next turn opens another.
      this.#session = undefined;
    });
    await session.connect();
    return session;
  }
}
