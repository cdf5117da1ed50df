import { copyFileSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from '@photostructure/sqlite';
import { beforeEach, expect, test } from 'vitest';
import { blobHash } from '../../../server/log/blobs.ts';
import { Checkpoints, checkpointPlace } from '../../../server/log/checkpoints.ts';
import type { SiteLog } from '../../../server/log/site-log.ts';
import { verifyStore } from '../../../server/log/verify.ts';
import { backUp, restore } from '../../../server/store/backup.ts';
import { openSqliteStore } from '../../../server/store/sqlite-store.ts';
import { aFolder } from '../../folders.ts';
import { adding, aLog } from '../log/register.ts';
import { tamper } from '../log/tamper.ts';

const DAY_MS = 24 * 3_600_000;
let folder: string;
let to: string;

beforeEach(() => {
  [folder, to] = [join(aFolder(), 'data'), join(aFolder(), 'copies')];
});

const theLog = (): SiteLog => aLog(openSqliteStore({ folder }));
const copied = (now: number) => backUp({ folder, to, now: new Date(now), keepDays: 30 });

async function write(log: SiteLog, count: number): Promise<void> {
  for (let added = 1; added <= count; added += 1) await log.act(adding({ id: 'a', added }));
}

async function filled(count: number): Promise<void> {
  const log = theLog();
  await write(log, count);
  await log.close();
}

test('a backup is made while people write, is whole, and holds at least what was confirmed before it (RL-31, RL-33)', async () => {
  const log = theLog();
  await write(log, 20);
  const [kept] = await Promise.all([copied(0), write(log, 20)]);
  expect(kept.head.seq).toBeGreaterThanOrEqual(20);
  const store = openSqliteStore({ folder: kept.folder, readOnly: true });
  expect(await verifyStore(store, [])).toMatchObject({ fault: null, head: kept.head });
  await store.close();
  await log.close();
});

test('a copy that the verifier does not find whole gets no name, and earlier ones stay (RL-33)', async () => {
  await filled(5);
  const { folder: earlier } = await copied(0);
  tamper(folder, ({ sql }) => sql(`UPDATE log SET bytes = replace(bytes, '"added":3', '"added":4')`));
  await expect(copied(DAY_MS)).rejects.toThrow('the first bad entry is 3');
  expect(readdirSync(to).map((name) => join(to, name))).toEqual([earlier]);
});

test('a target that takes nothing leaves no half a copy, and says so (RL-34)', async () => {
  await filled(2);
  writeFileSync(to, 'a file where the folder should be');
  await expect(copied(0)).rejects.toThrow(/EEXIST|ENOTDIR/);
  await expect(backUp({ folder: aFolder(), to: aFolder(), now: new Date(0), keepDays: 1 })).rejects.toThrow(
    'No backup was made: there is no log',
  );
});

test('copies beyond their age are removed, the newest and what is not ours never', async () => {
  await filled(2);
  mkdirSync(join(to, 'of somebody else'), { recursive: true });
  for (const day of [0, 10, 45]) await copied(day * DAY_MS);
  expect(readdirSync(to).sort()).toEqual(
    [
      'of somebody else',
      'yokeside-1970-01-01T00-00-00Z',
      'yokeside-1970-01-11T00-00-00Z',
      'yokeside-1970-02-15T00-00-00Z',
    ].filter((name) => !/01-(01|11)T/.test(name)),
  );
});

test('the drill: a backup put back serves what it holds, keeps what was there, and is told from the newer log by its checkpoint (RL-35, RL-26, RL-27, SA-26)', async () => {
  await filled(10);
  const { folder: from, head } = await copied(0);
  await filled(7);
  const checkpoints = new Checkpoints(checkpointPlace(join(aFolder(), 'yokeside.pepper')));
  const newer = openSqliteStore({ folder });
  checkpoints.mark(await newer.head(), new Date(0));
  await expect(restore({ from, folder, now: new Date(5) })).rejects.toThrow('Another Yokeside server');
  await newer.close();
  const put = await restore({ from, folder, now: new Date(5) });
  expect(put.head).toEqual(head);
  const before = new DatabaseSync(join(put.before ?? '', 'yokeside.sqlite'), { readOnly: true });
  expect(before.prepare('SELECT count(*) AS count FROM log').get()).toEqual({ count: 17 });
  before.close();
  const store = openSqliteStore({ folder });
  expect(await store.head()).toEqual(head);
  expect((await checkpoints.compare(store))?.what).toContain('It is shorter than it was: 10 entries, and 17');
  await store.close();
});

test('a copy of the database file alone, without its write-ahead log, is told from the log by its checkpoint (RL-28, R-12)', async () => {
  await filled(5);
  const store = openSqliteStore({ folder });
  const log = aLog(store);
  await write(log, 4);
  const checkpoints = new Checkpoints(checkpointPlace(join(aFolder(), 'yokeside.pepper')));
  checkpoints.mark(await store.head(), new Date(0));
  const copy = aFolder();
  copyFileSync(join(folder, 'yokeside.sqlite'), join(copy, 'yokeside.sqlite'));
  await log.close();
  const short = openSqliteStore({ folder: copy });
  expect((await verifyStore(short, [])).fault).toBeNull();
  expect((await checkpoints.compare(short))?.what).toContain('It is shorter than it was: 5 entries, and 9');
  await short.close();
});

test('a backup that was changed is not put back, and nothing is touched', async () => {
  await filled(5);
  const { folder: from } = await copied(0);
  tamper(from, ({ sql }) => sql('DELETE FROM log WHERE seq = 2'));
  const was = readFileSync(join(folder, 'yokeside.sqlite'));
  await expect(restore({ from, folder, now: new Date(5) })).rejects.toThrow('first bad entry is 2');
  expect(readFileSync(join(folder, 'yokeside.sqlite')).equals(was)).toBe(true);
});

test('a backup holds the photos, tells of one that the log itself has lost, and puts them back', async () => {
  const photo = Buffer.from('as good as a picture');
  const log = theLog();
  await log.act(adding({ id: 'a', added: 1, photo }));
  await log.close();
  const kept = await copied(0);
  expect(kept.photos).toEqual([]);
  tamper(folder, ({ sql }) => sql('DELETE FROM blob'));
  const { photos } = await copied(DAY_MS);
  expect(photos).toMatchObject([{ seq: 1, hash: blobHash(photo), what: 'is missing' }]);
  await restore({ from: kept.folder, folder, now: new Date(0) });
  const store = openSqliteStore({ folder, readOnly: true });
  expect(await store.blob(blobHash(photo))).toEqual(new Uint8Array(photo));
  await store.close();
});

test('a backup from before photos is read and put back, and its first start brings it up to date', async () => {
  await filled(3);
  const kept = await copied(0);
  tamper(kept.folder, ({ sql }) => {
    sql('DROP TABLE blob');
    sql('PRAGMA user_version = 1');
  });
  expect((await restore({ from: kept.folder, folder, now: new Date(0) })).head.seq).toBe(3);
  const log = theLog();
  await log.act(adding({ id: 'a', added: 4, photo: Buffer.from('new') }));
  expect((await log.head()).seq).toBe(4);
  await log.close();
});
