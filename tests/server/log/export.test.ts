import { createHash } from 'node:crypto';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { readExport } from '../../../server/log/export.ts';
import type { SiteLog } from '../../../server/log/site-log.ts';
import { verifyLines, verifyStreamLines } from '../../../server/log/verify.ts';
import { openSqliteStore } from '../../../server/store/sqlite-store.ts';
import type { Store, StoredLine } from '../../../server/store/store.ts';
import { aFolder } from '../../folders.ts';
import { exportedText } from './export-lines.ts';
import { adding, aLog } from './register.ts';

let store: Store;
let log: SiteLog;

beforeEach(async () => {
  store = openSqliteStore({ folder: aFolder() });
  log = aLog(store);
  for (let added = 1; added <= 6; added += 1) await log.act(adding({ id: 'ab'.charAt(added % 2), added }));
  // U+2028 ends a line for many readers, though not for JSON.
  await log.act(adding({ id: 'a', added: 7, person: 'line\u2028break\n"quoted"' }));
});
afterEach(() => log.close());

const exported = (stream?: string): Promise<string> => exportedText(store, stream);

/** Hands the text out in pieces of a few characters, as a slow network might. */
async function* inPieces(text: string): AsyncIterable<string> {
  for (let start = 0; start < text.length; start += 7) yield text.slice(start, start + 7);
}

async function collected(lines: AsyncIterable<StoredLine>): Promise<StoredLine[]> {
  const all: StoredLine[] = [];
  for await (const line of lines) all.push(line);
  return all;
}

describe('an export', () => {
  test('has one JSON line for each entry, which is the entry', async () => {
    const lines = (await exported()).trimEnd().split('\n');
    expect(lines).toHaveLength(7);
    const entries = [...(await log.entriesOf('register:a')), ...(await log.entriesOf('register:b'))];
    expect(lines.map((line) => JSON.parse(line))).toEqual(entries.sort((a, b) => a.seq - b.seq));
  });

  test('is checked without the program: the hash is that of the line with the hash taken out', async () => {
    for (const line of (await exported()).trimEnd().split('\n')) {
      const bytes = `${line.slice(0, line.length - ',"hash":""}'.length - 64)}}`;
      expect(createHash('sha256').update(bytes, 'utf8').digest('hex')).toBe(JSON.parse(line).hash);
    }
  });

  test('is verified alone, and ends with the head of the log (SA-02)', async () => {
    const verdict = await verifyLines(readExport(inPieces(await exported())));
    expect(verdict).toEqual({ entries: 7, head: await log.head(), fault: null });
  });

  test('of one stream is verified alone', async () => {
    const lines = await collected(readExport(inPieces(await exported('register:a'))));
    expect(verifyStreamLines(lines)).toMatchObject({ entries: 4, fault: null });
  });

  test.each<[string, (lines: string[]) => string[], { seq: number; what: string }]>([
    [
      'a value',
      (lines) => lines.with(2, lines[2]?.replace('"added":3', '"added":4') ?? ''),
      { seq: 3, what: 'its hash' },
    ],
    ['a missing line', (lines) => lines.toSpliced(4, 1), { seq: 5, what: 'missing' }],
    [
      'a line cut short',
      (lines) => lines.with(3, lines[3]?.slice(0, 40) ?? ''),
      { seq: 4, what: 'its hash' },
    ],
    [
      'a line that is no entry',
      (lines) => lines.with(3, `[],"hash":"${'0'.repeat(64)}"}`),
      { seq: 4, what: 'its hash' },
    ],
    ['a line without its hash', (lines) => lines.with(3, '{"seq":4}'), { seq: 4, what: 'its hash' }],
  ])('shows %s', async (_what, spoil, expected) => {
    const text = spoil((await exported()).split('\n')).join('\n');
    const { fault } = await verifyLines(readExport(inPieces(text)));
    expect(fault?.seq).toBe(expected.seq);
    expect(fault?.what).toContain(expected.what);
  });
});
