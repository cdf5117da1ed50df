import { describe, expect, test } from 'vitest';
import { LISTS_FORM, markLists, renewLists } from '../../../server/log/lists-form.ts';
import { openSqliteStore } from '../../../server/store/sqlite-store.ts';
import { streamKinds } from '../../../server/streams.ts';
import { aFolder } from '../../folders.ts';
import { adding, aLog, kinds } from './register.ts';
import { tamper } from './tamper.ts';

async function aFilledFolder(): Promise<string> {
  const folder = aFolder();
  const log = aLog(openSqliteStore({ folder }));
  await log.act(adding({ id: 'a', added: 5 }));
  await log.close();
  return folder;
}

const oldLine = (folder: string) =>
  tamper(folder, ({ sql }) => sql(`UPDATE summary SET body = '{"old":true}' WHERE id = 'a'`));

describe('lists that another release made', () => {
  test('are made anew by the start, once', async () => {
    const folder = await aFilledFolder();
    oldLine(folder);
    const store = openSqliteStore({ folder });
    let told = 0;
    const beforeRebuild = () => {
      told += 1;
    };
    expect(await renewLists({ store, kinds, beforeRebuild })).toBe('made anew');
    expect((await store.summary('register', 'a'))?.body).toEqual({ id: 'a', total: 5, added: 1 });
    expect(await renewLists({ store, kinds, beforeRebuild })).toBe('today’s already');
    expect(told).toBe(1);
    expect(await renewLists({ store, kinds, form: LISTS_FORM + 1 })).toBe('made anew');
    await store.close();
  });

  test('are left, and tried again at the next start, where the log is not whole', async () => {
    const folder = await aFilledFolder();
    tamper(folder, ({ sql }) => sql(`UPDATE log SET bytes = replace(bytes, '"added":5', '"added":6')`));
    const store = openSqliteStore({ folder });
    for (let start = 0; start < 2; start += 1)
      expect(await renewLists({ store, kinds })).toBe('left: the log is damaged');
    await store.close();
  });

  test('are nothing to wait for on an empty log, or after they were made anew by hand', async () => {
    const empty = openSqliteStore({ folder: aFolder() });
    expect(await renewLists({ store: empty, kinds })).toBe('today’s already');
    await empty.close();
    const folder = await aFilledFolder();
    const store = openSqliteStore({ folder });
    await markLists(store);
    expect(await renewLists({ store, kinds })).toBe('today’s already');
    await store.close();
  });

  test('are known by a number that is raised whenever the line of a job holds something else', () => {
    const line = streamKinds.find(({ kind }) => kind === 'job');
    const members = Object.keys((line?.summarise(line.initial, '1')?.body ?? {}) as object).toSorted();
    // Changed? Raise LISTS_FORM, or older data folders fail on the new pages.
    expect([LISTS_FORM, members.join(' ')]).toEqual([
      6,
      'closedAs closedAt gear goesOnAs id location locks measured noted openedAt openedBy performers procedure service since status step tag',
    ]);
  });
});
