/** `npm run restore -- BACKUP`: puts a backup in the place of the log. Stop the server first. What was there is kept. */
import { checkNumber } from '../log/check-number.ts';
import { sayPhotos } from '../log/say-photos.ts';
import { restore } from '../store/backup.ts';
import { dataFolder } from '../store/data-folder.ts';
import { databasePlace, type StorePlace, storePlace } from '../store/open-store.ts';

try {
  const [from, ...more] = process.argv.slice(2);
  if (from === undefined || more.length > 0) throw new Error('Name the folder of one backup.');
  const { head, photos, before } = await putBack(from, storePlace(process.env));
  console.log(`Restored: ${head.seq} entries, check number ${checkNumber(head.hash)}.`);
  if (before !== null) console.log(`What was there before is in ${before}.`);
  sayPhotos(photos);
  console.log('Where it is older than the last checkpoint, two people take it as it is at /audit/log first.');
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}

/** @returns where that is which was there before */
async function putBack(from: string, place: StorePlace): ReturnType<typeof restore> {
  const now = new Date();
  if (place.database === '') return await restore({ from, folder: place.folder, now });
  const { copyIntoDatabase } = await import('../store/copying/copy-log.ts');
  const to = databasePlace(place);
  const asideAs = `${to.schema}_before_${now.getTime()}`;
  const { wasAside, ...copied } = await copyIntoDatabase({ file: dataFolder(from).database, to, asideAs });
  return { ...copied, before: wasAside ? `the schema ${asideAs} of the database` : null };
}
