import { afterAll, beforeAll, expect, test } from 'vitest';
import { OVERHAUL } from '../../../procedures/overhaul/procedures.ts';
import { answersFor, type Overrides } from '../../builders/answers.ts';
import { openSiteJob, type SiteJob } from '../../builders/site-jobs.ts';
import { type AnApp, anApp } from '../an-app.ts';
import { textOf } from '../pages/texts.ts';

const CARDS_MAX = 150;
const LEAKS: Overrides = { soapFound: { caseJointAir: 'yes' }, countBolts: { caseBolts: '12' } };

let app: AnApp;
let done: SiteJob;

beforeAll(async () => {
  app = await anApp({ people: true });
  const technician = await app.signedIn('technician');
  const supervisor = await app.signedIn('supervisor');
  const people = { technician: technician.person, supervisor: supervisor.person };
  done = await openSiteJob(app, { ...people, procedure: 'case-nuts' });
  await playToEnd(done);
});
afterAll(() => app?.close());

/** Every card answered from its fields, as a technician would who finds a leaking joint. */
async function playToEnd(site: SiteJob): Promise<void> {
  const steps = OVERHAUL.find(({ definition }) => definition.id === 'case-nuts')?.definition.steps ?? {};
  for (let cards = 0; cards < CARDS_MAX; cards += 1) {
    const job = await site.job();
    const step = steps[job.step];
    if (job.status === 'closed' || step === undefined) return;
    if (step.kind === 'wait') app.wait(step.waitS * 1000);
    if (step.kind === 'hold') await site.playOne();
    else await site.answer(answersFor(job, { step, overrides: LEAKS }));
  }
}

test('The record of a job without a stroke shows its readings, holds and energies, and no empty stroke', async () => {
  const reader = (await app.signedIn('technician')).browser;
  const response = await app.get(`/jobs/${done.id}/record`, { as: reader });
  expect(response.status).toBe(200);
  const text = textOf(await response.text());
  expect(text).toContain('Case nuts tightened and soaped');
  expect(text).toContain('Before test air goes on the case');
  expect(text).not.toContain('Stroke, as found');
  expect(text).not.toContain('cycle');
  expect(text).not.toContain('largest error');
  expect(text).toContain('No result of a stroke or a seat test was read');
  expect(text).not.toContain('undefined');
  expect(text).not.toContain('NaN');
});

test('Its log is whole, and the job closed as done', async () => {
  const job = await done.job();
  expect([job.status, job.closedAs]).toEqual(['closed', 'done']);
  expect(job.answers.filter(({ step }) => step === 'soapLeft').map(({ outcome }) => outcome)).toEqual([
    'tight',
  ]);
});
