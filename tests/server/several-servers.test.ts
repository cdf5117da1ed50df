/** Two whole servers on one database, as people at their screens meet them. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Person } from '../../server/people/person.ts';
import { openPostgresStore } from '../../server/store/postgres/postgres-store.ts';
import { openSiteJob, type SiteJob } from '../builders/site-jobs.ts';
import { aPlace } from '../postgres/places.ts';
import { type AnApp, anApp, Browser, PINS } from './an-app.ts';

const JSON_WANTED = { accept: 'application/json' };

let one: AnApp;
let other: AnApp;
let technician: { readonly browser: Browser; readonly person: Person };
let job: SiteJob;

beforeAll(async () => {
  const place = await aPlace();
  one = await anApp({ people: true, store: await openPostgresStore(place) });
  other = await anApp({ store: await openPostgresStore(place) });
  technician = await one.signedIn('technician');
  const { person: supervisor } = await one.signedIn('supervisor');
  job = await openSiteJob(one, { technician: technician.person, supervisor, place: 'bench' });
});
afterAll(async () => {
  await Promise.all([one.services.live.close(), other.services.live.close()]);
  await Promise.all([one.close(), other.close()]);
});

const note = { kind: 'finding', found: 'scored', where: 'plug' };
const addNote = (app: AnApp, words: string, requestId = `note-${words}-xxxx`) =>
  app.post(`/jobs/${job.id}/notes`, { ...note, words, requestId }, { as: technician.browser });
const placeAt = async (app: AnApp): Promise<number> => {
  const sent = { as: technician.browser, headers: JSON_WANTED };
  return ((await (await app.get(`/live?job=${job.id}`, sent)).json()) as { place: number }).place;
};

describe('whoever works at two servers of one site', () => {
  test('signs in at one, works at the other, and sees at each what was done at the other', async () => {
    const before = await placeAt(other);
    expect((await addNote(other, 'first')).status).toBe(303);
    const page = await (await one.get(`/jobs/${job.id}`, { as: technician.browser })).text();
    expect(page).toContain('first');
    expect((await addNote(one, 'second')).status).toBe(303);
    expect(await placeAt(other)).toBe(before + 2);
    expect(await (await other.get(`/jobs/${job.id}`, { as: technician.browser })).text()).toContain('second');
  });

  test('sends the same form to both, as a proxy might, and it is recorded once', async () => {
    const before = await placeAt(one);
    const answers = await Promise.all(
      [one, other, one, other].map((app) => addNote(app, 'same', 'sent-twice-x')),
    );
    expect(answers.map(({ status }) => status)).toEqual([303, 303, 303, 303]);
    expect([await placeAt(one), await placeAt(other)]).toEqual([before + 1, before + 1]);
  });

  // The quickest of three: a busy machine keeps one of them waiting, a fault all.
  test('hears at one within a second what is done at the other, and nobody asks for it', async () => {
    const headers = { accept: 'text/event-stream' };
    const answer = await other.get(`/live?job=${job.id}`, { as: technician.browser, headers });
    const reader = answer.body?.getReader();
    if (reader === undefined) throw new Error('nothing to listen to');
    await reader.read();
    const place = await placeAt(other);
    const tookMs: number[] = [];
    for (const time of [1, 2, 3]) {
      await addNote(one, `heard-${time}`);
      const doneMs = performance.now();
      let heard = '';
      while (!heard.includes('data: {')) heard += new TextDecoder().decode((await reader.read()).value);
      tookMs.push(performance.now() - doneMs);
      expect(heard).toContain(`data: {"stream":"job:${job.id}","place":${place + time}}`);
    }
    expect(Math.min(...tookMs)).toBeLessThan(1000);
    await reader.cancel();
  });

  test('has their wrong PINs counted together', async () => {
    const wrong = (app: AnApp) => app.post('/sign-in', { who: 'o1', pin: '1' }, { as: new Browser() });
    // All at once, alternately here and there: none is lost in the count.
    await Promise.all([one, other, one, other, one].map(wrong));
    const right = { who: 'o1', pin: PINS['safety-officer'] };
    const held = await other.post('/sign-in', right, { as: new Browser() });
    expect([held.status, await held.text()]).toEqual([429, expect.stringContaining('Too many wrong tries')]);
  });

  test('is one of the people with one id, though two are added at once at both', async () => {
    const add = (app: AnApp, name: string) => {
      const by = { requestId: `add-${name}-xxxxx`, person: 'e1', screen: 'test bench' };
      return app.services.people.addWithPin({ name, role: 'technician', pin: '739251' }, by);
    };
    const added = await Promise.all([add(one, 'Technician 8'), add(other, 'Technician 9')]);
    expect(added.map(({ id }) => id).sort()).toEqual(['t2', 't3']);
    expect((await one.services.people.list()).map(({ id }) => id)).toEqual(
      (await other.services.people.list()).map(({ id }) => id),
    );
    await expect(add(other, 'Technician 8')).resolves.toMatchObject({ id: added[0]?.id });
  });
});
