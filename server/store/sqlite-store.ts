/** Opens the log in SQLite: locks its folder, and makes sure that what is confirmed survives a power cut. */
import { existsSync } from 'node:fs';
import { DatabaseSync, type DatabaseSyncInstance } from '@photostructure/sqlite';
import { dataFolder, prepareDataFolder, prepareFile } from './data-folder.ts';
import { lockFolder } from './folder-lock.ts';
import { migrate, readableForm, WITH_BLOBS } from './migrations/migrate.ts';
import { SqliteStore } from './sqlite-verbs.ts';
import type { Store } from './store.ts';

export interface SqliteStoreOptions {
  /** The data folder; made if it is not there. */
  readonly folder: string;
  /** For the verifier and exports beside a running server: takes no lock, changes nothing. */
  readonly readOnly?: boolean;
  /** The most pages of 4096 bytes that the database may have; beyond, the disk counts as full. Without it, the disk decides. */
  readonly pagesMax?: number;
}

/**
 * Opens the store of a data folder, and makes it if there is none.
 *
 * @throws Error in plain words: another server has the folder, a network file system, a later release's database
 * @example const store = openSqliteStore({ folder: 'yokeside-data' })
 */
export function openSqliteStore(options: SqliteStoreOptions): Store {
  if (options.readOnly) {
    const files = dataFolder(options.folder);
    if (!existsSync(files.database)) throw new Error(`There is no log in the folder ${options.folder}.`);
    const database = new DatabaseSync(files.database, { readOnly: true, timeout: 1000 });
    return closingOnError(database, () => {
      const hasBlobs = readableForm(database) >= WITH_BLOBS;
      return new SqliteStore({ database, path: files.database, lock: undefined, hasBlobs });
    });
  }
  const files = prepareDataFolder(options.folder);
  const lock = lockFolder(options.folder, files.lock);
  return closingOnError({ close: lock.release }, () => {
    prepareFile(files.database);
    const database = new DatabaseSync(files.database, { timeout: 1000 });
    return closingOnError(database, () => {
      makeDurable(database);
      migrate(database);
      if (options.pagesMax !== undefined)
        database.exec(`PRAGMA max_page_count = ${Math.trunc(options.pagesMax)}`);
      return new SqliteStore({ database, path: files.database, lock, hasBlobs: true });
    });
  });
}

function closingOnError<T>(resource: { close(): void }, use: () => T): T {
  try {
    return use();
  } catch (error) {
    resource.close();
    throw error;
  }
}

function makeDurable(database: DatabaseSyncInstance): void {
  database.exec(`
    PRAGMA journal_mode = WAL;
    PRAGMA synchronous = FULL;
    PRAGMA fullfsync = ON;
    PRAGMA checkpoint_fullfsync = ON;
    PRAGMA recursive_triggers = ON;
    PRAGMA cell_size_check = ON;
    PRAGMA trusted_schema = OFF;
    PRAGMA journal_size_limit = 67108864;
  `);
  const { journal_mode } = database.prepare('PRAGMA journal_mode').get();
  const { synchronous } = database.prepare('PRAGMA synchronous').get();
  if (journal_mode !== 'wal' || synchronous < 2) {
    throw new Error(
      `The database would not keep a confirmed entry through a power cut (journal_mode ${journal_mode}, synchronous ${synchronous}).`,
    );
  }
}
