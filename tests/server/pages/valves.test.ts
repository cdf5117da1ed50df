import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { contradictionsOf } from '../../../procedures/valve-sheet/contradictions.ts';
import { readSheetsCsv } from '../../../procedures/valve-sheet/csv.ts';
import { readSheetsJson } from '../../../procedures/valve-sheet/json.ts';
import { streamOf } from '../../../server/log/stream-kind.ts';
import { valveKind } from '../../../server/valves/valve-stream.ts';
import { aSheet, FV_214 } from '../../builders/sheets.ts';
import { attributeOf, readHtml, textOf } from '../../views/html.ts';
import { type AnApp, anApp, type Browser, newRequestId } from '../an-app.ts';

let site: AnApp;
let engineer: Browser;
let technician: Browser;

beforeAll(async () => {
  site = await anApp({ people: true });
  engineer = (await site.signedIn('engineer')).browser;
  technician = (await site.signedIn('technician')).browser;
});

afterAll(() => site.close());

type Texts = Readonly<Record<string, string>>;

function posted(path: string, fields: Texts, as = engineer): Promise<Response> {
  return site.post(path, { requestId: newRequestId(), ...fields }, { as });
}

function json(path: string, fields: Texts, as = engineer): Promise<Response> {
  return site.postJson(path, { requestId: newRequestId(), ...fields }, { as });
}

async function seen(path: string, as = engineer): Promise<string> {
  const response = await site.get(path, { as });
  expect(response.status, path).toBe(200);
  const html = await response.text();
  expect(readHtml(html).faults, path).toEqual([]);
  return html;
}

/** What a browser would send from the form at `path`, as it was drawn. */
async function formAt(path: string): Promise<Record<string, string>> {
  const { elements } = readHtml(await seen(path));
  const fields: Record<string, string> = {};
  for (const element of elements) {
    const name = attributeOf(element, 'name');
    if (name === undefined) continue;
    if (element.tagName === 'input') fields[name] = attributeOf(element, 'value') ?? '';
    if (element.tagName === 'textarea') fields[name] = textOf(element);
    if (element.tagName === 'select') {
      const chosen = elements.filter((each) => each.tagName === 'option' && each.parentNode === element);
      const selected = chosen.find((each) => attributeOf(each, 'selected') !== undefined) ?? chosen[0];
      fields[name] = selected === undefined ? '' : (attributeOf(selected, 'value') ?? '');
    }
  }
  delete fields.screen;
  return fields;
}

async function valve(tag: string) {
  return await site.services.log.state(valveKind, tag);
}

async function entries(tag: string): Promise<readonly string[]> {
  return (await site.services.log.entriesOf(streamOf('valve', tag))).map(({ kind }) => kind);
}

describe('a new valve sheet', () => {
  test('is saved in SI with the texts beside it, and stands in the list and on its page', async () => {
    const saved = await posted('/valves', { ...FV_214, tag: 'FV-101', typedIn: 'us' });
    expect([saved.status, saved.headers.get('location')]).toEqual([303, '/valves/FV-101']);
    expect(await valve('FV-101')).toEqual({
      sheet: aSheet({ tag: 'FV-101' }),
      typed: { ...FV_214, tag: 'FV-101' },
      revision: 1,
      retired: false,
      openJob: null,
    });
    expect(await seen('/valves', technician)).toContain('/valves/FV-101');
    const page = await seen('/valves/FV-101', technician);
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
    const fields = await formAt('/valves/new?units=si');
    expect(fields).toMatchObject({ units: 'si', typedIn: 'si', tag: '', travelM: '', bellowsSeal: '' });
    const saved = await posted('/valves', {
      ...fields,
      ...FV_214,
      ...{ tag: 'FV-102', units: 'si', typedIn: 'us', supplyPoint: 'IA-102-1' },
    });
    expect(saved.status).toBe(303);
    expect((await valve('FV-102')).sheet).toEqual(
      aSheet({ tag: 'FV-102', units: 'si', supplyPoint: 'IA-102-1' }),
    );
  });

  test('with wrong fields is refused by name, and the form keeps what was typed', async () => {
    const wrong = { ...FV_214, tag: 'FV-103', travelM: '1,234', benchSetLowPa: '0x10', bellowsSeal: '' };
    const answer = await posted('/valves', wrong);
    expect(answer.status).toBe(422);
    const { elements, faults } = readHtml(await answer.text());
    expect(faults).toEqual([]);
    const invalid = elements.filter((each) => attributeOf(each, 'aria-invalid') === 'true');
    expect(invalid.map((each) => attributeOf(each, 'name'))).toEqual(
      ['bellowsSeal', 'travelM', 'benchSetLowPa'].sort((a, b) => order(a) - order(b)),
    );
    const travel = elements.find((each) => attributeOf(each, 'name') === 'travelM');
    expect(travel && attributeOf(travel, 'value')).toBe('1,234');
    const asJson = await json('/valves', wrong);
    expect(asJson.status).toBe(422);
    expect(await asJson.json()).toMatchObject({
      code: 'FRM-002',
      fields: {
        travelM: expect.stringContaining('may mean 1.234 or 1234'),
        bellowsSeal: expect.anything(),
        benchSetLowPa: expect.anything(),
      },
    });
    expect((await valve('FV-103')).sheet).toBeNull();

    function order(name: string): number {
      return elements.findIndex((each) => attributeOf(each, 'name') === name);
    }
  });

  test('that contradicts itself dangerously is not saved, and says what stands against what', async () => {
    const answer = await json('/valves', { ...FV_214, tag: 'FV-104', failPosition: 'open' });
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
    expect((await valve('FV-104')).revision).toBe(0);
  });

  test('that contradicts itself harmlessly is saved, and its page says so', async () => {
    await posted('/valves', { ...FV_214, tag: 'FV-105', seatLoadSource: '' });
    expect(await seen('/valves/FV-105', technician)).toContain(
      'The seat load stands without the table or manual',
    );
    const [entry] = await site.services.log.entriesOf('valve:FV-105');
    expect(entry?.outcome).toEqual({ contradictions: ['VAL-123'] });
  });

  test('cannot take a tag that is in use', async () => {
    const answer = await json('/valves', { ...FV_214, tag: 'fv-101' });
    expect([answer.status, await answer.json()]).toMatchObject([
      409,
      { code: 'VAL-002', fields: { tag: expect.anything() } },
    ]);
  });

  test('sent twice is saved once', async () => {
    const fields = { ...FV_214, tag: 'FV-106', requestId: newRequestId() };
    expect((await posted('/valves', fields)).status).toBe(303);
    expect((await posted('/valves', fields)).status).toBe(303);
    expect(await entries('FV-106')).toEqual(['valve-sheet-saved']);
  });

  test.each(['/valves/new', '/valves/tables', '/valves/FV-101/edit'])(
    'is the engineer’s: %s',
    async (path) => {
      expect((await site.get(path, { as: technician })).status).toBe(403);
    },
  );

  test('is not posted by anybody else', async () => {
    expect((await posted('/valves', { ...FV_214, tag: 'FV-107' }, technician)).status).toBe(403);
    expect((await posted('/valves/FV-101', FV_214, technician)).status).toBe(403);
    expect((await posted('/valves/FV-101/retire', { why: 'gone' }, technician)).status).toBe(403);
    expect((await valve('FV-107')).sheet).toBeNull();
  });
});

describe('a sheet that is changed', () => {
  test('shows a form that, sent back as it is, saves nothing', async () => {
    await posted('/valves', {
      ...FV_214,
      tag: 'FV-201',
      errorTolerancePercent: '',
      airAction: '',
      typedIn: 'us',
    });
    const fields = await formAt('/valves/FV-201/edit');
    expect(fields).toMatchObject({
      travelM: '0.75',
      revision: '1',
      typedIn: 'us',
      errorTolerancePercent: '',
      airAction: '',
    });
    expect(fields).not.toHaveProperty('tag');
    const { find: _, ...form } = fields;
    expect((await posted('/valves/FV-201', form)).status).toBe(303);
    expect(await entries('FV-201')).toEqual(['valve-sheet-saved']);
  });

  test('has a usual tolerance marked as common practice, and an air action as worked out', async () => {
    const page = await seen('/valves/FV-201');
    expect(page).toContain('5 % (common practice, no source)');
    expect(page).toContain('air to open (worked out)');
  });

  test('becomes the next revision, and its page says what changed, by whom', async () => {
    const fields = await formAt('/valves/FV-201/edit');
    const saved = await posted('/valves/FV-201', {
      ...fields,
      travelM: '20 mm',
      springRateNPerM: '',
      notes: 'two\r\nlines',
    });
    expect(saved.status).toBe(303);
    expect(await valve('FV-201')).toMatchObject({
      revision: 2,
      sheet: { travelM: 0.02, notes: 'two\nlines' },
    });
    const page = await seen('/valves/FV-201');
    expect(page).toContain(
      'Revision 2, Rated travel: 0.787 in, was 0.75 in; Spring rate: not on the sheet, was 1600 lbf/in',
    );
    expect(page).toContain('Engineer 1');
    expect((await formAt('/valves/FV-201/edit')).travelM).toBe('20 mm');
  });

  test('keeps every figure when only its units change', async () => {
    const before = (await valve('FV-201')).sheet;
    const fields = await formAt('/valves/FV-201/edit');
    await posted('/valves/FV-201', { ...fields, units: 'si' });
    const si = await formAt('/valves/FV-201/edit');
    expect(si).toMatchObject({ typedIn: 'si', travelM: '20', benchSetHighPa: '15 psi' });
    await posted('/valves/FV-201', { ...si, units: 'us' });
    expect((await valve('FV-201')).sheet).toEqual(before);
  });

  test('that somebody else saved meanwhile is refused, and what was typed stands in the form', async () => {
    const fields = await formAt('/valves/FV-201/edit');
    await posted('/valves/FV-201', { ...fields, service: 'first' });
    const second = await posted('/valves/FV-201', { ...fields, service: 'second' });
    expect(second.status).toBe(409);
    expect(await second.text()).toContain('value="second"');
    expect((await valve('FV-201')).sheet?.service).toBe('first');
  });

  test('of a valve that does not exist is not there', async () => {
    for (const path of ['/valves/FV-999', '/valves/FV-999/edit']) {
      expect((await site.get(path, { as: engineer })).status, path).toBe(404);
    }
    expect((await json('/valves/FV-999', { ...withoutTag(), revision: '1' })).status).toBe(404);
  });
});

describe('a valve that is retired', () => {
  test('leaves the list but not its log, and comes back when its sheet is saved', async () => {
    await posted('/valves', { ...FV_214, tag: 'FV-301' });
    expect((await json('/valves/FV-301/retire', { why: 'replaced by FV-302' })).status).toBe(200);
    expect(await seen('/valves')).not.toContain('/valves/FV-301');
    expect(await seen('/valves?retired=yes')).toContain('/valves/FV-301');
    expect(await seen('/valves/FV-301')).toContain('Retired: replaced by FV-302');
    expect((await json('/valves/FV-301/retire', { why: 'again' })).status).toBe(409);
    expect((await json('/valves', { ...FV_214, tag: 'FV-301' })).status).toBe(409);
    const fields = await formAt('/valves/FV-301/edit');
    expect((await posted('/valves/FV-301', fields)).status).toBe(303);
    expect(await valve('FV-301')).toMatchObject({ retired: false, revision: 2 });
    expect(await entries('FV-301')).toEqual(['valve-sheet-saved', 'valve-retired', 'valve-sheet-saved']);
  });

  test('must say why', async () => {
    const answer = await posted('/valves/FV-301/retire', { why: ' ' });
    expect([answer.status, (await answer.text()).includes('Write why.')]).toEqual([422, true]);
  });

  test('cannot be one with a job open on it', async () => {
    await posted('/valves', { ...FV_214, tag: 'FV-303' });
    await site.services.log.act({
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
    expect(await (await json('/valves/FV-303/retire', { why: 'gone' })).json()).toMatchObject({
      code: 'VAL-005',
      what: 'Job 7 is open on FV-303.',
    });
    expect(await seen('/valves')).toContain('job 7 is open');
    expect(await seen('/valves/FV-303')).toContain('Go to job 7');
  });
});

describe('the list of valves', () => {
  test('finds by tag, service and place, all words in any order', async () => {
    await posted('/valves', { ...FV_214, tag: 'LV-401', service: 'drain cooler', location: 'Unit 2' });
    const found = async (find: string) => {
      const response = await site.get(`/valves?find=${encodeURIComponent(find)}`, {
        as: technician,
        headers: { accept: 'application/json' },
      });
      return ((await response.json()) as { valves: { tag: string }[] }).valves.map(({ tag }) => tag);
    };
    expect(await found('cooler lv-4')).toEqual(['LV-401']);
    expect(await found('unit 2 drain')).toEqual(['LV-401']);
    expect(await found('no such valve')).toEqual([]);
    expect(await found('')).toContain('LV-401');
    expect(await seen('/valves?find=%3Cscript%3E')).not.toContain('<script>');
  });

  test.each(['page=0', 'page=x', 'retired=perhaps'])('refuses %s', async (query) => {
    expect((await site.get(`/valves?${query}`, { as: technician })).status).toBe(422);
  });

  test('is for those who are signed in', async () => {
    expect((await site.get('/valves')).headers.get('location')).toContain('/sign-in');
  });
});

function withoutTag(): Texts {
  const { tag: _, ...rest } = FV_214;
  return rest;
}

describe('sheets in and out', () => {
  test('go out as a table and as JSON that read back to the very same', async () => {
    const csv = await site.get('/valves/sheets.csv?units=si', { as: technician });
    expect(csv.headers.get('content-type')).toBe('text/csv; charset=utf-8');
    expect(csv.headers.get('content-disposition')).toContain('valve-sheets-si.csv');
    const fromCsv = readSheetsCsv(`\ufeff${await csv.text()}`);
    expect(fromCsv.faults).toEqual([]);
    const asJson = await site.get('/valves/sheets.json', { as: technician });
    const fromJson = readSheetsJson(await asJson.json());
    expect(fromCsv.rows.map(({ sheet }) => sheet)).toEqual(fromJson.rows.map(({ sheet }) => sheet));
    for (const { sheet } of fromCsv.rows) {
      expect((await valve(sheet.tag)).sheet).toEqual(sheet);
      expect(contradictionsOf(sheet).filter(({ stops }) => stops)).toEqual([]);
    }
    expect(fromCsv.rows.length).toBeGreaterThan(5);
  });

  test('are shown before they are saved, and saved as they were shown', async () => {
    const table = JSON.stringify({
      valveSheets: [
        { ...FV_214, tag: 'FV-501' },
        { ...FV_214, tag: 'FV-502', seatLoadSource: '' },
        { ...FV_214, tag: 'FV-101' },
      ],
    });
    const shown = await posted('/valves/tables', { table });
    const html = await shown.text();
    expect([shown.status, readHtml(html).faults]).toEqual([200, []]);
    expect(html).toContain('Nothing is saved yet');
    expect(html).toContain('VAL-123: The seat load stands without');
    expect((await valve('FV-501')).sheet).toBeNull();
    const digest = html.match(/name="digest" value="([^"]+)"/)?.[1] ?? '';
    expect((await posted('/valves/tables/confirm', { digest })).status).toBe(303);
    expect((await valve('FV-501')).sheet).toEqual(aSheet({ tag: 'FV-501' }));
    expect((await valve('FV-502')).revision).toBe(1);
    // FV-101 was the same already.
    expect(await entries('FV-101')).toEqual(['valve-sheet-saved']);
    expect((await posted('/valves/tables/confirm', { digest })).status).toBe(409);
  });

  test('with a wrong cell are not saved at all, and each cell is named', async () => {
    const table = `tag,service\nFV-601,x`;
    const answer = await posted('/valves/tables', { table });
    const html = await answer.text();
    expect([answer.status, readHtml(html).faults]).toEqual([422, []]);
    expect(html).toContain('The column travel is missing.');
    expect(html).toContain('FV-601,x');
    const broken = JSON.stringify({
      valveSheets: [
        { ...FV_214, tag: 'FV-602' },
        { ...FV_214, tag: 'FV-603', travelM: 'ten' },
      ],
    });
    const asJson = await json('/valves/tables', { table: broken });
    expect(await asJson.json()).toMatchObject({
      code: 'VAL-006',
      fields: { 'row 2, travelM': expect.stringContaining('“ten” is not a number') },
    });
    expect((await valve('FV-602')).sheet).toBeNull();
  });

  test.each([
    ['', 'Paste the table'],
    ['{"valveSheets": [', 'cannot be read as JSON'],
    ['{"valveSheets": [{"tag": "A", "tag": "B"}]}', 'cannot be read as JSON'],
  ])('%j is refused', async (table, says) => {
    const answer = await posted('/valves/tables', { table });
    expect([answer.status, (await answer.text()).includes(says)]).toEqual([422, true]);
  });

  test('are not saved if a sheet was changed after they were shown', async () => {
    const table = JSON.stringify({ valveSheets: [{ ...FV_214, tag: 'FV-106', service: 'from the table' }] });
    const shown = (await (await json('/valves/tables', { table })).json()) as { digest: string };
    await posted('/valves/FV-106', { ...withoutTag(), revision: '1', service: 'by hand' });
    expect(await (await json('/valves/tables/confirm', { digest: shown.digest })).json()).toMatchObject({
      code: 'VAL-007',
    });
    expect((await valve('FV-106')).sheet?.service).toBe('by hand');
  });

  test('5,000 at once are shown and saved, each with its own entry', async () => {
    const valveSheets = Array.from({ length: 5000 }, (_, index) => ({ ...FV_214, tag: `ZZ-${index}` }));
    const before = process.cpuUsage();
    const shown = (await (
      await json('/valves/tables', { table: JSON.stringify({ valveSheets }) })
    ).json()) as { digest: string };
    const saved = await json('/valves/tables/confirm', { digest: shown.digest });
    expect(await saved.json()).toEqual({ saved: 5000 });
    // Time of the processor, so that a busy machine changes nothing.
    expect(process.cpuUsage(before).user / 1e6).toBeLessThan(30);
    expect(await entries('ZZ-4999')).toEqual(['valve-sheet-saved']);
    expect(await seen('/valves?find=zz-')).toContain('page 1 of 50');
  }, 120_000);
});
