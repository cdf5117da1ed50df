import { describe, expect, test } from 'vitest';
import { rebuildSummaries, rebuildTold } from '../../../server/log/rebuild.ts';
import { Stopped, type Tell } from '../../../server/long/long-work.ts';
import { openSqliteStore } from '../../../server/store/sqlite-store.ts';
import { aFolder } from '../../folders.ts';
import { adding, aLog, kinds } from './register.ts';
import { tamper } from './tamper.ts';

async function aFilledFolder(): Promise<string> {
  const folder = aFolder();
  const log = aLog(openSqliteStore({ folder }));
  for (const [id, added] of [
    ['a', 5],
    ['b', 2],
    ['c', 13],
    ['a', 1],
  ] as const)
    await log.act(adding({ id, added }));
  await log.close();
  return folder;
}

describe('making the lists anew', () => {
  test('puts right what was changed, lost or left over', async () => {
    const folder = await aFilledFolder();
    tamper(folder, ({ sql }) => {
      sql(`UPDATE summary SET body = '{}' WHERE id = 'a'`);
      sql(`DELETE FROM summary WHERE id = 'b'`);
      sql(`INSERT INTO summary VALUES ('register', 'z', '0', '{}'), ('gone', 'x', '0', '{}')`);
    });
    const store = openSqliteStore({ folder });
    expect(await rebuildSummaries(store, kinds)).toBe(3);
    expect(await store.summaries('register')).toEqual([
      { kind: 'register', id: 'b', sort: '00000002', body: { id: 'b', total: 2, added: 1 } },
      { kind: 'register', id: 'a', sort: '00000006', body: { id: 'a', total: 6, added: 2 } },
    ]);
    expect(await store.summaries('gone')).toEqual([]);
    await store.close();
  });

  test('says how far it is, and stopped leaves the lists as they were', async () => {
    const store = openSqliteStore({ folder: await aFilledFolder() });
    const before = await store.summaries('register');
    const told: string[] = [];
    const tell: Tell = async ({ done, of }) => {
      told.push(`${done} of ${of}`);
      if (done === 2) throw new Stopped();
    };
    await expect(rebuildTold(store, { kinds, tell })).rejects.toThrow(Stopped);
    expect(told).toEqual(['1 of 3', '2 of 3']);
    expect(await store.summaries('register')).toEqual(before);
    await store.close();
  });

  test('makes none from a log that is not whole, and leaves the lists as they were', async () => {
    const folder = await aFilledFolder();
    tamper(folder, ({ sql }) =>
      sql(`UPDATE log SET bytes = replace(bytes, '"added":2', '"added":3') WHERE seq = 2`),
    );
    const store = openSqliteStore({ folder });
    const before = await store.summaries('register');
    await expect(rebuildSummaries(store, kinds)).rejects.toThrow('damaged at entry 2 (register:b, place 1)');
    expect(await store.summaries('register')).toEqual(before);
    await store.close();
  });

  test('does not pass over streams of a kind that nobody registered', async () => {
    const store = openSqliteStore({ folder: await aFilledFolder() });
    await expect(rebuildSummaries(store, [])).rejects.toThrow(
      'No kind of stream is registered for "register:a"',
    );
    await store.close();
  });
});
