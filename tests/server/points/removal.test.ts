import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { Catalogue } from '../../../server/jobs/catalogue.ts';
import { jobKind } from '../../../server/jobs/job-stream.ts';
import { pointKind } from '../../../server/jobs/point-stream.ts';
import { absenceKind } from '../../../server/points/absence-stream.ts';
import { removeInAbsence } from '../../../server/points/removal-acts.ts';
import { aSheet } from '../../builders/sheets.ts';
import { newRequestId, PINS } from '../an-app.ts';
import { away, joining, type PointSite, pointSite, post } from './site.ts';

const { supplyPoint, inletPoint, outletPoint } = aSheet();
const TAGS = [supplyPoint, inletPoint, outletPoint].map(String);

let site: PointSite;
beforeEach(async () => {
  site = await pointSite('breakSignalLine');
});
afterEach(() => site.close());

const pointsNow = () => Promise.all(TAGS.map((tag) => site.app.services.log.state(pointKind, tag)));
const jobNow = () => site.app.services.log.state(jobKind, site.job.id);
const remove = (
  more: Readonly<Record<string, string>> = {},
  as: 'supervisor' | 'technician' = 'supervisor',
) =>
  post(site, {
    to: 'away',
    as,
    fields: { owner: site.first.id, pin: PINS.supervisor, ...away, ...more },
  });
const removalsOf = async (person: string) =>
  (await site.app.services.log.state(absenceKind, person)).removals.length;

describe('locks of somebody who is away', () => {
  test('come off by a supervisor alone, with who is missing, how they were tried to be reached, who tells them, and why (EI-12)', async () => {
    expect((await remove({}, 'technician')).status).toBe(403);
    for (const part of ['foundOut', 'attempts', 'toldBy', 'reason'] as const) {
      const { code, body } = await remove({ [part]: ' ' });
      expect([code, Object.keys(body.fields as object)]).toEqual(['FRM-002', [part]]);
    }
    expect((await remove({ pin: '000000' })).code).toBe('PPL-001');
    expect((await remove({ owner: site.second.id })).code).toBe('CRW-008');
    expect((await pointsNow()).map(({ locks }) => locks.length)).toEqual([1, 1, 1]);
    expect(await removalsOf(site.first.id)).toBe(0);
    expect((await remove()).status).toBe(200);
    expect(await removalsOf(site.first.id)).toBe(1);
  });

  test('stay on where any of that is missing, whichever way it was asked (EI-12)', async () => {
    const call = {
      services: site.app.services,
      catalogue: new Catalogue(),
      requestId: newRequestId(),
      person: site.supervisor,
      screen: 'screen 1',
      job: site.job.id,
    };
    for (const part of Object.keys(away))
      await expect(
        removeInAbsence(call, { owner: site.first.id, ...away, [part]: '' }),
      ).rejects.toMatchObject({ text: { code: 'FRM-002' } });
    const { first } = site;
    await expect(
      removeInAbsence({ ...call, person: site.second }, { owner: first.id, ...away }),
    ).rejects.toMatchObject({ text: { code: 'PNT-005' } });
    expect((await pointsNow()).map(({ locks }) => locks.length)).toEqual([1, 1, 1]);
  });

  test('leave every point shut, the job without a lock, and nothing counted as shown', async () => {
    await remove();
    expect((await pointsNow()).map(({ position, locks }) => [position, locks.length])).toEqual([
      ['shut', 0],
      ['shut', 0],
      ['shut', 0],
    ]);
    const job = await jobNow();
    expect(job.locks).toEqual({});
    const page = await (await site.app.get(`/jobs/${job.id}`, { as: site.browsers.technician })).text();
    expect(page).toContain('Locks of T1 taken off in their absence: no lock is left');
    expect(job.situation.states).toMatchObject({ supplyLock: 'off', inletLock: 'off', outletLock: 'off' });
    expect(job.situation.lapsed).toMatchObject({ processInlet: 'lock removed', supplyAir: 'lock removed' });
    // The way to safe is open, and the job goes on from its first lock.
    await site.job.act({ kind: 'make-safe', reason: '' });
    await site.job.answer({ choice: 'goOn' });
    expect((await site.job.job()).step).toBe('shutInlet');
    // Commands from outside lapsed with the locks: the walk-round before the first lock shows them again.
    await site.job.act({ kind: 'prove-again', given: { asLeft: 'yes' } });
    await site.job.playTo('done');
    expect((await pointsNow()).map(({ position }) => position)).toEqual(['open', 'open', 'open']);
  });

  test('leave the job on the locks of whoever else is on it, who alone goes on', async () => {
    await joining(site);
    await remove();
    expect((await pointsNow()).map(({ locks }) => locks.map(({ owner }) => owner))).toEqual([
      [site.second.id],
      [site.second.id],
      [site.second.id],
    ]);
    expect(Object.values((await jobNow()).locks).map((lock) => lock?.owner)).toEqual([
      site.second.id,
      site.second.id,
      site.second.id,
    ]);
    expect((await site.crew()).people.map(({ person }) => person)).toEqual([site.second.id]);
  });

  test('of somebody who only joined come off without touching the others', async () => {
    await joining(site);
    await remove({ owner: site.second.id });
    expect((await site.crew()).people.map(({ person }) => person)).toEqual([site.first.id]);
    expect((await jobNow()).situation.lapsed).toEqual({});
    expect(await removalsOf(site.second.id)).toBe(1);
  });

  test('are told to their owner on every page until they say that they know, and counted for everybody (EI-12)', async () => {
    await remove();
    const as = site.browsers.technician;
    const said = 'your locks for job 1 were taken off while you were away';
    expect(await (await site.app.get('/shift', { as })).text()).toContain(said);
    const others = await (await site.app.get('/shift', { as: site.browsers.engineer })).text();
    expect(others).not.toContain(said);
    const json = { as, headers: { accept: 'application/json' } };
    const { removals } = (await (await site.app.get('/removals', json)).json()) as {
      removals: { place: number; reason: string }[];
    };
    expect(removals).toMatchObject([{ reason: away.reason, toldBy: away.toldBy, locks: expect.any(String) }]);
    const known = () => post(site, { to: `/removals/${removals[0]?.place}/known`, fields: {} });
    expect((await known()).status).toBe(200);
    expect((await known()).code).toBe('CRW-008');
    expect(await (await site.app.get('/shift', { as })).text()).not.toContain(said);
    const listed = (await (await site.app.get('/points', json)).json()) as { removals: { known: string }[] };
    expect(listed.removals).toHaveLength(1);
    expect(listed.removals[0]?.known).toMatch(/^2024-01-15 /);
  });

  test('that are the supervisor’s own are no exception', async () => {
    const own = {
      ...site.locks('S'),
      who: site.supervisor.id,
      pin: PINS.supervisor,
      verified: 'verified-self',
    };
    await post(site, { to: 'join', fields: own });
    expect((await remove({ owner: site.supervisor.id })).code).toBe('CRW-008');
  });
});
