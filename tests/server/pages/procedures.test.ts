import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { PROCEDURES } from '../../../procedures/served.ts';
import { Catalogue } from '../../../server/jobs/catalogue.ts';
import { paperForm } from '../../../server/procedures/paper-form.ts';
import { aSheet } from '../../builders/sheets.ts';
import { readHtml, textOf } from '../../views/html.ts';
import { type AnApp, anApp, type Browser } from '../an-app.ts';

let app: AnApp;
let as: Browser;
beforeAll(async () => {
  app = await anApp({ people: true });
  as = (await app.signedIn('safety-officer')).browser;
});
afterAll(() => app.close());

const page = async (path: string) => readHtml(await (await app.get(path, { as })).text());
const json = async (path: string) =>
  (await app.get(path, { as, headers: { accept: 'application/json' } })).json() as Promise<never>;

describe('the pages of procedures', () => {
  test('list every procedure that is served, with revision and hash', async () => {
    const { procedures } = (await json('/procedures')) as { procedures: { id: string }[] };
    expect(procedures.map(({ id }) => id)).toEqual(PROCEDURES.map(({ definition }) => definition.id));
    const { faults, elements } = await page('/procedures');
    expect(faults).toEqual([]);
    const text = elements.map((element) => textOf(element)).join(' ');
    for (const { definition } of PROCEDURES) expect(text).toContain(definition.title);
  });

  test.each(PROCEDURES.map(({ definition }) => [definition.title, definition] as const))(
    'print %s as its sheet: each step once, every way by a number, each figure by its name',
    async (_, { id, steps }) => {
      const told = (await json(`/procedures/${id}`)) as { steps: { id: string; lines: string[] }[] };
      expect(told.steps.map((step) => step.id).toSorted()).toEqual(Object.keys(steps).toSorted());
      expect(JSON.stringify(told.steps)).not.toMatch(/\{\w+\}|undefined|NaN|\*\*/);
      const { faults, elements } = await page(`/procedures/${id}`);
      expect(faults).toEqual([]);
      const charts = elements.filter(({ attrs }) => attrs.some(({ value }) => value === 'statechart'));
      expect(charts.length).toBeGreaterThan(2);
    },
  );

  test('have none of that name', async () => {
    const refused = await app.get('/procedures/nothing', { as, headers: { accept: 'application/json' } });
    expect([refused.status, ((await refused.json()) as { code: string }).code]).toEqual([404, 'PCD-001']);
  });
});

describe('a form for paper', () => {
  const compiled = new Catalogue().current('stroke-check')?.compiled;
  if (compiled === undefined) throw new Error('no stroke check is served');
  const numbersOf = (form: ReturnType<typeof paperForm>) =>
    form.phases.flatMap(({ steps }) => steps.map(({ number }) => number));

  test('has the cards that this valve can come to, and no others', () => {
    const line = paperForm(compiled, { sheet: aSheet(), place: 'line' });
    const bench = paperForm(compiled, { sheet: aSheet(), place: 'bench' });
    const titles = (form: typeof line) => form.phases.flatMap(({ steps }) => steps.map(({ title }) => title));
    expect(titles(line).some((title) => title.includes('inlet block valve'))).toBe(true);
    expect(titles(bench).some((title) => title.includes('inlet block valve'))).toBe(false);
    expect(numbersOf(line)).toEqual(numbersOf(line).toSorted((one, other) => one - other));
  });

  test('has the numbers of the valve printed in, and nothing left open', () => {
    const sheet = aSheet();
    const text = JSON.stringify(paperForm(compiled, { sheet, place: 'line' }));
    expect(text).not.toMatch(/\{\w+\}|undefined|NaN/);
    expect(text).toContain('psi');
  });

  test('says at each hold who looks at what, and at each step where every answer leads', () => {
    const form = paperForm(compiled, { sheet: aSheet(), place: 'line' });
    const steps = form.phases.flatMap(({ steps: all }) => all);
    const known = new Set(steps.map(({ number }) => number));
    const ends = Object.values(compiled.definition.steps).filter(({ kind }) => kind === 'end').length;
    const led = new Set(steps.flatMap(({ ways }) => ways.map((way) => Number(/: (\d+)$/.exec(way)?.[1]))));
    expect([...led].filter((number) => !known.has(number)).length).toBeLessThanOrEqual(ends);
    const holds = steps.flatMap(({ hold }) => (hold === null ? [] : [hold]));
    expect(holds.length).toBeGreaterThan(1);
    for (const hold of holds) expect(hold.evidence.length).toBeGreaterThan(3);
    expect(steps.every(({ ways }) => ways.some((way) => way.startsWith('make safe and stop')))).toBe(true);
  });

  test('has the drawings of its cards, each tie-rod order among them, and room for what only the job gives', () => {
    const seals = new Catalogue().current('piston-seals')?.compiled;
    if (seals === undefined) throw new Error('no cylinder seals are served');
    const sheet = aSheet({ actuatorKind: 'piston', springHeldBy: 'no spring', failPosition: 'stays' });
    const steps = paperForm(seals, { sheet, place: 'bench' }).phases.flatMap((phase) => phase.steps);
    const close = steps.find(({ title }) => title.includes('tighten the tie rods'));
    expect(close?.pictures.map(({ caption }) => caption)).toContain('8 rods: 1, 5, 3, 7, 2, 6, 4, 8');
    expect(close?.pictures.every(({ svg }) => svg.startsWith('<svg'))).toBe(true);
    expect(JSON.stringify(steps)).not.toContain('not on the sheet');
  });

  test('of a search has the checks that this valve can have, and no others', () => {
    const search = new Catalogue().current('find-the-fault')?.compiled;
    if (search === undefined) throw new Error('no search is served');
    const form = paperForm(search, { sheet: aSheet(), place: 'line' });
    const text = JSON.stringify(form);
    expect(text).toContain('Soap test of the case joint');
    expect(text).not.toMatch(/cylinder|piston/i);
  });
});
