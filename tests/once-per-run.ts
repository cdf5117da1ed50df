import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as after } from 'node:timers/promises';
import { inject } from 'vitest';

/**
 * Makes something costly for the first test file that asks for it; the other files of the run, side by side or later,
 * get the same. Nobody writes into it.
 *
 * @param name what is made, as a folder's name
 * @param make fills the folder that it is given, which is empty
 * @returns the folder, filled
 * @throws Error what `make` threw, for each file that asks
 */
export async function oncePerRun(
  name: string,
  make: (folder: string) => Promise<void> | void,
): Promise<string> {
  const folder = join(inject('runFolder'), name);
  const [made, failed] = [`${folder}.made`, `${folder}.failed`];
  if (isFirst(folder)) {
    try {
      await make(folder);
      writeFileSync(made, '');
    } catch (error) {
      writeFileSync(failed, String(error));
      throw error;
    }
  }
  while (!existsSync(made)) {
    if (existsSync(failed)) throw new Error(readFileSync(failed, 'utf8'));
    await after(50);
  }
  return folder;
}

/** Of all that come at once, one makes the folder. */
function isFirst(folder: string): boolean {
  try {
    mkdirSync(folder);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw error;
  }
}
