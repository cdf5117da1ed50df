import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { GEAR_ROLES } from '../../../procedures/test-gear/roles.ts';
import { jobKind } from '../../../server/jobs/job-stream.ts';
import { rebuildSummaries } from '../../../server/log/rebuild.ts';
import { verifyStore } from '../../../server/log/verify.ts';
import { practiceKinds } from '../../../server/practice/practice-site.ts';
import { auditors } from '../../../server/streams.ts';
import { aSheet } from '../../builders/sheets.ts';
import { readHtml, textOf } from '../../views/html.ts';
import type { AnApp, Browser } from '../an-app.ts';
import { newRequestId } from '../an-app.ts';
import { withValve } from '../jobs/site.ts';
import { aBench, BenchClient } from '../practice/a-bench.ts';

let app: AnApp;
let technician: Browser;
let supervisor: Browser;
beforeAll(async () => {
  app = await aBench();
  technician = (await app.signedIn('technician')).browser;
  supervisor = (await app.signedIn('supervisor')).browser;
});
afterAll(() => app.close());

async function page(path: string, as = technician): Promise<string> {
  const response = await app.get(path, { as });
  const { faults, elements } = readHtml(await response.text());
  expect(faults, path).toEqual([]);
  return elements.map((element) => textOf(element)).join(' ');
}

async function toHub(client: BenchClient): Promise<void> {
  for (let acts = 0; acts < 8 && (await client.told()).step !== 'inService'; acts += 1)
    await client.asShown();
  expect((await client.told()).step).toBe('inService');
}

describe('The practice bench', () => {
  test('lets an apprentice find a fault with the cards of the real job, and then tells what it was', async () => {
    const chooser = new BenchClient(app, supervisor);
    const response = await chooser.set({ how: 'chosen', cause1: 'signalTubeLeaks', severity: 'bad' });
    expect(response.status, await response.clone().text()).toBe(201);
    const client = new BenchClient(app, technician);
    client.job = chooser.job;
    await client.act({});
    const complaint = await client.told();
    expect(complaint.step).toBe('complaint');
    expect(complaint.bench?.lines.join(' ')).toContain('The operator says');
    expect(complaint.bench?.mayBeTold).toBe(false);
    expect((await client.result()).status).toBe(409);
    await toHub(client);
    await client.act({ hubChoice: 'loopRecord' });
    const csv = await app.get(`/practice/jobs/${client.job}/loop.csv`, { as: technician });
    expect(csv.headers.get('content-type')).toContain('text/csv');
    expect((await client.act({ loopRecord: await csv.text() })).step).toBe('inService');
    await client.act({ hubChoice: 'sourceOutlet' });
    const gauge = await client.told();
    expect(gauge.bench?.rows.find(({ name }) => name === 'sourcePa')?.text).toMatch(/^\d+\.\d+ psi$/);
    await client.asShown();
    await client.act({ hubChoice: 'soapSignalTube' });
    expect((await client.told()).bench?.lines.join(' ')).toContain('Steady bubbles');
    await client.asShown();
    await client.act({ hubChoice: 'name' });
    await client.act({ repairToDo: 'tightenSignalTube', causeSeen: 'bubbles at a fitting' });
    const told = (await (await client.result()).json()) as {
      truth: string[];
      rightly: boolean;
      checks: number;
      minutes: number;
      engineChecks: number;
      engineRightly: boolean;
      steps: { what: string; told: string; minutes: number }[];
    };
    expect(told).toMatchObject({ rightly: true, checks: 3, engineRightly: true });
    expect(told.truth.join(' ')).toMatch(/signal tube.*\(bad\)/i);
    expect(told.minutes).toBe(told.steps.reduce((sum, one) => sum + one.minutes, 0));
    const text = await page(`/practice/jobs/${client.job}/result`);
    expect(text).toContain('What you named puts it right.');
    expect(text).toContain('What the engine would have looked at');
    expect(text).toContain('Steady bubbles');
  });

  test('writes nothing into the log of the plant, and its own log stands by itself', async () => {
    expect(await app.services.log.summaries('job', { limit: 10 })).toEqual([]);
    expect(await app.services.log.state(jobKind, '1')).toMatchObject({ status: 'none' });
    const bench = app.services.practice.site();
    expect((await bench.log.summaries('job', { limit: 10 })).length).toBeGreaterThan(0);
    const report = await verifyStore(bench.store, auditors);
    expect([report.fault, report.problems]).toEqual([null, []]);
    const listed = await bench.log.summaries('job', { limit: 10 });
    expect(await rebuildSummaries(bench.store, practiceKinds)).toBeGreaterThan(1);
    expect(await bench.log.summaries('job', { limit: 10 })).toEqual(listed);
    expect(await page('/shift')).not.toContain(`P1-${aSheet().tag}`);
  });

  test('is marked on every page by words, and no address of it leads to a real job', async () => {
    for (const path of [
      '/practice',
      '/practice/jobs/1',
      '/practice/jobs/1/record',
      '/practice/jobs/1/steps',
      '/practice/jobs/1/result',
    ]) {
      const html = await (await app.get(path, { as: technician })).text();
      expect(html, path).toContain('A simulated valve. Nothing here is done at the plant');
      expect(html, path).toContain('<title>Practice: ');
      expect(html, path).not.toMatch(/(?:href|action|hx-post|hx-get)="\/jobs/);
    }
    expect(await page('/shift')).not.toContain('A simulated valve');
  });

  test('speaks to whoever reads Spanish in Spanish, and still leads to no real job', async () => {
    const { browser } = await app.signedIn('engineer');
    await app.post('/language', { language: 'es' }, { as: browser });
    const html = await (await app.get('/practice/jobs/1/result', { as: browser })).text();
    expect(html).toContain('<html lang="es"');
    expect(html).toContain('Lo que nombró la arregla.');
    expect(html).not.toContain('What you named');
    expect(html).not.toMatch(/(?:href|action|hx-post|hx-get)="\/jobs/);
  });

  test('moves its gauges with the output that is asked for, without any script', async () => {
    const client = new BenchClient(app, technician);
    await client.set({ how: 'drawn' });
    await toHub(client);
    await client.act({ hubChoice: 'travelAgainstOutput' });
    const path = `/practice/jobs/${client.job}/gauges`;
    const travel = async (query: string): Promise<string> => {
      const told = await app.get(`${path}?${query}`, {
        as: technician,
        headers: { accept: 'application/json' },
      });
      const { bench } = (await told.json()) as Awaited<ReturnType<BenchClient['told']>>;
      expect(bench?.rows.find(({ name }) => name === 'outputPercent')?.text).toBe(
        `${new URLSearchParams(query).get('output')} %`,
      );
      return bench?.rows.find(({ name }) => name === 'openedM')?.text ?? '';
    };
    expect(await travel('output=80&from=60')).toMatch(/%$/);
    const html = await (await app.get(`${path}?output=20&from=80`, { as: technician })).text();
    const panel = html.slice(html.indexOf('id="bench"')).split('</section>')[0] ?? '';
    expect(panel).toContain('Have the operator set it');
    // What has no gauge is said in the open, not among the words of the gauges.
    const [open = '', folded = ''] = panel.split('What they show, in words');
    expect(open).toContain('Controller output at that moment');
    expect(folded).toContain('Travel at that moment');
    expect(folded).not.toContain('Controller output at that moment');
    expect((await app.get(`${path}?output=200`, { as: technician })).status).toBe(422);
  });

  test('draws a fault for anybody, two as well, and lets nobody choose their own', async () => {
    const client = new BenchClient(app, technician);
    expect((await client.set({ how: 'drawn, two' })).status).toBe(201);
    const refused = await client.set({ how: 'chosen', cause1: 'caseJoint' });
    expect(refused.status).toBe(403);
    const wrong = await new BenchClient(app, supervisor).set({ how: 'chosen', cause1: 'pistonSealWorn' });
    expect(wrong.status).toBe(422);
    expect((await client.set({ tag: 'no such valve' })).status).toBe(404);
    const text = await page(`/practice?tag=${aSheet().tag}`);
    expect(text).toContain('Two faults by draw');
    expect(text).not.toContain('A fault that you choose');
    expect(await page(`/practice?tag=${aSheet().tag}`, supervisor)).toContain('A fault that you choose');
  });

  test('takes a valve to its locks and test air, where its own supervisor signs what is shown safe, and back', async () => {
    const client = new BenchClient(app, technician);
    await client.set({ how: 'drawn' });
    await toHub(client);
    await client.act({ hubChoice: 'bypass' });
    await until(client, 'onBypass');
    await client.act({ hubChoice: 'isolate' });
    await until(client, 'isolated');
    await client.act({ hubChoice: 'strokeOnTestAir' });
    expect((await client.told()).card?.kind).toBe('hold');
    expect(await page(`/practice/jobs/${client.job}`)).toContain('Ask the bench’s supervisor to sign');
    const html = await (await app.get(`/practice/jobs/${client.job}`, { as: technician })).text();
    expect(html).not.toContain('name="pin"');
    await client.asShown();
    await until(client, 'onTestAir');
    await client.act({ choice: 'away' });
    await until(client, 'isolated');
    await client.act({ hubChoice: 'giveBack' });
    for (let acts = 0; acts < 30 && (await client.told()).step !== 'afterReturn'; acts += 1)
      await client.asShown();
    expect((await client.told()).step).toBe('afterReturn');
    const bench = app.services.practice.site();
    const report = await verifyStore(bench.store, auditors);
    expect([report.fault, report.problems]).toEqual([null, []]);
  });

  test('gives other work on the same valve its readings, and says plainly what it does not simulate', async () => {
    const client = new BenchClient(app, technician);
    const set = (await (await client.set({ how: 'drawn' })).json()) as { tag: string };
    await client.act({ act: 'make-safe' });
    expect(await page(`/practice/jobs/${client.job}`)).toContain(
      'Practise other work on this simulated valve',
    );
    const number = set.tag.split('-')[0] ?? '';
    const gear = Object.keys(GEAR_ROLES).map((role, at) => [role, `${number}-G${at + 1}`]);
    const opened = await app.postJson(
      '/practice/jobs',
      {
        requestId: newRequestId(),
        tag: set.tag,
        procedure: 'bench-set',
        place: 'bench',
        ...Object.fromEntries(gear),
      },
      { as: technician },
    );
    expect(opened.status, await opened.clone().text()).toBe(201);
    client.job = ((await opened.json()) as { job: string }).job;
    for (let acts = 0; acts < 30; acts += 1) {
      const told = await client.told();
      if (told.bench?.rows.some(({ name }) => name === 'moves')) break;
      await client.asShown();
    }
    const { bench } = await client.told();
    expect(bench?.rows.map(({ name }) => name)).toEqual(expect.arrayContaining(['moves', 'plugJoined']));
    expect(await page(`/practice/jobs/${client.job}`)).toContain('A simulated valve. Nothing here is done');
  });

  test('takes no PIN, and signs no hold that is not shown safe', async () => {
    const client = new BenchClient(app, technician);
    await client.set({ how: 'drawn' });
    const { place, step } = await client.told();
    const fields = { requestId: newRequestId(), place: String(place), step, shownDigest: '', nonce: 'x' };
    const response = await app.postJson(`/practice/jobs/${client.job}/sign`, fields, { as: technician });
    expect(response.status).toBeGreaterThanOrEqual(400);
  });

  test('tells whoever gives up', async () => {
    const client = new BenchClient(app, technician);
    await client.set({ how: 'drawn' });
    const path = `/practice/jobs/${client.job}/give-up`;
    const response = await app.post(path, { requestId: newRequestId() }, { as: technician });
    expect([response.status, response.headers.get('location')]).toEqual([
      303,
      `/practice/jobs/${client.job}/result`,
    ]);
    expect(await page(`/practice/jobs/${client.job}/result`)).toContain('Nothing was named.');
  });

  test('says of two faults which of them its chances are of, and that one repair is for one of them', async () => {
    const client = new BenchClient(app, technician);
    await client.set({ how: 'drawn, two' });
    const { job } = client;
    await app.post(`/practice/jobs/${job}/give-up`, { requestId: newRequestId() }, { as: technician });
    const told = (await (await client.result()).json()) as { truth: string[]; engineWhole: boolean };
    expect([told.truth.length, told.engineWhole]).toEqual([2, false]);
    const text = await page(`/practice/jobs/${job}/result`);
    expect(text).toContain('what it told of the less likely of the two');
    expect(text).toMatch(/it would have named, (?:for one of the two|wrongly):/);
  });

  test('says what drives each valve that may be practised on, and finds valves by it', async () => {
    const piston = { actuatorKind: 'piston', springHeldBy: 'no spring', failPosition: 'stays' } as const;
    const fitted = { positioner: 'pneumatic', positionerRelays: 'one an end' } as const;
    await withValve(app, aSheet({ tag: 'FV-901', service: 'sluice', ...piston, ...fitted }));
    const driven = 'piston, no spring, pneumatic positioner, one relay an end';
    const list = await page('/practice');
    expect(list).toContain(`FV-901, sluice: ${driven}`);
    expect(list).toContain(`${aSheet().tag}, ${aSheet().service}: diaphragm, no positioner`);
    expect(await page('/practice?tag=FV-901')).toContain(`sluice: ${driven}`);
    const found = await page('/practice?find=piston');
    expect(found).toContain('FV-901, sluice');
    expect(found).not.toContain(`${aSheet().tag}, ${aSheet().service}`);
  });
});

async function until(client: BenchClient, step: string): Promise<void> {
  const seen: string[] = [];
  for (let acts = 0; acts < 40; acts += 1) {
    const told = await client.told();
    if (told.step === step) return;
    seen.push(told.step);
    await client.asShown();
  }
  throw new Error(`never came to ${step}: ${seen.join(' ')}`);
}
