import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { z } from 'zod';
import { route } from '../../../server/http/route.ts';
import { type AnApp, anApp, Browser, newRequestId, PINS } from '../an-app.ts';
import { textOf } from './texts.ts';

/** A form as the work has them: recorded once for each request id. */
const written: string[] = [];
const writeReading = route({
  method: 'POST',
  path: '/readings',
  name: 'writeReading',
  summary: 'x',
  roles: ['technician'],
  body: z.object({ casePressure: z.string(), pin: z.string().optional() }),
  answer: z.object({ casePressure: z.string() }),
  handle: async ({ services, requestId, person, screen, body }) => {
    await services.log.act({
      requestId,
      fingerprint: body.casePressure,
      person: person.id,
      screen,
      streams: ['site'],
      decide: () => {
        written.push(body.casePressure);
        return { entries: [], answer: {} };
      },
    });
    return { data: { casePressure: body.casePressure }, seeOther: '/help' };
  },
});

const HALF_AN_HOUR_MS = 30 * 60_000;
let app: AnApp;
let technician: Browser;
beforeEach(async () => {
  written.length = 0;
  app = await anApp({ people: true, routes: [writeReading] });
  ({ browser: technician } = await app.signedIn('technician'));
});
afterEach(() => app.close());

const signIn = (who: string, pin: string, as: Browser) => app.post('/sign-in', { who, pin }, { as });
const page = async (path: string, as: Browser) => textOf(await (await app.get(path, { as })).text());

async function sentLate(fields: Record<string, string> = { casePressure: '9 psi' }, wait = HALF_AN_HOUR_MS) {
  app.wait(wait);
  return await app.post('/readings', { requestId: newRequestId(), ...fields }, { as: technician });
}

async function idOfDraft(as: Browser): Promise<string> {
  const answer = await app.get('/drafts', { as, headers: { accept: 'application/json' } });
  return ((await answer.json()) as { drafts: { id: string }[] }).drafts[0]?.id ?? '';
}

describe('a reading that is sent when the sign-in has run out', () => {
  test('is kept, offered after sign-in, and recorded once when it is sent then (WS-24)', async () => {
    const late = await sentLate();
    expect([late.status, textOf(await late.text())]).toEqual([
      401,
      expect.stringContaining('What you typed is kept for you alone. Nothing was recorded.'),
    ]);
    expect(written).toEqual([]);
    await signIn('t1', PINS.technician, technician);
    expect(await page('/help', technician)).toContain('Something that you typed was not sent');
    const offered = await (await app.get('/drafts', { as: technician })).text();
    expect(textOf(offered)).toContain('case pressure 9 psi');
    const [, requestId = ''] =
      /action="\/readings">\s*<input[^>]*name="requestId" value="([^"]+)"/.exec(offered) ?? [];
    for (let time = 0; time < 2; time += 1)
      await app.post('/readings', { requestId, casePressure: '9 psi' }, { as: technician });
    expect(written).toEqual(['9 psi']);
    expect(await page('/drafts', technician)).toContain('Nothing of yours waits to be sent.');
    expect(await page('/help', technician)).not.toContain('was not sent');
  });

  test('is shown to nobody else who signs in at that screen, nor thrown away by them (WS-24, WS-43)', async () => {
    await sentLate();
    const { browser: other } = await app.signedIn('supervisor');
    await signIn('s1', PINS.supervisor, technician);
    for (const as of [other, technician]) {
      expect(await page('/drafts', as)).toContain('Nothing of yours waits to be sent.');
      expect(await page('/help', as)).not.toContain('was not sent');
    }
    await signIn('t1', PINS.technician, technician);
    const id = await idOfDraft(technician);
    expect((await app.post(`/drafts/${id}/discard`, {}, { as: other })).status).toBe(404);
    expect(await idOfDraft(technician)).toBe(id);
    expect((await app.post(`/drafts/${id}/discard`, {}, { as: technician })).status).toBe(303);
    expect(await idOfDraft(technician)).toBe('');
  });

  test('is not kept with a PIN in it, from another site, after signing out, or long afterwards', async () => {
    await sentLate({ casePressure: '9 psi', pin: '482915' });
    await app.post(
      '/readings',
      { requestId: newRequestId(), casePressure: '8 psi' },
      { as: technician, headers: { origin: 'http://evil.example' } },
    );
    await sentLate({ casePressure: '7 psi' }, 13 * 3_600_000).then(() =>
      signIn('s1', PINS.supervisor, new Browser()),
    );
    await signIn('t1', PINS.technician, technician);
    const told = await page('/drafts', technician);
    for (const never of ['9 psi', '8 psi', '482915']) expect(told).not.toContain(never);
    await app.post('/sign-out', {}, { as: technician });
    await app.post('/readings', { requestId: newRequestId(), casePressure: '6 psi' }, { as: technician });
    await signIn('t1', PINS.technician, technician);
    expect(await page('/drafts', technician)).not.toContain('6 psi');
  });

  test('is forgotten after three days, and of many only the newest are kept', async () => {
    app.wait(HALF_AN_HOUR_MS);
    for (let at = 1; at <= 14; at += 1) {
      app.wait(1000);
      await app.post(
        '/readings',
        { requestId: newRequestId(), casePressure: `${at} psi` },
        { as: technician },
      );
    }
    await signIn('t1', PINS.technician, technician);
    const told = await page('/drafts', technician);
    expect([told.includes(' 4 psi'), told.includes(' 5 psi'), told.includes(' 14 psi')]).toEqual([
      false,
      true,
      true,
    ]);
    app.wait(3 * 24 * 3_600_000 + 1000);
    await signIn('t1', PINS.technician, technician);
    expect(await page('/drafts', technician)).toContain('Nothing of yours waits to be sent.');
    expect(await app.services.store.outsideAll('draft')).toEqual([]);
  });
});
