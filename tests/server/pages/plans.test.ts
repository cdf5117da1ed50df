import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { rolesAt } from '../../../procedures/test-gear/roles.ts';
import type { ShiftList } from '../../../server/jobs/shift-list.ts';
import { planKind } from '../../../server/plans/plan-stream.ts';
import { gearItem } from '../../builders/gear.ts';
import { aSheet } from '../../builders/sheets.ts';
import { openSiteJob } from '../../builders/site-jobs.ts';
import { readHtml } from '../../views/html.ts';
import { type AnApp, anApp, type Browser, newRequestId } from '../an-app.ts';
import { textOf } from './texts.ts';

/** The clock of the test site stands at 2024-01-15. */
const DUE = { tag: 'FV-301', procedure: 'stroke-check', place: 'line', role: 'technician' };

let app: AnApp;
let supervisor: Browser;
let technician: Browser;

beforeAll(async () => {
  app = await anApp({ people: true });
  const people = {
    technician: await app.signedIn('technician'),
    supervisor: await app.signedIn('supervisor'),
  };
  [technician, supervisor] = [people.technician.browser, people.supervisor.browser];
  // Two valves with their gear; a job is open on the other one.
  await openSiteJob(app, {
    technician: people.technician.person,
    supervisor: people.supervisor.person,
    sheet: aSheet({ tag: 'FV-302' }),
  });
  await saveValve('FV-301');
});
afterAll(() => app.close());

async function saveValve(tag: string): Promise<void> {
  await app.services.log.act({
    requestId: null,
    fingerprint: tag,
    person: null,
    screen: 'test',
    streams: [`valve:${tag}`],
    decide: () => ({
      entries: [
        {
          stream: `valve:${tag}`,
          kind: 'valve-sheet-saved',
          inputs: JSON.parse(JSON.stringify({ sheet: aSheet({ tag }), typed: {} })),
          outcome: {},
          effects: {},
        },
      ],
      answer: {},
    }),
  });
}

const post = (path: string, fields: Readonly<Record<string, string>>, as = supervisor) =>
  app.post(path, { requestId: newRequestId(), ...fields }, { as });
const json = async (path: string, body: object) =>
  (await app.postJson(path, { requestId: newRequestId(), ...body }, { as: supervisor })).json();
const planOf = (number: string) => app.services.log.state(planKind, number);

async function seen(path: string, as = technician): Promise<string> {
  const response = await app.get(path, { as });
  const html = await response.text();
  expect([path, response.status, readHtml(html).faults]).toEqual([path, 200, []]);
  return html;
}

async function shiftList(): Promise<ShiftList> {
  const response = await app.get('/shift', { as: technician, headers: { accept: 'application/json' } });
  return (await response.json()) as ShiftList;
}

describe('planned work', () => {
  test('is planned by hand on a page, with the next number where none is written', async () => {
    expect(await seen('/plans/new?tag=FV-301', supervisor)).toContain('value="FV-301"');
    const late = await post('/plans', { ...DUE, dueOn: '2024-01-12', note: 'Reads low at 50 %.' });
    expect([late.status, late.headers.get('location')]).toEqual([303, '/plans']);
    await post('/plans', { ...DUE, number: 'ORD-7', dueOn: '2024-01-15', tag: 'FV-302' });
    await post('/plans', { ...DUE, number: 'ORD-8', dueOn: '2024-01-20' });
    expect((await planOf('P-1')).plan).toMatchObject({ tag: 'FV-301', dueOn: '2024-01-12' });
    const wrong = await post('/plans', { ...DUE, tag: 'FV-999', dueOn: '2024-01-20' });
    expect([wrong.status, (await wrong.text()).includes('There is no valve FV-999.')]).toEqual([422, true]);
    expect((await post('/plans', { ...DUE, number: 'ORD-8', dueOn: '2024-02-01' })).status).toBe(409);
    expect((await post('/plans', { ...DUE, dueOn: '2024-01-20' }, technician)).status).toBe(403);
  });

  test('stands on the shift list when it is due: late, for whom, and what hinders it', async () => {
    const list = await shiftList();
    expect(list.planned.map(({ number, due, isMine, openJob }) => [number, due, isMine, openJob])).toEqual([
      ['P-1', '3 days late', true, null],
      ['ORD-7', 'today', true, '1'],
    ]);
    expect([list.plannedDue, list.plannedSoon]).toEqual([2, 1]);
    const text = textOf(await seen('/shift'));
    expect(text).toContain('2 plans, 1 late; 1 within the next 7 days');
    expect(text).toContain('Reads low at 50 %.');
    expect(text).toContain('job 1 has the valve');
    const plans = textOf(await seen('/plans'));
    for (const said of ['3 to do', '2024-01-20, in 5 days', 'plan ORD-8']) expect(plans).toContain(said);
  });

  test('is opened as a job in one act, which takes it off the list', async () => {
    const form = await seen('/jobs/new?tag=FV-301&procedure=stroke-check&place=line');
    expect(form).toContain('name="plan" value="P-1"');
    expect(form).toContain('not offered');
    // From the plan itself the form stands alone, with a way to the rest.
    const planned = await seen('/jobs/new?tag=FV-301&procedure=stroke-check&place=line&plan=P-1');
    expect([planned.includes('not offered'), planned.includes('Other procedures for this valve')]).toEqual([
      false,
      true,
    ]);
    const gear = Object.fromEntries(rolesAt('line').map((role) => [role, gearItem(role).number]));
    const asked = { tag: 'FV-301', procedure: 'stroke-check', place: 'line', ...gear };
    const other = await post('/jobs', { ...asked, plan: 'ORD-7' }, technician);
    expect([other.status, (await planOf('ORD-7')).status]).toEqual([409, 'planned']);
    const before = (await app.services.log.head()).seq;
    const opened = await post('/jobs', { ...asked, plan: 'P-1' }, technician);
    expect([opened.status, opened.headers.get('location')]).toEqual([303, '/jobs/2']);
    expect(await planOf('P-1')).toMatchObject({ status: 'opened', job: '2' });
    const lines = await app.services.log.entriesOf('plan:P-1');
    expect(lines.map(({ kind }) => kind)).toEqual(['plan-saved', 'plan-opened']);
    expect(lines.at(-1)?.seq).toBeLessThanOrEqual(before + 4);
    expect((await shiftList()).planned.map(({ number }) => number)).toEqual(['ORD-7']);
    expect(textOf(await seen('/plans/P-1'))).toContain('Opened as job 2');
    expect((await post('/plans/P-1/withdraw', { why: 'x' })).status).toBe(409);
    expect((await post('/plans/P-1', { ...DUE, dueOn: '2024-03-01', revision: '1' })).status).toBe(409);
  });

  test('is saved anew and withdrawn, and its page says by whom', async () => {
    expect((await post('/plans/ORD-8', { ...DUE, dueOn: '2024-02-01', revision: '1' })).status).toBe(303);
    expect((await post('/plans/ORD-8', { ...DUE, dueOn: '2024-02-02', revision: '1' })).status).toBe(409);
    expect((await post('/plans/ORD-8/withdraw', { why: 'Valve is renewed' })).status).toBe(303);
    const text = textOf(await seen('/plans/ORD-8', supervisor));
    for (const said of ['By: 2024-01-20 becomes 2024-02-01.', 'Withdrawn: Valve is renewed', 'Plan it again'])
      expect(text).toContain(said);
    expect((await app.get('/plans/NONE', { as: technician })).status).toBe(404);
  });

  test('goes out as a table and as JSON, and both come in again unchanged', async () => {
    for (const number of ['A-1', 'A-2'])
      await post('/plans', { ...DUE, number, dueOn: '2024-04-01', note: '=1+1, "quoted"; ’' });
    for (const path of ['/plans/tables/plans.csv', '/plans/tables/plans.json']) {
      const table = await (await app.get(path, { as: technician })).text();
      const looked = (await json('/plans/tables', { table })) as { rows: { id: string; change: string }[] };
      expect(looked.rows.map(({ id, change }) => `${id} ${change}`)).toEqual([
        'ORD-7 unchanged',
        'A-1 unchanged',
        'A-2 unchanged',
      ]);
    }
  });

  test('comes in as a table: shown first, what was opened since left alone, wrong cells of the site named', async () => {
    const head = 'number,tag,procedure,place,dueOn,role,note';
    const row = (number: string, tag: string, dueOn = '2024-05-01') =>
      `${number},${tag},stroke-check,line,${dueOn},technician,`;
    const wrong = await post('/plans/tables', {
      table: [head, row('B-1', 'FV-301'), row('B-2', 'FV-99')].join('\n'),
    });
    const html = await wrong.text();
    expect([wrong.status, readHtml(html).faults]).toEqual([422, []]);
    expect(html).toMatch(/<tr id="row-3-tag">[\s\S]*?There is no valve FV-99\./);
    expect((await planOf('B-1')).plan).toBeNull();
    const table = [head, row('P-1', 'FV-301'), row('A-1', 'FV-301'), row('B-1', 'FV-301')].join('\n');
    const looked = (await json('/plans/tables', { table })) as { digest: string; rows: { change: string }[] };
    expect(looked.rows.map(({ change }) => change)).toEqual(['opened already', 'changed', 'new']);
    expect(await json('/plans/tables/confirm', { digest: looked.digest })).toEqual({ saved: 2 });
    expect([(await planOf('P-1')).status, (await planOf('A-1')).revision]).toEqual(['opened', 2]);
  });
});
