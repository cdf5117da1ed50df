/**
 * What every store must do, whichever database stands behind it. A store's own test calls this with a way to open
 * one: `open` the first time on nothing, then again on what the one before left.
 */
import { beforeEach, describe, expect, test } from 'vitest';
import { EMPTY_HEAD, EMPTY_STREAM, seal, unseal } from '../../../server/log/chain.ts';
import { StorageUnavailable } from '../../../server/store/storage-unavailable.ts';
import type { Batch, Head, SealedEntry, Store, StreamHead, Summary } from '../../../server/store/store.ts';

const NOTHING: Batch = { entries: [], summaries: [], withdrawn: [], answers: [] };

/** Seals entries one after the other, as a log would. */
class Sealer {
  head: Head = EMPTY_HEAD;
  readonly #streams = new Map<string, StreamHead>();

  next(stream: string, inputs: string | number = 'x'): SealedEntry {
    const streamHead = this.#streams.get(stream) ?? EMPTY_STREAM;
    const sealed = seal(
      {
        stream,
        at: '2024-01-15T08:00:00.000Z',
        person: null,
        screen: 'test',
        kind: 'tested',
        inputs,
        outcome: null,
        effects: null,
        codeVersion: 'test',
        requestId: null,
      },
      { head: this.head, streamHead },
    );
    this.head = { seq: sealed.entry.seq, hash: sealed.entry.hash };
    this.#streams.set(stream, { place: sealed.entry.place, hash: sealed.entry.hash });
    return sealed;
  }
}

async function all<T>(items: AsyncIterable<T>): Promise<T[]> {
  const collected: T[] = [];
  for await (const item of items) collected.push(item);
  return collected;
}

function summary(id: string, sort: string): Summary {
  return { kind: 'valve', id, sort, body: { id, note: 'é "quoted" \u2028' } };
}

async function* each<T>(items: readonly T[]): AsyncIterable<T> {
  yield* items;
}

export function storeConformance(name: string, begin: () => { open(): Promise<Store> }): void {
  describe(`${name} as a store: the log`, () => {
    let from: { open(): Promise<Store> };
    let store: Store;
    let sealer: Sealer;

    beforeEach(async () => {
      from = begin();
      store = await from.open();
      sealer = new Sealer();
      return async () => await store.close();
    });

    test('an empty one has empty heads and nothing in it', async () => {
      expect(await store.head()).toEqual(EMPTY_HEAD);
      expect(await store.streamHead('job:1')).toEqual(EMPTY_STREAM);
      expect(await store.stream('job:1')).toEqual([]);
      expect(await store.line({ stream: 'job:1', place: 1 })).toBeUndefined();
      expect(await all(store.lines(1))).toEqual([]);
      expect(await all(store.streams())).toEqual([]);
    });

    test('what was committed is there, byte for byte, also after it was closed and opened again', async () => {
      const entries = ['job:1', 'valve:FV-214 "é€😀"', 'job:1'].map((stream, index) =>
        sealer.next(stream, `é\n€ ${index}`),
      );
      await store.commit({ ...NOTHING, entries });
      await store.close();
      store = await from.open();
      const lines = await all(store.lines(1));
      expect(lines.map(({ bytes }) => bytes)).toEqual(entries.map(({ bytes }) => bytes));
      expect(lines.map(unseal)).toEqual(entries.map(({ entry }) => entry));
      expect(await store.head()).toEqual(sealer.head);
      expect(await store.streamHead('job:1')).toEqual({ place: 2, hash: sealer.head.hash });
      expect(await store.stream('job:1')).toEqual([lines[0], lines[2]]);
      expect(await store.line({ stream: 'job:1', place: 2 })).toEqual(lines[2]);
    });

    test('lines come in order from any number on, however many there are', async () => {
      const entries = Array.from({ length: 1203 }, (_, index) => sealer.next(`job:${index % 7}`));
      await store.commit({ ...NOTHING, entries });
      for (const start of [1, 500, 501, 1203, 1204]) {
        const seqs = (await all(store.lines(start))).map(({ seq }) => seq);
        expect(seqs).toEqual(Array.from({ length: 1204 - start }, (_, index) => start + index));
      }
    });

    test('lines that are read slowly show what is committed meanwhile, and do not stop it', async () => {
      await store.commit({ ...NOTHING, entries: Array.from({ length: 600 }, () => sealer.next('job:1')) });
      let seen = 0;
      for await (const { seq } of store.lines(1)) {
        seen += 1;
        expect(seq).toBe(seen);
        if (seen === 300) await store.commit({ ...NOTHING, entries: [sealer.next('job:1')] });
      }
      expect(seen).toBe(601);
    });

    test('each stream is named once, in order', async () => {
      const streams = ['valve:b', 'job:2', 'valve:a', 'job:2', 'job:10'];
      await store.commit({ ...NOTHING, entries: streams.map((stream) => sealer.next(stream)) });
      expect(await all(store.streams())).toEqual(['job:10', 'job:2', 'valve:a', 'valve:b']);
    });

    test.each<[string, (sealer: Sealer) => SealedEntry]>([
      [
        'repeats a number',
        (one) => {
          const entry = one.next('job:2');
          return { ...entry, entry: { ...entry.entry, seq: 1 } };
        },
      ],
      [
        'leaves a number out',
        (one) => {
          one.next('job:2');
          return one.next('job:3');
        },
      ],
      [
        'repeats a place of its stream',
        (one) => {
          const entry = one.next('job:1');
          return { ...entry, entry: { ...entry.entry, place: 1 } };
        },
      ],
      [
        'leaves a place of its stream out',
        (one) => {
          const entry = one.next('job:2');
          return { ...entry, entry: { ...entry.entry, place: 2 } };
        },
      ],
    ])('an entry that %s is refused, and the next right one is taken', async (_what, wrong) => {
      await store.commit({ ...NOTHING, entries: [sealer.next('job:1')] });
      const other = new Sealer();
      other.next('job:1');
      await expect(store.commit({ ...NOTHING, entries: [wrong(other)] })).rejects.toThrow(StorageUnavailable);
      expect(await store.head()).toEqual(sealer.head);
      await store.commit({ ...NOTHING, entries: [sealer.next('job:1')] });
      expect(await store.head()).toEqual(sealer.head);
    });

    test('a batch is written whole or not at all', async () => {
      const answered = { requestId: 'r1', person: 't1', fingerprint: 'f', answer: 1 };
      await store.commit({ ...NOTHING, answers: [answered] });
      await store.commit({ ...NOTHING, summaries: [summary('kept', '1')] });
      const before = await store.head();
      const broken: Batch = {
        entries: [new Sealer().next('job:1')],
        summaries: [summary('new', '2')],
        withdrawn: [{ kind: 'valve', id: 'kept' }],
        answers: [{ ...answered, requestId: 'r2' }, answered],
      };
      await expect(store.commit(broken)).rejects.toThrow(StorageUnavailable);
      expect(await store.head()).toEqual(before);
      expect((await store.summaries('valve')).map(({ id }) => id)).toEqual(['kept']);
      expect(await store.answered('r2')).toBeUndefined();
    });

    test('what is no JSON is a fault of who gave it: nothing is written and the store goes on', async () => {
      const entries = [sealer.next('job:1')];
      const wrong = { ...summary('a', '1'), body: Number.NaN };
      await expect(store.commit({ ...NOTHING, entries, summaries: [wrong] })).rejects.toThrow(TypeError);
      await expect(store.putOutside({ kind: 'session', id: 's', body: Number.NaN })).rejects.toThrow(
        TypeError,
      );
      expect(await store.head()).toEqual(EMPTY_HEAD);
      await store.commit({ ...NOTHING, entries });
    });
  });

  describe(`${name} as a store: whoever writes`, () => {
    let store: Store;

    beforeEach(async () => {
      store = await begin().open();
      return async () => await store.close();
    });

    test('what is committed while alone counts; what comes to nothing leaves nothing, and the next one has its turn', async () => {
      const sealer = new Sealer();
      const seen = await store.alone(async (commit) => {
        await commit({ ...NOTHING, entries: [sealer.next('job:1')] });
        return 'its own answer';
      });
      expect(seen).toBe('its own answer');
      expect(await store.alone(async () => await store.head())).toEqual(sealer.head);
      const broken = store.alone(async () => {
        throw new RangeError('of the caller');
      });
      await expect(broken).rejects.toThrow(RangeError);
      await store.commit({ ...NOTHING, entries: [sealer.next('job:1')] });
      expect(await store.head()).toEqual(sealer.head);
    });

    test('turns of one name come one after the other, of two names side by side, also after one that failed', async () => {
      const told: string[] = [];
      const turn = (name: string, word: string) =>
        store.inTurn(name, async () => {
          told.push(`${word} begins`);
          await store.putOutside({ kind: 'turn', id: name, body: word });
          told.push(`${word} ends`);
          if (word === 'first') throw new RangeError('of the caller');
        });
      const [first, ...others] = await Promise.allSettled([
        turn('a', 'first'),
        turn('a', 'second'),
        store.inTurn('b', () => turn('c', 'within')),
      ]);
      expect([first.status, ...others.map(({ status }) => status)]).toEqual([
        'rejected',
        'fulfilled',
        'fulfilled',
      ]);
      expect(told.filter((word) => !word.startsWith('within'))).toEqual([
        'first begins',
        'first ends',
        'second begins',
        'second ends',
      ]);
    });
  });

  describe(`${name} as a store: what stands beside the log`, () => {
    let store: Store;

    beforeEach(async () => {
      store = await begin().open();
      return async () => await store.close();
    });

    test('a photo is kept byte for byte under its hash, and stays as it is when it comes again', async () => {
      const bytes = Uint8Array.from({ length: 3000 }, (_, index) => (index * 7) % 256);
      expect(await store.blob('h1')).toBeUndefined();
      await store.commit({ ...NOTHING, blobs: [{ hash: 'h1', bytes }] });
      const again = { hash: 'h1', bytes: new Uint8Array(3) };
      await store.commit({ ...NOTHING, blobs: [again, { hash: 'h2', bytes: new Uint8Array() }] });
      expect(await store.blob('h1')).toEqual(bytes);
      expect(await store.blob('h2')).toEqual(new Uint8Array());
    });

    test('an answer is found by its request, with who asked and what', async () => {
      const answers = [
        { requestId: 'r1', person: 't1', fingerprint: 'f1', answer: { card: 'é', list: [1, null] } },
        { requestId: 'r2', person: null, fingerprint: 'f2', answer: null },
      ];
      await store.commit({ ...NOTHING, answers });
      expect(await store.answered('r1')).toEqual(answers[0]);
      expect(await store.answered('r2')).toEqual(answers[1]);
      expect(await store.answered('r3')).toBeUndefined();
    });

    const lines = [summary('c', '1'), summary('a', '2'), summary('b', '2'), summary('d', '3')];

    test.each([
      ['up', ['c', 'a', 'b', 'd']],
      ['down', ['d', 'b', 'a', 'c']],
    ] as const)('a list comes in order, %s, whole or in pages that leave nothing out', async (order, ids) => {
      await store.commit({ ...NOTHING, summaries: [...lines, { ...summary('e', '2'), kind: 'gear' }] });
      const whole = await store.summaries('valve', { order });
      expect(whole.map(({ id }) => id)).toEqual(ids);
      for (const limit of [1, 2, 3, 4, 5]) {
        const paged: Summary[] = [];
        for (let after: Summary | undefined; ; after = paged.at(-1)) {
          const page = await store.summaries('valve', { order, limit, ...(after && { after }) });
          expect(page.length).toBeLessThanOrEqual(limit);
          if (page.length === 0) break;
          paged.push(...page);
        }
        expect(paged).toEqual(whole);
      }
    });

    test('a line of a list is replaced by a later one, and withdrawn', async () => {
      await store.commit({ ...NOTHING, summaries: lines });
      await store.commit({
        ...NOTHING,
        summaries: [summary('c', '9')],
        withdrawn: [
          { kind: 'valve', id: 'a' },
          { kind: 'valve', id: 'never there' },
        ],
      });
      expect((await store.summaries('valve')).map(({ id, sort }) => id + sort)).toEqual(['b2', 'd3', 'c9']);
      expect(await store.summary('valve', 'c')).toEqual(summary('c', '9'));
      expect(await store.summary('valve', 'a')).toBeUndefined();
      expect(await store.summary('gear', 'c')).toBeUndefined();
    });

    test('all lists are replaced at once', async () => {
      await store.commit({ ...NOTHING, summaries: [...lines, { ...summary('e', '2'), kind: 'gear' }] });
      await store.replaceSummaries(each([summary('x', '1'), summary('c', '2')]));
      expect((await store.summaries('valve')).map(({ id }) => id)).toEqual(['x', 'c']);
      expect(await store.summaries('gear')).toEqual([]);
    });

    test('lists stay as they are if their replacement breaks off, and a later one is complete', async () => {
      await store.commit({ ...NOTHING, summaries: lines });
      async function* breaking(): AsyncIterable<Summary> {
        yield summary('x', '1');
        throw new Error('broke off');
      }
      await expect(store.replaceSummaries(breaking())).rejects.toThrow('broke off');
      expect((await store.summaries('valve')).map(({ id }) => id)).toEqual(['c', 'a', 'b', 'd']);
      await store.replaceSummaries(each([summary('y', '1')]));
      expect((await store.summaries('valve')).map(({ id }) => id)).toEqual(['y']);
    });

    test('what is kept outside the log is put, replaced, listed and deleted', async () => {
      await store.putOutside({ kind: 'session', id: 's2', body: { person: 't1' } });
      await store.putOutside({ kind: 'session', id: 's1', body: 'é' });
      await store.putOutside({ kind: 'draft', id: 's1', body: [1] });
      await store.putOutside({ kind: 'session', id: 's2', body: null });
      expect(await store.outside('session', 's1')).toBe('é');
      expect(await store.outside('session', 's2')).toBeNull();
      expect(await store.outside('session', 's3')).toBeUndefined();
      expect(await store.outsideAll('session')).toEqual([
        { kind: 'session', id: 's1', body: 'é' },
        { kind: 'session', id: 's2', body: null },
      ]);
      await store.deleteOutside('session', 's1');
      await store.deleteOutside('session', 'never there');
      expect((await store.outsideAll('session')).map(({ id }) => id)).toEqual(['s2']);
      expect(await store.outside('draft', 's1')).toEqual([1]);
    });
  });
}
