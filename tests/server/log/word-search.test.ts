import fc from 'fast-check';
import { expect, test } from 'vitest';
import { KeptList } from '../../../server/log/kept-list.ts';
import { ByKeys } from '../../../server/log/list-index.ts';
import type { SiteLog } from '../../../server/log/site-log.ts';
import { WordSearch } from '../../../server/log/word-search.ts';
import { openSqliteStore } from '../../../server/store/sqlite-store.ts';
import { aFolder } from '../../folders.ts';
import { adding, aLog } from './register.ts';

interface Line {
  readonly id: string;
  readonly words: string;
}

/** Each look through all that there is, as plainly as can be said. */
async function plainly(log: SiteLog, slim: Slim) {
  const lines = (await log.summaries('register')).map(slim).filter((line) => line !== null);
  const inOrder = lines.sort((one, other) => (one.id < other.id ? -1 : 1));
  const find = (text: string) => {
    const words = text.toLowerCase().split(/\s+/);
    return inOrder.filter((line) => words.every((word) => line.words.includes(word)));
  };
  return { inOrder, find };
}

type Slim = (line: { readonly id: string; readonly body: unknown }) => Line | null;

/** A register's total says which text stands in its line; a total without one leaves it out. */
function slimBy(texts: readonly string[]): Slim {
  return ({ id, body }) => {
    const words = texts[(body as { readonly total: number }).total % (texts.length + 1)];
    return words === undefined ? null : { id, words: `${id} ${words}`.toLowerCase() };
  };
}

const word = fc.oneof(
  fc.constantFrom(
    'FV-214',
    'FV-2140',
    'fv-100007',
    'steam',
    'Steam,',
    'team',
    'Área',
    'a',
    'ab',
    'İstanbul',
    '🜂🜂🜂',
  ),
  fc.string({ maxLength: 5 }),
);
const text = fc
  .array(word, { maxLength: 4 })
  .chain((words) => fc.constantFrom(words.join(' '), words.join('  \t')));
const looked = fc.oneof(
  text,
  fc.tuple(word, fc.nat(4), fc.nat(9)).map(([whole, from, to]) => whole.slice(from, to)),
  fc.tuple(word, word).map((both) => both.map((one) => one.slice(1)).join(' ')),
);
const change = fc.record({
  id: fc.constantFrom('fv-1', 'fv-2', 'FV-214', 'x', 'é'),
  added: fc.integer({ min: 0, max: 6 }),
});

test('A search finds what a look through every line finds, in the same order, after whatever was written', async () => {
  const log = aLog(openSqliteStore({ folder: aFolder() }));
  await fc.assert(
    fc.asyncProperty(
      fc.array(text, { minLength: 1, maxLength: 5 }),
      fc.array(change, { minLength: 1, maxLength: 8 }),
      fc.array(looked, { maxLength: 8 }),
      fc.constantFrom(0, 1, 3, 1000),
      async (texts, changes, finds, triedMax) => {
        const slim = slimBy(texts);
        const list = new KeptList({ log, kind: 'register', slim });
        const search = new WordSearch(list, triedMax);
        const byWords = list.indexed(new ByKeys<Line>(({ words }) => [words, words]));
        for (const { id, added } of changes) {
          await log.act(adding({ id, added }));
          const { inOrder, find } = await plainly(log, slim);
          const wholes = texts.flatMap((text) => [text, ...text.split(/\s+/)]);
          for (const text of [...finds, ...wholes]) expect(await search.find(text)).toEqual(find(text));
          expect(await list.inOrder()).toEqual(inOrder);
          for (const { words } of inOrder)
            expect([...(await byWords()).of(words)].sort()).toEqual(
              inOrder.filter((line) => line.words === words).map((line) => line.id),
            );
        }
      },
    ),
    { numRuns: process.env.YOKESIDE_LONG === undefined ? 15 : 300 },
  );
  await log.close();
}, 120_000);

test('A word that few lines hold costs no look at the others, however many there are', async () => {
  const store = openSqliteStore({ folder: aFolder() });
  const log = aLog(store);
  const ids = Array.from({ length: 1500 }, (_, at) => `fv-${100_000 + at}`);
  const summaries = ids.map((id) => ({ kind: 'register', id, sort: id, body: null }));
  await store.commit({ entries: [], summaries, withdrawn: [], answers: [] });
  let looks = 0;
  const list = new KeptList({
    log,
    kind: 'register',
    slim: ({ id }) => ({
      id,
      get words() {
        looks += 1;
        return `${id} cooling water`;
      },
    }),
  });
  const search = new WordSearch(list);
  expect(await search.find('no such valve')).toEqual([]);
  looks = 0;
  expect((await search.find('fv-100007 water')).map(({ id }) => id)).toEqual(['fv-100007']);
  expect(await search.find('no such valve')).toEqual([]);
  expect(looks).toBeLessThan(50);
  expect(await search.find('cooling')).toHaveLength(1500);
  await log.close();
});
