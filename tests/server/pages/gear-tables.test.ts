import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readGearCsv } from '../../../procedures/test-gear/gear-table.ts';
import { foundWrong } from '../../../server/gear/gear-acts.ts';
import { gearKind } from '../../../server/gear/gear-stream.ts';
import { gearRoutes } from '../../../server/pages/gear.ts';
import { gearTableRoutes } from '../../../server/pages/gear-tables.ts';
import { readHtml } from '../../views/html.ts';
import { type AnApp, anApp, type Browser, newRequestId } from '../an-app.ts';

/** The clock of the test site stands at 2024-01-15. */
const TODAY = '2024-01-15';
const HEAD = 'number,kind,unit,rangeLow,rangeHigh,accuracyPercentOfSpan,calibratedOn,dueOn,certificate,note';
const row = (number: string, note = '') =>
  `${number},pressure gauge,psi,0,30,0.25,2023-11-02,2024-11-02,C-4471,${note}`;
const tableOf = (...rows: readonly string[]) => [HEAD, ...rows].join('\r\n');

let site: AnApp;
let engineer: Browser;

beforeAll(async () => {
  site = await anApp({ people: true, routes: [...gearTableRoutes, ...gearRoutes] });
  engineer = (await site.signedIn('engineer')).browser;
});

afterAll(() => site.close());

async function post(path: string, fields: Readonly<Record<string, string>>): Promise<Response> {
  return await site.post(path, { requestId: newRequestId(), ...fields }, { as: engineer });
}

async function looked(table: string): Promise<{ readonly html: string; readonly digest: string }> {
  const response = await post('/gear/tables', { table });
  const html = await response.text();
  expect([response.status, readHtml(html).faults]).toEqual([200, []]);
  return { html, digest: html.match(/name="digest" value="([^"]+)"/)?.[1] ?? '' };
}

const gearOf = (number: string) => site.services.log.state(gearKind, number);

describe('test gear in and out', () => {
  test('is shown before it is saved, saved as it was shown, and not twice', async () => {
    const { html, digest } = await looked(tableOf(row('G-21'), row('G-22', '"=1+1, bench"')));
    expect(html).toContain('Nothing is saved yet');
    expect((await gearOf('G-21')).item).toBeNull();
    expect((await post('/gear/tables/confirm', { digest })).status).toBe(303);
    expect((await gearOf('G-22')).item?.note).toBe('=1+1, bench');
    expect((await post('/gear/tables/confirm', { digest })).status).toBe(409);
    const again = await looked(tableOf(row('G-21', 'shop'), row('G-22', '"=1+1, bench"')));
    expect(again.html).toContain('note: blank becomes shop.');
    await post('/gear/tables/confirm', { digest: again.digest });
    expect([(await gearOf('G-21')).revision, (await gearOf('G-22')).revision]).toEqual([2, 1]);
  });

  test('is not saved where somebody else saved it between looking and confirming', async () => {
    const { digest } = await looked(tableOf(row('G-31')));
    const other = await looked(tableOf(row('G-31', 'other')));
    await post('/gear/tables/confirm', { digest: other.digest });
    expect((await post('/gear/tables/confirm', { digest })).status).toBe(409);
    expect((await gearOf('G-31')).item?.note).toBe('other');
  });

  test('with a wrong cell is not saved at all, and each cell is named by row and column', async () => {
    const table = tableOf(row('G-41'), row('G-42').replace('psi', 'furlong'), row('G-41'));
    const response = await post('/gear/tables', { table });
    const html = await response.text();
    expect([response.status, readHtml(html).faults]).toEqual([422, []]);
    expect(html).toContain('2 cells are not right.');
    expect(html).toContain('G-41 stands in row 2 already.');
    // Each link of the refusal leads to a row of the table.
    const links = [...html.matchAll(/href="#(row-[^"]+)"/g)].map(([, id]) => id ?? '');
    expect(links.length).toBe(2);
    for (const id of links) expect(html).toContain(`<tr id="${id}">`);
    expect((await gearOf('G-41')).item).toBeNull();
    for (const [wrong, said] of [
      ['weight,number\r\n1,G-1', 'is no column of test gear'],
      ['{"testGear": 3}', 'It is not {&quot;testGear&quot;'],
      ['{"testGear": [{"number": "G-1", "number": "G-2"}]}', 'given twice'],
      [`${HEAD}\r\n"open`, 'A quotation mark is opened and never closed.'],
      [HEAD, 'There is no test gear in it.'],
    ] as const)
      expect(await (await post('/gear/tables', { table: wrong })).text()).toContain(said);
  });

  test('goes out as a table and as JSON that read back to the very same', async () => {
    const csv = `\ufeff${await (await site.get('/gear/tables/gear.csv', { as: engineer })).text()}`;
    const read = readGearCsv(csv, TODAY);
    expect(read.faults).toEqual([]);
    expect(read.rows.length).toBeGreaterThan(2);
    for (const { item } of read.rows) expect((await gearOf(item.number)).item).toEqual(item);
    const json = await (await site.get('/gear/tables/gear.json', { as: engineer })).text();
    const { html } = await looked(json);
    expect(html).toMatch(/unchanged[\s\S]*?>3</);
  });

  test('that was found wrong stays out of use until a row says that it was calibrated since', async () => {
    const { digest } = await looked(tableOf(row('G-51')));
    await post('/gear/tables/confirm', { digest });
    const by = { requestId: newRequestId(), person: 'e1', screen: 'screen 1' };
    const told = { foundOn: '2024-01-10', rightUntil: '2023-11-02', howFar: 'reads 1 psi high' };
    await foundWrong({ log: site.services.log, by, today: TODAY }, { number: 'G-51', ...told });
    const same = await looked(tableOf(row('G-51')));
    expect(same.html).toContain('Found wrong on 2024-01-10, and not calibrated since.');
    await post('/gear/tables/confirm', { digest: same.digest });
    expect((await gearOf('G-51')).retired).toBe(true);
    const since = await looked(tableOf(row('G-51').replace('2023-11-02', '2024-01-12')));
    expect(since.html).toContain('taken back into use');
    await post('/gear/tables/confirm', { digest: since.digest });
    expect((await gearOf('G-51')).retired).toBe(false);
  });
});
