import type { DatabaseSyncInstance } from '@photostructure/sqlite';
import { log001 } from './001-log.ts';
import { blobs002 } from './002-blobs.ts';

/** In order; the database's `user_version` says how many it has had. Never change one that was released. */
const MIGRATIONS: readonly string[] = [log001, blobs002];

/** The form that this program reads and writes. */
export const FORM = MIGRATIONS.length;

/** Marks the file as ours, so that another program's database is never taken for the log. */
const APPLICATION_ID = 0x596f6b65;

/**
 * Brings the database to this program's form, one transaction for each step.
 *
 * @throws Error in plain words if the file belongs to something else or to a later release
 */
export function migrate(database: DatabaseSyncInstance): void {
  const version = checkedVersion(database);
  MIGRATIONS.slice(version).forEach((sql, index) => {
    database.exec(
      `BEGIN IMMEDIATE; ${sql}
       PRAGMA application_id = ${APPLICATION_ID}; PRAGMA user_version = ${version + index + 1}; COMMIT;`,
    );
  });
}

/** How many steps the database has had, after checking that it is one of ours that this program understands. */
export function checkedVersion(database: DatabaseSyncInstance): number {
  const { application_id } = database.prepare('PRAGMA application_id').get();
  const { user_version } = database.prepare('PRAGMA user_version').get();
  const { tables } = database.prepare('SELECT count(*) AS tables FROM sqlite_schema').get();
  if (tables > 0 && application_id !== APPLICATION_ID) {
    throw new Error(
      'The database file in the data folder was made by another program. Choose another folder.',
    );
  }
  if (user_version > MIGRATIONS.length) {
    throw new Error(
      `The database has form ${user_version}; this release understands up to ${MIGRATIONS.length}. Start the later release.`,
    );
  }
  return user_version;
}

/** Brought up to date by the next start; reading knows what these lack. */
const READABLE_FROM = 1;

/**
 * For reading only: nothing is brought up to date.
 * @returns the form of the database; one from before photos has no table of them
 */
export function readableForm(database: DatabaseSyncInstance): number {
  const version = checkedVersion(database);
  if (version < READABLE_FROM) {
    throw new Error(
      'The database has an older form. Start the server once, so that it is brought up to date.',
    );
  }
  return version;
}

/** The form that has a table of photos. */
export const WITH_BLOBS = 2;
