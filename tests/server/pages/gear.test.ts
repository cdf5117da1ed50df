import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { gearRoutes } from '../../../server/pages/gear.ts';
import type { Role } from '../../../server/people/person.ts';
import { type AnApp, anApp, type Browser, type Fields, newRequestId } from '../an-app.ts';

/** The clock of the test site stands at 2024-01-15. */
const G_07: Readonly<Record<string, string>> = {
  number: 'G-07',
  kind: 'pressure gauge',
  unit: 'psi',
  rangeLow: '0',
  rangeHigh: '30',
  accuracyPercentOfSpan: '0.25',
  calibratedOn: '2023-11-02',
  dueOn: '2024-11-02',
  certificate: 'C-4471',
  bleedsDown: '',
  note: '',
};

let site: AnApp;
const browsers = new Map<Role, Browser>();

beforeAll(async () => {
  site = await anApp({ people: true, routes: gearRoutes });
  for (const role of ['technician', 'supervisor', 'engineer'] as const) {
    browsers.set(role, (await site.signedIn(role)).browser);
  }
});

afterAll(() => site.close());

function as(role: Role): { as: Browser } {
  const browser = browsers.get(role);
  if (browser === undefined) throw new Error(`Nobody is signed in as ${role}.`);
  return { as: browser };
}

async function post(path: string, fields: Fields, role: Role = 'engineer'): Promise<Response> {
  return await site.post(path, { requestId: newRequestId(), ...fields }, as(role));
}

async function added(texts: Readonly<Record<string, string>>): Promise<void> {
  const response = await post('/gear', { ...G_07, ...texts });
  expect(response.status, await response.clone().text()).toBe(303);
}

async function page(path: string, role: Role = 'technician'): Promise<string> {
  const response = await site.get(path, as(role));
  expect(response.status).toBe(200);
  return await response.text();
}

async function json(path: string): Promise<{ readonly gear: Record<string, unknown>; history: unknown[] }> {
  const response = await site.get(path, { ...as('technician'), headers: { accept: 'application/json' } });
  return (await response.json()) as Awaited<ReturnType<typeof json>>;
}

/** Without the number, as the form of a saved piece sends it. */
function savedTexts(texts: Readonly<Record<string, string>>): Readonly<Record<string, string>> {
  const { number: _, ...rest } = { ...G_07, ...texts };
  return rest;
}

describe('the list of test gear', () => {
  test('says in words what is overdue, what is due soon and what is retired', async () => {
    await added({ number: 'L-1', dueOn: '2024-01-12' });
    await added({ number: 'L-2', dueOn: '2024-01-20' });
    await added({ number: 'L-3', dueOn: '2024-01-15' });
    await added({ number: 'L-4' });
    expect((await post('/gear/L-4/retire', { why: 'dropped' })).status).toBe(303);
    const { gear } = (await json('/gear')) as unknown as { gear: { number: string; standing: string }[] };
    const said = Object.fromEntries(gear.map(({ number, standing }) => [number, standing]));
    expect(said).toMatchObject({
      'L-1': 'overdue by 3 days',
      'L-2': 'due in 5 days',
      'L-3': 'due today',
      'L-4': 'retired',
    });
    const html = await page('/gear');
    expect(html).toContain('overdue by 3 days');
    expect(html).toContain('0\u00a0to\u00a030\u00a0psi');
    expect(await page('/gear/L-1')).toContain('No reading may be taken with it.');
    expect(await page('/gear/L-2')).not.toContain('No reading may be taken with it.');
    expect(gear.at(-1)?.number).toBe('L-4');
  });

  test('stands in the menu of everybody, and offers to add gear only to those who keep it', async () => {
    expect(await page('/people')).toContain('<a href="/gear">Test gear</a>');
    expect(await page('/gear')).not.toContain('/gear/new');
    expect(await page('/gear', 'supervisor')).toContain('/gear/new');
  });
});

describe('adding test gear', () => {
  test('keeps it as an entry, under the number in capitals, and shows it', async () => {
    const response = await post('/gear', { ...G_07, number: 'g-20' });
    expect(response.headers.get('location')).toBe('/gear/G-20');
    const [entry] = await site.services.log.entriesOf('gear:G-20');
    expect(entry).toMatchObject({ kind: 'gear-saved', person: 'e1', inputs: { item: { number: 'G-20' } } });
    const html = await page('/gear/G-20');
    for (const text of ['0 to 30 psi', '0.25 % of span', '2024-11-02', 'C-4471', 'First saved', 'Engineer 1'])
      expect(html).toContain(text);
  });

  test('takes a scale in another unit than the one it is marked in', async () => {
    await added({ number: 'G-21', unit: 'kPa', rangeHigh: '2 bar' });
    expect((await json('/gear/G-21')).gear).toMatchObject({ unit: 'kPa', rangeHigh: '200' });
  });

  test('names every wrong field beside it, keeps what was typed and records nothing', async () => {
    const typed = { number: 'G-22', rangeHigh: 'thirty', calibratedOn: '2 Nov', note: 'in the grey case' };
    const response = await post('/gear', { ...G_07, ...typed });
    expect(response.status).toBe(422);
    const html = await response.text();
    expect(html).toContain('id="rangeHigh-error"');
    expect(html).toContain('id="calibratedOn-error"');
    expect(html).toContain('value="in the grey case"');
    expect(html).toContain('value="thirty"');
    expect(await site.services.log.place('gear:G-22')).toBe(0);
  });

  test('tells a program which fields are wrong', async () => {
    const body = { requestId: newRequestId(), number: 'G-23', kind: 'hammer' };
    const response = await site.postJson('/gear', body, as('engineer'));
    expect(response.status).toBe(422);
    const { fields } = (await response.json()) as { fields: Record<string, string> };
    expect(Object.keys(fields).sort()).toEqual(['accuracyPercentOfSpan', 'calibratedOn', 'dueOn', 'kind']);
  });

  test('refuses a number that is in use, GEA-002', async () => {
    await added({ number: 'G-24' });
    const response = await post('/gear', { ...G_07, number: 'g-24', note: 'another one' });
    expect(response.status).toBe(409);
    const html = await response.text();
    expect(html).toContain('GEA-002');
    expect(html).toContain('value="another one"');
  });

  test('is recorded once however often the form is sent', async () => {
    const fields = { ...G_07, number: 'G-25', requestId: newRequestId() };
    const first = await post('/gear', fields);
    const second = await post('/gear', fields);
    expect([first.status, second.status]).toEqual([303, 303]);
    expect(await site.services.log.place('gear:G-25')).toBe(1);
  });

  test.each(['/gear', '/gear/L-1', '/gear/L-1/retire'])('is not for technicians: %s', async (path) => {
    const before = (await site.services.log.head()).seq;
    const response = await post(path, { ...G_07, number: 'G-26', why: 'x', revision: '1' }, 'technician');
    expect(response.status).toBe(403);
    expect((await site.services.log.head()).seq).toBe(before);
  });
});

describe('saving test gear anew', () => {
  test('says in its history what changed, from what, and who did it', async () => {
    await added({ number: 'G-30' });
    const texts = savedTexts({ calibratedOn: '2024-01-10', dueOn: '2025-01-10', certificate: 'C-9' });
    expect((await post('/gear/G-30', { ...texts, revision: '1' }, 'supervisor')).status).toBe(303);
    const { gear, history } = await json('/gear/G-30');
    expect(gear).toMatchObject({ dueOn: '2025-01-10', revision: 2 });
    expect(history[0]).toMatchObject({
      person: 's1',
      what: 'Calibrated on: 2024-01-10, was 2023-11-02; Due on: 2025-01-10, was 2024-11-02; Certificate: C-9, was C-4471',
    });
  });

  test('shows the form as it was saved, in the unit of the scale', async () => {
    await added({ number: 'G-31', unit: 'kPa', rangeHigh: '200' });
    const html = await page('/gear/G-31', 'engineer');
    expect(html).toMatch(/id="rangeHigh"[^>]*value="200"/);
    expect(html).toMatch(/<option value="pressure gauge" selected>/);
    expect(html).toMatch(/name="revision" value="1"/);
  });

  test('is refused where somebody else saved it meanwhile, GEA-003, with both to be seen', async () => {
    await added({ number: 'G-32' });
    await post('/gear/G-32', { ...savedTexts({ note: 'theirs' }), revision: '1' }, 'supervisor');
    const response = await post('/gear/G-32', { ...savedTexts({ note: 'mine' }), revision: '1' });
    expect(response.status).toBe(409);
    const html = await response.text();
    expect(html).toContain('GEA-003');
    expect(html).toContain('value="mine"');
    expect(html).toContain('Note: theirs, was blank');
    // What the form then carries is what stands now, so that sending it again is a choice made with open eyes.
    expect(html).toMatch(/name="revision" value="2"/);
  });

  test('keeps what was typed where a field is wrong', async () => {
    await added({ number: 'G-33' });
    const response = await post('/gear/G-33', { ...savedTexts({ dueOn: 'soon' }), revision: '1' });
    expect(response.status).toBe(422);
    expect(await response.text()).toMatch(/id="dueOn"[^>]*value="soon"|value="soon"[^>]*id="dueOn"/);
  });

  test('is refused for gear that is not there, GEA-001', async () => {
    const response = await post('/gear/G-99', { ...savedTexts({}), revision: '1' });
    expect(response.status).toBe(404);
    expect(await response.text()).toContain('GEA-001');
    expect((await site.get('/gear/G-99', as('technician'))).status).toBe(404);
  });
});

describe('retiring test gear', () => {
  test('keeps why, refuses to do it twice, GEA-004, and saving takes it back into use', async () => {
    await added({ number: 'G-40' });
    expect((await post('/gear/G-40/retire', { why: '' })).status).toBe(422);
    expect((await post('/gear/G-40/retire', { why: 'dropped from the rack' })).status).toBe(303);
    expect(await page('/gear/G-40', 'engineer')).toContain('Retired: dropped from the rack');
    const twice = await post('/gear/G-40/retire', { why: 'again' });
    expect(twice.status).toBe(409);
    expect(await twice.text()).toContain('GEA-004');
    expect((await post('/gear/G-40', { ...savedTexts({}), revision: '1' })).status).toBe(303);
    expect((await json('/gear/G-40')).gear).toMatchObject({ retired: false, revision: 2 });
  });
});
