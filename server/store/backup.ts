/**
 * A copy of the log made while the server runs, and put back. A copy has its name only once the verifier has read all of it:
 * one that was broken off passes SQLite's own check and may lack a table.
 */
import {
  closeSync,
  copyFileSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readdirSync,
  renameSync,
  rmSync,
} from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from '@photostructure/sqlite';
import type { BlobFault } from '../log/blobs.ts';
import { verifyStore } from '../log/verify.ts';
import { dataFolder } from './data-folder.ts';
import { lockFolder } from './folder-lock.ts';
import { openSqliteStore } from './sqlite-store.ts';
import type { Head } from './store.ts';

const BACKUP = /^yokeside-\d{4}-\d{2}-\d{2}T\d{2}-\d{2}-\d{2}Z$/;
const UNFINISHED = '.part';
const DAY_MS = 24 * 3_600_000;

export interface Kept {
  /** The folder of the copy. */
  readonly folder: string;
  readonly head: Head;
  /** Photos that are not whole in the log itself: the copy is kept all the same, and whoever made it is told. */
  readonly photos: readonly BlobFault[];
}

/**
 * @param to the folder of all copies; on another disk or machine it is worth more
 * @param keepDays older copies are removed, but never the newest
 * @throws Error in plain words for a copy that is not whole, or where there is no room; earlier copies stay
 */
export async function backUp(of: {
  readonly folder: string;
  readonly to: string;
  readonly now: Date;
  readonly keepDays: number;
  /** Writes the log into the folder that it is given, where it is not in `folder`. */
  copy?(folder: string): Promise<void>;
}): Promise<Kept> {
  const { to, now } = of;
  mkdirSync(to, { recursive: true, mode: 0o700 });
  const name = `yokeside-${now.toISOString().slice(0, 19).replaceAll(':', '-')}Z`;
  const [unfinished, finished] = [join(to, `${name}${UNFINISHED}`), join(to, name)];
  try {
    removeLeftBehind(to, now);
    mkdirSync(unfinished, { mode: 0o700 });
    if (of.copy === undefined) copyInto(dataFolder(of.folder).database, dataFolder(unfinished).database);
    else await of.copy(unfinished);
    synced(dataFolder(unfinished).database);
    const { head, photos } = await wholeHead(unfinished);
    synced(unfinished);
    renameSync(unfinished, finished);
    synced(to);
    removeOlder(to, { name, beforeMs: now.getTime() - of.keepDays * DAY_MS });
    return { folder: finished, head, photos };
  } catch (cause) {
    rmSync(unfinished, { recursive: true, force: true });
    const why = cause instanceof Error ? cause.message : String(cause);
    throw new Error(`No backup was made: ${why} Earlier ones are as they were.`, { cause });
  }
}

/** One snapshot, whatever is written meanwhile. */
function copyInto(database: string, copy: string): void {
  if (!existsSync(database)) throw new Error(`there is no log at ${database}.`);
  const source = new DatabaseSync(database, { readOnly: true, timeout: 5000 });
  try {
    source.prepare('VACUUM INTO ?').run(copy);
  } finally {
    source.close();
  }
}

/** @throws Error naming the first bad entry */
async function wholeHead(folder: string): Promise<Pick<Kept, 'head' | 'photos'>> {
  const store = openSqliteStore({ folder, readOnly: true });
  try {
    // The chain alone: a job that disagrees with its machine is worth a question, and its log worth a backup.
    const { fault, head, photos } = await verifyStore(store, []);
    if (fault !== null) throw new Error(`the first bad entry is ${fault.seq}: ${fault.what}.`);
    return { head, photos };
  } finally {
    await store.close();
  }
}

/** What is written counts once it is on the disk; a folder for the names in it. */
export function synced(path: string): void {
  // Windows opens no folder.
  if (process.platform === 'win32') return;
  const opened = openSync(path, 'r');
  try {
    fsyncSync(opened);
  } finally {
    closeSync(opened);
  }
}

/** What a backup that was killed left: no other takes a day. */
function removeLeftBehind(to: string, now: Date): void {
  for (const one of readdirSync(to)) {
    if (!one.endsWith(UNFINISHED) || !BACKUP.test(one.slice(0, -UNFINISHED.length))) continue;
    if (now.getTime() - madeAtMs(one) > DAY_MS) rmSync(join(to, one), { recursive: true });
  }
}

/** When a copy was made, by its name. */
function madeAtMs(name: string): number {
  const [, day = '', time = ''] = /^yokeside-(.{10})T(.{8})Z/.exec(name) ?? [];
  return Date.parse(`${day}T${time.replaceAll('-', ':')}Z`);
}

function removeOlder(
  to: string,
  { name, beforeMs }: { readonly name: string; readonly beforeMs: number },
): void {
  for (const one of readdirSync(to)) {
    if (!BACKUP.test(one) || one === name) continue;
    if (madeAtMs(one) < beforeMs) rmSync(join(to, one), { recursive: true });
  }
}

/**
 * Puts a copy in the place of the log. What was there is kept beside it, under a name of its own.
 * The next start serves read-only where the copy is older than the last checkpoint, until two people have taken it.
 *
 * @returns the folder with what was there before; null where nothing was
 * @throws Error in plain words where a server runs on the folder, or the copy is not whole: nothing is changed then
 */
export async function restore(of: {
  readonly from: string;
  readonly folder: string;
  readonly now: Date;
}): Promise<Pick<Kept, 'head' | 'photos'> & { readonly before: string | null }> {
  const { from, folder, now } = of;
  const { head, photos } = await wholeHead(from);
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const { database, lock } = dataFolder(folder);
  const held = lockFolder(folder, lock);
  try {
    const before = movedAside(database, `${folder}-before-${now.getTime()}`);
    copyFileSync(dataFolder(from).database, database);
    synced(database);
    synced(folder);
    return { head, photos, before };
  } finally {
    held.release();
  }
}

/** All three files together: a copy beside the journal of another log would be spoilt by it. */
function movedAside(database: string, to: string): string | null {
  const files = ['', '-wal', '-shm'].map((end) => `${database}${end}`).filter((path) => existsSync(path));
  if (files.length === 0) return null;
  mkdirSync(to, { mode: 0o700 });
  for (const path of files) renameSync(path, join(to, path.slice(path.lastIndexOf('yokeside.sqlite'))));
  return to;
}
