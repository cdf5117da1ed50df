/** What the same machine does without Yokeside: the two lines that its own speed is held against. */
import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import { DatabaseSync } from '@photostructure/sqlite';
import { Hono } from 'hono';
import { type Listening, listen } from '../browser/harness/listen.ts';

/** About as long as the stored line of a reading. */
const LINE = JSON.stringify({ text: 'x'.repeat(900) });

/** Stands for the sync of a slower disk: like a sync of the store, it holds the thread. */
export function holdMs(ms: number): void {
  if (ms > 0) Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, ms);
}

/**
 * One insert and one commit after the other, with the package and the durability of the store, and nothing else:
 * no chain, no lists, no HTTP.
 *
 * @returns commits a second
 */
export function bareInserts({
  folder,
  lastsS,
  syncMs = 0,
}: {
  readonly folder: string;
  readonly lastsS: number;
  /** So much longer each sync takes. */
  readonly syncMs?: number;
}): number {
  const { database, insert } = bareStore(folder);
  const startMs = performance.now();
  let count = 0;
  // Without an open transaction SQLite commits each statement by itself.
  for (; performance.now() - startMs < lastsS * 1000; count += 1) {
    insert.run(LINE);
    holdMs(syncMs);
  }
  const lastedS = (performance.now() - startMs) / 1000;
  database.close();
  return count / lastedS;
}

/** Its durability is that of the store. */
function bareStore(folder: string) {
  const database = new DatabaseSync(join(folder, `bare-${randomUUID()}.sqlite`));
  database.exec('PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;');
  database.exec('PRAGMA fullfsync = ON; PRAGMA checkpoint_fullfsync = ON;');
  database.exec('CREATE TABLE line (seq INTEGER PRIMARY KEY, bytes TEXT NOT NULL) STRICT');
  return { database, insert: database.prepare('INSERT INTO line (bytes) VALUES (?)') };
}

/**
 * A route that reads the same form and answers as much JSON.
 *
 * @param keep what it waits for before it answers; nothing where it keeps nothing
 */
export function startBareRoute(keep: (line: string) => Promise<void> = async () => {}): Promise<Listening> {
  const app = new Hono();
  app.post('/', async (context) => {
    const form = new URLSearchParams(await context.req.text());
    await keep(LINE);
    return context.json({ place: form.get('place'), requestId: form.get('requestId'), text: LINE });
  });
  return listen(() => (request) => app.fetch(request));
}

/** Keeps lines durably, all that wait at one moment in one commit: the least that a server of readings does. */
export function bareKeeper({
  folder,
  syncMs,
}: {
  readonly folder: string;
  readonly syncMs: number;
}): (line: string) => Promise<void> {
  const { database, insert } = bareStore(folder);
  let waiting: { readonly line: string; readonly kept: () => void }[] = [];
  const commit = (): void => {
    const all = waiting;
    waiting = [];
    database.exec('BEGIN IMMEDIATE');
    for (const { line } of all) insert.run(line);
    database.exec('COMMIT');
    holdMs(syncMs);
    for (const { kept } of all) kept();
  };
  return (line) =>
    new Promise((kept) => {
      if (waiting.length === 0) setImmediate(commit);
      waiting.push({ line, kept });
    });
}
