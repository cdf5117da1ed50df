import type { DatabaseSyncInstance } from '@photostructure/sqlite';
import { log001 } from './001-log.ts';

/** In order; the database's `user_version` says how many it has had. Never change one that was released. */
const MIGRATIONS: readonly string[] = [log001];

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

/** For reading only: nothing is brought up to date, so the form must be today's. */
export function refuseOtherForm(database: DatabaseSyncInstance): void {
  const version = checkedVersion(database);
  if (version < MIGRATIONS.length) {
    throw new Error(
      'The database has an older form. Start the server once, so that it is brought up to date.',
    );
  }
}
