/**
 * The store in PostgreSQL, for a site with several servers on one database. A batch is decided and written in one
 * transaction that holds the lock of the log, so that there is one chain whoever writes.
 */
import type pg from 'pg';
import { canonical } from '../../log/canonical.ts';
import type { Batch, Outside, Store, Summary } from '../store.ts';
import { Turns } from '../turns.ts';
import { type Ask, askOn, type Question } from './ask.ts';
import { asking, makePool, type Place, requireConnectionString } from './connections.ts';
import { migrate, requireForm } from './migrate.ts';
import { cannotOpen, notWritten } from './postgres-error.ts';
import { PostgresReads } from './postgres-reads.ts';
import { askAll, putSummaries, statementsOf } from './postgres-writes.ts';
import { begin, requireDurable, type Transaction } from './transaction.ts';
import { SharedTurns } from './turns.ts';

export interface PostgresStoreOptions extends Place {
  /** For the verifier and exports: changes nothing, and does with a role that may only look. */
  readonly readOnly?: boolean;
}

/** Rows of one statement, where many are put. */
const ROWS_AT_ONCE = 500;

/**
 * Opens the log in a database, and makes its schema if there is none.
 *
 * @throws Error in plain words: no database there, a later release's form, settings under which a confirmed entry could be lost
 * @example const store = await openPostgresStore({ url: config.database, schema: 'yokeside' })
 */
export async function openPostgresStore(options: PostgresStoreOptions): Promise<Store> {
  requireConnectionString(options.url);
  const pool = makePool({ ...options, isCommand: options.isCommand ?? options.readOnly ?? false });
  try {
    if (options.readOnly) await requireForm(askOn(pool), options.schema);
    else await bringUpToDate(pool, options.schema);
    return new PostgresStore({ pool, place: options, readOnly: options.readOnly ?? false });
  } catch (error) {
    await pool.end();
    throw cannotOpen(error);
  }
}

async function bringUpToDate(pool: pg.Pool, schema: string): Promise<void> {
  const client = await pool.connect();
  try {
    const ask = askOn(client);
    await requireUtf8(ask);
    await ask({ text: 'BEGIN' });
    await migrate(ask, schema);
    await ask({ text: 'COMMIT' });
    await requireDurable(ask);
    client.release();
  } catch (error) {
    client.release(true);
    throw error;
  }
}

/** Bytes are hashed as UTF-8. */
async function requireUtf8(ask: Ask): Promise<void> {
  const [found] = await ask<{ encoding: string }>({
    text: `SELECT current_setting('server_encoding') AS encoding`,
  });
  if (found?.encoding !== 'UTF8')
    throw new Error(`the database is in ${found?.encoding}; make one with ENCODING 'UTF8'`);
}

class PostgresStore extends PostgresReads implements Store {
  readonly isShared = true;
  readonly #pool: pg.Pool;
  readonly #ask: Ask;
  readonly #schema: string;
  readonly #turns: SharedTurns;
  /** One transaction of this server at a time: what is asked within one needs a connection too. */
  readonly #writing = new Turns();
  readonly #readOnly: boolean;

  constructor({ pool, place, readOnly }: { pool: pg.Pool; place: Place; readOnly: boolean }) {
    const ask = asking(pool);
    super(ask, place.schema);
    this.#pool = pool;
    this.#ask = ask;
    this.#schema = place.schema;
    this.#turns = new SharedTurns(place);
    this.#readOnly = readOnly;
  }

  async alone<T>(work: (commit: Store['commit']) => Promise<T>): Promise<T> {
    return await this.#transaction(async ({ ask, end }) => {
      let done = false;
      const result = await work(async (batch) => {
        const statements = statementsOf(batch, this.#schema);
        await askAll(ask, statements);
        await end('COMMIT');
        done = true;
      });
      if (!done) await end('ROLLBACK');
      return result;
    });
  }

  async commit(batch: Batch): Promise<void> {
    await this.alone((commit) => commit(batch));
  }

  inTurn<T>(name: string, work: () => Promise<T>): Promise<T> {
    return this.#turns.take(name, work);
  }

  /** In one transaction: until its end the old lists are read, and whoever would change a line waits. */
  async replaceSummaries(all: AsyncIterable<Summary>): Promise<void> {
    await this.#transaction(async ({ ask, end }) => {
      await ask({ text: 'SET LOCAL idle_in_transaction_session_timeout = 0' });
      await ask({ text: `DELETE FROM ${this.#schema}.summary` });
      let lines: Summary[] = [];
      for await (const line of all) {
        if (lines.push(line) < ROWS_AT_ONCE) continue;
        await ask(putSummaries(lines, this.#schema));
        lines = [];
      }
      await ask(putSummaries(lines, this.#schema));
      await end('COMMIT');
    });
  }

  async putOutside({ kind, id, body }: Outside): Promise<void> {
    const values = [kind, id, canonical(body)];
    const text = `INSERT INTO ${this.#schema}.outside (kind, id, body) VALUES ($1, $2, $3)
      ON CONFLICT (kind, id) DO UPDATE SET body = excluded.body`;
    await this.#change({ name: 'put-outside', text, values });
  }

  async deleteOutside(kind: string, id: string): Promise<void> {
    const text = `DELETE FROM ${this.#schema}.outside WHERE kind = $1 AND id = $2`;
    await this.#change({ name: 'delete-outside', text, values: [kind, id] });
  }

  async close(): Promise<void> {
    await this.#turns.close();
    if (!this.#pool.ended) await this.#pool.end();
  }

  async #change(question: Question): Promise<void> {
    if (this.#readOnly) throw notWritten(new Error('it was opened for reading alone'));
    await this.#ask(question).catch((error: unknown) => {
      throw notWritten(error);
    });
  }

  /** Holds the lock of the log while `work` runs; what it throws takes all of it back. */
  async #transaction<T>(work: (transaction: Transaction) => Promise<T>): Promise<T> {
    if (this.#readOnly) throw notWritten(new Error('it was opened for reading alone'));
    return await this.#writing.take('log', async () => {
      const transaction = await begin(this.#pool, this.#schema);
      try {
        return await work(transaction);
      } finally {
        await transaction.release();
      }
    });
  }
}
