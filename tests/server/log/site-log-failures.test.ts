import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { Refusal } from '../../../safety/refusal.ts';
import { LogDamaged } from '../../../server/log/chain.ts';
import { SiteLog } from '../../../server/log/site-log.ts';
import type { StreamKind } from '../../../server/log/stream-kind.ts';
import { verifyStore } from '../../../server/log/verify.ts';
import { openSqliteStore } from '../../../server/store/sqlite-store.ts';
import { StorageUnavailable } from '../../../server/store/storage-unavailable.ts';
import { aFolder } from '../../folders.ts';
import { type FailingStore, failingStore } from './failing-store.ts';
import { adding, aLog, kinds, register } from './register.ts';

describe('when the store fails', () => {
  let store: FailingStore;
  let log: SiteLog;

  beforeEach(() => {
    store = failingStore(openSqliteStore({ folder: aFolder() }));
    log = aLog(store);
  });
  afterEach(() => log.close());

  async function numbers(id: string): Promise<readonly number[]> {
    return (await log.state(register, id)).numbers;
  }

  test('every act of the batch is told so with a 503 and nothing of it stays; the next act is done', async () => {
    await log.act(adding({ id: 'a', added: 1 }));
    store.failNext = ['before writing'];
    const acts = [
      adding({ id: 'a', added: 2 }),
      adding({ id: 'a', added: 3 }),
      adding({ id: 'b', added: 4 }),
    ];
    for (const outcome of await Promise.allSettled(acts.map((act) => log.act(act)))) {
      expect(outcome).toMatchObject({ status: 'rejected', reason: { status: 503, code: 'STO-001' } });
    }
    expect(await numbers('a')).toEqual([1]);
    expect(await Promise.all(acts.map((act) => log.act(act)))).toEqual([
      { total: 3, place: 2 },
      { total: 6, place: 3 },
      { total: 4, place: 1 },
    ]);
    expect(await verifyStore(store, [])).toMatchObject({ entries: 4, fault: null });
  });

  test('an act that was refused because of an act which was then not recorded is not refused, but unavailable', async () => {
    store.failNext = ['before writing'];
    const late = adding({
      id: 'a',
      added: 9,
      decide: (read) => {
        if (read.place(register, 'a') > 0) {
          throw new Refusal({
            kind: 'conflict',
            code: 'X-1',
            what: 'Taken.',
            kept: 'Nothing.',
            next: 'Look.',
          });
        }
      },
    });
    const both = () => Promise.allSettled([log.act(adding({ id: 'a', added: 1 })), log.act(late)]);
    expect((await both())[1]).toMatchObject({ status: 'rejected', reason: { name: 'StorageUnavailable' } });
    expect((await both())[1]).toMatchObject({ status: 'rejected', reason: { name: 'Refusal' } });
  });

  test('a commit that was reported as failed but reached the disk is not recorded twice when sent again', async () => {
    store.failNext = ['after writing'];
    const act = adding({ id: 'a', added: 5 });
    await expect(log.act(act)).rejects.toThrow(StorageUnavailable);
    expect(await log.act(act)).toEqual({ total: 5, place: 1 });
    expect(await log.act(adding({ id: 'a', added: 1 }))).toEqual({ total: 6, place: 2 });
    expect(await verifyStore(store, [])).toMatchObject({ entries: 2, fault: null });
  });

  test('a request that was recorded before gets its answer, also in a batch that fails', async () => {
    const before = adding({ id: 'a', added: 5 });
    await log.act(before);
    store.failNext = ['before writing'];
    const outcomes = await Promise.allSettled([log.act(adding({ id: 'a', added: 1 })), log.act(before)]);
    expect(outcomes.map(({ status }) => status)).toEqual(['rejected', 'fulfilled']);
  });

  test('any failure of the store, not only its own kind, is a 503', async () => {
    store.head = () => Promise.reject(new Error('no such disk'));
    await expect(log.act(adding({ id: 'a', added: 1 }))).rejects.toMatchObject({
      name: 'StorageUnavailable',
      message: expect.stringContaining('no such disk'),
    });
  });

  test('a stream that was changed in the database stops the acts on it, and no others', async () => {
    await log.act(adding({ id: 'a', added: 1 }));
    await log.act(adding({ id: 'b', added: 1 }));
    const honest = store.stream;
    store.stream = async (stream) =>
      (await honest(stream)).map((line) =>
        stream === 'register:a' ? { ...line, bytes: line.bytes.replace('"added":1', '"added":2') } : line,
      );
    const fresh = new SiteLog({ store, kinds, now: () => new Date(0), codeVersion: 'test' });
    const outcomes = await Promise.allSettled([
      fresh.act(adding({ id: 'a', added: 1 })),
      fresh.act(adding({ id: 'b', added: 1 })),
    ]);
    expect(outcomes[0]).toMatchObject({ status: 'rejected', reason: expect.any(LogDamaged) });
    expect(outcomes[1]).toEqual({ status: 'fulfilled', value: { total: 2, place: 2 } });
  });

  test('a fault while folding or summarising one act leaves the acts beside it alone', async () => {
    const touchy: StreamKind<number> = {
      kind: 'touchy',
      initial: 0,
      evolve: (_state, entry) => {
        if (entry.kind === 'unfoldable') throw new Error('cannot fold');
        return entry.place;
      },
      summarise: (place) => {
        if (place === 1) throw new Error('cannot summarise');
        return null;
      },
    };
    const mixed = new SiteLog({
      store,
      kinds: [...kinds, touchy],
      now: () => new Date(0),
      codeVersion: 'test',
    });
    const touching = (kind: string) => ({
      ...adding({ id: 'a', added: 1 }),
      streams: ['touchy'],
      decide: () => ({
        entries: [{ stream: 'touchy', kind, inputs: null, outcome: null, effects: null }],
        answer: { total: 0, place: 0 },
      }),
    });
    const outcomes = await Promise.allSettled([
      mixed.act(adding({ id: 'a', added: 1 })),
      mixed.act(touching('unfoldable')),
      mixed.act(touching('unsummarisable')),
      mixed.act(adding({ id: 'a', added: 2 })),
    ]);
    expect(outcomes.map(({ status }) => status)).toEqual(['fulfilled', 'rejected', 'rejected', 'fulfilled']);
    expect(outcomes[1]).toMatchObject({ reason: { message: 'cannot fold' } });
    expect(outcomes[2]).toMatchObject({ reason: { message: 'cannot summarise' } });
    expect(await verifyStore(store, [])).toMatchObject({ entries: 2, fault: null });
  });

  test('a screen is told of what was recorded, and of nothing that was not', async () => {
    const told: unknown[] = [];
    const stop = log.onCommit((committed) => told.push(committed));
    await log.act(adding({ id: 'a', added: 1 }));
    store.failNext = ['before writing'];
    await expect(log.act(adding({ id: 'a', added: 1 }))).rejects.toThrow(StorageUnavailable);
    await log.act(adding({ id: 'b', added: 1 }));
    stop();
    await log.act(adding({ id: 'b', added: 1 }));
    expect(told).toEqual([
      { stream: 'register:a', place: 1 },
      { stream: 'register:b', place: 1 },
    ]);
  });

  test('a screen that cannot be told is reported, and the act stays recorded', async () => {
    const reported: unknown[] = [];
    const options = { store, kinds, now: () => new Date(0), codeVersion: 'test' };
    const reporting = new SiteLog({ ...options, report: (error) => reported.push(error) });
    const fault = new Error('gone');
    const told: unknown[] = [];
    reporting.onCommit(() => {
      throw fault;
    });
    reporting.onCommit((committed) => told.push(committed));
    expect(await reporting.act(adding({ id: 'a', added: 1 }))).toEqual({ total: 1, place: 1 });
    await new Promise(setImmediate);
    expect(reported).toEqual([fault]);
    expect(told).toHaveLength(1);
  });

  test('after closing, acts that waited are done and new ones are told that the server is stopping', async () => {
    const waited = log.act(adding({ id: 'a', added: 1 }));
    const closed = log.close();
    await expect(log.act(adding({ id: 'a', added: 2 }))).rejects.toThrow('stopping');
    expect(await waited).toEqual({ total: 1, place: 1 });
    await closed;
  });
});
