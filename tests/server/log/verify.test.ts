import { join } from 'node:path';
import { DatabaseSync } from '@photostructure/sqlite';
import { beforeEach, describe, expect, test } from 'vitest';
import type { Auditor } from '../../../server/log/auditor.ts';
import { blobHash, wholeBlob } from '../../../server/log/blobs.ts';
import { canonical } from '../../../server/log/canonical.ts';
import { EMPTY_HEAD, sha256 } from '../../../server/log/chain.ts';
import { type Report, verifyLines, verifyStore, verifyStream } from '../../../server/log/verify.ts';
import { openSqliteStore } from '../../../server/store/sqlite-store.ts';
import type { StoredLine } from '../../../server/store/store.ts';
import { aFolder } from '../../folders.ts';
import { adding, aLog } from './register.ts';
import { type Tamper, tamper } from './tamper.ts';

let folder: string;

/** Twelve entries, turn by turn in the streams a, b and c: a has 1, 4, 7, 10; b has 2, 5, 8, 11; c has 3, 6, 9, 12. */
beforeEach(async () => {
  folder = aFolder();
  const log = aLog(openSqliteStore({ folder }));
  for (let seq = 1; seq <= 12; seq += 1) await log.act(adding({ id: 'cab'.charAt(seq % 3), added: seq }));
  await log.close();
});

async function verified(asked: { stream?: string; auditors?: readonly Auditor[] } = {}): Promise<Report> {
  const store = openSqliteStore({ folder, readOnly: true });
  const { stream, auditors = [] } = asked;
  try {
    return await (stream === undefined
      ? verifyStore(store, auditors)
      : verifyStream(store, { stream, auditors }));
  } finally {
    await store.close();
  }
}

const rewrite = (tampering: Tamper, change: { seq: number; from: string; to: string }) =>
  tampering.sql(
    'UPDATE log SET bytes = replace(bytes, ?, ?) WHERE seq = ?',
    change.from,
    change.to,
    change.seq,
  );

/** What is done to the log, the entry that must be named, and what must be said of it. */
const TAMPERINGS: [
  string,
  (tampering: Tamper) => void,
  { seq: number; stream: string | null; what: string },
][] = [
  [
    'a value was edited',
    (tampering) => rewrite(tampering, { seq: 5, from: '"added":5', to: '"added":50' }),
    { seq: 5, stream: 'register:b', what: 'does not give its hash' },
  ],
  [
    'a person was edited',
    (tampering) => rewrite(tampering, { seq: 12, from: '"person":"t1"', to: '"person":"t2"' }),
    { seq: 12, stream: 'register:c', what: 'does not give its hash' },
  ],
  [
    'a hash was edited',
    (tampering) => tampering.sql('UPDATE log SET hash = ? WHERE seq = 1', '0'.repeat(64)),
    { seq: 1, stream: 'register:a', what: 'does not give its hash' },
  ],
  [
    'a value was edited and its hash made to fit',
    (tampering) => {
      rewrite(tampering, { seq: 5, from: '"added":5', to: '"added":50' });
      tampering.sql('UPDATE log SET hash = ? WHERE seq = 5', sha256(tampering.bytesOf(5)));
    },
    { seq: 6, stream: 'register:c', what: 'not written after entry 5' },
  ],
  [
    'an entry was deleted',
    (tampering) => tampering.sql('DELETE FROM log WHERE seq = 7'),
    { seq: 7, stream: null, what: 'missing; the next one there is 8' },
  ],
  [
    'the first entries were deleted',
    (tampering) => tampering.sql('DELETE FROM log WHERE seq < 4'),
    { seq: 1, stream: null, what: 'missing; the next one there is 4' },
  ],
  [
    'an entry was deleted and the numbers closed up',
    (tampering) => {
      tampering.sql('DELETE FROM log WHERE seq = 7');
      tampering.sql('UPDATE log SET seq = seq - 1 WHERE seq > 7');
    },
    { seq: 7, stream: 'register:b', what: 'says seq 8' },
  ],
  [
    'an entry was put in between',
    (tampering) => {
      tampering.sql('UPDATE log SET seq = -seq - 1 WHERE seq >= 8');
      tampering.sql('UPDATE log SET seq = -seq WHERE seq < 0');
      tampering.sql(`INSERT INTO log SELECT 8, 'register:z', place, hash, bytes FROM log WHERE seq = 1`);
    },
    { seq: 8, stream: 'register:z', what: 'says seq 1' },
  ],
  [
    'an entry was put before the first',
    (tampering) =>
      tampering.sql(`INSERT INTO log SELECT 0, 'register:z', 1, hash, bytes FROM log WHERE seq = 1`),
    { seq: 0, stream: 'register:z', what: 'says seq 1' },
  ],
  [
    'an entry was put at the end',
    (tampering) =>
      tampering.sql(`INSERT INTO log SELECT 13, 'register:z', 1, hash, bytes FROM log WHERE seq = 1`),
    { seq: 13, stream: 'register:z', what: 'says seq 1' },
  ],
  [
    'two entries were swapped',
    (tampering) => {
      tampering.sql('UPDATE log SET seq = -1 WHERE seq = 6');
      tampering.sql('UPDATE log SET seq = 6 WHERE seq = 9');
      tampering.sql('UPDATE log SET seq = 9 WHERE seq = -1');
    },
    { seq: 6, stream: 'register:c', what: 'says seq 9' },
  ],
  [
    'an entry was replaced by another',
    (tampering) =>
      tampering.sql(`REPLACE INTO log SELECT 10, 'register:y', 1, hash, bytes FROM log WHERE seq = 11`),
    { seq: 10, stream: 'register:y', what: 'says seq 11' },
  ],
  [
    'an entry was moved to another stream',
    (tampering) => tampering.sql(`UPDATE log SET stream = 'register:z' WHERE seq = 4`),
    { seq: 4, stream: 'register:z', what: 'says stream register:a' },
  ],
  [
    'an entry was emptied',
    (tampering) => tampering.sql(`UPDATE log SET bytes = '' WHERE seq = 3`),
    { seq: 3, stream: 'register:c', what: 'does not give its hash' },
  ],
];

describe('the verifier', () => {
  test('says of a whole log that it is whole, how long it is and what its last entry is', async () => {
    const report = await verified();
    expect(report).toMatchObject({ entries: 12, fault: null, problems: [], head: { seq: 12 } });
    expect(report.head.hash).toMatch(/^[0-9a-f]{64}$/);
  });

  test('says of an empty log that it is whole', async () => {
    folder = aFolder();
    await openSqliteStore({ folder }).close();
    expect(await verified()).toEqual({ entries: 0, head: EMPTY_HEAD, fault: null, problems: [], photos: [] });
  });

  test.each(TAMPERINGS)(
    'names the first bad entry when %s, the triggers taken away (SA-49)',
    async (_what, change, expected) => {
      tamper(folder, change);
      const { fault, entries } = await verified();
      expect(fault).toMatchObject({ seq: expected.seq, stream: expected.stream });
      expect(fault?.what).toContain(expected.what);
      expect(entries).toBe(Math.max(0, expected.seq - 1));
    },
  );

  test('names the first of two bad entries (SA-01)', async () => {
    tamper(folder, (tampering) => {
      rewrite(tampering, { seq: 9, from: 't1', to: 't2' });
      rewrite(tampering, { seq: 4, from: 't1', to: 't2' });
    });
    expect((await verified()).fault).toMatchObject({ seq: 4 });
  });

  test('cannot see by itself that the end was cut off: the last entry it names is another one', async () => {
    const whole = await verified();
    tamper(folder, (tampering) => tampering.sql('DELETE FROM log WHERE seq > 8'));
    const cut = await verified();
    expect(cut).toMatchObject({ entries: 8, fault: null, head: { seq: 8 } });
    expect(cut.head.hash).not.toBe(whole.head.hash);
  });

  test('finds an entry that follows the chain but not its own stream', async () => {
    await forgeLast({ place: 5 });
    expect((await verified()).fault).toMatchObject({
      seq: 12,
      what: expect.stringContaining('after place 3'),
    });
    await forgeLast({ place: 4, previousInStream: 'a'.repeat(64) });
    expect((await verified()).fault).toMatchObject({
      seq: 12,
      what: expect.stringContaining('not written after place 3'),
    });
  });

  test('finds an entry that follows the chain but repeats a number', async () => {
    const lines: StoredLine[] = [];
    const store = openSqliteStore({ folder, readOnly: true });
    for await (const line of store.lines(1)) lines.push(line);
    await store.close();
    const bytes = canonical({ ...JSON.parse(lines[11]?.bytes ?? ''), seq: 11 });
    const forged = { seq: 11, stream: 'register:c', place: 4, hash: sha256(bytes), bytes };
    async function* repeating(): AsyncIterable<StoredLine> {
      yield* lines.slice(0, 11);
      yield forged;
    }
    expect((await verifyLines(repeating())).fault).toMatchObject({
      seq: 11,
      what: 'its number comes after 11',
    });
  });

  /** Seals the last entry anew with other fields, as only somebody who rewrites the end of the log can. */
  async function forgeLast(fields: { place: number; previousInStream?: string }): Promise<void> {
    const store = openSqliteStore({ folder, readOnly: true });
    for await (const line of store.lines(12)) {
      const bytes = canonical({ ...JSON.parse(line.bytes), ...fields });
      tamper(folder, (tampering) =>
        tampering.sql(
          'UPDATE log SET bytes = ?, hash = ?, place = ? WHERE seq = 12',
          bytes,
          sha256(bytes),
          fields.place,
        ),
      );
    }
    await store.close();
  }
});

describe('photos beside the log', () => {
  const photo = (text: string) => Buffer.from(text.repeat(40));
  const hashOf = (text: string) => blobHash(photo(text));

  async function withPhotos(): Promise<void> {
    folder = aFolder();
    const log = aLog(openSqliteStore({ folder }));
    for (const [at, text] of ['one', 'two', 'one', 'three'].entries())
      await log.act(adding({ id: at === 3 ? 'b' : 'a', added: 1, photo: photo(text) }));
    await log.close();
  }

  test('are whole as they were put in, one that comes again is kept once', async () => {
    await withPhotos();
    expect(await verified()).toMatchObject({ entries: 4, fault: null, photos: [] });
  });

  test('that are missing or were changed are named, with every entry that names them', async () => {
    await withPhotos();
    tamper(folder, ({ sql }) => {
      sql(`UPDATE blob SET bytes = CAST(X'00' || substr(bytes, 2) AS BLOB) WHERE hash = '${hashOf('one')}'`);
      sql(`DELETE FROM blob WHERE hash = '${hashOf('three')}'`);
    });
    const named = (seq: number, text: string, what: string) => ({ seq, hash: hashOf(text), what });
    expect(await verified()).toMatchObject({
      fault: null,
      photos: [
        named(1, 'one', 'was changed'),
        named(3, 'one', 'was changed'),
        named(4, 'three', 'is missing'),
      ],
    });
    const store = openSqliteStore({ folder, readOnly: true });
    expect((await verifyStream(store, { stream: 'register:b', auditors: [] })).photos).toMatchObject([
      { stream: 'register:b', place: 1, what: 'is missing' },
    ]);
    const at = { seq: 1, stream: 'register:a', place: 1 };
    await expect(wholeBlob({ ...at, hash: hashOf('one') }, store)).rejects.toThrow('was changed');
    await expect(wholeBlob({ ...at, hash: hashOf('three') }, store)).rejects.toThrow('is missing');
    await store.close();
  });

  test('are never changed, replaced or deleted by a connection of their own, and no entry comes without its own', async () => {
    await withPhotos();
    const log = aLog(openSqliteStore({ folder }));
    const act = adding({ id: 'a', added: 1, photo: photo('four') });
    const bare = {
      ...act,
      decide: (read: Parameters<typeof act.decide>[0]) => ({ ...act.decide(read), blobs: [] }),
    };
    await expect(log.act(bare)).rejects.toThrow('came without it');
    await log.close();
    const database = new DatabaseSync(join(folder, 'yokeside.sqlite'));
    for (const sql of [`UPDATE blob SET bytes = X'00'`, 'DELETE FROM blob'])
      expect(() => database.exec(sql)).toThrow('of the log is never');
    database.exec(`INSERT OR REPLACE INTO blob (hash, bytes) VALUES ('${hashOf('one')}', X'00')`);
    database.close();
    expect(await verified()).toMatchObject({ entries: 4, photos: [] });
  });
});

describe('one stream alone', () => {
  test('is verified without the others', async () => {
    tamper(folder, (tampering) => rewrite(tampering, { seq: 4, from: 't1', to: 't2' }));
    expect(await verified({ stream: 'register:b' })).toMatchObject({
      entries: 4,
      fault: null,
      head: { seq: 11 },
    });
    expect((await verified({ stream: 'register:a' })).fault).toMatchObject({
      seq: 4,
      stream: 'register:a',
      place: 2,
    });
  });

  test('shows that one of its entries is missing', async () => {
    tamper(folder, (tampering) => tampering.sql('DELETE FROM log WHERE seq = 5'));
    expect((await verified({ stream: 'register:b' })).fault).toMatchObject({
      seq: 8,
      place: 3,
      what: expect.stringContaining('after place 1'),
    });
  });
});

describe('auditors', () => {
  const sums: Auditor = {
    kind: 'register',
    audit: (_stream, entries) => {
      let total = 0;
      return entries.flatMap(({ place, inputs, outcome }) => {
        const { added } = inputs as { added: number };
        total += added;
        return canonical(outcome) === canonical({ total })
          ? []
          : [{ place, what: `the total is ${total}, not ${canonical(outcome)}` }];
      });
    },
  };
  const never: Auditor = { kind: 'other', audit: (stream) => [{ place: 0, what: `asked about ${stream}` }] };

  test('look at every stream of their kind and at no other', async () => {
    expect((await verified({ auditors: [sums, never] })).problems).toEqual([]);
  });

  test('say in which stream and at which place something disagrees', async () => {
    const wrong: Auditor = {
      ...sums,
      audit: (stream, entries) => (stream === 'register:b' ? sums.audit(stream, entries.slice(1), []) : []),
    };
    const expected = { stream: 'register:b', place: 2, what: 'the total is 5, not {"total":7}' };
    expect((await verified({ auditors: [wrong] })).problems[0]).toEqual(expected);
    expect((await verified({ auditors: [wrong], stream: 'register:b' })).problems[0]).toEqual(expected);
  });

  test('are not asked about a log that is not whole', async () => {
    tamper(folder, (tampering) => rewrite(tampering, { seq: 5, from: '"added":5', to: '"added":50' }));
    expect((await verified({ auditors: [sums] })).problems).toEqual([]);
  });
});
