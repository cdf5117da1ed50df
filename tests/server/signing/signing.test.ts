/** What a signature over HTTP stands on: one page, shown a moment ago, signed once, by whoever may at that moment. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { Refusal } from '../../../safety/refusal.ts';
import { Catalogue } from '../../../server/jobs/catalogue.ts';
import { loadJob } from '../../../server/jobs/load.ts';
import { digestOfShown } from '../../../server/jobs/shown.ts';
import { NONCE_MS } from '../../../server/signing/nonces.ts';
import { newRequestId, PINS } from '../an-app.ts';
import { type AtCard, atCard } from '../jobs/at-card.ts';
import { textOf } from '../pages/texts.ts';
import { signing } from './at-hold.ts';

let at: AtCard;
beforeEach(async () => {
  at = await atCard('holdWork');
});
afterEach(() => at.close());

const holds = async () => (await at.job.job()).holds;
const refused = async (fields: object) => {
  const { status, problem } = await at.sendJson(fields);
  return [status, problem.code];
};

describe('a page that is signed', () => {
  test('is void when a reading on it changes after it was shown (SA-30)', async () => {
    const fields = await signing(at);
    const place = (await at.job.job()).evidence.supplyAir?.place ?? 0;
    await at.job.act({
      kind: 'correct',
      corrects: place,
      given: { supplyAfterPa: '0.1', method: 'gauge' },
      reason: 'misread',
    });
    const now = await at.job.job();
    // Moved on to the newest line by hand: the page that was shown is still not this one.
    const forged = { ...fields, place: String(now.place), step: now.step };
    expect(await refused(forged)).toEqual([409, 'HLD-016']);
    expect(await holds()).toEqual([]);
  });

  test('is void a quarter of an hour after it was shown, at another screen, and with a number of nobody (SA-30)', async () => {
    const fields = await signing(at);
    expect(await refused({ ...fields, nonce: 'k1.none.at-all' })).toEqual([409, 'HLD-016']);
    expect(await refused({ ...fields, nonce: '' })).toEqual([409, 'HLD-016']);
    const elsewhere = await at.sendJson(fields, at.supervisor.browser);
    expect(elsewhere.problem.code).toBe('HLD-016');
    at.app.wait(NONCE_MS);
    expect(await refused(fields)).toEqual([409, 'HLD-016']);
    expect(await holds()).toEqual([]);
    expect((await at.sendJson(await signing(at))).status).toBe(200);
  });

  test('is signed once: the same page under a new request is told so, under its own it gets the first answer (HP-01)', async () => {
    const fields = await signing(at);
    expect((await at.sendJson(fields)).status).toBe(200);
    expect(await refused({ ...fields, requestId: newRequestId() })).toEqual([409, 'HLD-007']);
    at.app.wait(NONCE_MS + 60_000);
    expect((await at.sendJson(fields)).status).toBe(200);
    expect(await holds()).toHaveLength(1);
  });

  test('signed twenty times at once makes one entry (HP-01)', async () => {
    const pages = await Promise.all(Array.from({ length: 20 }, () => signing(at)));
    const before = await at.length();
    const answers = await Promise.all(
      pages.map((fields) => at.sendJson({ ...fields, requestId: newRequestId() })),
    );
    expect(answers.filter(({ status }) => status === 200)).toHaveLength(1);
    for (const { status, problem } of answers.filter((one) => one.status !== 200)) {
      expect([status, problem.code]).toEqual([409, 'JOB-002']);
      expect(problem.what).toMatch(/^This step was answered by supervisor 1 \(S1\)/);
    }
    expect(await at.length()).toBe(before + 1);
  });
});

describe('whoever signs', () => {
  test('may do so at that moment: a role that was taken away while the page was open signs nothing, nor does whoever left (SA-08, SA-20)', async () => {
    const { people } = at.app.services;
    const by = { requestId: newRequestId(), person: 'e1', screen: 'test' };
    const second = await people.addWithPin(
      { name: 'supervisor 2', role: 'supervisor', pin: '274916' },
      { ...by, requestId: newRequestId() },
    );
    const fields = await signing(at);
    await people.changeRole({ id: at.supervisor.person.id, role: 'technician' }, by);
    expect(await refused(fields)).toEqual([403, 'HLD-001']);
    expect(await holds()).toEqual([]);
    // Proven a moment before as a supervisor: what counts is the role at the moment of writing.
    const { around } = await loadJob(at.job.id, {
      services: at.app.services,
      catalogue: new Catalogue(),
      person: at.supervisor.person,
    });
    const late = at.job.act({ kind: 'sign', shownDigest: around.shownDigest }, at.supervisor.person);
    await expect(late).rejects.toMatchObject({ text: { code: 'HLD-001' } });
    await people.retire(at.supervisor.person.id, { ...by, requestId: newRequestId() });
    expect((await at.sendJson(await signing(at))).status).toBe(403);
    await people.retire(second.id, { ...by, requestId: newRequestId() });
    const left = at.job.act({ kind: 'sign', shownDigest: around.shownDigest }, second);
    await expect(left).rejects.toMatchObject({ text: { code: 'HLD-001' } });
  });

  test('is kept by name, role, time and meaning, on the screen, in print and in the export (SA-11, SA-25)', async () => {
    await at.sendJson(await signing(at));
    const entry = (await at.app.services.log.entriesOf(`job:${at.job.id}`)).at(-1);
    expect(entry?.inputs).toMatchObject({
      signature: {
        person: 's1',
        name: 'supervisor 1',
        role: 'supervisor',
        meaning: 'signed',
        way: 'walk-up',
      },
    });
    const as = at.technician.browser;
    const page = textOf(await (await at.app.get(`/jobs/${at.job.id}`, { as })).text());
    expect(page).toMatch(/Before plug stem or adjuster is turned passed , S1 \d\d:\d\d UTC/);
    const record = textOf(await (await at.app.get(`/jobs/${at.job.id}/record`, { as })).text());
    expect(record).toMatch(
      /Signed: supervisor 1 \(S1\), supervisor, 2024-01-15 \d\d:\d\d UTC, screen \d+\. Allowed: /,
    );
  });

  test('signs what is kept with the signature, and it fits no other job and no other step (SA-12, HP-13)', async () => {
    await at.sendJson(await signing(at));
    const job = await at.job.job();
    const [entry] = (await at.app.services.log.entriesOf(`job:${at.job.id}`)).slice(-1);
    if (entry === undefined) throw new Error('nothing was written');
    const { shown } = entry.inputs as { shown: Record<string, unknown> };
    const { shownDigest } = entry.effects as { shownDigest: string };
    expect(digestOfShown(shown as never)).toBe(shownDigest);
    expect(shown).toMatchObject({
      job: at.job.id,
      step: 'holdWork',
      definition: job.definitionHash,
      revision: job.procedureRevision,
      criterion: expect.stringContaining('shown safe by a reading inside its limit'),
    });
    const page = { job: '1', line: 7, digest: shownDigest, screen: 'screen 1' };
    const nonce = at.app.services.nonces.issue(page);
    at.app.services.nonces.check(nonce, page);
    for (const other of [{ job: '2' }, { line: 8 }, { digest: 'd' }, { screen: 'screen 2' }])
      expect(() => at.app.services.nonces.check(nonce, { ...page, ...other })).toThrow(Refusal);
    for (const other of [{ job: '99' }, { step: 'signReturn' }, { definition: 'other' }, { revision: 'Z' }])
      expect(digestOfShown({ ...shown, ...other } as never)).not.toBe(shownDigest);
  });
});

describe('a hold that goes back', () => {
  test('says what is missing and what is done about it; work stays stopped until it is signed, and both are kept (HP-10)', async () => {
    const wrong = { act: 'send-back', reason: '', disposition: 'somehow' };
    const { problem } = await at.sendJson(await signing(at, wrong));
    expect([problem.code, Object.keys(problem.fields ?? {})]).toEqual(['HLD-005', ['reason', 'disposition']]);
    const bare = await at.sendJson(
      await signing(at, { act: 'send-back', reason: ' ', disposition: 'again' }),
    );
    expect([bare.problem.code, Object.keys(bare.problem.fields ?? {})]).toEqual(['HLD-005', ['reason']]);
    const back = { act: 'send-back', reason: 'drain still dribbles', disposition: 'putRight' };
    expect((await at.sendJson(await signing(at, back))).status).toBe(200);
    const { step, place } = await at.job.job();
    expect(step).toBe('haltIsolating');
    expect(
      await refused({ requestId: newRequestId(), act: 'answer', place: String(place), step: 'connectAir' }),
    ).toEqual([409, 'JOB-003']);
    await at.job.answer({ choice: 'goOn' });
    await at.job.playTo('connectAir');
    const { holds: signed, signing: kept } = await at.job.job();
    expect(signed).toHaveLength(1);
    expect(kept.sentBack).toMatchObject([
      { reason: 'drain still dribbles', disposition: 'putRight', acceptedAt: signed[0]?.place },
    ]);
    const record = textOf(
      await (await at.app.get(`/jobs/${at.job.id}/record`, { as: at.technician.browser })).text(),
    );
    expect(record).toContain(
      'What is done about it: put right first, then shown and asked for again; signed on line',
    );
  });

  test('for good is not signed any more on this job', async () => {
    const back = { act: 'send-back', reason: 'body cracked', disposition: 'leave' };
    await at.sendJson(await signing(at, back));
    await at.job.answer({ choice: 'goOn' });
    for (let cards = 0; (await at.job.job()).step !== 'holdWork' && cards < 40; cards += 1)
      await at.job.playOne();
    expect(await refused(await signing(at))).toEqual([409, 'HLD-010']);
    const page = await at.app.get(`/jobs/${at.job.id}`, { as: at.technician.browser });
    expect(textOf(await page.text())).toContain(
      'Sent back for good: the valve is left as it is. Make safe and stop.',
    );
  });
});

test('No supervisor on the spot: from a hold the job is parked or made safe, and no role signs for itself (HP-21)', async () => {
  const own = await signing(at, { signer: at.technician.person.id, pin: PINS.technician });
  expect(await refused(own)).toEqual([403, 'HLD-002']);
  const { person: engineer } = await at.app.signedIn('engineer');
  const byRole = await signing(at, { signer: engineer.id, pin: PINS.engineer });
  expect(await refused(byRole)).toEqual([403, 'HLD-001']);
  const fields = async (act: string) => ({ ...(await at.cardFields(act)), reason: 'nobody here' });
  expect((await at.sendJson(await fields('park'))).status).toBe(200);
  expect((await at.job.job()).status).toBe('parked');
  expect((await at.sendJson(await fields('take-up'))).status).toBe(200);
  expect((await at.sendJson(await fields('make-safe'))).status).toBe(200);
  expect((await at.job.job()).step).toBe('haltIsolating');
});
