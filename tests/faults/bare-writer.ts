/**
 * Appends rows to a database whose commits wait for no disk, until it is killed: `ack <number>` after each. What a power
 * cut takes from it shows that the test of the power cut can fail.
 *
 * node bare-writer.js <file>
 */
import { writeSync } from 'node:fs';
import { DatabaseSync } from '@photostructure/sqlite';

const [file = ''] = process.argv.slice(2);
const database = new DatabaseSync(file);
database.exec(
  'PRAGMA journal_mode = WAL; PRAGMA synchronous = OFF; CREATE TABLE log (seq INTEGER PRIMARY KEY)',
);
const append = database.prepare('INSERT INTO log DEFAULT VALUES');
for (let seq = 1; ; seq += 1) {
  append.run();
  writeSync(1, `ack ${seq}\n`);
}
