import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { aSheet, FV_214 } from '../../builders/sheets.ts';
import { attributeOf, readHtml } from '../../views/html.ts';
import { newRequestId } from '../an-app.ts';
import { aValveSite, type ValveSite, withoutTag } from './valve-site.ts';

let site: ValveSite;

beforeAll(async () => {
  site = await aValveSite();
});

afterAll(() => site.close());

describe('a new valve sheet', () => {
  test('is saved in SI with the texts beside it, and stands in the list and on its page', async () => {
    const saved = await site.posted('/valves', { ...FV_214, tag: 'FV-101', typedIn: 'us' });
    expect([saved.status, saved.headers.get('location')]).toEqual([303, '/valves/FV-101']);
    expect(await site.valve('FV-101')).toEqual({
      sheet: aSheet({ tag: 'FV-101' }),
      typed: { ...FV_214, tag: 'FV-101' },
      revision: 1,
      retired: false,
      openJob: null,
      lastJob: null,
    });
    expect(await site.seen('/valves', site.technician)).toContain('/valves/FV-101');
    const page = await site.seen('/valves/FV-101', site.technician);
    for (const words of [
      'air to open',
      '3 to 15 psi',
      '100 in²',
      '0.75 in',
      '1/2-20',
      '1600 lbf/in',
      '20 psi',
    ])
      expect(page).toContain(words);
    expect(page).toContain('Supply cock behind the east column.');
    expect(page).not.toContain('Change the sheet');
  });

  test('has a form that asks every field and can be filled without a script', async () => {
    const fields = await site.formAt('/valves/new?units=si');
    expect(fields).toMatchObject({ units: 'si', typedIn: 'si', tag: '', travelM: '', bellowsSeal: '' });
    const saved = await site.posted('/valves', {
      ...fields,
      ...FV_214,
      ...{ tag: 'FV-102', units: 'si', typedIn: 'us', supplyPoint: 'IA-102-1' },
    });
    expect(saved.status).toBe(303);
    expect((await site.valve('FV-102')).sheet).toEqual(
      aSheet({ tag: 'FV-102', units: 'si', supplyPoint: 'IA-102-1' }),
    );
  });

  test('with wrong fields is refused by name, and the form keeps what was typed', async () => {
    const wrong = { ...FV_214, tag: 'FV-103', travelM: '1,234', benchSetLowPa: '0x10', bellowsSeal: '' };
    const answer = await site.posted('/valves', wrong);
    expect(answer.status).toBe(422);
    const { elements, faults } = readHtml(await answer.text());
    expect(faults).toEqual([]);
    const invalid = elements.filter((each) => attributeOf(each, 'aria-invalid') === 'true');
    expect(invalid.map((each) => attributeOf(each, 'name'))).toEqual(
      ['bellowsSeal', 'travelM', 'benchSetLowPa'].sort((a, b) => order(a) - order(b)),
    );
    const travel = elements.find((each) => attributeOf(each, 'name') === 'travelM');
    expect(travel && attributeOf(travel, 'value')).toBe('1,234');
    const asJson = await site.json('/valves', wrong);
    expect(asJson.status).toBe(422);
    expect(await asJson.json()).toMatchObject({
      code: 'FRM-002',
      fields: {
        travelM: expect.stringContaining('may mean 1.234 or 1234'),
        bellowsSeal: expect.anything(),
        benchSetLowPa: expect.anything(),
      },
    });
    expect((await site.valve('FV-103')).sheet).toBeNull();

    function order(name: string): number {
      return elements.findIndex((each) => attributeOf(each, 'name') === name);
    }
  });

  test('that contradicts itself dangerously is not saved, and says what stands against what', async () => {
    const answer = await site.json('/valves', { ...FV_214, tag: 'FV-104', failPosition: 'open' });
    expect(answer.status).toBe(422);
    expect(await answer.json()).toMatchObject({
      code: 'VAL-102',
      what: 'With a spring, a valve that is air to open shuts on loss of air, but the sheet says that it opens.',
      fields: {
        failPosition: expect.anything(),
        airAction: expect.anything(),
        springHeldBy: expect.anything(),
      },
    });
    expect((await site.valve('FV-104')).revision).toBe(0);
  });

  test('that contradicts itself harmlessly is saved, and its page says so', async () => {
    await site.posted('/valves', { ...FV_214, tag: 'FV-105', seatLoadSource: '' });
    expect(await site.seen('/valves/FV-105', site.technician)).toContain(
      'The seat load stands without the table or manual',
    );
    const [entry] = await site.app.services.log.entriesOf('valve:FV-105');
    expect(entry?.outcome).toEqual({ contradictions: ['VAL-123'] });
  });

  test('cannot take a tag that is in use', async () => {
    const answer = await site.json('/valves', { ...FV_214, tag: 'fv-101' });
    expect([answer.status, await answer.json()]).toMatchObject([
      409,
      { code: 'VAL-002', fields: { tag: expect.anything() } },
    ]);
  });

  test('sent twice is saved once', async () => {
    const fields = { ...FV_214, tag: 'FV-106', requestId: newRequestId() };
    expect((await site.posted('/valves', fields)).status).toBe(303);
    expect((await site.posted('/valves', fields)).status).toBe(303);
    expect(await site.entries('FV-106')).toEqual(['valve-sheet-saved']);
  });

  test.each(['/valves/new', '/valves/tables', '/valves/FV-101/edit'])(
    'is the engineer’s: %s',
    async (path) => {
      expect((await site.app.get(path, { as: site.technician })).status).toBe(403);
    },
  );

  test('is not posted by anybody else', async () => {
    expect((await site.posted('/valves', { ...FV_214, tag: 'FV-107' }, site.technician)).status).toBe(403);
    expect((await site.posted('/valves/FV-101', FV_214, site.technician)).status).toBe(403);
    expect((await site.posted('/valves/FV-101/retire', { why: 'gone' }, site.technician)).status).toBe(403);
    expect((await site.valve('FV-107')).sheet).toBeNull();
  });
});

describe('a sheet that is changed', () => {
  test('shows a form that, sent back as it is, saves nothing', async () => {
    await site.posted('/valves', {
      ...FV_214,
      tag: 'FV-201',
      errorTolerancePercent: '',
      airAction: '',
      typedIn: 'us',
    });
    const fields = await site.formAt('/valves/FV-201/edit');
    expect(fields).toMatchObject({
      travelM: '0.75',
      revision: '1',
      typedIn: 'us',
      errorTolerancePercent: '',
      airAction: '',
    });
    expect(fields).not.toHaveProperty('tag');
    const { find: _, ...form } = fields;
    expect((await site.posted('/valves/FV-201', form)).status).toBe(303);
    expect(await site.entries('FV-201')).toEqual(['valve-sheet-saved']);
  });

  test('has a usual tolerance marked as common practice, and an air action as worked out', async () => {
    const page = await site.seen('/valves/FV-201');
    expect(page).toContain('5 % (common practice, no source)');
    expect(page).toContain('air to open (worked out)');
  });

  test('becomes the next revision, and its page says what changed, by whom', async () => {
    const fields = await site.formAt('/valves/FV-201/edit');
    const saved = await site.posted('/valves/FV-201', {
      ...fields,
      travelM: '20 mm',
      springRateNPerM: '',
      notes: 'two\r\nlines',
    });
    expect(saved.status).toBe(303);
    expect(await site.valve('FV-201')).toMatchObject({
      revision: 2,
      sheet: { travelM: 0.02, notes: 'two\nlines' },
    });
    const page = await site.seen('/valves/FV-201');
    expect(page).toContain(
      'Revision 2, Rated travel: 0.787 in, was 0.75 in; Spring rate: not on the sheet, was 1600 lbf/in',
    );
    expect(page).toContain('Engineer 1');
    expect((await site.formAt('/valves/FV-201/edit')).travelM).toBe('20 mm');
  });

  test('keeps every figure when only its units change', async () => {
    const before = (await site.valve('FV-201')).sheet;
    const fields = await site.formAt('/valves/FV-201/edit');
    await site.posted('/valves/FV-201', { ...fields, units: 'si' });
    const si = await site.formAt('/valves/FV-201/edit');
    expect(si).toMatchObject({ typedIn: 'si', travelM: '20', benchSetHighPa: '15 psi' });
    await site.posted('/valves/FV-201', { ...si, units: 'us' });
    expect((await site.valve('FV-201')).sheet).toEqual(before);
  });

  test('that somebody else saved meanwhile is refused, and what was typed stands in the form', async () => {
    const fields = await site.formAt('/valves/FV-201/edit');
    await site.posted('/valves/FV-201', { ...fields, service: 'first' });
    const second = await site.posted('/valves/FV-201', { ...fields, service: 'second' });
    expect(second.status).toBe(409);
    expect(await second.text()).toContain('value="second"');
    expect((await site.valve('FV-201')).sheet?.service).toBe('first');
  });

  test('of a valve that does not exist is not there', async () => {
    for (const path of ['/valves/FV-999', '/valves/FV-999/edit']) {
      expect((await site.app.get(path, { as: site.engineer })).status, path).toBe(404);
    }
    expect((await site.json('/valves/FV-999', { ...withoutTag(), revision: '1' })).status).toBe(404);
  });
});

describe('a valve that is retired', () => {
  test('leaves the list but not its log, and comes back when its sheet is saved', async () => {
    await site.posted('/valves', { ...FV_214, tag: 'FV-301' });
    expect((await site.json('/valves/FV-301/retire', { why: 'replaced by FV-302' })).status).toBe(200);
    expect(await site.seen('/valves')).not.toContain('/valves/FV-301');
    expect(await site.seen('/valves?retired=yes')).toContain('/valves/FV-301');
    expect(await site.seen('/valves/FV-301')).toContain('Retired: replaced by FV-302');
    expect((await site.json('/valves/FV-301/retire', { why: 'again' })).status).toBe(409);
    expect((await site.json('/valves', { ...FV_214, tag: 'FV-301' })).status).toBe(409);
    const fields = await site.formAt('/valves/FV-301/edit');
    expect((await site.posted('/valves/FV-301', fields)).status).toBe(303);
    expect(await site.valve('FV-301')).toMatchObject({ retired: false, revision: 2 });
    expect(await site.entries('FV-301')).toEqual(['valve-sheet-saved', 'valve-retired', 'valve-sheet-saved']);
  });

  test('must say why', async () => {
    const answer = await site.posted('/valves/FV-301/retire', { why: ' ' });
    expect([answer.status, (await answer.text()).includes('Write why.')]).toEqual([422, true]);
  });

  test('cannot be one with a job open on it', async () => {
    await site.posted('/valves', { ...FV_214, tag: 'FV-303' });
    await site.app.services.log.act({
      requestId: null,
      fingerprint: '',
      person: null,
      screen: 'test',
      streams: ['valve:FV-303'],
      decide: () => ({
        entries: [
          { stream: 'valve:FV-303', kind: 'job-taken-on', inputs: { job: '7' }, outcome: {}, effects: {} },
        ],
        answer: {},
      }),
    });
    expect(await (await site.json('/valves/FV-303/retire', { why: 'gone' })).json()).toMatchObject({
      code: 'VAL-005',
      what: 'Job 7 is open on FV-303.',
    });
    expect(await site.seen('/valves')).toContain('job 7 is open');
    expect(await site.seen('/valves/FV-303')).toContain('Go to job 7');
  });
});

describe('the list of valves', () => {
  test('finds by tag, service and place, all words in any order', async () => {
    await site.posted('/valves', { ...FV_214, tag: 'LV-401', service: 'drain cooler', location: 'Unit 2' });
    const found = async (find: string) => {
      const response = await site.app.get(`/valves?find=${encodeURIComponent(find)}`, {
        as: site.technician,
        headers: { accept: 'application/json' },
      });
      return ((await response.json()) as { valves: { tag: string }[] }).valves.map(({ tag }) => tag);
    };
    expect(await found('cooler lv-4')).toEqual(['LV-401']);
    expect(await found('unit 2 drain')).toEqual(['LV-401']);
    expect(await found('no such valve')).toEqual([]);
    expect(await found('')).toContain('LV-401');
    expect(await site.seen('/valves?find=%3Cscript%3E')).not.toContain('<script>');
  });

  test.each(['page=0', 'page=x', 'retired=perhaps'])('refuses %s', async (query) => {
    expect((await site.app.get(`/valves?${query}`, { as: site.technician })).status).toBe(422);
  });

  test('is for those who are signed in', async () => {
    expect((await site.app.get('/valves')).headers.get('location')).toContain('/sign-in');
  });
});
