/**
 * `npm run backup -- FOLDER`: a copy of the log into a folder of all copies, beside a running server. Of a database too it is
 * a file of SQLite, which any machine reads. It has its name only once the verifier has read it. `--keep-days 90` removes older
 * ones, `--json` says the same for programs. The server runs this command by itself where YOKESIDE_BACKUPS names a folder.
 */
import { parseArgs } from 'node:util';
import { checkNumber } from '../log/check-number.ts';
import { sayPhotos } from '../log/say-photos.ts';
import { backUp, type Kept } from '../store/backup.ts';
import { databasePlace, type StorePlace, storePlace } from '../store/open-store.ts';

const KEEP_DAYS = 90;

try {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: {
      'keep-days': { type: 'string', default: String(KEEP_DAYS) },
      json: { type: 'boolean', default: false },
    },
  });
  const [to, ...more] = positionals;
  const keepDays = Number(values['keep-days']);
  if (to === undefined || more.length > 0) throw new Error('Name the folder of the backups.');
  if (!/^\d{1,5}$/.test(values['keep-days'])) throw new Error('--keep-days takes a whole number of days.');
  const place = storePlace(process.env);
  const kept = await backUp({
    folder: place.folder,
    to,
    now: new Date(),
    keepDays,
    ...(await copyOf(place)),
  });
  const check = checkNumber(kept.head.hash);
  if (values.json) sayJson(kept, check);
  else sayPlainly(kept, check);
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}

function sayJson({ folder, head, photos }: Kept, check: string): void {
  console.log(JSON.stringify({ folder, entries: head.seq, check, photosLost: photos.length }));
}

function sayPlainly({ folder, head, photos }: Kept, check: string): void {
  console.log(`Backup: ${folder}`);
  console.log(`Whole: ${head.seq} entries, check number ${check}.`);
  sayPhotos(photos);
  console.log('The folder of the keys is not in it: back it up apart from this.');
}

/** How the log is read where it is not in the data folder. */
async function copyOf(place: StorePlace): Promise<{ copy?(folder: string): Promise<void> }> {
  if (place.database === '') return {};
  const { snapshotInto } = await import('../store/copying/copy-log.ts');
  return {
    copy: async (folder) => {
      await snapshotInto({ from: databasePlace(place), folder });
    },
  };
}
