/**
 * The log from one kind of database into the other, with all that stands beside it. Each copy is one transaction that
 * ends only when the verifier has read all of it there: one that is broken off leaves nothing.
 */
import { existsSync, renameSync, rmSync } from 'node:fs';
import { DatabaseSync } from '@photostructure/sqlite';
import pg from 'pg';
import type { BlobFault } from '../../log/blobs.ts';
import { type LogReads, verifyStore } from '../../log/verify.ts';
import { synced } from '../backup.ts';
import { dataFolder, prepareDataFolder } from '../data-folder.ts';
import { lockFolder } from '../folder-lock.ts';
import { type Ask, askOn } from '../postgres/ask.ts';
import {
  type Place,
  refuseBesideServer,
  requireConnectionString,
  settingsOf,
} from '../postgres/connections.ts';
import { lockKey } from '../postgres/keys.ts';
import { migrate, requireForm } from '../postgres/migrate.ts';
import { reasonOf } from '../postgres/postgres-error.ts';
import { PostgresReads } from '../postgres/postgres-reads.ts';
import { openSqliteStore } from '../sqlite-store.ts';
import type { Head } from '../store.ts';
import { postgresSource, postgresTarget } from './postgres-tables.ts';
import { sqliteSource, sqliteTarget } from './sqlite-tables.ts';
import { copyTables } from './tables.ts';

export interface Copied {
  readonly head: Head;
  /** Photos that are not whole where the copy was made from: it is kept all the same, and whoever made it is told. */
  readonly photos: readonly BlobFault[];
}

/**
 * @param of `asideAs`: what is there already is kept in a schema of this name; without it, the database must hold nothing
 * @throws Error in plain words; the database is then as it was
 */
export async function copyIntoDatabase(of: {
  readonly file: string;
  readonly to: Place;
  readonly asideAs?: string;
}): Promise<Copied & { readonly wasAside: boolean }> {
  const { to, asideAs } = of;
  if (!existsSync(of.file)) throw new Error(`No copy was made: there is no log at ${of.file}.`);
  const file = new DatabaseSync(of.file, { readOnly: true, timeout: 5000 });
  try {
    return await inTransaction(to, async (ask) => {
      await refuseBesideServer(ask);
      await ask({ text: `SELECT pg_advisory_xact_lock(${lockKey(to.schema, 'log')})` });
      const wasAside = asideAs !== undefined && (await isThere(ask, to.schema));
      if (wasAside) await ask({ text: `ALTER SCHEMA ${to.schema} RENAME TO ${asideAs}` });
      await migrate(ask, to.schema);
      const head = await copyTables(sqliteSource(file), postgresTarget(ask, to.schema));
      return { ...(await requireSame(head, new PostgresReads(ask, to.schema))), wasAside };
    });
  } finally {
    file.close();
  }
}

/**
 * One moment of the log in a database as a file of SQLite, whatever is written meanwhile. It is not yet verified.
 *
 * @param of `folder` gets the file; where this fails, whoever made the folder removes it
 * @returns the head of that moment
 * @throws Error in plain words
 */
export async function snapshotInto(of: { readonly from: Place; readonly folder: string }): Promise<Head> {
  const { from, folder } = of;
  return await inTransaction(from, async (ask) => {
    await ask({ text: 'SET TRANSACTION ISOLATION LEVEL REPEATABLE READ, READ ONLY' });
    await requireForm(ask, from.schema);
    await openSqliteStore({ folder }).close();
    const file = new DatabaseSync(dataFolder(folder).database);
    try {
      file.exec('PRAGMA synchronous = FULL; BEGIN IMMEDIATE');
      const head = await copyTables(postgresSource(ask, from.schema), sqliteTarget(file));
      file.exec('COMMIT; PRAGMA wal_checkpoint(TRUNCATE)');
      return head;
    } finally {
      file.close();
    }
  });
}

/**
 * The log of a database into a data folder that has none. The server is to be stopped: what it wrote afterwards would
 * be lacking.
 *
 * @throws Error in plain words; the folder then has no log
 */
export async function copyIntoFolder(of: { readonly from: Place; readonly folder: string }): Promise<Copied> {
  const { from, folder } = of;
  const files = prepareDataFolder(folder);
  const held = lockFolder(folder, files.lock);
  const unfinished = `${folder}.copying`;
  try {
    if (existsSync(files.database))
      throw new Error(`No copy was made: there is a log in ${folder} already. Name another folder.`);
    rmSync(unfinished, { recursive: true, force: true });
    await inTransaction(from, refuseBesideServer);
    const head = await snapshotInto({ from, folder: unfinished });
    const store = openSqliteStore({ folder: unfinished, readOnly: true });
    const copied = await requireSame(head, store).finally(() => store.close());
    synced(dataFolder(unfinished).database);
    renameSync(dataFolder(unfinished).database, files.database);
    synced(folder);
    return copied;
  } finally {
    rmSync(unfinished, { recursive: true, force: true });
    held.release();
  }
}

/** The verifier reads all of the copy, and must come to the head that was read. */
async function requireSame(head: Head, copy: LogReads): Promise<Copied> {
  const verdict = await verifyStore(copy, []);
  if (verdict.fault !== null)
    throw new Error(`the first bad entry is ${verdict.fault.seq}: ${verdict.fault.what}`);
  if (verdict.head.seq !== head.seq || verdict.head.hash !== head.hash)
    throw new Error(`it ends with entry ${verdict.head.seq}, and the log with ${head.seq}`);
  return { head, photos: verdict.photos };
}

/** @throws Error in plain words, with everything taken back */
async function inTransaction<T>(place: Place, work: (ask: Ask) => Promise<T>): Promise<T> {
  requireConnectionString(place.url);
  const client = new pg.Client(settingsOf({ ...place, isCommand: true }));
  // A connection that is lost fails the statement that waits for it.
  client.on('error', () => {});
  try {
    await client.connect();
    const ask = askOn(client);
    await ask({ text: 'BEGIN' });
    const result = await work(ask);
    await ask({ text: 'COMMIT' });
    return result;
  } catch (cause) {
    throw new Error(`No copy was made: ${reasonOf(cause)}.`, { cause });
  } finally {
    await client.end();
  }
}

async function isThere(ask: Ask, schema: string): Promise<boolean> {
  const found = await ask({ text: 'SELECT 1 FROM pg_namespace WHERE nspname = $1', values: [schema] });
  return found.length > 0;
}
