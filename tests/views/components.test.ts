import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { createRenderer } from '../../views/render.ts';
import { COMPONENTS, componentExamples, macroName } from '../../views/style-page.ts';
import { attributeOf, readHtml, textOf } from './html.ts';

const folder = fileURLToPath(new URL('../../views', import.meta.url));
const renderer = createRenderer({ folder });

/** Values that name one of a few cases; anything else is text that a person or a sheet may have written. */
const CASES = new Set(['state', 'mark', 'html', 'kind', 'size', 'side', 'level', 'type']);
const BREAKING = '<b-reak>"\'&{{';

const examples = COMPONENTS.flatMap((component) =>
  componentExamples(renderer, component).examples.map((example) => ({ component, ...example })),
);

function draw(component: string, params: object): string {
  return renderer.render('parts/example.njk', { component, macro: macroName(component), params });
}

/** The same params with one text made hostile, for each text in them. */
function hostile(component: string, value: unknown, key = ''): unknown[] {
  if (typeof value === 'string') {
    const fixed = CASES.has(key) || (component === 'signal-panel' && key === 'word');
    return fixed ? [] : [value + BREAKING];
  }
  if (Array.isArray(value)) {
    return value.flatMap((item, at) => hostile(component, item, key).map((bad) => value.with(at, bad)));
  }
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([name, item]) =>
    hostile(name === 'signal' ? 'signal-panel' : component, item, name).map((bad) => ({
      ...value,
      [name]: bad,
    })),
  );
}

test('every component folder has a contract, and every contract a folder', () => {
  expect([...COMPONENTS]).toEqual(readdirSync(`${folder}/components`).sort());
});

describe.each(COMPONENTS)('%s', (component) => {
  const contract = componentExamples(renderer, component);

  test('names every option that its template reads', () => {
    const template = renderer.source(`components/${component}/template.njk`);
    const read = new Set([...template.matchAll(/params\.(\w+)/g)].map((match) => match[1]));
    const given = new Set(contract.examples.flatMap((example) => Object.keys(example.params)));
    const named = Object.keys(contract.params);
    expect([...read].filter((name) => name && !named.includes(name))).toEqual([]);
    expect([...given].filter((name) => !named.includes(name))).toEqual([]);
    expect(named.filter((name) => !given.has(name))).toEqual([]);
  });
});

describe.each(examples)('$component, $name', ({ component, params }) => {
  test('is HTML that a browser need not guess at', () => {
    expect(readHtml(draw(component, params)).faults).toEqual([]);
  });

  test('escapes every text that it is given', () => {
    for (const bad of hostile(component, params) as object[]) {
      const { elements, faults } = readHtml(draw(component, bad));
      expect(elements.filter((element) => element.tagName === 'b-reak')).toEqual([]);
      expect(faults).toEqual([]);
    }
  });

  test('labels every control and points only at what is there', () => {
    const { elements } = readHtml(draw(component, params));
    const ids = new Set(elements.map((element) => attributeOf(element, 'id')));
    const labelled = new Set(elements.map((element) => attributeOf(element, 'for')));
    for (const element of elements.filter(({ tagName }) =>
      ['input', 'select', 'textarea'].includes(tagName),
    )) {
      if (attributeOf(element, 'type') === 'hidden') continue;
      expect(labelled.has(attributeOf(element, 'id')) || attributeOf(element, 'aria-label')).toBeTruthy();
    }
    for (const element of elements) {
      for (const id of (attributeOf(element, 'aria-describedby') ?? '').split(' ').filter(Boolean)) {
        expect(ids).toContain(id);
      }
      if (element.tagName === 'button' || element.tagName === 'a')
        expect(textOf(element).trim()).not.toBe('');
    }
  });
});
