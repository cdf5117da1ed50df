import { DatabaseSync } from '@photostructure/sqlite';

let known: string | undefined;

/** The version of the SQLite that comes with our package: the system's own has no say. @example sqliteVersion() // '3.53.0' */
export function sqliteVersion(): string {
  if (known === undefined) {
    const database = new DatabaseSync(':memory:');
    known = String(database.prepare('SELECT sqlite_version() AS version').get().version);
    database.close();
  }
  return known;
}
