import type { Ask } from './ask.ts';
import { lockKey } from './keys.ts';
import { log001 } from './migrations/001-log.ts';

/** In order; the table `form` says how many the schema has had. Never change one that was released. */
const MIGRATIONS: readonly ((schema: string) => string)[] = [log001];

/** The form that this program reads and writes. */
export const FORM = MIGRATIONS.length;

/**
 * Brings the schema to this program's form, in the transaction that `ask` is in; makes it where there is none.
 *
 * @throws Error in plain words where it belongs to something else or to a later release
 */
export async function migrate(ask: Ask, schema: string): Promise<void> {
  if ((await checkedForm(ask, schema)) === FORM) return;
  // Of servers that start together the first does it; the others wait, and look again.
  await ask({ text: `SELECT pg_advisory_xact_lock(${lockKey(schema, 'form')})` });
  const form = await checkedForm(ask, schema);
  if (form === undefined) {
    await ask({ text: `CREATE SCHEMA IF NOT EXISTS ${schema}` });
    await ask({ text: `CREATE TABLE ${schema}.form (version integer NOT NULL)` });
    await ask({ text: `INSERT INTO ${schema}.form (version) VALUES (0)` });
  }
  for (const sql of MIGRATIONS.slice(form ?? 0)) await ask({ text: sql(schema) });
  await ask({ text: `UPDATE ${schema}.form SET version = ${FORM}` });
}

/**
 * For reading only: nothing is brought up to date.
 * @throws Error in plain words where there is no log, or none that this program reads
 */
export async function requireForm(ask: Ask, schema: string): Promise<void> {
  const form = await checkedForm(ask, schema);
  if (form === undefined) throw new Error('there is no log in it');
  if (form < FORM)
    throw new Error('it has an older form; start the server once, so that it is brought up to date');
}

/** How many steps the schema has had; undefined where there is none yet. */
async function checkedForm(ask: Ask, schema: string): Promise<number | undefined> {
  const tables = await ask<{ name: string }>({
    text: 'SELECT tablename AS name FROM pg_catalog.pg_tables WHERE schemaname = $1',
    values: [schema],
  });
  if (tables.length === 0) return undefined;
  if (!tables.some(({ name }) => name === 'form'))
    throw new Error(`its schema ${schema} was made by another program; name another database`);
  const [row] = await ask<{ version: number }>({ text: `SELECT version FROM ${schema}.form` });
  const version = row?.version ?? 0;
  if (version > FORM)
    throw new Error(
      `it has form ${version}, and this release understands up to ${FORM}; start the later release`,
    );
  return version;
}
