import { afterEach, describe, expect, test } from 'vitest';
import { procedureNamed } from '../../../procedures/served.ts';
import { chosenGear } from '../../../procedures/test-gear/choice.ts';
import type { GearItem } from '../../../procedures/test-gear/gear.ts';
import { readGear } from '../../../procedures/test-gear/read-gear.ts';
import { rolesAt } from '../../../procedures/test-gear/roles.ts';
import { demoGear } from '../../../server/demo/demo-gear.ts';
import { DEMO_VALVES } from '../../../server/demo/demo-valves.ts';
import { GEAR_IN_PSI } from '../../../server/demo/earlier-jobs.ts';
import { Catalogue } from '../../../server/jobs/catalogue.ts';
import { streamOf } from '../../../server/log/stream-kind.ts';
import { gearItem, PSI_PA } from '../../builders/gear.ts';
import { aSheet, aSheetOf } from '../../builders/sheets.ts';
import { attributeOf, readHtml } from '../../views/html.ts';
import { type AnApp, anApp, type Browser, newRequestId } from '../an-app.ts';
import { textOf } from '../pages/texts.ts';
import { gearNumbers, saved, withGear, withValve } from './site.ts';

const open: AnApp[] = [];
afterEach(async () => {
  for (const app of open.splice(0)) await app.close();
});

const sheet = aSheet();

/** Gear that would be chosen in vain. */
const UNFIT: readonly GearItem[] = [
  gearItem('signalGauge', { number: 'G-901', dueOn: '2024-01-14' }),
  gearItem('signalGauge', { number: 'G-902', rangeHighSi: 15 * PSI_PA }),
  gearItem('signalGauge', { number: 'G-903', rangeLowSi: 3 * PSI_PA }),
  gearItem('regulator', { number: 'R-901', bleedsDown: false }),
  gearItem('travelIndicator', { number: 'D-901', rangeHighSi: 0.0127 }),
  gearItem('signalGauge', { number: 'G-904', dueOn: '2024-01-15' }),
];

async function aSite(): Promise<{ readonly app: AnApp; readonly technician: Browser }> {
  const app = await anApp({ people: true });
  open.push(app);
  await withValve(app, sheet);
  await withGear(app, UNFIT);
  return { app, technician: (await app.signedIn('technician')).browser };
}

const choice = (place: 'bench' | 'line', gear: Readonly<Record<string, string>>) => ({
  requestId: newRequestId(),
  tag: sheet.tag,
  procedure: 'stroke-check',
  place,
  ...gearNumbers(place),
  ...gear,
});

/** Values of what stands chosen in the lists of a page. */
function chosenIn(html: string): (string | undefined)[] {
  return readHtml(html)
    .elements.filter(
      (element) => element.tagName === 'option' && attributeOf(element, 'selected') !== undefined,
    )
    .map((option) => attributeOf(option, 'value'));
}

async function optionsOf(app: AnApp, { who, name }: { readonly who: Browser; readonly name: string }) {
  const page = await app.get(`/jobs/new?tag=${sheet.tag}&procedure=stroke-check&place=bench`, { as: who });
  return readHtml(await page.text())
    .elements.filter((element) => element.tagName === 'select' && attributeOf(element, 'name') === name)
    .flatMap((select) => readOptions(select));
}

interface Problem {
  readonly code: string;
  readonly what: string;
  readonly kept: string;
  readonly next: string;
  readonly fields: Readonly<Record<string, string>>;
}

/** By what is wrong with the choice: the choice, and what is said at it. */
const CASES: Readonly<
  Record<
    string,
    { readonly gear: Readonly<Record<string, string>>; readonly says: Readonly<Record<string, string>> }
  >
> = {
  'an overdue gauge': {
    gear: { signalGauge: 'G-901' },
    says: { signalGauge: 'G-901 was due for calibration on 2024-01-14. Choose another.' },
  },
  'a regulator that does not bleed down': {
    gear: { regulator: 'R-901' },
    says: {
      regulator: 'R-901 does not bleed down: air that stays behind looks like hysteresis. Choose another.',
    },
  },
  'one gauge for signal and supply': {
    gear: { supplyGauge: 'G-101' },
    says: {
      supplyGauge:
        'G-101 is chosen for “Signal gauge” and for “Supply gauge”: each needs a gauge of its own. Choose another.',
    },
  },
  'one gauge for both sides of the line': {
    gear: { outletGauge: 'G-104' },
    says: {
      outletGauge:
        'G-104 is chosen for “Gauge at the inlet drain” and for “Gauge at the outlet drain”: each needs a gauge of its own. Choose another.',
    },
  },
  'a gauge held against itself in the rig check': {
    gear: { checkGauge: 'G-101' },
    says: {
      checkGauge:
        'G-101 is chosen for “Signal gauge” and for “Second gauge, for the rig check”: each needs a gauge of its own. Choose another.',
    },
  },
  'a gauge that cannot show too much air': {
    gear: { signalGauge: 'G-902' },
    says: {
      signalGauge: 'G-902 shows 0.00 psi to 15.00 psi; 0.00 psi to 20.00 psi is to be read. Choose another.',
    },
  },
  'a gauge that cannot show zero': {
    gear: { signalGauge: 'G-903' },
    says: {
      signalGauge: 'G-903 shows 3.00 psi to 30.00 psi; 0.00 psi to 20.00 psi is to be read. Choose another.',
    },
  },
  'an indicator shorter than the travel': {
    gear: { travelIndicator: 'D-901' },
    says: {
      travelIndicator:
        'D-901 shows 0.000 in to 0.500 in; 0.000 in to 0.750 in is to be read. Choose another.',
    },
  },
  'gear of another kind': {
    gear: { signalGauge: 'D-201' },
    says: { signalGauge: 'D-201 is a dial indicator; a pressure gauge is wanted. Choose another.' },
  },
  'gear that is not on the list': {
    gear: { signalGauge: 'G-777' },
    says: { signalGauge: 'There is no G-777 in use. Choose a pressure gauge of the list.' },
  },
  'nothing chosen': {
    gear: { signalGauge: '' },
    says: { signalGauge: 'Choose a pressure gauge.' },
  },
  'two pieces that do not fit': {
    gear: { signalGauge: 'G-901', regulator: 'R-901' },
    says: {
      signalGauge: expect.stringContaining('was due') as string,
      regulator: expect.any(String) as string,
    },
  },
};

describe('opening a job', () => {
  for (const [name, { gear, says }] of Object.entries(CASES)) {
    test(`is refused with ${name}, said at the gear itself, and nothing is written`, async () => {
      const { app, technician } = await aSite();
      const before = (await app.services.log.head()).seq;
      const asJson = await app.postJson('/jobs', choice('line', gear), { as: technician });
      expect(asJson.status).toBe(422);
      const problem = (await asJson.json()) as Problem;
      expect(problem).toMatchObject({
        code: 'OPN-006',
        kept: 'Your choices stand in the form; no job was opened.',
        next: 'Put right what is named there, and open the job again.',
      });
      expect(problem.fields).toEqual(says);

      const asForm = await app.post('/jobs', choice('line', gear), { as: technician });
      expect(asForm.status).toBe(422);
      const html = await asForm.text();
      expect(readHtml(html).faults).toEqual([]);
      const said = Object.values(problem.fields);
      for (const text of said) expect(textOf(html)).toContain(text);
      expect((await app.services.log.head()).seq).toBe(before);
      expect(await app.services.log.summaries('job')).toEqual([]);
    });
  }

  test('keeps what was chosen on the form that is drawn again', async () => {
    const { app, technician } = await aSite();
    const refused = await app.post('/jobs', choice('line', { regulator: 'R-901' }), { as: technician });
    expect(chosenIn(await refused.text()).sort()).toEqual(
      Object.values({ ...gearNumbers('line'), regulator: 'R-901' }).sort(),
    );
  });

  test('names each by its number and scale, what fits first, and what does not with its reason', async () => {
    const { app, technician } = await aSite();
    const regulators = await optionsOf(app, { who: technician, name: 'regulator' });
    expect(regulators).toEqual([
      'choose',
      'R-301, 0 to 60 psi, due 2099-01-15',
      'R-901, 0 to 60 psi, due 2099-01-15: does not bleed down',
    ]);
    const gauges = await optionsOf(app, { who: technician, name: 'signalGauge' });
    expect(gauges).toContain('G-902, 0 to 15 psi, due 2099-01-15: scale too short');
    expect(gauges).toContain('G-904, 0 to 30 psi, due 2024-01-15: due soon');
    expect(gauges.at(-1)).toContain(': ');
  });

  test('offers the gear of one’s own last job, which stands chosen once that is pressed', async () => {
    const { app, technician } = await aSite();
    const address = '/jobs/new?tag=FV-215&procedure=stroke-check&place=bench';
    await withValve(app, aSheet({ tag: 'FV-215' }));
    expect(await (await app.get(address, { as: technician })).text()).not.toContain(
      'The same as on your job',
    );
    await app.postJson('/jobs', choice('line', {}), { as: technician });
    const other = (await app.signedIn('supervisor')).browser;
    expect(await (await app.get(address, { as: other })).text()).not.toContain('The same as on your job');

    const offered = await (await app.get(address, { as: technician })).text();
    expect(textOf(offered)).toContain(`The same as on your job 1, ${sheet.tag}`);
    expect(chosenIn(offered)).toEqual([]);
    const link = readHtml(offered).elements.find((element) =>
      attributeOf(element, 'href')?.includes('signalGauge='),
    );
    const href = link === undefined ? '' : (attributeOf(link, 'href') ?? '');
    const taken = await (await app.get(href, { as: technician })).text();
    expect(chosenIn(taken).sort()).toEqual(Object.values(gearNumbers('bench')).sort());
    expect(textOf(taken)).toContain('Look that it is what you hold now');
  });

  test('does not offer gear again that is out of date by now', async () => {
    const { app, technician } = await aSite();
    await withValve(app, aSheet({ tag: 'FV-215' }));
    await app.postJson('/jobs', choice('bench', { signalGauge: 'G-904' }), { as: technician });
    app.wait(24 * 3600 * 1000);
    const again = (await app.signedIn('technician')).browser;
    const page = await app.get('/jobs/new?tag=FV-215&procedure=stroke-check&place=bench', { as: again });
    expect(textOf(await page.text())).toContain('The same as on your job 1, FV-214 G-102, D-201, R-301 ');
  });

  test('shows what is for a fault first, then setting and checking, then mending', async () => {
    const { app, technician } = await aSite();
    const text = textOf(await (await app.get(`/jobs/new?tag=${sheet.tag}`, { as: technician })).text());
    const at = [
      'Something is wrong with it',
      'Find the fault',
      'Set and check',
      'Stroke check',
      'Mend and renew',
    ];
    const places = at.map((words) => text.indexOf(words));
    expect(places.every((place) => place > 0)).toBe(true);
    expect(places).toEqual([...places].sort((one, other) => one - other));
  });

  test('takes gear on the last day on which it is in date', async () => {
    const { app, technician } = await aSite();
    const response = await app.postJson('/jobs', choice('bench', { signalGauge: 'G-904' }), {
      as: technician,
    });
    expect(response.status).toBe(201);
  });

  test('wants no gauges for supply and process on the bench', async () => {
    const { app, technician } = await aSite();
    const response = await app.postJson('/jobs', choice('bench', {}), { as: technician });
    expect(response.status).toBe(201);
    expect(await response.json()).toEqual({ job: '1' });
  });

  test.each([
    ['OPN-001', 409, { procedure: 'another-check' }, 'There is no procedure'],
    ['VAL-001', 404, { tag: 'FV-999' }, 'There is no valve FV-999.'],
    ['OPN-003', 409, {}, 'Job 1 is open on FV-214.'],
  ])('is refused with %s and nothing is written', async (code, status, changed, what) => {
    const { app, technician } = await aSite();
    await app.postJson('/jobs', choice('line', {}), { as: technician });
    const before = (await app.services.log.head()).seq;
    const again = await app.postJson('/jobs', { ...choice('line', {}), ...changed }, { as: technician });
    expect(again.status).toBe(status);
    const problem = (await again.json()) as Problem;
    expect(problem.code).toBe(code);
    expect(problem.what).toContain(what);
    expect((await app.services.log.head()).seq).toBe(before);
  });

  test('is refused on a retired valve, and on one that the procedure does not fit', async () => {
    const { app, technician } = await aSite();
    await saved(app, {
      stream: streamOf('valve', sheet.tag),
      kind: 'valve-retired',
      inputs: { why: 'scrapped' },
    });
    const retired = await app.postJson('/jobs', choice('line', {}), { as: technician });
    expect(await retired.json()).toMatchObject({ code: 'OPN-002', what: 'FV-214 is retired.' });
    expect(retired.status).toBe(409);
    await withValve(app, aSheetOf({ inletPoint: '' }));
    const unfit = await app.postJson('/jobs', choice('line', {}), { as: technician });
    expect(await unfit.json()).toMatchObject({
      code: 'OPN-004',
      what: 'The line has no block valve on each side: take the valve to the bench.',
    });
    expect(unfit.status).toBe(409);
  });
});

describe('the gear of the demo plant', () => {
  const today = new Date('2026-11-25T08:00:00Z');
  const items = demoGear(today).map((texts) => {
    const read = readGear({ texts, today: today.toISOString().slice(0, 10) });
    if (!read.ok) throw new Error(JSON.stringify(read.faults));
    return read.item;
  });
  const find = (number: string) => items.find((item) => item.number === number) ?? null;
  const IN_KPA = {
    signalGauge: 'G-21',
    checkGauge: 'G-22',
    travelIndicator: 'D-02',
    regulator: 'R-02',
    supplyGauge: 'G-04',
    inletGauge: 'G-31',
    outletGauge: 'G-32',
    seatGauge: 'G-33',
  };
  const IN_PSI = { ...GEAR_IN_PSI, seatGauge: 'G-13' };

  test('is fit for every job that its valves offer', () => {
    const catalogue = new Catalogue();
    let offered = 0;
    for (const valve of DEMO_VALVES.map((texts) => aSheetOf(texts))) {
      for (const { id, place } of catalogue.offers(valve).filter(({ because }) => because === null)) {
        const roles = rolesAt(place, procedureNamed(id)?.gear);
        offered += 1;
        for (const numbers of [IN_PSI, IN_KPA]) {
          expect(() => chosenGear({ roles, sheet: valve, numbers, find, today: '2026-11-25' })).not.toThrow();
        }
      }
    }
    expect(offered).toBeGreaterThan(20);
  });
});

function readOptions(select: ReturnType<typeof readHtml>['elements'][number]): string[] {
  return select.childNodes.flatMap((node) => {
    if (!('childNodes' in node)) return [];
    // A group of options is read as the options in it.
    if (node.nodeName === 'optgroup') return readOptions(node as typeof select);
    return [node.childNodes.map((text) => ('value' in text ? text.value : '')).join('')];
  });
}
