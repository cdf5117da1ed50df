/**
 * `npm run verify`: the whole log of the data folder or the database, beside a running server or without one.
 * `npm run verify -- --stream job:137` for one job; `--export file.jsonl` for an export of either.
 * Ends with 0 only if all is whole.
 */
import { createReadStream } from 'node:fs';
import { parseArgs } from 'node:util';
import { checkNumber } from '../log/check-number.ts';
import { readExport } from '../log/export.ts';
import { sayPhotos } from '../log/say-photos.ts';
import {
  type Report,
  type Verdict,
  verifyLines,
  verifyStore,
  verifyStream,
  verifyStreamLines,
} from '../log/verify.ts';
import { openStore, storePlace } from '../store/open-store.ts';
import type { StoredLine } from '../store/store.ts';
import { auditors } from '../streams.ts';

const { values } = parseArgs({ options: { stream: { type: 'string' }, export: { type: 'string' } } });

async function report(): Promise<Report> {
  if (values.export !== undefined)
    return { ...(await verifyExport(values.export)), problems: [], photos: [] };
  const store = await openStore(storePlace(process.env), { readOnly: true });
  try {
    if (values.stream === undefined) return await verifyStore(store, auditors);
    return await verifyStream(store, { stream: values.stream, auditors });
  } finally {
    await store.close();
  }
}

async function verifyExport(path: string): Promise<Verdict> {
  const lines = readExport(createReadStream(path, 'utf8'));
  if (values.stream === undefined) return verifyLines(lines);
  const ofStream: StoredLine[] = [];
  for await (const line of lines) ofStream.push(line);
  return verifyStreamLines(ofStream);
}

function say({ entries, head, fault, problems, photos }: Report): void {
  if (fault !== null) {
    const where = fault.stream === null ? '' : ` (${fault.stream}, place ${fault.place})`;
    console.error(
      `NOT WHOLE. First bad entry: ${fault.seq}${where}: ${fault.what}. Good before it: ${entries}.`,
    );
  }
  for (const { stream, place, what } of problems)
    console.error(`DISAGREES: ${stream}, place ${place}: ${what}.`);
  sayPhotos(photos);
  if (fault !== null || problems.length > 0 || photos.length > 0) return;
  console.log(`Whole: ${entries} entries. Last entry ${head.seq}, check number ${checkNumber(head.hash)}.`);
  console.log('Compare it with a check number on paper: only that shows that the end was not cut off.');
}

try {
  const result = await report();
  say(result);
  const isWhole = result.fault === null && result.problems.length === 0 && result.photos.length === 0;
  process.exitCode = isWhole ? 0 : 1;
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 2;
}
