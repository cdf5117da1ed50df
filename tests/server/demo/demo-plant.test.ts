import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { jobOf } from '../../../procedures/evolve.ts';
import type { Job } from '../../../procedures/job.ts';
import { contradictionsOf } from '../../../procedures/valve-sheet/contradictions.ts';
import type { ValveSheet } from '../../../procedures/valve-sheet/sheet.ts';
import { SAFE_LIMIT_PA } from '../../../safety/limits.ts';
import { demoGear } from '../../../server/demo/demo-gear.ts';
import { loadDemoPlant } from '../../../server/demo/demo-plant.ts';
import { DEMO_VALVES } from '../../../server/demo/demo-valves.ts';
import { gearKind } from '../../../server/gear/gear-stream.ts';
import { jobKind } from '../../../server/jobs/job-stream.ts';
import { verifyStore } from '../../../server/log/verify.ts';
import type { DemoPerson } from '../../../server/pages/set-up.ts';
import { siteKind } from '../../../server/site-stream.ts';
import { auditors } from '../../../server/streams.ts';
import { valveKind } from '../../../server/valves/valve-stream.ts';
import { FV_214 } from '../../builders/sheets.ts';
import { type AnApp, anApp, Browser, newRequestId } from '../an-app.ts';
import { exportedText } from '../log/export-lines.ts';

let site: AnApp;
let people: readonly DemoPerson[];

const anEmptySite = () => anApp({ routes: [], loadDemo: loadDemoPlant });

beforeAll(async () => {
  site = await anEmptySite();
  const response = await site.postJson('/set-up/demo', { requestId: newRequestId() });
  expect(response.status, site.lines.join('\n')).toBe(200);
  ({ people } = (await response.json()) as { people: readonly DemoPerson[] });
});

afterAll(() => site.close());

const wholeLog = (): Promise<string> => exportedText(site.services.store);

async function allJobs(): Promise<readonly Job[]> {
  const lines = await site.services.log.summaries('job');
  return await Promise.all(lines.map(({ id }) => site.services.log.state(jobKind, id)));
}

async function sheets(): Promise<readonly ValveSheet[]> {
  const lines = await site.services.log.summaries('valve');
  return lines.map(({ body }) => (body as unknown as { readonly sheet: ValveSheet }).sheet);
}

describe('the demo plant', () => {
  test('is offered on the first page of an empty site, and says that it is the demo', async () => {
    const empty = await anEmptySite();
    expect(await (await empty.get('/')).text()).toContain('Load the demo plant');
    await empty.close();
    expect(await site.services.log.state(siteKind)).toMatchObject({ plant: 'Demo plant', demo: true });
  });

  test('brings people of every role, each of whom signs in with the PIN that was shown', async () => {
    expect(people.map(({ id }) => id)).toEqual(['t1', 't2', 's1', 's2', 'o1', 'e1']);
    for (const { name, pin } of people) {
      const browser = new Browser();
      const response = await site.post('/sign-in', { who: name, pin }, { as: browser });
      expect(response.status, name).toBe(303);
    }
  });

  test('gives each of them a PIN of their own, that the log and the operations log never hold', async () => {
    const log = await wholeLog();
    expect(new Set(people.map(({ pin }) => pin)).size).toBe(people.length);
    for (const { pin } of people) {
      expect(pin).toMatch(/^\d{6}$/);
      // Six digits may stand inside a hash by chance; as a value of their own they never may.
      expect(log).not.toMatch(new RegExp(`[":,]${pin}[",}]`));
      expect(site.lines.join('\n')).not.toContain(pin);
    }
  });

  test('shows the PINs once: loading it again is refused', async () => {
    const again = await site.postJson('/set-up/demo', { requestId: newRequestId() });
    expect(again.status).toBe(409);
    expect(await again.text()).not.toContain(people[0]?.pin);
  });

  test('shows people and PINs on a page, with where to sign in', async () => {
    const other = await anEmptySite();
    const page = await (await other.post('/set-up/demo')).text();
    for (const role of ['technician', 'supervisor', 'safety officer', 'engineer'])
      expect(page).toContain(role);
    expect(page.match(/>\d{6}</g)).toHaveLength(6);
    await other.close();
  });

  test('has a valve for each sheet, read as a form is, with the texts kept beside it', async () => {
    const saved = await sheets();
    expect(saved.map(({ tag }) => tag).sort()).toEqual(DEMO_VALVES.map(({ tag }) => tag).sort());
    expect(saved.length).toBeGreaterThanOrEqual(14);
    const [entry] = await site.services.log.entriesOf('valve:FV-214');
    expect(entry).toMatchObject({ kind: 'valve-sheet-saved', person: 'e1', inputs: { typed: FV_214 } });
    expect((await site.services.log.state(valveKind, 'FV-214')).revision).toBe(1);
  });

  test('has jobs that are the same read at once as line by line', async () => {
    const jobs = await allJobs();
    expect(jobs.length).toBeGreaterThan(5);
    for (const job of jobs) {
      const entries = await site.services.log.entriesOf(`job:${job.id}`);
      expect(jobOf(entries)).toStrictEqual(job);
    }
  });

  test('has no valve whose sheet says something against itself', async () => {
    const found = (await sheets()).flatMap((sheet) =>
      contradictionsOf(sheet).map(({ code, what }) => `${sheet.tag} ${code} ${what}`),
    );
    expect(found).toEqual([]);
  });

  test('has no isolation point that two valves share', async () => {
    const points = (await sheets()).flatMap(({ supplyPoint, inletPoint, outletPoint, bypassPoint }) =>
      [supplyPoint, inletPoint, outletPoint, bypassPoint].filter((point) => point !== null),
    );
    expect(new Set(points).size).toBe(points.length);
  });

  test.each<[string, (sheet: ValveSheet) => boolean]>([
    ['opens by air from above', (s) => s.plugCloses === 'up' && s.airMovesStem === 'down'],
    ['opens by air from below', (s) => s.plugCloses === 'down' && s.airMovesStem === 'up'],
    ['closes by air from above', (s) => s.plugCloses === 'down' && s.airMovesStem === 'down'],
    ['closes by air from below', (s) => s.plugCloses === 'up' && s.airMovesStem === 'up'],
    ['works on half of a split range', (s) => Math.round(s.signalHighPa) === 62053],
    ['has a pneumatic positioner', (s) => s.positioner === 'pneumatic' && s.actuatorKind === 'diaphragm'],
    ['has an electropneumatic positioner', (s) => s.positioner === 'electropneumatic' && s.units === 'si'],
    ['is a piston without a spring', (s) => s.actuatorKind === 'piston' && s.failPosition === 'stays'],
    ['has a bellows seal', (s) => s.bellowsSeal],
    ['has a pinned stem', (s) => s.stemPinned],
    ['has its spring held by the case', (s) => s.springHeldBy === 'case'],
    ['has no bypass', (s) => s.bypassPoint === null],
    ['is read in SI without a positioner', (s) => s.units === 'si' && s.positioner === 'none'],
  ])('has a valve that %s', async (_what, fits) => {
    expect((await sheets()).filter(fits)).not.toEqual([]);
  });

  test('has gear for every role, in date, and one gauge that is overdue', async () => {
    const today = new Date(site.services.now()).toISOString().slice(0, 10);
    const items = await Promise.all(
      demoGear(site.services.now()).map(
        async ({ number }) => (await site.services.log.state(gearKind, number)).item,
      ),
    );
    const overdue = items.filter((item) => item !== null && item.dueOn < today);
    expect(overdue.map((item) => item?.number)).toEqual(['G-09']);
    for (const [kind, least] of [
      ['pressure gauge', 10],
      ['dial indicator', 2],
      ['regulator', 2],
    ] as const) {
      const found = items.filter((item) => item?.kind === kind);
      expect(found.length, kind).toBeGreaterThanOrEqual(least);
    }
    expect(items.filter((item) => item?.kind === 'regulator').every((item) => item?.bleedsDown)).toBe(true);
  });

  test('has gauges fine enough that a zero counts as one: two standard uncertainties fit in the limit', () => {
    // Rectangular limits: u = a/sqrt(3), so U = 2a/sqrt(3) (GUM, JCGM 100:2008, 4.3.7).
    const PA: Readonly<Record<string, number>> = { psi: 6894.757293168361, kPa: 1000 };
    const gauges = demoGear(new Date()).filter(({ kind }) => kind === 'pressure gauge');
    for (const { number, unit = '', rangeHigh, accuracyPercentOfSpan } of gauges) {
      const spanPa = Number(rangeHigh) * (PA[unit] ?? Number.NaN);
      const expandedPa = (2 * (Number(accuracyPercentOfSpan) / 100) * spanPa) / Math.sqrt(3);
      const isLow = rangeHigh === '30' || rangeHigh === '200';
      expect(expandedPa, number).toBeLessThan(isLow ? SAFE_LIMIT_PA.signalAir : SAFE_LIMIT_PA.supplyAir);
    }
  });

  test('has done stroke checks, each to its end and inside its limits, with nothing left locked', async () => {
    const jobs = await allJobs();
    const done = jobs.filter(({ status }) => status === 'closed');
    const others = ['FV-103', 'FV-103', 'FV-104', 'FV-214', 'FV-214'];
    const yearly = Array.from({ length: 5 }, () => 'FV-102');
    expect(done.map(({ tag }) => tag).sort()).toEqual(['FV-101', ...yearly, ...others]);
    for (const job of done) {
      expect(job.closedAs, job.tag).toBe('done');
      expect(job.locks, job.tag).toEqual({});
      const verdicts = job.answers.filter(({ step }) => step.endsWith('Verdict'));
      expect(
        verdicts.map(({ outcome }) => outcome),
        job.tag,
      ).toEqual(verdicts.map(() => 'inside'));
      expect(verdicts.length, job.tag).toBeGreaterThan(0);
      expect((await site.services.log.state(valveKind, job.tag)).openJob, job.tag).toBeNull();
    }
  });

  test('finds the contact of a valve that was done before where that job left it, but for its friction', async () => {
    const [first, second] = (await allJobs())
      .filter(({ tag }) => tag === 'FV-214')
      .toSorted((one, other) => Number(one.id) - Number(other.id));
    const left = Number(first?.figures.contactLeft?.contactPa);
    const found = Number(second?.figures.contactFound?.contactPa);
    expect(left).toBeGreaterThan(0);
    expect(Math.abs(found - left)).toBeLessThan(70);
  });

  test('has every hold signed by somebody who did none of the work', async () => {
    const holds = (await allJobs()).flatMap((job) => job.holds.map((hold) => ({ job, hold })));
    expect(holds.length).toBeGreaterThanOrEqual(10);
    for (const { job, hold } of holds) {
      const worked = job.answers.filter(({ step }) => step !== hold.step).map(({ person }) => person);
      expect(['s1', 's2']).toContain(hold.person);
      expect(worked.filter((person) => person.startsWith('s'))).toHaveLength(job.holds.length - 1);
    }
  });

  test('has one job that waits at its hold for a signature, with its locks hung', async () => {
    const open = (await allJobs()).filter(({ status }) => status === 'open');
    expect(open.map(({ tag, step }) => ({ tag, step }))).toEqual([{ tag: 'TV-302', step: 'holdWork' }]);
    expect(Object.values(open[0]?.locks ?? {}).map((lock) => lock?.owner)).toEqual(['t2', 't2', 't2']);
    const points = await site.services.log.summaries('point');
    const locked = points.filter(({ body }) => (body as { locks: unknown[] }).locks.length > 0);
    expect(locked.map(({ id }) => id)).toEqual(['HV-302A', 'HV-302B', 'IA-302-1']);
    // What hangs stands first in the list, before every point that is free.
    expect(points.slice(0, 3)).toEqual(locked);
    expect(points.length).toBeGreaterThan(3 * DEMO_VALVES.length);
  });

  test('stamps its jobs with the time of loading, and says in each that it was played', async () => {
    const loadedAt = site.services.now().toISOString();
    for (const job of await allJobs()) {
      const entries = await site.services.log.entriesOf(`job:${job.id}`);
      expect(new Set(entries.map(({ at }) => at))).toEqual(new Set([loadedAt]));
      expect(new Set(entries.map(({ screen }) => screen))).toEqual(new Set(['demo plant']));
      if (job.status === 'closed') expect(job.words.nextNotes).toMatch(/^Demo: /);
    }
  });

  test('leaves a log that verifies, entry by entry', async () => {
    const { fault, problems, entries } = await verifyStore(site.services.store, auditors);
    expect({ fault, problems }).toEqual({ fault: null, problems: [] });
    expect(entries).toBeGreaterThan(DEMO_VALVES.length);
  });
});
