/** Before a start brings a log to this program's form, a whole copy of it is made as it was. */
import { existsSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from '@photostructure/sqlite';
import { backUp } from './backup.ts';
import { dataFolder } from './data-folder.ts';
import { checkedVersion, FORM } from './migrations/migrate.ts';

/** Nobody removes these but whoever looks after the server. */
const KEEP_DAYS = 36_500;

/**
 * @returns the folder of the copy; null where there is nothing to bring up to date
 * @throws Error in plain words where no whole copy can be made; then nothing was changed
 */
export async function backUpBeforeUpdate(folder: string, now: Date): Promise<string | null> {
  const form = formIn(dataFolder(folder).database);
  if (form === null || form === FORM) return null;
  const to = join(folder, 'yokeside-before-update');
  try {
    return (await backUp({ folder, to, now, keepDays: KEEP_DAYS })).folder;
  } catch (cause) {
    const why = cause instanceof Error ? cause.message : String(cause);
    throw new Error(
      `The log has form ${form} and this release wants ${FORM}; it is changed only once there is a whole copy. ${why} Start the earlier release, or make room.`,
      { cause },
    );
  }
}

/** Null where there is no log yet. @throws Error in plain words for another program's database, or a later one */
function formIn(path: string): number | null {
  if (!existsSync(path) || statSync(path).size === 0) return null;
  const database = new DatabaseSync(path, { readOnly: true, timeout: 1000 });
  try {
    const form = checkedVersion(database);
    return form === 0 ? null : form;
  } finally {
    database.close();
  }
}
