import { afterAll, beforeAll, expect, test } from 'vitest';
import { markBackup, markFailedBackup } from '../../../server/backups/marks.ts';
import { aFolder } from '../../folders.ts';
import { type AnApp, anApp, type Browser } from '../an-app.ts';

let app: AnApp;
let engineer: Browser;
beforeAll(async () => {
  app = await anApp({ people: true, backups: { to: aFolder(), everyHours: 24, keepDays: 30 } });
  ({ browser: engineer } = await app.signedIn('engineer'));
});
afterAll(() => app.close());

const json = async (as = engineer) =>
  (await app.get('/status', { as, headers: { accept: 'application/json' } })).json();
const words = async () =>
  (await (await app.get('/status', { as: engineer })).text()).replace(/<[^>]+>/g, ' ').replace(/\s+/g, ' ');

test('the state of the server is told in words and to programs: log, space, backups, checkpoint, release', async () => {
  const { seq } = await app.services.log.head();
  const told = await json();
  expect(told).toMatchObject({
    version: 'test',
    log: { entries: seq, freeBytes: expect.any(Number), bytes: expect.any(Number) },
    backups: { everyHours: 24, keepDays: 30, freeBytes: expect.any(Number) },
    lastBackup: null,
    lastCheckpoint: null,
    lastVerification: null,
  });
  expect(told.log.bytes).toBeGreaterThan(4096);
  const page = await words();
  for (const text of [
    `lines ${seq}`,
    'every 24 hours',
    'kept for 30 days',
    'last one none yet',
    'release test',
  ])
    expect(page).toContain(text);
});

test('a backup stands there with its check, one that failed with why, and what wants seeing to first', async () => {
  const at = app.services.now().toISOString();
  const { store } = app.services;
  await markBackup(store, { at, folder: 'copies/one', entries: 12, check: '4711-0815', photosLost: 0 });
  expect(await words()).toContain('whole, 12 lines, check number 4711-0815');
  expect((await json()).lastVerification).toEqual({ at, entries: 12, isWhole: true, by: 'a backup' });
  await markFailedBackup(store, { at, why: 'No backup was made: <there> is no room.' });
  expect((await json()).warnings[0]).toMatchObject({ code: 'backup-failed', isUrgent: true });
  const page = await (await app.get('/status', { as: engineer })).text();
  expect(page).toContain('<b>See to it now.</b>');
  expect(page).toContain('No backup was made: &lt;there&gt; is no room.');
});

test('a check of the whole log by a person is remembered there', async () => {
  await app.post('/audit/verify', {}, { as: engineer });
  const { seq } = await app.services.log.head();
  expect((await json()).lastVerification).toMatchObject({ entries: seq, isWhole: true, by: 'a person' });
});
