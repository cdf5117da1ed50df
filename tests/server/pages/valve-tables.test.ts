import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { contradictionsOf } from '../../../procedures/valve-sheet/contradictions.ts';
import { readSheetsCsv } from '../../../procedures/valve-sheet/csv.ts';
import { readSheetsJson } from '../../../procedures/valve-sheet/json.ts';
import { aSheet, FV_214 } from '../../builders/sheets.ts';
import { readHtml } from '../../views/html.ts';
import { aValveSite, type ValveSite, withoutTag } from './valve-site.ts';

const isLong = process.env.YOKESIDE_LONG === '1';
/** As many as are taken at once, in the long run. */
const MANY = isLong ? 5000 : 250;

let site: ValveSite;

beforeAll(async () => {
  site = await aValveSite();
  for (const tag of ['FV-101', 'FV-102', 'FV-103']) await site.posted('/valves', { ...FV_214, tag });
  await site.posted('/valves', { ...FV_214, tag: 'FV-104', travelM: '19 mm', caseRatingPa: '3.5 bar' });
});

afterAll(() => site.close());

describe('sheets in and out', () => {
  test('go out as a table and as JSON that read back to the very same', async () => {
    const csv = await site.app.get('/valves/sheets.csv?units=si', { as: site.technician });
    expect(csv.headers.get('content-type')).toBe('text/csv; charset=utf-8');
    expect(csv.headers.get('content-disposition')).toContain('valve-sheets-si.csv');
    const fromCsv = readSheetsCsv(`\ufeff${await csv.text()}`);
    expect(fromCsv.faults).toEqual([]);
    const asJson = await site.app.get('/valves/sheets.json', { as: site.technician });
    const fromJson = readSheetsJson(await asJson.json());
    expect(fromCsv.rows.map(({ sheet }) => sheet)).toEqual(fromJson.rows.map(({ sheet }) => sheet));
    for (const { sheet } of fromCsv.rows) {
      expect((await site.valve(sheet.tag)).sheet).toEqual(sheet);
      expect(contradictionsOf(sheet).filter(({ stops }) => stops)).toEqual([]);
    }
    expect(fromCsv.rows.length).toBe(4);
  });

  test('are shown before they are saved, and saved as they were shown', async () => {
    const table = JSON.stringify({
      valveSheets: [
        { ...FV_214, tag: 'FV-501' },
        { ...FV_214, tag: 'FV-502', seatLoadSource: '' },
        { ...FV_214, tag: 'FV-101' },
      ],
    });
    const shown = await site.posted('/valves/tables', { table });
    const html = await shown.text();
    expect([shown.status, readHtml(html).faults]).toEqual([200, []]);
    expect(html).toContain('Nothing is saved yet');
    expect(html).toContain('VAL-123: The seat load stands without');
    expect((await site.valve('FV-501')).sheet).toBeNull();
    const digest = html.match(/name="digest" value="([^"]+)"/)?.[1] ?? '';
    expect((await site.posted('/valves/tables/confirm', { digest })).status).toBe(303);
    expect((await site.valve('FV-501')).sheet).toEqual(aSheet({ tag: 'FV-501' }));
    expect((await site.valve('FV-502')).revision).toBe(1);
    // FV-101 was the same already.
    expect(await site.entries('FV-101')).toEqual(['valve-sheet-saved']);
    expect((await site.posted('/valves/tables/confirm', { digest })).status).toBe(409);
  });

  test('with a wrong cell are not saved at all, and each cell is named', async () => {
    const table = `tag,service\nFV-601,x`;
    const answer = await site.posted('/valves/tables', { table });
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
    const asJson = await site.json('/valves/tables', { table: broken });
    expect(await asJson.json()).toMatchObject({
      code: 'VAL-006',
      fields: { 'row-2-travelM': expect.stringContaining('Row 2, travelM: “ten” is not a number') },
    });
    expect((await site.valve('FV-602')).sheet).toBeNull();
  });

  test.each([
    ['', 'Paste the table'],
    ['{"valveSheets": [', 'cannot be read as JSON'],
    ['{"valveSheets": [{"tag": "A", "tag": "B"}]}', 'cannot be read as JSON'],
  ])('%j is refused', async (table, says) => {
    const answer = await site.posted('/valves/tables', { table });
    expect([answer.status, (await answer.text()).includes(says)]).toEqual([422, true]);
  });

  test('are not saved if a sheet was changed after they were shown', async () => {
    const table = JSON.stringify({ valveSheets: [{ ...FV_214, tag: 'FV-103', service: 'from the table' }] });
    const shown = (await (await site.json('/valves/tables', { table })).json()) as { digest: string };
    await site.posted('/valves/FV-103', { ...withoutTag(), revision: '1', service: 'by hand' });
    expect(await (await site.json('/valves/tables/confirm', { digest: shown.digest })).json()).toMatchObject({
      code: 'VAL-007',
    });
    expect((await site.valve('FV-103')).sheet?.service).toBe('by hand');
  });

  test(`${MANY} at once are shown and saved, each with its own entry, and wrong cells among them named`, async () => {
    const valveSheets = Array.from({ length: MANY }, (_, index) => ({ ...FV_214, tag: `ZZ-${index}` }));
    const wrong = new Map([
      [2, { travelM: 'ten' }],
      [MANY - 1, { bellowsSeal: '' }],
    ]);
    const spoilt = valveSheets.map((sheet, at) => ({ ...sheet, ...wrong.get(at + 1) }));
    const [began, before] = [performance.now(), process.cpuUsage()];
    const told = await site.json('/valves/tables', { table: JSON.stringify({ valveSheets: spoilt }) });
    const { code, fields } = (await told.json()) as { code: string; fields: Record<string, string> };
    expect([code, Object.keys(fields)]).toEqual([
      'VAL-006',
      ['row-2-travelM', `row-${MANY - 1}-bellowsSeal`],
    ]);
    expect(await site.entries('ZZ-0')).toEqual([]);
    const lookedS = (performance.now() - began) / 1000;
    const shown = (await (
      await site.json('/valves/tables', { table: JSON.stringify({ valveSheets }) })
    ).json()) as { digest: string };
    const saved = await site.json('/valves/tables/confirm', { digest: shown.digest });
    expect(await saved.json()).toEqual({ saved: MANY });
    // Time of the processor, so that a busy machine changes nothing.
    const usedS = process.cpuUsage(before).user / 1e6;
    if (isLong)
      console.log(
        `${MANY} valves: looked at with wrong cells in ${lookedS.toFixed(1)} s, all in ${usedS.toFixed(1)} s of the processor`,
      );
    expect(usedS).toBeLessThan(45);
    expect(await site.entries(`ZZ-${MANY - 1}`)).toEqual(['valve-sheet-saved']);
    for (const path of ['/valves/sheets.csv', '/valves/sheets.json']) {
      const whole = await site.app.get(path, { as: site.technician });
      expect((await whole.text()).match(/ZZ-\d+/g)).toHaveLength(MANY);
      const read = vi.spyOn(site.app.services.log, 'summaries');
      const broken = (await site.app.get(path, { as: site.technician })).body?.getReader();
      expect((await broken?.read())?.done).toBe(false);
      await broken?.cancel();
      // Written as far as the line takes it, fifty sheets at a time: whoever breaks off the download ends the work.
      expect(read.mock.calls.length).toBeLessThan(MANY / 50 - 1);
      read.mockRestore();
    }
    expect(await site.seen('/valves?find=zz-')).toContain(`page 1 of ${Math.ceil(MANY / 100)}`);
  }, 120_000);
});
