import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { z } from 'zod';
import { OutsideRecords } from '../../../server/people/outside.ts';
import { openSqliteStore } from '../../../server/store/sqlite-store.ts';
import type { Store } from '../../../server/store/store.ts';
import { aFolder } from '../../folders.ts';

let store: Store;
beforeEach(() => {
  store = openSqliteStore({ folder: aFolder() });
});
afterEach(() => store.close());

const schema = z.object({ person: z.string() });

/** Records that are kept in memory, over the store with some of its verbs changed. */
function keptOver(changed: Partial<Store>): OutsideRecords<typeof schema> {
  const over = new Proxy(store, {
    get: (_, name) => {
      const own: unknown = Reflect.get(name in changed ? changed : store, name);
      return typeof own === 'function' ? own.bind(store) : own;
    },
  });
  return new OutsideRecords({ store: over, kind: 'session', schema, isKept: true });
}

describe('what is kept in memory of a record outside the log', () => {
  test('is read once, is the newest that was written, and goes with the record', async () => {
    let reads = 0;
    const records = keptOver({
      outside: (kind, id) => {
        reads += 1;
        return store.outside(kind, id);
      },
    });
    await records.put('s1', { person: 't1' });
    expect(await records.get('s1')).toEqual({ person: 't1' });
    expect(await records.get('s1')).toEqual({ person: 't1' });
    expect(reads).toBe(1);
    await records.put('s1', { person: 't2' });
    expect(await records.get('s1')).toEqual({ person: 't2' });
    await records.delete('s1');
    expect(await records.get('s1')).toBeUndefined();
  });

  test('does not come back by a look that began before the record was taken away', async () => {
    let go: () => void = () => {};
    const records = keptOver({
      outside: async (kind, id) => {
        const before = await store.outside(kind, id);
        await new Promise<void>((resolve) => {
          go = resolve;
        });
        return before;
      },
    });
    await records.put('s1', { person: 't1' });
    const look = records.get('s1');
    await new Promise(setImmediate);
    await records.delete('s1');
    go();
    // Whoever looked then may still be told; nobody who looks afterwards.
    expect(await look).toEqual({ person: 't1' });
    const after = records.get('s1');
    await new Promise(setImmediate);
    go();
    expect(await after).toBeUndefined();
  });

  test('is asked of the store each time where another server may write it', async () => {
    const records = keptOver({ isShared: true });
    await records.put('s1', { person: 't1' });
    expect(await records.get('s1')).toEqual({ person: 't1' });
    await store.deleteOutside('session', 's1');
    expect(await records.get('s1')).toBeUndefined();
  });

  test('is what the store has after a write that failed', async () => {
    let fails = false;
    const records = keptOver({
      putOutside: (record) => (fails ? Promise.reject(new Error('full')) : store.putOutside(record)),
    });
    await records.put('s1', { person: 't1' });
    fails = true;
    await expect(records.put('s1', { person: 't2' })).rejects.toThrow('full');
    expect(await records.get('s1')).toEqual({ person: 't1' });
  });
});
