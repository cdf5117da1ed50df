import { DatabaseSync } from '@photostructure/sqlite';
import { prepareFile } from './data-folder.ts';
import { isBusy } from './sqlite-error.ts';

export interface FolderLock {
  release(): void;
}

/**
 * Keeps a second server off the same data folder.
 *
 * An exclusive SQLite transaction on a database of its own that is never written: the operating system holds the
 * lock and drops it the moment the process ends, however it ends, on Linux, macOS and Windows alike. A file with a
 * process number in it would outlive a crash, and the number may by then be somebody else's. It is not the log's
 * own database, because that one must stay readable for the verifier while the server runs.
 *
 * @throws Error in plain words if another server has the folder
 */
export function lockFolder(folder: string, lockFile: string): FolderLock {
  prepareFile(lockFile);
  const database = new DatabaseSync(lockFile, { timeout: 200 });
  try {
    database.exec('BEGIN EXCLUSIVE');
  } catch (error) {
    database.close();
    if (!isBusy(error)) throw error;
    throw new Error(
      `Another Yokeside server is using the folder ${folder}. Stop it first, or name another folder in YOKESIDE_DATA.`,
      { cause: error },
    );
  }
  return {
    release: () => {
      if (database.isOpen) database.close();
    },
  };
}
