import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { pointKind } from '../../../server/jobs/point-stream.ts';
import { aSheet } from '../../builders/sheets.ts';
import { strokeScript } from '../../builders/stroke-script.ts';
import { joining, type PointSite, pointSite, post } from '../points/site.ts';

const sheet = aSheet();
const INLET = String(sheet.inletPoint);

let site: PointSite;
afterEach(() => site.close());

const json = (as: PointSite['browsers'][keyof PointSite['browsers']]) => ({
  as,
  headers: { accept: 'application/json' },
});
async function listed(): Promise<{
  locked: { tag: string; stands: string; locks: Record<string, unknown>[] }[];
  bypasses: Record<string, unknown>[];
  free: { tag: string }[];
}> {
  return (await (await site.app.get('/points', json(site.browsers.technician))).json()) as never;
}

describe('what is locked and bypassed now', () => {
  beforeEach(async () => {
    site = await pointSite('breakSignalLine');
  });

  test('is a line for each lock, with its owner, its job, since when and for how long', async () => {
    await joining(site);
    site.app.wait(90 * 60_000);
    site = {
      ...site,
      browsers: { ...site.browsers, technician: (await site.app.signedIn('technician')).browser },
    };
    const { locked, bypasses } = await listed();
    expect(locked.map(({ tag, stands }) => [tag, stands])).toEqual(
      [sheet.inletPoint, sheet.outletPoint, sheet.supplyPoint].map((tag) => [tag, 'shut']),
    );
    expect(locked[0]?.locks).toMatchObject([
      { owner: site.first.id, job: site.job.id, valve: sheet.tag, hours: expect.any(Number) },
      { lock: 'B-2', owner: site.second.id, hours: 1.5 },
    ]);
    expect(bypasses).toMatchObject([{ point: sheet.bypassPoint, job: site.job.id, valve: sheet.tag }]);
    expect(String(bypasses[0]?.watchedBy)).not.toBe('');
    const page = await (await site.app.get('/points', { as: site.browsers.technician })).text();
    for (const said of [INLET, 'B-2', 'Technician 2', 'Bypassed', String(sheet.bypassPoint)])
      expect(page).toContain(said);
  });

  test('is found by the label of a point, scanned; an unknown one is said', async () => {
    const as = site.browsers.technician;
    const response = await site.app.get(`/points?find=${INLET.toLowerCase()}`, { as });
    expect([response.status, response.headers.get('location')]).toEqual([303, `/points/${INLET}`]);
    const unknown = await site.app.get('/points?find=XV-9', { as });
    expect(await unknown.text()).toContain('Nothing is known of a point XV-9.');
  });

  test('is told of one point with everything that happened to it, the latest first', async () => {
    await joining(site);
    const path = `/points/${INLET}`;
    const answer = (await (await site.app.get(path, json(site.browsers.engineer))).json()) as {
      history: { what: string }[];
    };
    expect(answer.history.map(({ what }) => what)).toEqual([
      expect.stringContaining('B-2 of Technician 2'),
      expect.stringContaining(`hung for job ${site.job.id}`),
    ]);
    const unknown = await site.app.get('/points/XV-9', json(site.browsers.technician));
    expect([unknown.status, await unknown.json()]).toMatchObject([404, { code: 'PNT-007' }]);
    // An engineer opens it to say what it is.
    expect((await site.app.get('/points/XV-9', json(site.browsers.engineer))).status).toBe(200);
  });
});

describe('what a point is', () => {
  beforeEach(async () => {
    site = await pointSite('shutInlet');
  });

  test('is said by those who keep the points, one by one or by a table, all rows or none', async () => {
    const table = 'tag;kind;place;lockable\nHV-9A;block valve;Bay 3;yes\nEB-9;breaker;Room 2;no\n';
    expect((await post(site, { to: '/points/tables', fields: { table } })).status).toBe(403);
    expect(await post(site, { to: '/points/tables', as: 'engineer', fields: { table } })).toMatchObject({
      body: { points: 2 },
    });
    expect((await listed()).free).toMatchObject([
      { tag: 'EB-9', kind: 'breaker', place: 'Room 2', lockable: false },
      { tag: 'HV-9A', kind: 'block valve', place: 'Bay 3', lockable: true },
    ]);
    const bad = await post(site, {
      to: '/points/tables',
      as: 'engineer',
      fields: {
        table:
          '[{"tag":"HV-10","kind":"cock","place":"","lockable":"yes"},{"tag":"HV-11","kind":"door","place":"","lockable":"yes"}]',
      },
    });
    expect(bad).toMatchObject({ status: 422, code: 'FRM-002' });
    expect((await listed()).free.map(({ tag }) => tag)).toEqual(['EB-9', 'HV-9A']);
    const fields = { kind: 'cock', place: 'Bay 4', lockable: 'yes' };
    expect((await post(site, { to: '/points/HV-9A', as: 'engineer', fields })).status).toBe(200);
    expect(await site.app.services.log.state(pointKind, 'HV-9A')).toMatchObject({
      kind: 'cock',
      place: 'Bay 4',
    });
  });

  test('is not said of a tag that no point could have', async () => {
    const fields = { kind: 'cock', place: 'Bay 4', lockable: 'yes' };
    const to = `/points/${'V'.repeat(41)}`;
    expect(await post(site, { to, as: 'engineer', fields })).toMatchObject({ status: 404, code: 'PNT-007' });
    expect(site.app.lines).toEqual([]);
  });

  test('decides whether a tag alone may hang: where a lock can, only with a supervisor’s reason (EI-19)', async () => {
    const given = { ...(strokeScript(sheet).shutInlet as Record<string, string>), inletLockNumber: 'tag 10' };
    await expect(site.job.answer(given)).rejects.toMatchObject({ text: { code: 'PNT-004' } });
    expect((await site.app.services.log.state(pointKind, INLET)).locks).toEqual([]);
    await post(site, {
      to: `/points/${INLET}`,
      as: 'engineer',
      fields: { kind: 'block valve', place: 'Bay 3', lockable: 'yes' },
    });
    const because = 'hasp broken; handwheel taken off and kept in the shop';
    const allow = (as: 'engineer' | 'supervisor', fields: Readonly<Record<string, string>>) =>
      post(site, { to: `/points/${INLET}/tag-alone`, as, fields });
    expect((await allow('engineer', { job: '1', because })).status).toBe(403);
    expect((await allow('supervisor', { job: '1', because: '' })).code).toBe('FRM-002');
    expect((await allow('supervisor', { job: '99', because })).status).toBe(200);
    // Allowed for another job is not allowed for this one.
    await expect(site.job.answer(given)).rejects.toMatchObject({ text: { code: 'PNT-004' } });
    expect((await allow('supervisor', { job: site.job.id, because })).status).toBe(200);
    await site.job.answer(given);
    expect((await site.app.services.log.state(pointKind, INLET)).locks).toMatchObject([
      { lock: 'tag 10', because },
    ]);
    expect((await listed()).locked[0]?.locks).toMatchObject([{ lock: 'tag 10', tagBecause: because }]);
  });

  test('that takes a tag only is tagged without a reason', async () => {
    await post(site, {
      to: `/points/${INLET}`,
      as: 'engineer',
      fields: { kind: 'block valve', place: 'Bay 3', lockable: 'no' },
    });
    const given = { ...(strokeScript(sheet).shutInlet as Record<string, string>), inletLockNumber: 'tag 10' };
    await site.job.answer(given);
    expect((await site.job.job()).step).toBe('shutOutlet');
  });
});
