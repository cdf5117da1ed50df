import { afterAll, beforeAll, expect, test } from 'vitest';
import { positionerStroke } from '../../../procedures/commissioning/positioner-stroke.ts';
import { CYCLE_POINTS, pointField } from '../../../procedures/rules/own-stroke.ts';
import type { Step } from '../../../procedures/vocabulary.ts';
import { answersFor, type Overrides } from '../../builders/answers.ts';
import { aSheetOf } from '../../builders/sheets.ts';
import { openSiteJob, type SiteJob } from '../../builders/site-jobs.ts';
import { type AnApp, anApp, type Browser } from '../an-app.ts';
import { textOf } from '../pages/texts.ts';

const CARDS_MAX = 60;

/** It opens to 90 % where the signal asks for all, and hangs by 3 % at the middle on the way down. */
const READ: Overrides = {
  supplyRead: { supplyReadPa: '20 psi' },
  strokeFound: Object.fromEntries(
    CYCLE_POINTS.map((point) => {
      const hangs = point.direction === 'down' && point.percent === 50 ? 3 : 0;
      const travel = point.percent === 100 ? 90 : point.percent + hangs;
      return [pointField(point, 'travel'), `${travel} %`];
    }),
  ),
  strokeOutside: { choice: 'calibrate', reason: 'span is off' },
};

let app: AnApp;
let browser: Browser;
let done: SiteJob;
let html: string;
let card: string;

beforeAll(async () => {
  app = await anApp({ people: true });
  const technician = await app.signedIn('technician');
  const supervisor = await app.signedIn('supervisor');
  browser = technician.browser;
  const sheet = aSheetOf({
    positioner: 'pneumatic',
    positionerRisingSignalLoads: 'bottom',
    positionerRelays: 'one',
  });
  const people = { technician: technician.person, supervisor: supervisor.person };
  done = await openSiteJob(app, { ...people, procedure: 'positioner-stroke', sheet });
  const steps: Readonly<Record<string, Step>> = positionerStroke.steps;
  for (let cards = 0; cards < CARDS_MAX; cards += 1) {
    const job = await done.job();
    const step = steps[job.step];
    if (job.status === 'closed' || step === undefined) break;
    if (job.step === 'strokeFound')
      card = textOf(await (await app.get(`/jobs/${done.id}`, { as: browser })).text());
    await done.answer(answersFor(job, { step, overrides: READ }));
  }
  const response = await app.get(`/jobs/${done.id}/record`, { as: browser });
  html = await response.text();
});
afterAll(() => app?.close());

test('Each field of the card names its signal for this valve', () => {
  expect(card).toContain('Travel at 6.00 psi, going up');
  expect(card).toContain('Travel at 12.00 psi, coming down');
  expect(card).not.toMatch(/\{[a-z]\w*\}/i);
});

test('The record of a stroke by its own signal shows its table in percent of the signal, and its curve', () => {
  const text = textOf(html);
  expect(text).toContain('Stroke, as found');
  expect(html).toContain('signal, %');
  expect(text).toContain('90.0');
  expect(text).not.toContain('Stroke, as left');
  expect(html).toMatch(/Stroke, as found: largest error \u221210\.0 %\./);
});

test('It shows error and hysteresis against the sheet, and says nothing of friction or spring', () => {
  const text = textOf(html);
  expect(text).toContain('As found: not inside its limits.');
  expect(text).toMatch(/largest error, % of travel\s+\u221210\.0/);
  expect(text).toMatch(/hysteresis and dead band, %\s+3\.0/);
  // By hand: the line from 25 % at a quarter to 90 % at the end rises 65 in 75.
  expect(text).toMatch(/zero, % of travel\s+\+3\.3/);
  expect(text).toMatch(/stroke too long, % of travel\s+\u221213\.3/);
  expect(text).toMatch(/off the straight line, % of travel/);
  expect(text).not.toContain('dead band, % of the signal');
  expect(text).not.toContain('friction each way');
  expect(text).not.toContain('spring against bench set');
  for (const never of ['undefined', 'NaN']) expect(text).not.toContain(never);
});
