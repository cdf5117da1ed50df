import { afterAll, beforeAll, expect, test } from 'vitest';
import { type AnApp, anApp } from '../an-app.ts';

let app: AnApp;
beforeAll(async () => {
  app = await anApp({ people: true });
});
afterAll(() => app.close());

const ACCEPT = { 'accept-language': 'es-CL, es;q=0.9, en;q=0.4' };
const htmlOf = async (answer: Response | Promise<Response>) => await (await answer).text();

test('before anybody has signed in, a page is in the language that the browser asks for', async () => {
  expect(await htmlOf(app.get('/sign-in'))).toContain('<html lang="en"');
  const spanish = await htmlOf(app.get('/sign-in', { headers: ACCEPT }));
  expect(spanish).toContain('<html lang="es"');
  expect(spanish).toContain('Nombre o id');
  expect((await app.get('/sign-in')).headers.get('vary')).toContain('Accept-Language');
});

test('what a person chose is kept with them: at another screen they read the same, and others read their own', async () => {
  const { browser, person } = await app.signedIn('technician');
  const other = await app.signedIn('supervisor');
  const chosen = await app.post('/language', { language: 'es' }, { as: browser });
  expect(chosen.status).toBe(303);
  expect(await htmlOf(app.get('/help', { as: browser }))).toContain('PIN olvidado');
  expect(await htmlOf(app.get('/help', { as: other.browser }))).toContain('PIN forgotten');
  browser.cookies.delete('language');
  expect(await htmlOf(app.get('/help', { as: browser }))).toContain('<html lang="es"');
  const kinds = (await app.services.log.entriesOf(`person:${person.id}`)).map(({ kind }) => kind);
  expect(kinds.filter((kind) => kind === 'language-chosen')).toHaveLength(1);
});

test('choosing the same again writes nothing, and an unknown language is refused', async () => {
  const { browser, person } = await app.signedIn('engineer');
  await app.post('/language', { language: 'es' }, { as: browser });
  await app.post('/language', { language: 'es' }, { as: browser });
  const entries = await app.services.log.entriesOf(`person:${person.id}`);
  expect(entries.filter(({ kind }) => kind === 'language-chosen')).toHaveLength(1);
  expect((await app.post('/language', { language: 'tlh' }, { as: browser })).status).toBe(422);
});

test('a refusal is told in the language of whoever asked, and its code stays', async () => {
  const answer = await app.post('/sign-in', { who: 'nobody', pin: '000000', next: '' }, { headers: ACCEPT });
  const html = await htmlOf(answer);
  expect(html).toContain('PPL-001');
  expect(html).toContain('No se hizo.');
  const json = await app.postJson(
    '/sign-in',
    { who: 'nobody', pin: '000000', next: '' },
    { headers: ACCEPT },
  );
  expect(JSON.stringify(await json.json())).toMatch(/"code":"PPL-001".*[Tt]he/);
});
