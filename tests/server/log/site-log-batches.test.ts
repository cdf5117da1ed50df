import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { fingerprintOf } from '../../../server/log/chain.ts';
import type { SiteLog } from '../../../server/log/site-log.ts';
import { openSqliteStore } from '../../../server/store/sqlite-store.ts';
import { aFolder } from '../../folders.ts';
import { type FailingStore, failingStore } from './failing-store.ts';
import { adding, aLog, register, site } from './register.ts';

describe('batches', () => {
  let store: FailingStore;
  let log: SiteLog;

  beforeEach(() => {
    store = failingStore(openSqliteStore({ folder: aFolder() }));
    log = aLog(store);
  });
  afterEach(() => log.close());

  test('64 acts at one moment share one commit (R-11)', async () => {
    await Promise.all(
      Array.from({ length: 64 }, (_, index) => log.act(adding({ id: `${index % 8}`, added: 1 }))),
    );
    expect(store.batches.map(({ entries }) => entries.length)).toEqual([64]);
    expect(store.batches[0]?.summaries).toHaveLength(8);
  });

  test('acts that come while a commit runs share the next one', async () => {
    let finish = () => {};
    store.beforeCommit = () => new Promise((resolve) => (finish = resolve));
    const first = log.act(adding({ id: 'a', added: 1 }));
    while (store.batches.length === 0) await new Promise(setImmediate);
    const later = Array.from({ length: 20 }, () => log.act(adding({ id: 'a', added: 1 })));
    store.beforeCommit = async () => {};
    finish();
    await Promise.all([first, ...later]);
    expect(store.batches.map(({ entries }) => entries.length)).toEqual([1, 20]);
  });

  /** One act in each turn of the loop, as new connections come. */
  const comingOneByOne = (many: number): Promise<unknown> =>
    new Promise((resolve, reject) => {
      const acts: Promise<unknown>[] = [];
      const come = (): void => {
        if (acts.length + 1 < many) setImmediate(come);
        acts.push(log.act(adding({ id: 'a', added: 1 })));
        if (acts.length === many) Promise.all(acts).then(resolve, reject);
      };
      setImmediate(come);
    });

  test('acts that come one in each turn share a commit, so that who connects in a crowd is not left out', async () => {
    await comingOneByOne(20);
    expect(store.batches.map(({ entries }) => entries.length)).toEqual([20]);
  });

  test('the first of a crowd is answered though others keep coming', async () => {
    await comingOneByOne(300);
    expect(store.batches.map(({ entries }) => entries.length)).toEqual([256, 44]);
  });

  test('nobody is answered before the commit is through', async () => {
    let finish = () => {};
    store.beforeCommit = () => new Promise((resolve) => (finish = resolve));
    let answered = false;
    const act = log.act(adding({ id: 'a', added: 1 })).then(() => {
      answered = true;
    });
    while (store.batches.length === 0) await new Promise(setImmediate);
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(answered).toBe(false);
    expect(await log.state(register, 'a')).toEqual({ total: 0, numbers: [] });
    finish();
    await act;
    expect(await log.state(register, 'a')).toEqual({ total: 1, numbers: [1] });
  });

  test('a state read while an act on it is committed is not taken for the newest afterwards', async () => {
    let finish = () => {};
    await log.act(adding({ id: 'a', added: 1 }));
    const fresh = aLog(store);
    store.afterRead = () => new Promise((resolve) => (finish = resolve));
    const slow = fresh.state(register, 'a');
    await new Promise(setImmediate);
    store.afterRead = async () => {};
    await fresh.act(adding({ id: 'a', added: 2 }));
    finish();
    expect((await slow).numbers).toEqual([1]);
    expect((await fresh.state(register, 'a')).numbers).toEqual([1, 2]);
    expect(await fresh.act(adding({ id: 'a', added: 3 }))).toEqual({ total: 6, place: 3 });
  });

  test('with room for one state only, every act still sees its stream as it is', async () => {
    const small = aLog(store, { cachedStreamsMax: 1 });
    for (let round = 1; round <= 3; round += 1) {
      const answers = await Promise.all(
        Array.from({ length: 10 }, (_, index) => small.act(adding({ id: `${index}`, added: 1 }))),
      );
      expect(answers).toEqual(Array.from({ length: 10 }, () => ({ total: round, place: round })));
    }
  });

  test('one act may write to several streams, and several entries to one, in its own order', async () => {
    const both = {
      requestId: 'r1',
      fingerprint: fingerprintOf('both'),
      person: null,
      screen: 'server',
      streams: ['register:a', 'site'],
      decide: () => ({
        entries: ['register:a', 'site', 'register:a'].map((stream, index) => ({
          stream,
          kind: 'number-added',
          inputs: { added: index },
          outcome: null,
          effects: null,
        })),
        answer: 'done',
      }),
    };
    expect(await log.act(both)).toBe('done');
    const entries = [...(await log.entriesOf('register:a')), ...(await log.entriesOf('site'))];
    expect(entries.map(({ seq, place, requestId }) => [seq, place, requestId])).toEqual([
      [1, 1, 'r1'],
      [3, 2, 'r1'],
      [2, 1, 'r1'],
    ]);
    expect(await log.state(site)).toBe(1);
  });

  test('an act without entries writes none, and its answer is kept', async () => {
    let looked = 0;
    const looking = {
      ...adding({ id: 'a', added: 0 }),
      decide: () => {
        looked += 1;
        return { entries: [], answer: { total: looked, place: 0 } };
      },
    };
    expect(await log.act(looking)).toEqual({ total: 1, place: 0 });
    expect(await log.act(looking)).toEqual({ total: 1, place: 0 });
    expect((await log.head()).seq).toBe(0);
  });

  test('acts of the server itself carry no request id, and each is done', async () => {
    const starting = { ...adding({ id: 'a', added: 1 }), requestId: null };
    await Promise.all([log.act(starting), log.act(starting)]);
    expect((await log.entriesOf('register:a')).map(({ requestId }) => requestId)).toEqual([null, null]);
  });

  test('an entry for a stream that the act did not name is a fault, and nothing of the act stays', async () => {
    const act = adding({ id: 'a', added: 1 });
    const straying = {
      ...act,
      decide: () => ({
        entries: ['register:a', 'register:b'].map((stream) => ({
          stream,
          kind: 'number-added',
          inputs: { added: 1 },
          outcome: null,
          effects: null,
        })),
        answer: { total: 1, place: 1 },
      }),
    };
    await expect(log.act(straying)).rejects.toThrow('"register:b"');
    expect((await log.head()).seq).toBe(0);
    expect(await log.act(act)).toEqual({ total: 1, place: 1 });
  });

  test('a stream of a kind that nobody registered is a fault, as is another kind under a registered name', async () => {
    const act = adding({ id: 'a', added: 1 });
    await expect(log.act({ ...act, streams: [...act.streams, 'unknown:a'] })).rejects.toThrow(
      'No kind of stream is registered for "unknown:a"',
    );
    await expect(log.state({ ...register }, 'a')).rejects.toThrow('Another kind is registered');
    await expect(log.state(register, 'a\nb')).rejects.toThrow('cannot be the id');
  });

  test('lists are written with the entry and ask for nothing else', async () => {
    await log.act(adding({ id: 'a', added: 7 }));
    await log.act(adding({ id: 'b', added: 5 }));
    expect((await log.summaries('register')).map(({ id }) => id)).toEqual(['b', 'a']);
    expect(await log.summary('register', 'a')).toMatchObject({ body: { id: 'a', total: 7, added: 1 } });
    await log.act(adding({ id: 'a', added: 6 }));
    expect(await log.summary('register', 'a')).toBeUndefined();
  });
});
