import { expect, test } from 'vitest';
import { linesAtTop } from '../../../server/log/lines-at-top.ts';
import type { Summary, SummaryPage } from '../../../server/store/store.ts';

/** A list whose first lines are open and the others not; it counts how many were read. */
function aList({ open, closed }: { readonly open: number; readonly closed: number }) {
  const lines: Summary[] = Array.from({ length: open + closed }, (_, at) => ({
    kind: 'job',
    id: `${at}`,
    sort: `${at < open ? '1' : '2'} ${String(at).padStart(9, '0')}`,
    body: { id: `${at}`, isOpen: at < open },
  }));
  let read = 0;
  const summaries = async (_kind: string, { limit, after }: SummaryPage = {}) => {
    const from = after === undefined ? 0 : lines.findIndex(({ id }) => id === after.id) + 1;
    const page = lines.slice(from, limit === undefined ? undefined : from + limit);
    read += page.length;
    return page;
  };
  return { log: { summaries }, read: () => read };
}

const openOf = (list: ReturnType<typeof aList>, max: number) =>
  linesAtTop<{ readonly id: string; readonly isOpen: boolean }>(list.log, 'job', {
    max,
    isWanted: ({ isOpen }) => isOpen,
  });

test.each([0, 1, 24, 25, 26, 49, 50, 199, 200, 201, 300])(
  'Of %i open jobs all are listed, in their order, up to what one screen shows',
  async (open) => {
    for (const closed of [0, 1, 500]) {
      const lines = await openOf(aList({ open, closed }), 201);
      expect(lines.map(({ id }) => id)).toEqual(
        Array.from({ length: Math.min(open, 201) }, (_, at) => `${at}`),
      );
    }
  },
);

test('A list of closed jobs that is two hundred times as long costs whoever asks for the open ones not a line more', async () => {
  const [small, big] = [aList({ open: 3, closed: 100 }), aList({ open: 3, closed: 20_000 })];
  await openOf(small, 201);
  await openOf(big, 201);
  expect([small.read(), big.read()]).toEqual([25, 25]);
});
