import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { jobKind } from '../../../server/jobs/job-stream.ts';
import { pointKind } from '../../../server/jobs/point-stream.ts';
import { aSheet } from '../../builders/sheets.ts';
import { strokeScript } from '../../builders/stroke-script.ts';
import { newRequestId, PINS } from '../an-app.ts';
import { joining, type PointSite, pointSite, post, SECOND_PIN } from './site.ts';

const { supplyPoint, inletPoint, outletPoint } = aSheet();
const TAGS = [supplyPoint, inletPoint, outletPoint].map(String);

let site: PointSite;
afterEach(() => site.close());

const pointsNow = () => Promise.all(TAGS.map((tag) => site.app.services.log.state(pointKind, tag)));
const ownersOf = async () =>
  (await pointsNow()).map(({ locks }) =>
    locks
      .map(({ owner }) => owner)
      .toSorted()
      .join(' '),
  );
const siteEntries = async (kind: string) =>
  (await site.app.services.log.entriesOf('site')).filter((entry) => entry.kind === kind);

describe('whoever works on a job', () => {
  beforeEach(async () => {
    site = await pointSite('otherEnergies');
  });

  test('hangs their own lock on each point, and is in the list of who is exposed until they leave (EI-15)', async () => {
    expect(await ownersOf()).toEqual([site.first.id, site.first.id, site.first.id]);
    expect(await joining(site)).toMatchObject({ status: 200 });
    const both = `${site.first.id} ${site.second.id}`;
    expect(await ownersOf()).toEqual([both, both, both]);
    const { people } = await site.crew();
    expect(people.map(({ person, exposed, locks }) => [person, exposed, locks.length])).toEqual([
      [site.first.id, true, 3],
      [site.second.id, true, 3],
    ]);
    expect(await post(site, { to: 'leave', fields: { who: site.second.id, pin: SECOND_PIN } })).toMatchObject(
      {
        status: 200,
      },
    );
    expect((await site.crew()).people.map(({ person }) => person)).toEqual([site.first.id]);
    expect((await pointsNow()).map(({ position }) => position)).toEqual(['shut', 'shut', 'shut']);
  });

  test('is shown what was read before, and says whether they tried it or rest on it (EI-16)', async () => {
    const { shown } = await site.crew();
    expect(shown.map(({ energy }) => energy)).toContain('Process, inlet side');
    await joining(site, { verified: 'verified-self' });
    const [entry] = (await site.app.services.log.entriesOf(`crew:${site.job.id}`)).filter(
      ({ kind }) => kind === 'joined',
    );
    expect(entry?.inputs).toMatchObject({ person: site.second.id, verified: 'verified-self', shown });
    expect((await site.crew()).people[1]?.how).toBe('tried it themselves');
    await post(site, { to: 'leave', fields: { who: site.second.id, pin: SECOND_PIN } });
    expect(await joining(site, { verified: '' })).toMatchObject({ status: 422, code: 'FRM-002' });
  });

  test('hangs a lock by its number, and only while they may: else it is refused; under a lock its point counts as shut (EI-06)', async () => {
    expect((await pointsNow()).map(({ position }) => position)).toEqual(['shut', 'shut', 'shut']);
    const refused = async (more: Readonly<Record<string, string>>) => (await joining(site, more)).code;
    expect(await refused({ inletLockNumber: ' ' })).toBe('PNT-004');
    const [own] = (await pointsNow()).map(({ locks }) => locks[0]?.lock ?? '');
    expect(await refused({ supplyLockNumber: own ?? '' })).toBe('PNT-004');
    expect(await refused({ who: 'safety officer 1', pin: PINS['safety-officer'] })).toBe('PNT-005');
    expect(await ownersOf()).toEqual([site.first.id, site.first.id, site.first.id]);
    const by = { requestId: newRequestId(), person: site.supervisor.id, screen: 'screen 1' };
    await site.app.services.people.retire(site.second.id, by);
    expect(await refused({})).toBe('PPL-001');
    expect(await ownersOf()).toEqual([site.first.id, site.first.id, site.first.id]);
  });

  test('reads the label of each point before the lock goes on: a wrong one is refused and written down (HP-43)', async () => {
    const wrong = await joining(site, { inletLockTag: String(outletPoint) });
    expect(wrong).toMatchObject({ status: 422, code: 'PNT-006' });
    expect(Object.keys(wrong.body.fields as object)).toEqual(['inletLockTag']);
    expect((await siteEntries('wrong-tag')).map(({ inputs }) => inputs)).toEqual([
      { job: site.job.id, field: 'inletLockTag', by: site.second.id, typed: outletPoint },
    ]);
    expect(await ownersOf()).toEqual([site.first.id, site.first.id, site.first.id]);
    // A label read by a scanner that writes small letters is the same label.
    expect(await joining(site, { inletLockTag: String(inletPoint).toLowerCase() })).toMatchObject({
      status: 200,
    });
  });

  test('joins once, and leaves only what they joined', async () => {
    await joining(site);
    expect((await joining(site)).code).toBe('CRW-002');
    const leave = (who: string, pin: string) => post(site, { to: 'leave', fields: { who, pin } });
    expect((await leave(site.first.id, PINS.technician)).code).toBe('CRW-003');
    expect((await leave(site.supervisor.id, PINS.supervisor)).code).toBe('CRW-005');
    expect((await leave(site.second.id, '000000')).code).toBe('PPL-001');
  });

  test('answers no card that stands on locks without a lock of their own (EI-15)', async () => {
    await site.job.playTo('breakSignalLine');
    const { step, place } = await site.job.job();
    const given = strokeScript(aSheet())[step] as Readonly<Record<string, string>>;
    await expect(site.job.act({ kind: 'answer', given }, site.second)).rejects.toMatchObject({
      text: { code: 'PNT-002' },
    });
    await joining(site);
    await site.job.act({ kind: 'answer', given }, site.second);
    expect((await site.job.job()).place).toBe(place + 1);
  });
});

describe('the label on the card of a job', () => {
  test('must be that of its point: another is refused and written down with where the person stood (HP-43)', async () => {
    site = await pointSite('shutInlet');
    const given = { ...(strokeScript(aSheet()).shutInlet as object), inletTag: String(outletPoint) };
    await expect(site.job.answer(given)).rejects.toMatchObject({ text: { code: 'REA-010' } });
    expect((await siteEntries('wrong-tag')).map(({ inputs }) => inputs)).toEqual([
      { job: site.job.id, field: 'inletTag', by: site.first.id, typed: outletPoint },
    ]);
    await expect(site.job.answer({ ...given, inletTag: '482915' })).rejects.toThrow();
    // What is no label may be a PIN, and is kept nowhere.
    expect(JSON.stringify(await siteEntries('wrong-tag'))).not.toContain('482915');
    expect((await pointsNow())[1]?.locks).toEqual([]);
  });
});

describe('giving the valve back', () => {
  beforeEach(async () => {
    site = await pointSite('supplyBack');
  });

  test('is refused over the lock of anybody else, and done once each has taken theirs off (EI-12, EI-15)', async () => {
    expect(await joining(site)).toMatchObject({ status: 200 });
    await expect(site.job.playTo('tellPeople')).rejects.toMatchObject({ text: { code: 'PNT-001' } });
    expect((await site.job.job()).step).toBe('supplyBack');
    await post(site, { to: 'leave', fields: { who: site.second.id, pin: SECOND_PIN } });
    await site.job.playTo('done');
    site = {
      ...site,
      browsers: { ...site.browsers, technician: (await site.app.signedIn('technician')).browser },
    };
    expect((await pointsNow()).map(({ position, locks }) => [position, locks.length])).toEqual([
      ['open', 0],
      ['open', 0],
      ['open', 0],
    ]);
    expect((await joining(site)).code).toBe('CRW-007');
  });
});

describe('a handover', () => {
  beforeEach(async () => {
    site = await pointSite('breakSignalLine');
  });

  const handOver = (more: Readonly<Record<string, string>> = {}) =>
    post(site, {
      to: 'hand-over',
      fields: { ...site.locks('B'), who: site.second.id, pin: SECOND_PIN, ...more },
    });

  test('is one act with both people: incoming locks on, then outgoing off, and readings repeated (EI-17)', async () => {
    expect((await handOver({ outletLockNumber: '' })).code).toBe('JOB-004');
    expect((await handOver({ pin: '000000' })).code).toBe('PPL-001');
    expect((await handOver({ outletLockTag: String(inletPoint) })).code).toBe('PNT-006');
    expect(await ownersOf()).toEqual([site.first.id, site.first.id, site.first.id]);
    const before = (await site.app.services.log.head()).seq;
    expect(await handOver()).toMatchObject({ status: 200 });
    expect(await ownersOf()).toEqual([site.second.id, site.second.id, site.second.id]);
    for (const tag of TAGS) {
      const last = (await site.app.services.log.entriesOf(`point:${tag}`)).filter(({ seq }) => seq > before);
      expect(last.map(({ kind, inputs }) => [kind, (inputs as { owner: string }).owner])).toEqual([
        ['lock-hung', site.second.id],
        ['lock-taken-off', site.first.id],
      ]);
    }
    const job = await site.app.services.log.state(jobKind, site.job.id);
    expect(job.situation.lapsed).toMatchObject({ processInlet: 'handover', supplyAir: 'handover' });
    // Neither the one who left nor the one who came goes on before the zeros are read again.
    const given = strokeScript(aSheet()).breakSignalLine as Readonly<Record<string, string>>;
    const going = (person = site.second) => site.job.act({ kind: 'answer', given }, person);
    await expect(going()).rejects.toMatchObject({ text: { code: 'ILK-001' } });
    await expect(going(site.first)).rejects.toMatchObject({ text: { code: 'ILK-001' } });
    const again = {
      asLeft: 'yes',
      supplyAirAgainPa: '0',
      processInletAgainPa: '0',
      processOutletAgainPa: '0',
    };
    await site.job.act({ kind: 'prove-again', given: again }, site.second);
    await expect(going(site.first)).rejects.toMatchObject({ text: { code: 'PNT-002' } });
    await going();
    expect((await site.job.job()).step).toBe('springLook');
  });

  test('needs no second lock from whoever is on the job already, who is then no member beside themselves', async () => {
    await joining(site);
    expect(
      await post(site, { to: 'hand-over', fields: { who: site.second.id, pin: SECOND_PIN } }),
    ).toMatchObject({
      status: 200,
    });
    expect((await site.crew()).people.map(({ person, how }) => [person, how])).toEqual([
      [site.second.id, 'the job stands on these locks'],
    ]);
    expect((await pointsNow())[0]?.locks.map(({ lock }) => lock)).toEqual(['B-1']);
  });

  test('is given by the owner of the locks alone, to somebody else, on a job that is open', async () => {
    const by = (as: 'technician' | 'engineer', who: string, pin: string) =>
      post(site, { to: 'hand-over', as, fields: { ...site.locks('B'), who, pin } });
    expect((await by('engineer', site.second.id, SECOND_PIN)).code).toBe('JOB-004');
    expect((await by('technician', site.first.id, PINS.technician)).code).toBe('JOB-004');
    expect((await by('technician', 'safety officer 1', PINS['safety-officer'])).code).toBe('PNT-005');
    await site.job.act({ kind: 'park', reason: '' });
    expect((await by('technician', site.second.id, SECOND_PIN)).code).toBe('CRW-006');
  });
});
