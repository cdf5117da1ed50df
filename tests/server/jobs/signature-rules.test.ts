/** What a signature asks of whoever gives it, at a hold over HTTP. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { verifyStore } from '../../../server/log/verify.ts';
import { auditors } from '../../../server/streams.ts';
import { newRequestId, PINS } from '../an-app.ts';
import { signing } from '../signing/at-hold.ts';
import { type AtCard, atCard } from './at-card.ts';

let at: AtCard;
beforeEach(async () => {
  at = await atCard('holdWork');
});
afterEach(() => at.close());

const holds = async () => (await at.job.job()).holds.length;

describe('a signature at somebody else’s screen', () => {
  test('asks for name and PIN every time: with one of the two, or a session alone, nothing is signed (SA-15, WS-23)', async () => {
    for (const [missing, field] of [
      [{ pin: '' }, 'pin'],
      [{ signer: '' }, 'signer'],
      [{ pin: '', signer: '' }, 'signer'],
    ] as const) {
      const { status, problem } = await at.sendJson(await signing(at, missing));
      expect([status, Object.keys(problem.fields ?? {})]).toEqual([422, [field]]);
      expect(await holds()).toBe(0);
    }
    expect((await at.sendJson(await signing(at, { pin: '000000' }))).problem.code).toBe('PPL-001');
    expect(await holds()).toBe(0);
    const { pin: _, ...withoutPin } = await signing(at);
    await at.app.post(`/jobs/${at.job.id}/acts`, withoutPin, { as: at.supervisor.browser });
    expect(await holds()).toBe(0);
  });

  test('takes nothing from the form that only the server knows: who, when, at which line (WS-39)', async () => {
    const forged = { person: 'e1', at: '2001-01-01T00:00:00.000Z', seq: '1', hash: 'x', role: 'engineer' };
    expect((await at.sendJson(await signing(at, forged))).status).toBe(200);
    const line = (await at.app.services.log.entriesOf(`job:${at.job.id}`)).at(-1);
    expect([line?.kind, line?.person]).toEqual(['hold-signed', at.supervisor.person.id]);
    expect(line?.at).toMatch(/^2024-01-1/);
    expect(line?.inputs).toMatchObject({ signature: { role: 'supervisor' } });
  });

  test('is theirs alone: the session stays the technician’s, and the next one asks for both again (SA-16)', async () => {
    const signedIn = async () => {
      const entries = await at.app.services.log.entriesOf(`person:${at.supervisor.person.id}`);
      return entries.filter(({ kind }) => kind === 'signed-in').length;
    };
    const before = await signedIn();
    expect((await at.sendForm(await signing(at))).status).toBe(303);
    expect(await holds()).toBe(1);
    const people = await at.app.get('/sign-in', {
      as: at.technician.browser,
      headers: { accept: 'application/json' },
    });
    expect(await people.json()).toMatchObject({ person: { id: at.technician.person.id } });
    expect(await signedIn()).toBe(before);
  });

  test('twenty of it at once make one entry (WS-40)', async () => {
    const fields = await signing(at);
    const before = (await at.app.services.log.entriesOf(`job:${at.job.id}`)).length;
    const all = await Promise.all(
      Array.from({ length: 20 }, () => at.sendJson({ ...fields, requestId: newRequestId() })),
    );
    expect(all.filter(({ status }) => status < 300)).toHaveLength(1);
    expect(await holds()).toBe(1);
    expect((await at.app.services.log.entriesOf(`job:${at.job.id}`)).length).toBe(before + 1);
  });

  test('is refused from the moment that the signer was retired or has another role, page open or not; what they signed before stands (SA-20)', async () => {
    const open = await signing(at);
    const by = { requestId: newRequestId(), person: 'e1', screen: 'screen 9' };
    const { people } = at.app.services;
    await people.changeRole({ id: at.supervisor.person.id, role: 'technician' }, by);
    expect((await at.sendJson(open)).status).toBeGreaterThanOrEqual(400);
    await people.changeRole(
      { id: at.supervisor.person.id, role: 'supervisor' },
      { ...by, requestId: newRequestId() },
    );
    expect((await at.sendForm(await signing(at))).status).toBe(303);
    const { browser: again } = await at.app.signedIn('supervisor');
    await people.retire(at.supervisor.person.id, { ...by, requestId: newRequestId() });
    expect((await at.app.get('/people', { as: again })).status).toBe(303);
    // Each of them alone would do: no session, and no PIN that anything could be held against.
    const { store } = at.app.services;
    const sessions = (await store.outsideAll('session')).map(
      ({ body }) => (body as { person: string }).person,
    );
    expect(sessions).not.toContain(at.supervisor.person.id);
    expect(await store.outside('secret', at.supervisor.person.id)).toBeUndefined();
    const tried = await at.app.services.people
      .verify({ who: at.supervisor.person.id, pin: PINS.supervisor, screen: 'screen 9' })
      .catch((error: { text?: { code: string } }) => error.text?.code);
    expect(tried).toBe('PPL-001');
    const record = await at.app.get(`/jobs/${at.job.id}/record`, { as: at.technician.browser });
    expect(await record.text()).toContain(at.supervisor.person.name);
    expect(await verifyStore(at.app.services.store, auditors)).toMatchObject({ fault: null, problems: [] });
  });
});

describe('the order of the work', () => {
  test('is the server’s: a step further on is not answered before its hold is signed, nor a hold by whoever did the work (WS-36, WS-37)', async () => {
    const fields = await signing(at);
    const ahead = await at.sendJson({ ...fields, act: 'answer', step: 'turnStem' });
    expect([ahead.status, ahead.problem.code]).toEqual([409, 'JOB-003']);
    const own = { signer: at.technician.person.id, pin: PINS.technician };
    const byThemselves = await at.sendJson(await signing(at, own));
    expect([byThemselves.status, byThemselves.problem.code]).toEqual([403, 'HLD-002']);
    // A supervisor who recorded one card of it did part of it, too.
    await at.job.act({ kind: 'send-back', reason: 'look again', disposition: 'again' }, at.supervisor.person);
    await at.job.act({ kind: 'answer', given: { choice: 'goOn' } }, at.supervisor.person);
    await at.job.playTo('holdWork');
    const theirs = await at.sendJson(await signing(at));
    expect([theirs.status, theirs.problem.code]).toEqual([403, 'HLD-002']);
    expect([(await at.job.job()).step, await holds()]).toEqual(['holdWork', 0]);
  });
});
