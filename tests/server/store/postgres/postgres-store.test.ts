import { inspect } from 'node:util';
import { beforeAll, describe, expect, test } from 'vitest';
import { verifyStore } from '../../../../server/log/verify.ts';
import type { Place } from '../../../../server/store/postgres/connections.ts';
import { openPostgresStore } from '../../../../server/store/postgres/postgres-store.ts';
import { PASSWORD, sharedCluster, urlOf } from '../../../postgres/cluster.ts';
import { said } from '../../../postgres/places.ts';
import { adding, aLog } from '../../log/register.ts';
import { storeConformance } from '../conformance.ts';

let url: string;
let schemas = 0;

beforeAll(async () => {
  url = urlOf(await sharedCluster());
});

storeConformance('PostgreSQL', () => {
  schemas += 1;
  const schema = `conformance_${process.pid}_${schemas}`;
  return { open: async () => await openPostgresStore({ url, schema }) };
});

const place = (): Place => {
  schemas += 1;
  return { url, schema: `store_${process.pid}_${schemas}` };
};

async function aFilledPlace(): Promise<Place> {
  const at = place();
  const log = aLog(await openPostgresStore(at));
  for (let added = 1; added <= 3; added += 1) await log.act(adding({ id: 'a', added }));
  await log.close();
  return at;
}

/** Somebody lets a role in that has nothing but these rights. @returns its connection string */
async function aRole(rights: readonly string[]): Promise<string> {
  schemas += 1;
  const role = `role_${process.pid}_${schemas}`;
  await said(
    url,
    `CREATE ROLE ${role} LOGIN; ${rights.map((right) => `GRANT ${right} TO ${role}`).join(';')}`,
  );
  return url.replace('//postgres:', `//${role}:`);
}

describe('the schema', () => {
  let filled: Place;
  beforeAll(async () => {
    filled = await aFilledPlace();
  });

  test.each([
    ['UPDATE', `UPDATE log SET bytes = '{}' WHERE seq = 2`, 'never changed'],
    ['DELETE', 'DELETE FROM log WHERE seq = 3', 'never deleted'],
    ['TRUNCATE', 'TRUNCATE log', 'never deleted'],
    [
      'an INSERT that leaves a number out',
      `INSERT INTO log VALUES (9, 'register:a', 4, '', '{}')`,
      'must follow',
    ],
    [
      'an INSERT that doubles a place',
      `INSERT INTO log VALUES (4, 'register:a', 3, '', '{}')`,
      'must follow',
    ],
    [
      'INSERT ... ON CONFLICT DO UPDATE',
      `INSERT INTO log VALUES (2, 'register:a', 4, '', '{}') ON CONFLICT (seq) DO UPDATE SET bytes = excluded.bytes`,
      'never changed',
    ],
  ])('refuses %s on the log (SA-49)', async (_what, sql, message) => {
    const { schema } = filled;
    await expect(said(url, `SET search_path = ${schema}; ${sql}`)).rejects.toThrow(message);
    expect(await said(url, `SELECT max(seq)::int AS seq, count(*)::int AS rows FROM ${schema}.log`)).toEqual([
      { seq: 3, rows: 3 },
    ]);
  });

  test('is made once by servers that start together', async () => {
    const at = place();
    const stores = await Promise.all([1, 2, 3].map(() => openPostgresStore(at)));
    expect(await said(url, `SELECT version FROM ${at.schema}.form`)).toEqual([{ version: 1 }]);
    await Promise.all(stores.map((store) => store.close()));
  });

  test('of another program, or of a later release, is refused with the reason, also while it is brought there', async () => {
    const [theirs, later] = [place(), await aFilledPlace()];
    await said(url, `CREATE SCHEMA ${theirs.schema}; CREATE TABLE ${theirs.schema}.theirs (x text)`);
    await expect(openPostgresStore(theirs)).rejects.toThrow('was made by another program');
    const log = aLog(await openPostgresStore(later));
    await said(url, `UPDATE ${later.schema}.form SET version = 99`);
    await expect(log.act(adding({ id: 'a', added: 1 }))).rejects.toMatchObject({
      what: expect.stringContaining('was brought to another form'),
    });
    await log.close();
    await expect(openPostgresStore(later)).rejects.toThrow(
      'it has form 99, and this release understands up to 1',
    );
    await expect(openPostgresStore({ ...later, readOnly: true })).rejects.toThrow('understands up to 1');
  });
});

describe('a role of the database', () => {
  const without = { what: expect.stringContaining('permission denied') };

  test('that may only look verifies the log, and writes nothing', async () => {
    const at = await aFilledPlace();
    const rights = [`USAGE ON SCHEMA ${at.schema}`, `SELECT ON ALL TABLES IN SCHEMA ${at.schema}`];
    const reader = await openPostgresStore({ ...at, url: await aRole(rights), readOnly: true });
    expect(await verifyStore(reader, [])).toMatchObject({ entries: 3, fault: null });
    await expect(reader.deleteOutside('session', 's')).rejects.toMatchObject({ name: 'StorageUnavailable' });
    await expect(
      reader.commit({ entries: [], summaries: [], withdrawn: [], answers: [] }),
    ).rejects.toMatchObject({
      what: expect.stringContaining('opened for reading alone'),
    });
    await reader.close();
  });

  test('that may add and not change is enough for a server', async () => {
    const at = await aFilledPlace();
    const tables = (names: string) =>
      names
        .split(' ')
        .map((name) => `${at.schema}.${name}`)
        .join(', ');
    const rights = [
      `USAGE ON SCHEMA ${at.schema}`,
      `SELECT ON ${tables('form')}`,
      `SELECT, INSERT ON ${tables('log blob answered')}`,
      `SELECT, INSERT, UPDATE, DELETE ON ${tables('summary outside')}`,
    ];
    const log = aLog(await openPostgresStore({ ...at, url: await aRole(rights) }));
    expect((await log.act(adding({ id: 'a', added: 1, photo: new Uint8Array(9) }))).place).toBe(4);
    await log.close();
    const less = aLog(await openPostgresStore({ ...at, url: await aRole(rights.slice(0, 2)) }));
    await expect(less.act(adding({ id: 'a', added: 1 }))).rejects.toMatchObject(without);
    await less.close();
  });

  test('under whose settings a confirmed entry could be lost is refused (RL-01)', async () => {
    const at = await aFilledPlace();
    const unsafe = { ...at, url: `${url}?options=-c%20synchronous_commit%3Doff` };
    await expect(openPostgresStore(unsafe)).rejects.toThrow(
      'would not keep a confirmed entry through a power cut (fsync on, synchronous_commit off)',
    );
  });

  test.each([
    ['of a database that is not there', '/nobody', 'there is no database of that name'],
    ['that is no address', 'x/y', 'YOKESIDE_DATABASE is no connection string'],
    ['of another kind', '', 'YOKESIDE_DATABASE is no connection string'],
  ])(
    'with a connection string %s is told why, and reads nothing of its password',
    async (_what, end, why) => {
      const given =
        end === '' ? url.replace('postgres:', 'mysql:') : `${url.slice(0, -'/postgres'.length)}${end}`;
      const refusal = await openPostgresStore({ url: given, schema: 'x' }).catch((error: Error) => error);
      expect(refusal).toMatchObject({ message: expect.stringContaining(why) });
      expect(inspect(refusal, { depth: 9 })).not.toContain(PASSWORD);
    },
  );
});
