import { afterAll, beforeAll, expect, test } from 'vitest';
import { strokeCheck } from '../../../procedures/commissioning/stroke-check.ts';
import { PROCEDURES } from '../../../procedures/served.ts';
import { es } from '../../../views/language/es.ts';
import { isProcedureSaid } from '../../../views/language/said-procedures.ts';
import { wordsOf } from '../../../views/language/words.ts';
import { aSheet } from '../../builders/sheets.ts';
import { openSiteJob } from '../../builders/site-jobs.ts';
import { type AnApp, anApp } from '../../server/an-app.ts';
import { textsOfDefinition } from './definition-texts.ts';

const words = wordsOf({ language: 'es', catalogue: es });
const SPANISH = { 'accept-language': 'es' };

let app: AnApp;
beforeAll(async () => {
  app = await anApp({ people: true });
});
afterAll(() => app.close());

test('the stroke check is whole in Spanish: every title, instruction, question, caution and way', () => {
  const texts = textsOfDefinition(strokeCheck);
  expect(texts.length).toBeGreaterThan(350);
  expect(texts.filter((text) => !Object.hasOwn(es, text) && !words.say(text).isWhole)).toEqual([]);
});

test('its first cards and its hold are said in Spanish on the page, with a decimal comma', async () => {
  const { person: technician, browser } = await app.signedIn('technician');
  const { person: supervisor } = await app.signedIn('supervisor');
  const job = await openSiteJob(app, { technician, supervisor, place: 'line' });
  const page = async () => await (await app.get(`/jobs/${job.id}`, { as: browser, headers: SPANISH })).text();
  expect(await page()).toContain(
    'Lea el manual del fabricante de esta válvula: va por delante de esta tarjeta.',
  );
  await job.playTo('rigGauges');
  expect(await page()).toContain('Ponga 9,00 psi.');
  expect(await page()).not.toContain('lang="en">The cards');
});

test('a procedure that nobody has translated stays English, marked so and said plainly', async () => {
  const { person: technician, browser } = await app.signedIn('technician');
  const { person: supervisor } = await app.signedIn('supervisor');
  const sheet = { ...aSheet(), tag: 'FV-215' };
  const job = await openSiteJob(app, {
    technician,
    supervisor,
    sheet,
    place: 'bench',
    procedure: 'bench-set',
  });
  const html = await (await app.get(`/jobs/${job.id}`, { as: browser, headers: SPANISH })).text();
  expect(html).toContain('Las tarjetas de este procedimiento están en inglés');
  expect(html).toContain('<div class="lines" lang="en">');
  expect(html).toContain('<html lang="es"');
});

test('only the stroke check is marked as said in Spanish, and all are in English', () => {
  const said = PROCEDURES.map(({ definition }) => definition.id).filter((id) => isProcedureSaid(id, 'es'));
  expect(said).toEqual(['stroke-check']);
});
