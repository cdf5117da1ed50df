/**
 * `npm run copy -- to-database`: the log of the data folder into the database that YOKESIDE_DATABASE names.
 * `npm run copy -- to-folder`: from there into the data folder. Stop the servers first. What the copy is made from stays as it is;
 * where it is made to must hold no log. The practice bench begins anew.
 */
import { checkNumber } from '../log/check-number.ts';
import { sayPhotos } from '../log/say-photos.ts';
import { type Copied, copyIntoDatabase, copyIntoFolder } from '../store/copying/copy-log.ts';
import { dataFolder, prepareDataFolder } from '../store/data-folder.ts';
import { lockFolder } from '../store/folder-lock.ts';
import { databasePlace, type StorePlace, storePlace } from '../store/open-store.ts';

const WAYS: Readonly<Record<string, (place: StorePlace) => Promise<Copied>>> = {
  'to-database': async (place) => {
    const { lock, database: file } = prepareDataFolder(place.folder);
    // What a server wrote after it was read would be lacking.
    const held = lockFolder(place.folder, lock);
    try {
      return await copyIntoDatabase({ file, to: databasePlace(place) });
    } finally {
      held.release();
    }
  },
  'to-folder': (place) => copyIntoFolder({ from: databasePlace(place), folder: place.folder }),
};

try {
  const [word = '', ...more] = process.argv.slice(2);
  const copy = WAYS[word];
  if (copy === undefined || more.length > 0) throw new Error('Say which way: to-database, or to-folder.');
  const place = storePlace(process.env);
  const { head, photos } = await copy(place);
  const where = word === 'to-folder' ? dataFolder(place.folder).database : 'the database';
  console.log(
    `Copied into ${where}, and verified there: ${head.seq} entries, check number ${checkNumber(head.hash)}.`,
  );
  sayPhotos(photos);
  console.log(
    word === 'to-folder'
      ? 'Start the server without YOKESIDE_DATABASE from now on.'
      : 'Start every server with YOKESIDE_DATABASE from now on.',
  );
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
