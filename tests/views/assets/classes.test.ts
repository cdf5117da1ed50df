/** The style sheet and the pages against each other: no rule that nothing uses, and no part that the style page leaves out. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { ASSET_FILES } from '../../../views/assets.ts';
import { createRenderer } from '../../../views/render.ts';
import { screenChoice } from '../../../views/screen-choice.ts';
import { styleView } from '../../../views/style-page.ts';
import { ROOT } from '../../root.ts';
import { attributeOf, readHtml } from '../html.ts';

const VIEWS = join(ROOT, 'views');

/** Arrangements that one page alone has, made of parts of the style page and seen on that page: by the template that has them. */
const ON_ONE_PAGE: Readonly<Record<string, string>> = {
  together: 'parts/together.njk',
  whole: 'whole-tags.ts',
  'calc-subjects': 'pages/calculations.njk',
  asks: 'parts/job-card.njk',
  bench: 'parts/bench-panel.njk',
  beside: 'pages/valve.njk',
  calc: 'pages/calculation.njk',
  'calc-list': 'pages/calculations.njk',
  'calc-valve': 'pages/calculations.njk',
  code: 'pages/radio.njk',
  columns: 'pages/valve-form.njk',
  do: 'parts/job-card.njk',
  drawing: 'pages/job.njk',
  guide: 'pages/guide.njk',
  history: 'pages/valve-history.njk',
  'how-far': 'pages/long-work.njk',
  job: 'parts/job-work.njk',
  left: 'parts/left-behind.njk',
  loop: '../server/jobs/view/loop-html.ts',
  menu: 'layout-page.njk',
  'next-check': 'parts/fault-hub.njk',
  noted: 'pages/job-notes.njk',
  offers: 'pages/open-job.njk',
  paper: 'pages/paper-form.njk',
  points: 'parts/job-work.njk',
  'practice-mark': 'parts/practice-mark.njk',
  'practice-page': 'layout.njk',
  'practice-paper': 'layout.njk',
  photo: 'parts/record-photos.njk',
  photos: 'parts/record-photos.njk',
  procedure: 'pages/procedure.njk',
  'read-out': 'pages/radio.njk',
  replied: 'parts/replied.njk',
  'sign-in': 'pages/sign-in.njk',
  stack: 'pages/valve.njk',
  steps: 'pages/steps.njk',
  stroke: 'parts/job-card.njk',
  'valve-list': 'pages/valves.njk',
  'valve-section': 'pages/valve.njk',
  'valve-sections': 'pages/valve.njk',
  waits: 'parts/job-card.njk',
  'to-sign': 'pages/to-sign.njk',
};

function filesIn(folder: string, ends: RegExp): readonly string[] {
  return readdirSync(join(VIEWS, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => ends.test(name))
    .map((name) => readFileSync(join(VIEWS, folder, name), 'utf8'));
}

/** Class names of all selectors, without what is only said about them. */
function styled(css: string): ReadonlySet<string> {
  const bare = css.replace(/\/\*[\s\S]*?\*\//g, '').replace(/"[^"]*"/g, '');
  const selectors = [...bare.matchAll(/([^{}]+)\{/g)].map(([, selector = '']) => selector);
  return new Set(
    selectors.flatMap((one) => Array.from(one.matchAll(/\.([a-z][\w-]*)/g), ([, name = '']) => name)),
  );
}

const sheets = filesIn('assets/style', /\.css$/).join('\n');
const classes = [...styled(sheets)];

test('no rule of the style sheet is for a class that nothing bears', () => {
  const written = [
    ...filesIn('.', /\.(njk|ts)$/),
    ...filesIn('assets', /\.js$/),
    readFileSync(join(ROOT, 'server', 'jobs', 'view', 'lines.ts'), 'utf8'),
  ].join('\n');
  const words = new Set(written.match(/[\w-]+/g));
  // The last part of some names is put in by the template: `signal--{{ word }}`.
  const isWritten = (name: string) => words.has(name) || words.has(name.replace(/--.*/, '--'));
  expect(classes.length).toBeGreaterThan(250);
  expect(classes.filter((name) => !isWritten(name))).toEqual([]);
  expect([...styled('.a { } .b > .c:hover, x { }')]).toEqual(['a', 'b', 'c']);
});

test('no part is used that the style page does not show', () => {
  const renderer = createRenderer({ folder: VIEWS });
  const html = renderer.render('pages/style.njk', styleView({ renderer, screen: screenChoice('auto') }));
  const shown = new Set(
    readHtml(html).elements.flatMap((element) => (attributeOf(element, 'class') ?? '').split(/\s+/)),
  );
  const blocks = new Set(classes.map((name) => name.replace(/(?:__|--).*/, '')));
  const isShown = (block: string) => [...shown].some((name) => name.replace(/(?:__|--).*/, '') === block);
  const missing = [...blocks].filter((block) => !isShown(block) && !Object.hasOwn(ON_ONE_PAGE, block));
  expect(missing).toEqual([]);
  for (const [block, template] of Object.entries(ON_ONE_PAGE)) {
    expect(readFileSync(join(VIEWS, template), 'utf8'), template).toMatch(
      new RegExp(`["\\s]${block}["_\\s-]`),
    );
    expect(isShown(block), `${block} is on the style page and needs no excuse`).toBe(false);
  }
});

test('every style sheet belongs to one file that is served, and no file is served twice', () => {
  const parts = Object.values(ASSET_FILES).flatMap((source) => ('parts' in source ? source.parts : []));
  const written = readdirSync(join(VIEWS, 'assets', 'style')).map((name) => `assets/style/${name}`);
  expect(parts.filter((part) => part.endsWith('.css')).sort()).toEqual(written.sort());
});
