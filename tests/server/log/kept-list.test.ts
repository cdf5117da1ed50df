import { afterEach, beforeEach, expect, test } from 'vitest';
import { KeptList } from '../../../server/log/kept-list.ts';
import type { SiteLog } from '../../../server/log/site-log.ts';
import { openSqliteStore } from '../../../server/store/sqlite-store.ts';
import { aFolder } from '../../folders.ts';
import { adding, aLog } from './register.ts';

let log: SiteLog;
let list: KeptList<number>;
let slimmed = 0;
beforeEach(() => {
  log = aLog(openSqliteStore({ folder: aFolder() }));
  slimmed = 0;
  list = new KeptList({
    log,
    kind: 'register',
    slim: ({ body }) => {
      slimmed += 1;
      return (body as { readonly total: number }).total;
    },
  });
});
afterEach(() => log.close());

const add = (id: string, added: number) => log.act(adding({ id, added }));

test('a list in memory says what the store says: lines that were there, that came, that changed and that were withdrawn', async () => {
  await add('b', 5);
  expect([...(await list.byId())]).toEqual([['b', 5]]);
  await add('a', 2);
  await add('b', 1);
  expect(await list.inOrder()).toEqual([2, 6]);
  // A total of 13 is kept off the list.
  await add('a', 11);
  expect(await list.inOrder()).toEqual([6]);
  await add('a', 1);
  expect([...(await list.byId())].sort()).toEqual([
    ['a', 14],
    ['b', 6],
  ]);
});

test('only what was written to is read again, however many there are', async () => {
  await Promise.all(Array.from({ length: 1200 }, (_, at) => add(`r${at}`, 1)));
  expect((await list.byId()).size).toBe(1200);
  expect(slimmed).toBe(1200);
  await add('r7', 3);
  expect((await list.byId()).get('r7')).toBe(4);
  await list.inOrder();
  expect(slimmed).toBe(1201);
});

test('several that ask at once, while it is read for the first time and written to, are told the same whole list', async () => {
  await Promise.all(Array.from({ length: 700 }, (_, at) => add(`r${at}`, 1)));
  const asked = [list.byId(), add('r3', 1), list.byId(), add('r699', 1), list.inOrder()] as const;
  await Promise.all(asked);
  const lines = await list.byId();
  expect(lines.size).toBe(700);
  expect([lines.get('r3'), lines.get('r699'), lines.get('r0')]).toEqual([2, 2, 1]);
});
