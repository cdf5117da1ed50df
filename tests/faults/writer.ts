/**
 * Writes acts into the log of a folder, or of a database, until it is killed, or the store fails: several requests at once, each line of
 * its output one event. `send <request id>` stands before an act, `ack <request id> <total>` after its answer came.
 *
 * node writer.js <folder or connection string> <round> <requests at once>
 */
import { writeSync } from 'node:fs';
import { openStore } from '../../server/store/open-store.ts';
import { StorageUnavailable } from '../../server/store/storage-unavailable.ts';
import { adding, aLog } from '../server/log/register.ts';
import { photoOf } from './photo-of.ts';

const [folder = '', round = '', atOnce = '1'] = process.argv.slice(2);
const isDatabase = folder.startsWith('postgres:');
const log = aLog(await openStore({ folder, database: isDatabase ? folder : '' }));

async function requestAfterRequest(client: number): Promise<void> {
  for (let count = 0; ; count += 1) {
    const requestId = `${round}/${client}/${count}`;
    writeSync(1, `send ${requestId}\n`);
    const addition = { id: `${client % 3}`, added: 1, requestId, ...photoOf(requestId) };
    const { total } = await log.act(adding(addition));
    writeSync(1, `ack ${requestId} ${total}\n`);
  }
}

try {
  await Promise.all(Array.from({ length: Number(atOnce) }, (_, client) => requestAfterRequest(client)));
} catch (error) {
  if (!(error instanceof StorageUnavailable)) throw error;
  writeSync(1, `failed ${error.message}\n`);
  process.exitCode = 3;
}
