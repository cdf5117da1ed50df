import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { everyDrawing } from '../../views/pictures/drawings.ts';
import { createRenderer } from '../../views/render.ts';
import { SCREEN_CHOICES, screenChoice } from '../../views/screen-choice.ts';
import { COMPONENTS, styleView } from '../../views/style-page.ts';
import { attributeOf, readHtml } from './html.ts';

/** Helpers of drawings, the lists of their examples, and one that is not on the page yet. */
const NOT_DRAWINGS = ['svg.ts', 'examples.ts', 'drawings.ts', 'loop-record.ts'];

const renderer = createRenderer({ folder: fileURLToPath(new URL('../../views', import.meta.url)) });
const draw = (name: string) =>
  renderer.render('pages/style.njk', styleView({ renderer, screen: screenChoice(name) }));

test('the style page shows every component once, as sound HTML with no id twice', () => {
  const page = readHtml(draw('auto'));
  expect(page.faults).toEqual([]);
  const parts = page.elements.flatMap(
    (element) => /^part-(.*)/.exec(attributeOf(element, 'id') ?? '')?.[1] ?? [],
  );
  expect(parts).toEqual([...COMPONENTS, 'curves', 'valves', 'drawings']);
});

test('the style page shows every drawing there is, each with what is read in its place or hidden from readers', () => {
  const files = readdirSync(new URL('../../views/pictures', import.meta.url));
  const drawn = files.filter((file) => file.endsWith('.ts') && !NOT_DRAWINGS.includes(file));
  const source = readFileSync(new URL('../../views/pictures/drawings.ts', import.meta.url), 'utf8');
  const page = readFileSync(new URL('../../views/pages/style.njk', import.meta.url), 'utf8');
  for (const file of drawn) {
    const name = file.replace(/\.ts$/, '').replace(/-(\w)/g, (_, letter: string) => letter.toUpperCase());
    expect(source.includes(`'./${file}'`) || page.includes(`draw.${name}(`), file).toBe(true);
  }
  for (const { name, states } of everyDrawing())
    for (const { svg, readAs } of states)
      expect(readAs !== '' || svg.includes('aria-hidden="true"'), name).toBe(true);
});

test('a page takes nothing from outside and runs no script of its own text', () => {
  const { elements } = readHtml(draw('auto'));
  for (const element of elements) {
    for (const name of ['src', 'href', 'action', 'hx-post', 'hx-get']) {
      expect(attributeOf(element, name) ?? '/').toMatch(/^[/#]/);
    }
    if (element.tagName === 'script') expect(element.childNodes).toEqual([]);
    expect(element.tagName).not.toBe('style');
  }
});

test('the chosen screen stands on the page itself, so that the first paint is right', () => {
  for (const [name, choice] of Object.entries(SCREEN_CHOICES)) {
    const { elements } = readHtml(draw(name));
    const html = elements[0];
    expect(html && attributeOf(html, 'data-theme')).toBe(choice.theme);
    expect(html && attributeOf(html, 'data-contrast')).toBe(choice.contrast);
    const pressed = elements.filter((element) => attributeOf(element, 'aria-pressed') === 'true');
    expect(pressed.map((element) => attributeOf(element, 'value'))).toEqual([name, 'en']);
  }
});

test('an unknown choice is the choice of the machine', () => {
  expect(screenChoice('purple').name).toBe('auto');
  expect(screenChoice(undefined).name).toBe('auto');
  expect(screenChoice('constructor').name).toBe('auto');
});

test('a missing value is an error, never a blank', () => {
  expect(() => renderer.render('layout.njk', { page: { lang: 'en', screen: screenChoice('auto') } })).toThrow(
    /undefined/,
  );
});
