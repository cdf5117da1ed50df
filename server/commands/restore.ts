/** `npm run restore -- BACKUP`: puts a backup in the place of the log. Stop the server first. What was there is kept. */
import { checkNumber } from '../log/check-number.ts';
import { restore } from '../store/backup.ts';
import { dataPath } from '../store/data-folder.ts';
import { sayPhotos } from './say-photos.ts';

try {
  const [from, ...more] = process.argv.slice(2);
  if (from === undefined || more.length > 0) throw new Error('Name the folder of one backup.');
  const { head, photos, before } = await restore({ from, folder: dataPath(process.env), now: new Date() });
  console.log(`Restored: ${head.seq} entries, check number ${checkNumber(head.hash)}.`);
  if (before !== null) console.log(`What was there before is in ${before}.`);
  sayPhotos(photos);
  console.log('Where it is older than the last checkpoint, two people take it as it is at /audit/log first.');
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
