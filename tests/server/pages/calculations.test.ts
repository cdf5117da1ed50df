import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { z } from 'zod';
import { CALCULATIONS, calculationOf } from '../../../procedures/calculations/registry.ts';
import type { OpenApi } from '../../../server/http/openapi.ts';
import { FV_214 } from '../../builders/sheets.ts';
import { attributeOf, readHtml, textOf } from '../../views/html.ts';
import { exampleTexts } from '../calculations/examples.ts';
import { aValveSite, type ValveSite } from './valve-site.ts';

let site: ValveSite;
let api: OpenApi;

beforeAll(async () => {
  site = await aValveSite();
  const saved = await site.posted('/valves', { ...FV_214, tag: 'FV-214', typedIn: 'us' });
  expect(saved.status).toBe(303);
  api = (await (
    await site.app.get('/openapi.json', { headers: { accept: 'application/json' } })
  ).json()) as OpenApi;
});

afterAll(() => site.close());

const address = (id: string, texts: Readonly<Record<string, string>>) =>
  `/calculations/${id}?${new URLSearchParams(texts)}`;

interface Answer {
  readonly results: Readonly<Record<string, unknown>> | null;
  readonly missing: readonly string[];
  readonly inputs: Readonly<Record<string, { readonly typed: string; readonly fromSheet: boolean }>>;
  readonly units: string;
  readonly code?: string;
  readonly fields?: Readonly<Record<string, string>>;
}

async function asJson(path: string): Promise<{ readonly status: number; readonly answer: Answer }> {
  const response = await site.app.get(path, { as: site.technician, headers: { accept: 'application/json' } });
  return { status: response.status, answer: (await response.json()) as Answer };
}

const BENCH = { effectiveAreaM2: '100', benchSetLowPa: '3', benchSetHighPa: '15', travelM: '0.75' };

describe('the list of calculations', () => {
  test('has every one of the registry, by subject, as a page and as JSON', async () => {
    const page = await site.seen('/calculations', site.technician);
    for (const { id, title } of CALCULATIONS) {
      expect(page).toContain(`href="/calculations/${id}"`);
      expect(page).toContain(title.split(/[’'&]/)[0]);
    }
    const { answer } = await asJson('/calculations');
    expect(answer).toMatchObject({
      calculations: CALCULATIONS.map(({ id, title, topic }) => ({ id, title, subject: topic })),
    });
  });

  test('leads on to those of a valve, from its page too', async () => {
    expect(await site.seen('/valves/FV-214', site.technician)).toContain('href="/calculations?valve=FV-214"');
    expect(await site.seen('/calculations?valve=FV-214')).toContain('/calculations/bench-set?valve=FV-214');
  });
});

describe.each(CALCULATIONS.map((calculation) => ({ id: calculation.id, calculation })))(
  'the calculation $id',
  ({ id, calculation }) => {
    test('is a page whose form asks every input, blank at first', async () => {
      const { elements } = readHtml(await site.seen(`/calculations/${id}`));
      const names = elements.map((element) => attributeOf(element, 'name'));
      for (const name of Object.keys(calculation.inputs)) expect(names).toContain(name);
    });

    test('works its example out on a page that shows result, working, validity and source', async () => {
      const page = await site.seen(address(id, exampleTexts(calculation)));
      for (const { title } of Object.values(calculation.outputs)) expect(textWithin(page)).toContain(title);
      expect(textWithin(page)).toContain(calculation.equation);
      expect(textWithin(page)).toContain(calculation.validity);
      for (const source of calculation.sources) expect(page).toContain(source);
      expect(page).not.toMatch(/NaN|undefined|\[object/);
    });

    test('answers the same as JSON, as its description says', async () => {
      const { status, answer } = await asJson(address(id, exampleTexts(calculation)));
      expect(status).toBe(200);
      const operation = api.paths[`/calculations/${id}`]?.get as {
        responses: { '2XX': { content: { 'application/json': { schema: z.core.JSONSchema.JSONSchema } } } };
        parameters: readonly { name: string; in: string }[];
      };
      const schema = z.fromJSONSchema(operation.responses['2XX'].content['application/json'].schema);
      expect(schema.safeParse(answer).error).toBeUndefined();
      expect(operation.parameters.map(({ name }) => name)).toEqual([
        ...Object.keys(calculation.inputs),
        'units',
        'valve',
      ]);
      expect(Object.keys(answer.results ?? {})).toEqual(Object.keys(calculation.run(calculation.example)));
    });
  },
);

function textWithin(html: string): string {
  const { elements } = readHtml(html);
  const main = elements.find((element) => attributeOf(element, 'id') === 'sheets');
  if (main === undefined) throw new Error('The page has no sheets.');
  return textOf(main);
}

describe('what was typed', () => {
  test('stays in the form and in the address, as it was typed', async () => {
    const page = await site.seen(address('bench-set', { ...BENCH, travelM: ' 0,75 in ' }));
    expect(page).toContain('value="0,75 in"');
    expect(page).toContain('href="/calculations/bench-set?units=us&amp;effectiveAreaM2=100&amp;');
    expect(textWithin(page)).toContain('1600.0 lbf/in');
    expect(textWithin(page)).toContain('280.20 N/mm');
  });

  test('stays in the form where it cannot be, with the reason beside it and status 422', async () => {
    const wrong = { ...BENCH, effectiveAreaM2: '0', travelM: '0.75' };
    const response = await site.app.get(address('bench-set', wrong), { as: site.technician });
    expect(response.status).toBe(422);
    const html = await response.text();
    expect(readHtml(html).faults).toEqual([]);
    expect(html).toContain('Effective area of the diaphragm: 0 cannot be.');
    expect(html).toContain('value="0.75"');
    const area = readHtml(html).elements.find((element) => attributeOf(element, 'id') === 'effectiveAreaM2');
    expect(area && attributeOf(area, 'aria-invalid')).toBe('true');
    const { status, answer } = await asJson(address('bench-set', wrong));
    expect([status, answer.code, Object.keys(answer.fields ?? {})]).toEqual([
      422,
      'CAL-003',
      ['effectiveAreaM2'],
    ]);
  });

  test('is never taken where there is no such field', async () => {
    const { status, answer } = await asJson(address('bench-set', { ...BENCH, luck: '7' }));
    expect([status, answer.fields]).toEqual([422, { form: 'There is no field luck here.' }]);
  });

  test('keeps its meaning in the other units', async () => {
    const { elements } = readHtml(await site.seen(address('bench-set', BENCH)));
    const link = elements.find((element) => textOf(element) === 'the same in the other units');
    const href = link === undefined ? '' : (attributeOf(link, 'href') ?? '');
    expect(new URL(href, 'http://x').searchParams.get('travelM')).toBe('0.75 in');
    const [here, there] = [await asJson(address('bench-set', BENCH)), await asJson(href)];
    expect(there.answer.units).toBe('si');
    expect(there.answer.results).toEqual(here.answer.results);
  });

  test('as a script fetches it, is a piece with the places of the errors', async () => {
    const response = await site.app.get(address('bench-set', { ...BENCH, travelM: 'x' }), {
      as: site.technician,
      headers: { 'hx-request': 'true' },
    });
    expect(response.status).toBe(422);
    const { elements } = readHtml(await response.text());
    const place = elements.find((element) => attributeOf(element, 'id') === 'travelM-error');
    expect(place && textOf(place)).toContain('“x” is not a number');
  });
});

describe('a valve sheet', () => {
  test('fills what was not typed, and says so', async () => {
    const page = await site.seen('/calculations/bench-set?valve=FV-214');
    expect(page).toContain('value="100 in²"');
    expect(page).toContain('As on the sheet of FV-214.');
    expect(textWithin(page)).toContain('1600.0 lbf/in');
    const { answer } = await asJson('/calculations/bench-set?valve=FV-214&travelM=1+in');
    expect(answer.inputs).toMatchObject({
      travelM: { typed: '1 in', fromSheet: false },
      effectiveAreaM2: { typed: '100 in²', fromSheet: true },
    });
    expect(await site.seen('/calculations/bench-set?valve=FV-214&travelM=1+in')).toContain(
      'The sheet of FV-214 has 0.75 in.',
    );
  });

  test('that does not have every figure leaves them to be written, named, without a refusal', async () => {
    const { status, answer } = await asJson('/calculations/forces-at-lift?valve=FV-214');
    expect([status, answer.results, answer.missing]).toEqual([200, null, ['liftM', 'pressurePa']]);
  });

  test('does not fill a field that was made blank', async () => {
    const { status, answer } = await asJson('/calculations/bench-set?valve=FV-214&travelM=&benchSetLowPa=3');
    expect([status, answer.fields]).toEqual([422, { travelM: 'Write this.' }]);
  });

  test('that there is none of is refused at its own field', async () => {
    const response = await site.app.get('/calculations/bench-set?valve=XX-1&travelM=1', {
      as: site.technician,
    });
    expect(response.status).toBe(422);
    const html = await response.text();
    expect(html).toContain('There is no valve XX-1.');
    expect(html).toContain('value="XX-1"');
  });
});

describe('a long table', () => {
  const samples = (count: number) =>
    Array.from({ length: count }, (_, at) => `${at / 10}; ${at < 12 ? 50 : 60}`).join('\n');

  test('is posted, and leads to an address where it fits into one', async () => {
    const sent = await site.posted('/calculations/step-response', { samples: samples(40), stepTimeS: '1' });
    expect(sent.status).toBe(303);
    const page = await site.seen(sent.headers.get('location') ?? '');
    expect(textWithin(page)).toContain('T63');
    const json = await site.json('/calculations/step-response', { samples: samples(40), stepTimeS: '1' });
    expect(await json.json()).toMatchObject({ results: { stepPercent: 10 } });
  });

  test('is answered at once where it does not', async () => {
    const sent = await site.posted('/calculations/step-response', { samples: samples(2000), stepTimeS: '1' });
    expect(sent.status).toBe(200);
    const html = await sent.text();
    expect(readHtml(html).faults).toEqual([]);
    expect(html).not.toContain('This calculation as a link');
  });

  test('with a wrong cell is refused by its line, and stands in the form again', async () => {
    const sent = await site.posted('/calculations/step-response', {
      samples: '0;50\n1;fast',
      stepTimeS: '1',
    });
    expect(sent.status).toBe(422);
    const html = await sent.text();
    expect(html).toContain('Line 2: Travel: “fast” is not a number.');
    expect(html).toContain('0;50\n1;fast');
  });

  test('is asked for by post only where there is a table', () => {
    const posts = site.app.routes.filter(
      ({ method, path }) => method === 'POST' && path.startsWith('/calculations'),
    );
    const tables = CALCULATIONS.filter(({ inputs }) =>
      Object.values(inputs).some(({ kind }) => kind === 'rows'),
    );
    expect(posts.map(({ path }) => path)).toEqual(tables.map(({ id }) => `/calculations/${id}`));
    expect(calculationOf('step-response').inputs.samples?.kind).toBe('rows');
  });
});

const ODD = [
  ...[
    '',
    ' ',
    '0',
    '-1',
    'NaN',
    '1e309',
    '1,5',
    '9 psi',
    '50 %',
    '1;2',
    'yes',
    'us',
    'FV-214',
    'FV-999',
    '../x',
  ],
  ...[
    '<script>alert(1)</script>',
    '{{ 7 * 7 }}',
    'a\u0000b',
    '\u202egnp.exe',
    '\ud83d',
    'x'.repeat(5000),
    '\n\n',
    '"',
  ],
];

test('whatever is typed is answered with a result or a plain refusal, as page and as JSON', {
  timeout: 120_000,
}, async () => {
  const faults = site.app.lines.length;
  const odd = fc.oneof(fc.constantFrom(...ODD), fc.string({ unit: 'binary', maxLength: 40 }));
  const asked = fc.constantFrom(...CALCULATIONS).chain((calculation) => {
    const names = [...Object.keys(calculation.inputs), 'units', 'valve'];
    const changed = fc.dictionary(fc.constantFrom(...names), odd, { maxKeys: 4 });
    return fc.record({
      calculation: fc.constant(calculation),
      changed,
      json: fc.boolean(),
      posts: fc.boolean(),
    });
  });
  await fc.assert(
    fc.asyncProperty(asked, async ({ calculation, changed, json, posts }) => {
      const path = `/calculations/${calculation.id}`;
      const texts = { ...exampleTexts(calculation), ...changed };
      const sent = { as: site.technician, headers: { accept: json ? 'application/json' : 'text/html' } };
      const tabled = Object.values(calculation.inputs).some(({ kind }) => kind === 'rows');
      const response =
        posts && tabled
          ? await site.app.post(path, texts, sent)
          : await site.app.get(address(calculation.id, texts), sent);
      const told = await response.text();
      expect([200, 303, 400, 422], `${path} ${JSON.stringify(changed)} ${site.app.lines.at(-1)}`).toContain(
        response.status,
      );
      if (!json) expect(told).not.toContain('<script>alert(1)');
      expect(told).not.toMatch(/>[^<]*(NaN|undefined)[^<]*<\/dd>/);
    }),
    { numRuns: 400 },
  );
  expect(site.app.lines.length).toBe(faults);
});

test('nothing of all this is recorded', async () => {
  const before = (await site.app.services.log.head()).seq;
  await site.seen(address('bench-set', BENCH));
  await site.posted('/calculations/step-response', { samples: '0;50\n2;60\n4;60', stepTimeS: '0.5' });
  expect((await site.app.services.log.head()).seq).toBe(before);
});
