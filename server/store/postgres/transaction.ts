/** A transaction that holds the lock of the log: from its beginning on nobody else writes to it. */
import type pg from 'pg';
import { type Ask, askOn } from './ask.ts';
import { lockKey } from './keys.ts';
import { FORM } from './migrate.ts';
import { notWritten } from './postgres-error.ts';

export interface Transaction {
  /** @throws StorageUnavailable */
  readonly ask: Ask;
  /** @throws StorageUnavailable where it is not known to be durable */
  end(how: 'COMMIT' | 'ROLLBACK'): Promise<void>;
  /** Takes back what was not committed, and gives the connection to the next one. */
  release(): Promise<void>;
}

/** How long a server waits for another one to write, and how long one may think while it holds the lock. */
const LOCK_WAIT_S = 5;
const THINK_S = 10;

const DURABLE = `current_setting('fsync') AS fsync, current_setting('synchronous_commit') AS synchronous`;

interface Durable {
  readonly fsync: string;
  readonly synchronous: string;
}

/** @throws StorageUnavailable where the lock is not to be had, or what is written could be lost */
export async function begin(pool: pg.Pool, schema: string): Promise<Transaction> {
  const client = await pool.connect().catch((error: unknown) => {
    throw notWritten(error);
  });
  let isOpen = true;
  const ask: Ask = async (question) => {
    try {
      return await askOn(client)(question);
    } catch (error) {
      throw notWritten(error);
    }
  };
  const transaction: Transaction = {
    ask,
    end: async (how) => {
      const { command } = await client.query(how).catch((error: unknown) => {
        throw notWritten(error);
      });
      isOpen = false;
      if (command !== how) throw notWritten(new Error('the database took the entry back'));
    },
    release: async () => {
      const isLost = isOpen && !(await isRolledBack(client));
      client.release(isLost);
    },
  };
  try {
    await holdLock(client, schema);
    return transaction;
  } catch (error) {
    await transaction.release();
    throw notWritten(error);
  }
}

async function isRolledBack(client: pg.PoolClient): Promise<boolean> {
  try {
    await client.query('ROLLBACK');
    return true;
  } catch {
    // Closed instead, which takes it back as well.
    return false;
  }
}

/** All in one message: what the last question sees was committed before the lock was had. */
async function holdLock(client: pg.PoolClient, schema: string): Promise<void> {
  const results = (await client.query(
    `BEGIN;
     SET LOCAL lock_timeout = '${LOCK_WAIT_S}s';
     SET LOCAL idle_in_transaction_session_timeout = '${THINK_S}s';
     SELECT pg_advisory_xact_lock(${lockKey(schema, 'log')});
     SELECT version, ${DURABLE} FROM ${schema}.form`,
  )) as unknown as readonly pg.QueryResult<Durable & { readonly version: number }>[];
  const found = results.at(-1)?.rows[0];
  if (found?.version !== FORM)
    throw new Error('the database was brought to another form; start the release that this form belongs to');
  refuseUnsafe(found);
}

/** @throws Error in plain words where a confirmed entry could be lost with the power */
export async function requireDurable(ask: Ask): Promise<void> {
  const [found] = await ask<Durable>({ text: `SELECT ${DURABLE}` });
  if (found !== undefined) refuseUnsafe(found);
}

function refuseUnsafe({ fsync, synchronous }: Durable): void {
  if (fsync === 'on' && synchronous !== 'off') return;
  throw new Error(
    `the database would not keep a confirmed entry through a power cut (fsync ${fsync}, synchronous_commit ${synchronous})`,
  );
}
