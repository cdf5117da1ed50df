import { execFileSync } from 'node:child_process';
import { chmodSync, copyFileSync, existsSync, mkdirSync, renameSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync, type DatabaseSyncInstance } from '@photostructure/sqlite';
import { describe, expect, test } from 'vitest';
import { isNetworkFileSystem } from '../../../server/store/data-folder.ts';
import { openSqliteStore } from '../../../server/store/sqlite-store.ts';
import { aFolder } from '../../folders.ts';
import { adding, aLog } from '../log/register.ts';
import { storeConformance } from './conformance.ts';

storeConformance('SQLite', () => {
  const folder = aFolder();
  return { open: async () => openSqliteStore({ folder }) };
});

async function aFilledFolder(): Promise<string> {
  const folder = aFolder();
  const log = aLog(openSqliteStore({ folder }));
  for (let added = 1; added <= 3; added += 1) await log.act(adding({ id: 'a', added }));
  await log.close();
  return folder;
}

function databaseOf(folder: string): DatabaseSyncInstance {
  return new DatabaseSync(join(folder, 'yokeside.sqlite'));
}

describe('the database', () => {
  test('is written through a write-ahead log by a SQLite without the defect of the versions before 3.51.3 (RL-06)', async () => {
    const database = databaseOf(await aFilledFolder());
    expect(database.prepare('PRAGMA journal_mode').get()).toEqual({ journal_mode: 'wal' });
    const { version } = database.prepare('SELECT sqlite_version() AS version').get();
    const [major = 0, minor = 0, patch = 0] = String(version).split('.').map(Number);
    expect(major * 1_000_000 + minor * 1000 + patch).toBeGreaterThanOrEqual(3_051_003);
    database.close();
  });

  test('is complete in its one file when the server has stopped', async () => {
    const folder = await aFilledFolder();
    const copy = aFolder();
    copyFileSync(join(folder, 'yokeside.sqlite'), join(copy, 'yokeside.sqlite'));
    const store = openSqliteStore({ folder: copy, readOnly: true });
    expect((await store.head()).seq).toBe(3);
    await store.close();
  });

  const row = `'register:a', 4, '${'0'.repeat(64)}', '{}'`;

  test.each([
    ['UPDATE', `UPDATE log SET bytes = '{}' WHERE seq = 2`, 'never changed'],
    ['UPDATE OR REPLACE', `UPDATE OR REPLACE log SET seq = 1 WHERE seq = 2`, 'never changed'],
    ['DELETE', 'DELETE FROM log WHERE seq = 3', 'never deleted'],
    ['DELETE of all', 'DELETE FROM log', 'never deleted'],
    ['REPLACE by number', `REPLACE INTO log VALUES (2, ${row})`, 'must follow the last'],
    ['REPLACE by place', `REPLACE INTO log VALUES (4, 'register:a', 3, '', '{}')`, 'must follow the last'],
    ['INSERT OR IGNORE of a gap', `INSERT OR IGNORE INTO log VALUES (9, ${row})`, 'must follow the last'],
    [
      'INSERT ... ON CONFLICT DO UPDATE',
      `INSERT INTO log VALUES (2, ${row}) ON CONFLICT (seq) DO UPDATE SET bytes = excluded.bytes`,
      'must follow the last',
    ],
  ])('refuses %s on the log, with recursive triggers on and off (SA-49)', async (_what, sql, message) => {
    const folder = await aFilledFolder();
    const database = databaseOf(folder);
    const read = () => database.prepare('SELECT * FROM log').all();
    const before = read();
    for (const mode of ['ON', 'OFF']) {
      database.exec(`PRAGMA recursive_triggers = ${mode}`);
      expect(() => database.exec(sql)).toThrow(message);
      expect(read()).toEqual(before);
    }
    database.close();
  });

  test('keeps its numbers when the file is tidied (RL-10)', async () => {
    const database = databaseOf(await aFilledFolder());
    const numbers = () => database.prepare('SELECT seq FROM log ORDER BY seq').all();
    const before = numbers();
    database.exec('VACUUM');
    expect(numbers()).toEqual(before);
    const columns = database.prepare('PRAGMA table_info(log)').all();
    expect(columns.find(({ name }: { name: string }) => name === 'seq')).toMatchObject({
      type: 'INTEGER',
      pk: 1,
    });
    database.close();
  });

  test('has a write-ahead log that stays small beside somebody who reads slowly (RL-09)', async () => {
    const folder = await aFilledFolder();
    const store = openSqliteStore({ folder });
    const log = aLog(store);
    const reader = store.lines(1)[Symbol.asyncIterator]();
    expect((await reader.next()).done).toBe(false);
    for (let added = 0; added < 1000; added += 1) await log.act(adding({ id: 'a', added: 1 }));
    // SQLite moves it over at 1000 pages of 4096 bytes; an open reader would keep it growing to three times that.
    expect(statSync(join(folder, 'yokeside.sqlite-wal')).size).toBeLessThan(6_000_000);
    expect((await reader.next()).done).toBe(false);
    await log.close();
  });

  test('of another program is not touched', () => {
    const folder = aFolder();
    const database = databaseOf(folder);
    database.exec('CREATE TABLE theirs (x)');
    database.close();
    expect(() => openSqliteStore({ folder })).toThrow('made by another program');
    const again = databaseOf(folder);
    expect(again.prepare('SELECT name FROM sqlite_schema').all()).toEqual([{ name: 'theirs' }]);
    again.close();
  });

  test('of a later release is refused with the reason, and the lock is given back', async () => {
    const folder = await aFilledFolder();
    const setForm = (form: number) => {
      const database = databaseOf(folder);
      database.exec(`PRAGMA user_version = ${form}`);
      database.close();
    };
    setForm(99);
    expect(() => openSqliteStore({ folder })).toThrow('this release understands up to 2');
    expect(() => openSqliteStore({ folder, readOnly: true })).toThrow('this release understands up to 2');
    setForm(2);
    await openSqliteStore({ folder }).close();
  });
});

describe('a second server on the same folder', () => {
  test('is told so, and may start once the first has stopped (RL-25, R-11)', async () => {
    const folder = aFolder();
    const first = openSqliteStore({ folder });
    expect(() => openSqliteStore({ folder })).toThrow(
      `Another Yokeside server is using the folder ${folder}.`,
    );
    await first.close();
    await openSqliteStore({ folder }).close();
  });

  test('in another process is kept out too, also after the first was refused once (RL-07)', async () => {
    const folder = aFolder();
    const first = openSqliteStore({ folder });
    expect(() => openSqliteStore({ folder })).toThrow('Another Yokeside server');
    const sqlite = import.meta.resolve('@photostructure/sqlite');
    const script = `const { DatabaseSync } = await import(${JSON.stringify(sqlite)});
      try { new DatabaseSync(process.argv[1]).exec('BEGIN EXCLUSIVE'); console.log('free'); }
      catch (error) { console.log(error.message); }`;
    const tried = () =>
      execFileSync(process.execPath, ['--input-type=module', '-e', script, join(folder, 'yokeside.lock')], {
        encoding: 'utf8',
      }).trim();
    expect(tried()).toBe('database is locked');
    await first.close();
    expect(tried()).toBe('free');
  });

  test('may read beside it: it sees what is committed, and writes nothing', async () => {
    const folder = aFolder();
    const log = aLog(openSqliteStore({ folder }));
    await log.act(adding({ id: 'a', added: 1 }));
    const reader = openSqliteStore({ folder, readOnly: true });
    expect((await reader.head()).seq).toBe(1);
    await log.act(adding({ id: 'a', added: 1 }));
    expect((await reader.head()).seq).toBe(2);
    await expect(reader.deleteOutside('session', 's')).rejects.toMatchObject({ name: 'StorageUnavailable' });
    await log.act(adding({ id: 'a', added: 1 }));
    await reader.close();
    await log.close();
  });

  test('finds no log to read where there is none, and makes none', () => {
    const folder = aFolder();
    expect(() => openSqliteStore({ folder, readOnly: true })).toThrow('There is no log in the folder');
    expect(existsSync(join(folder, 'yokeside.sqlite'))).toBe(false);
  });
});

describe('a store that can no longer write', () => {
  test('because the disk is full refuses the batch whole, keeps what was confirmed, and takes more once there is room', async () => {
    const folder = await aFilledFolder();
    const store = openSqliteStore({ folder, pagesMax: 40 });
    const log = aLog(store);
    let confirmed = 3;
    const fill = async () => {
      for (;;) {
        await log.act(
          adding({ id: 'a', added: 1, requestId: `full-${confirmed}`, person: 'p'.repeat(2000) }),
        );
        confirmed += 1;
      }
    };
    await expect(fill()).rejects.toMatchObject({
      name: 'StorageUnavailable',
      what: expect.stringContaining('disk is full'),
    });
    expect(confirmed).toBeGreaterThan(10);
    expect((await log.head()).seq).toBe(confirmed);
    await expect(fill()).rejects.toMatchObject({ what: expect.stringContaining('disk is full') });
    await log.close();

    const roomier = aLog(openSqliteStore({ folder }));
    expect(await roomier.act(adding({ id: 'a', added: 1 }))).toMatchObject({ place: confirmed + 1 });
    await roomier.close();
  });
});

// Windows has no such modes, and a file in use cannot be renamed there.
if (process.platform !== 'win32') {
  describe('a database file', () => {
    test('that was replaced by another file is not written to until the store is opened again (RL-30)', async () => {
      const folder = await aFilledFolder();
      const file = join(folder, 'yokeside.sqlite');
      const log = aLog(openSqliteStore({ folder }));
      const refused = () =>
        expect(log.act(adding({ id: 'a', added: 1 }))).rejects.toMatchObject({
          what: expect.stringContaining('nothing more is written until the server is started again'),
        });
      copyFileSync(file, `${file}.copy`);
      renameSync(file, `${file}.own`);
      renameSync(`${file}.copy`, file);
      await refused();
      // Put back, all looks well; but who knows what the other one was.
      renameSync(`${file}.own`, file);
      await refused();
      await log.close();
      const again = aLog(openSqliteStore({ folder }));
      expect(await again.act(adding({ id: 'a', added: 1 }))).toMatchObject({ place: 4 });
      await again.close();
    });
  });

  describe('the data folder', () => {
    const modeOf = (path: string) => statSync(path).mode & 0o777;

    test('and its files can be read by nobody else', async () => {
      const folder = join(aFolder(), 'deep', 'data');
      const store = openSqliteStore({ folder });
      await store.putOutside({ kind: 'session', id: 's', body: 1 });
      expect(modeOf(folder)).toBe(0o700);
      for (const file of ['sqlite', 'sqlite-wal', 'sqlite-shm', 'lock']) {
        expect([file, modeOf(join(folder, `yokeside.${file}`))]).toEqual([file, 0o600]);
      }
      await store.close();
    });

    test('is closed to others if it was open, unless it holds files that are not ours', async () => {
      const ours = aFolder();
      chmodSync(ours, 0o755);
      await openSqliteStore({ folder: ours }).close();
      expect(modeOf(ours)).toBe(0o700);

      const shared = join(aFolder(), 'shared');
      mkdirSync(shared);
      chmodSync(shared, 0o755);
      writeFileSync(join(shared, 'theirs.txt'), '');
      await openSqliteStore({ folder: shared }).close();
      expect(modeOf(shared)).toBe(0o755);
      expect(modeOf(join(shared, 'yokeside.sqlite'))).toBe(0o600);
    });
  });
}

if (process.platform === 'linux') {
  test.each([
    ['NFS', 0x6969, true],
    ['CIFS', 0xff534d42, true],
    ['CIFS, as a signed number', 0xff534d42 | 0, true],
    ['9P', 0x01021997, true],
    ['ext4', 0xef53, false],
    ['tmpfs', 0x01021994, false],
    ['xfs', 0x58465342, false],
  ])('%s is a network file system or not, as statfs(2) numbers it (RL-04)', (_name, type, isOne) => {
    expect(isNetworkFileSystem(type)).toBe(isOne);
  });
}
