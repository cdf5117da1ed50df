import { afterAll, beforeAll, expect, test } from 'vitest';
import { jobKind } from '../../../../server/jobs/job-stream.ts';
import { newestAct } from '../../../../server/jobs/view/newest-act.ts';
import { attributeOf, readHtml } from '../../../views/html.ts';
import { newRequestId } from '../../an-app.ts';
import { type AtCard, atCard } from '../at-card.ts';

let at: AtCard;
beforeAll(async () => {
  at = await atCard('asFoundCycle');
});
afterAll(() => at.close());

/** What the page of the job tells other screens of its newest line, in the language of whoever looks. */
async function told(language: 'en' | 'es'): Promise<string | undefined> {
  const { app, supervisor, job } = at;
  await app.post('/language', { language }, { as: supervisor.browser });
  const { elements } = readHtml(await (await app.get(`/jobs/${job.id}`, { as: supervisor.browser })).text());
  const work = elements.find((one) => attributeOf(one, 'id') === 'work');
  return work && attributeOf(work, 'data-live-said');
}

test('another screen hears that a job was left for later and taken up again, not that somebody answered', async () => {
  const { app, technician, job } = at;
  expect(await told('en')).toMatch(/^Answered by technician 1 \(T1\) at \d\d:\d\d UTC\.$/);
  const stale = { ...(await at.cardFields('answer')), ...{ travelM: '12 %' } };
  await job.act({ kind: 'park', reason: 'end of the shift' });
  expect(await told('en')).toMatch(/^Left for later by technician 1 \(T1\) at \d\d:\d\d UTC\.$/);
  expect(await told('es')).toMatch(/^Dejado para más tarde por .* \(T1\) a las \d\d:\d\d UTC\.$/);
  await job.act({ kind: 'take-up' });
  expect(await told('es')).toMatch(/^Retomado por .* \(T1\) a las /);
  const { problem } = await at.sendJson({ ...stale, requestId: newRequestId() }, technician.browser);
  expect(problem.what).toMatch(
    /^Taken up again by technician 1 \(T1\) at .* UTC\. Your card was open then\.$/,
  );
  const now = await app.services.log.state(jobKind, job.id);
  expect(newestAct({ ...now, answers: [], notes: [] }, [])).toBe('');
});
