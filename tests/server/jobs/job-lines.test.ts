import { expect, test } from 'vitest';
import { newestJobLines } from '../../../server/jobs/job-stream.ts';
import { openSqliteStore } from '../../../server/store/sqlite-store.ts';
import { aFolder } from '../../folders.ts';

test('Jobs that are open or parked stand before closed ones, each the newest first, however many there are', async () => {
  const store = openSqliteStore({ folder: aFolder() });
  const line = (at: number, status: string) => ({
    kind: 'job',
    id: `${at}`,
    sort: `${status === 'closed' ? '2' : '1'} 2024-01-${String(at).padStart(2, '0')}`,
    body: { id: `${at}`, status },
  });
  const statuses = ['closed', 'open', 'closed', 'parked', 'closed', 'open', 'closed'];
  const summaries = statuses.map((status, at) => line(at + 1, status));
  await store.commit({ entries: [], summaries, withdrawn: [], answers: [] });
  const ids = async (max: number) => (await newestJobLines(store, max)).map(({ id }) => id);
  expect(await ids(40)).toEqual(['6', '4', '2', '7', '5', '3', '1']);
  expect(await ids(5)).toEqual(['6', '4', '2', '7', '5']);
  expect(await ids(2)).toEqual(['6', '4']);
  await store.close();
});
