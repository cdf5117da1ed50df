import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import pg from 'pg';
import { beforeEach, describe, expect, test } from 'vitest';
import { blobHash } from '../../../../server/log/blobs.ts';
import { verifyStore } from '../../../../server/log/verify.ts';
import { copyIntoDatabase, copyIntoFolder } from '../../../../server/store/copying/copy-log.ts';
import type { Place } from '../../../../server/store/postgres/connections.ts';
import { openPostgresStore } from '../../../../server/store/postgres/postgres-store.ts';
import { openSqliteStore } from '../../../../server/store/sqlite-store.ts';
import { aFolder } from '../../../folders.ts';
import { aDatabase, said } from '../../../postgres/places.ts';
import { adding, aLog } from '../../log/register.ts';
import { tamper } from '../../log/tamper.ts';

const PHOTO = Uint8Array.from({ length: 5000 }, (_, index) => (index * 31) % 256);
const SCHEMA = 'yokeside';

let folder: string;
let file: string;
let to: Place;

beforeEach(async () => {
  folder = aFolder();
  file = join(folder, 'yokeside.sqlite');
  // Of its own: whether a server is at work is asked of the whole database.
  to = { url: await aDatabase(), schema: SCHEMA };
});

async function fill(entries: number): Promise<void> {
  const store = openSqliteStore({ folder });
  const log = aLog(store);
  const photo = adding({ id: 'é', added: 1, photo: PHOTO, requestId: 'with a photo' });
  const others = Array.from({ length: entries - 1 }, (_, at) => adding({ id: `${at % 5}`, added: at }));
  await Promise.all([photo, ...others].map((act) => log.act(act)));
  await store.putOutside({ kind: 'session', id: 's1', body: { person: 't1', note: 'é\u0000' } });
  await log.close();
}

const schemasThere = async () =>
  (await said(to.url, `SELECT nspname FROM pg_namespace WHERE nspname LIKE 'yokeside%' ORDER BY 1`)).map(
    ({ nspname }) => nspname,
  );

describe('a log', () => {
  test('goes from SQLite into PostgreSQL and back with the same head, photos, answers, lists and what is outside', async () => {
    await fill(603);
    const before = openSqliteStore({ folder, readOnly: true });
    const { head } = await copyIntoDatabase({ file, to });
    expect(head).toEqual(await before.head());
    const inDatabase = await openPostgresStore({ ...to, isCommand: true });
    const back = aFolder();
    expect(await copyIntoFolder({ from: to, folder: back })).toEqual({ head, photos: [] });
    const after = openSqliteStore({ folder: back });
    for (const store of [inDatabase, after]) {
      expect(await verifyStore(store, [])).toMatchObject({ entries: 603, fault: null, head, photos: [] });
      expect(await store.blob(blobHash(PHOTO))).toEqual(PHOTO);
      expect(await store.answered('with a photo')).toEqual(await before.answered('with a photo'));
      expect(await store.summaries('register')).toEqual(await before.summaries('register'));
      expect(await store.outsideAll('session')).toEqual(await before.outsideAll('session'));
    }
    // The chain goes on where it was.
    const log = aLog(inDatabase);
    await log.act(adding({ id: 'é', added: 1 }));
    expect((await log.head()).seq).toBe(604);
    await Promise.all([before.close(), log.close(), after.close()]);
  });

  test('is not copied over anything, and not beside a server', async () => {
    await fill(3);
    await copyIntoDatabase({ file, to });
    await expect(copyIntoDatabase({ file, to })).rejects.toThrow(
      'No copy was made: there is something in it already',
    );
    await expect(copyIntoFolder({ from: to, folder })).rejects.toThrow('there is a log in');
    const server = await openPostgresStore(to);
    const back = join(aFolder(), 'back');
    await expect(copyIntoFolder({ from: to, folder: back })).rejects.toThrow(
      'a server is using the database',
    );
    expect([existsSync(join(back, 'yokeside.sqlite')), existsSync(`${back}.copying`)]).toEqual([
      false,
      false,
    ]);
    await server.close();
  });

  test('whose copy is broken off leaves nothing that looks whole, and is copied by the next try', async () => {
    await fill(603);
    const copying = copyIntoDatabase({ file, to }).catch((error: Error) => error.message);
    // Whatever it does in its transaction at that moment.
    const broken = `SELECT pg_terminate_backend(pid) FROM pg_stat_activity
      WHERE application_name = 'yokeside command' AND query LIKE '%yokeside.%' AND datname = current_database()`;
    const asking = new pg.Client({ connectionString: to.url });
    await asking.connect();
    while ((await asking.query(broken)).rows.length === 0) await pause(1);
    await asking.end();
    expect(await copying).toMatch(
      /No copy was made: the (connection to the database was lost|database is being stopped)/,
    );
    expect(await schemasThere()).toEqual([]);
    expect((await copyIntoDatabase({ file, to })).head.seq).toBe(603);
  });

  test('that the verifier does not find whole is not copied: nothing is there afterwards', async () => {
    await fill(5);
    tamper(folder, ({ sql }) => sql(`UPDATE log SET bytes = replace(bytes, '"added":2', '"added":9')`));
    await expect(copyIntoDatabase({ file, to })).rejects.toThrow('No copy was made: the first bad entry is');
    expect(await schemasThere()).toEqual([]);
  });

  test('is put back over another one, which is kept beside it', async () => {
    await fill(3);
    await copyIntoDatabase({ file, to });
    const later = aLog(await openPostgresStore(to));
    await later.act(adding({ id: 'a', added: 1 }));
    await later.close();
    const aside = { file, to, asideAs: `${SCHEMA}_before_7` };
    expect(await copyIntoDatabase(aside)).toMatchObject({ head: { seq: 3 }, wasAside: true });
    expect(await schemasThere()).toEqual([SCHEMA, `${SCHEMA}_before_7`]);
    expect(await said(to.url, `SELECT max(seq)::int AS seq FROM ${SCHEMA}_before_7.log`)).toEqual([
      { seq: 4 },
    ]);
  });
});
