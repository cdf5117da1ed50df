import { describe, expect, test } from 'vitest';
import { circles, lostImports, wrongDirections } from './tidy/directions.ts';
import exceptions from './tidy/exceptions.json' with { type: 'json' };
import { unusedExports } from './tidy/exports.ts';
import { importsOf } from './tidy/imports.ts';
import { withoutTest } from './tidy/mirrors.ts';
import { reachesOut } from './tidy/outside-world.ts';
import { shownQuantities, unexplained, withoutUnit } from './tidy/quantities.ts';
import { fileSizes, functionSizes, LINES_MAX, type Sized, tooLong } from './tidy/sizes.ts';
import { type Parsed, parsed } from './tidy/syntax.ts';
import { bannedTexts, strangersOnTop } from './tidy/texts.ts';
import { everyFile, topLevel } from './tidy/tree.ts';

const files = everyFile();
const paths = new Set(files.map(({ path }) => path));
const sources = files.filter(({ path }) => path.endsWith('.ts')).map(parsed);
const imports = sources.flatMap(importsOf);

/** A file that was never written to the disk, for showing that a rule can fail. */
function sample(path: string, ...lines: readonly string[]): Parsed {
  return parsed({ path, text: `${lines.join('\n')}\n` });
}

function directionsOf(path: string, ...lines: readonly string[]): readonly string[] {
  return wrongDirections(importsOf(sample(path, ...lines)));
}

describe('imports', () => {
  test('run from the server down to safety and calculations, never up', () => {
    expect(wrongDirections(imports)).toEqual([]);
  });

  test('lead to a file', () => {
    expect(lostImports(imports, paths)).toEqual([]);
  });

  test('never run in a circle', () => {
    expect(circles(imports)).toEqual([]);
  });

  test.each([
    ['safety/a.ts', "import { b } from '../procedures/b.ts';"],
    ['safety/a.ts', "import type { b } from '../procedures/b.ts';"],
    ['safety/a.ts', "import { z } from 'zod';"],
    ['safety/a.ts', "import { readFileSync } from 'node:fs';"],
    ['procedures/calculations/a.ts', "import { b } from '../b.ts';"],
    ['procedures/calculations/a.ts', "import { b } from '../../safety/b.ts';"],
    ['procedures/a.ts', "export * from '../server/b.ts';"],
    ['procedures/a.ts', "export type { b } from '../views/b.ts';"],
    ['procedures/a.ts', "import { createHash } from 'node:crypto';"],
    ['views/a.ts', "import type { b } from '../safety/b.ts';"],
    ['views/a.ts', "const b = await import('../procedures/b.ts');"],
    ['views/a.ts', "type B = import('../server/b.ts').B;"],
    ['server/a.ts', "import { b } from '../tests/b.ts';"],
    ['elsewhere/a.ts', "import { b } from './b.ts';"],
  ])('that run upwards are found: %s, %s', (path, line) => {
    expect(directionsOf(path, line)).toHaveLength(1);
  });

  test('that run downwards are let through', () => {
    expect(directionsOf('procedures/a.ts', "import { b } from '../safety/b.ts';")).toEqual([]);
    expect(directionsOf('procedures/overhaul/a.ts', "import { b } from '../calculations/b.ts';")).toEqual([]);
    expect(directionsOf('server/a.ts', "import { b } from '../views/b.ts';", "import 'hono';")).toEqual([]);
  });

  test('in a circle are found, over any number of files', () => {
    const ring = ['b', 'c', 'a'].flatMap((to, at) =>
      importsOf(sample(`safety/${'abc'.charAt(at)}.ts`, `import { x } from './${to}.ts';`)),
    );
    expect(circles(ring)).toEqual(['safety/a.ts -> safety/b.ts -> safety/c.ts -> safety/a.ts']);
  });

  test('that are erased close no circle, and those that keep loading do', () => {
    const back = importsOf(sample('safety/b.ts', "import { a } from './a.ts';"));
    const erased = importsOf(sample('safety/a.ts', "import type { B } from './b.ts';"));
    const kept = importsOf(sample('safety/a.ts', "import { type B } from './b.ts';"));
    expect(circles([...erased, ...back])).toEqual([]);
    expect(circles([...kept, ...back])).toHaveLength(1);
  });

  test('that lead nowhere are found', () => {
    const lost = importsOf(sample('safety/a.ts', "import { b } from './b.js';"));
    expect(lostImports(lost, new Set(['safety/b.ts']))).toHaveLength(1);
  });
});

describe('what a file shows to others', () => {
  test('is taken by another file; what only its own file uses is not exported', () => {
    expect(unusedExports(sources)).toEqual([]);
  });

  const shows = sample(
    'safety/a.ts',
    'export const one = 1, two = 2;',
    'export function three() {}',
    'export class Four {}',
    'const five = 5;',
    'export { five };',
    'export type Six = 6;',
    'export interface Seven {}',
  );
  const untaken = (...lines: readonly string[]) =>
    unusedExports([shows, sample('server/b.ts', ...lines)]).map((line) => /exports (\w+)/.exec(line)?.[1]);

  test('and is not, is found, types apart', () => {
    expect(untaken()).toEqual(['one', 'two', 'three', 'Four', 'five']);
    expect(untaken("import { one, three as other } from '../safety/a.ts';")).toEqual(['two', 'Four', 'five']);
    expect(untaken("export { two } from '../safety/a.ts';")).toEqual(['one', 'three', 'Four', 'five']);
  });

  test.each([
    "import * as a from '../safety/a.ts';",
    "export * from '../safety/a.ts';",
    "const a = await import('../safety/a.ts');",
  ])('counts as taken where all of it is: %s', (line) => {
    expect(untaken(line)).toEqual([]);
  });
});

describe('clock, chance, network and console', () => {
  const inside = (path: string) => !path.startsWith('server/') && !path.startsWith('tests/');

  test('are touched by the server alone', () => {
    expect(sources.filter(({ path }) => inside(path)).flatMap(reachesOut)).toEqual([]);
  });

  test.each([
    'Date.now()',
    'new Date()',
    'Date()',
    'Math.random()',
    'performance.now()',
    'crypto.randomUUID()',
    'process.env.HOME',
    "fetch('/')",
    'setTimeout(f, 1)',
    'console.log(1)',
    'globalThis.process',
  ])('are found: %s', (expression) => {
    expect(reachesOut(sample('safety/a.ts', `export const f = () => ${expression};`))).toHaveLength(1);
  });

  test('are not seen in a given time, or in the process of a plant', () => {
    expect(reachesOut(sample('safety/a.ts', 'new Date(at); process.inletPa; Math.max(1, 2);'))).toEqual([]);
  });
});

describe('lengths', () => {
  const written = files.filter(({ path }) => /\.(ts|js|css)$/.test(path));
  const templates = files.filter(({ path }) => path.endsWith('.njk'));

  test(`of files stay within ${LINES_MAX.file} lines`, () => {
    const sized = fileSizes(written);
    expect(tooLong({ sized, linesMax: LINES_MAX.file, exceptions: exceptions.files })).toEqual([]);
  });

  test(`of functions stay within ${LINES_MAX.function} lines`, () => {
    const sized = sources.flatMap(functionSizes);
    expect(tooLong({ sized, linesMax: LINES_MAX.function, exceptions: exceptions.functions })).toEqual([]);
  });

  test(`of templates stay within ${LINES_MAX.template} lines`, () => {
    const sized = fileSizes(templates);
    expect(tooLong({ sized, linesMax: LINES_MAX.template, exceptions: exceptions.templates })).toEqual([]);
  });

  const lines = (count: number) => Array.from({ length: count }, () => '  x();');
  const judged = (sized: readonly Sized[], excepted: Readonly<Record<string, number>> = {}) =>
    tooLong({ sized, linesMax: 70, exceptions: excepted });

  test('of every kind of function are measured', () => {
    const long = functionSizes(
      sample(
        'safety/a.ts',
        ...['export function one() {', ...lines(69), '}'],
        ...['const two = () => {', ...lines(69), '};'],
        ...['class C {', '  three() {', ...lines(69), '  }', '}'],
        ...["test('four', () => {", ...lines(69), '});'],
      ),
    );
    expect(judged(long)).toEqual([
      'safety/a.ts#one: 71 lines; at most 70',
      'safety/a.ts#two: 71 lines; at most 70',
      'safety/a.ts#three: 71 lines; at most 70',
      'safety/a.ts#four: 71 lines; at most 70',
    ]);
  });

  test('of exactly the stop pass, and so do chapters of tests', () => {
    expect(judged(functionSizes(sample('a.ts', 'function f() {', ...lines(68), '}')))).toEqual([]);
    expect(judged(functionSizes(sample('a.ts', "describe('x', () => {", ...lines(99), '});')))).toEqual([]);
    expect(judged(functionSizes(sample('a.ts', 'describe.each([])(() => {', ...lines(99), '});')))).toEqual(
      [],
    );
  });

  test('of the steps that a phase hands out are data, and count only in their file', () => {
    const fields = Array.from({ length: 99 }, (_, at) => `    step${at}: { title: 'x' },`);
    const phase = ['function f() {', "  const id = 'a';", '  return {', ...fields, '  };', '}'];
    expect(judged(functionSizes(sample('procedures/phases/a.ts', ...phase)))).toEqual([]);
    expect(judged(functionSizes(sample('server/a.ts', ...phase)))).toHaveLength(1);
    const doing = ['function f() {', '  const id = go();', ...phase.slice(2)];
    expect(judged(functionSizes(sample('procedures/phases/a.ts', ...doing)))).toHaveLength(1);
    const hiding = [...phase.slice(0, 3), '    inner: () => 1,', ...phase.slice(3)];
    expect(judged(functionSizes(sample('procedures/phases/a.ts', ...hiding)))).toHaveLength(1);
  });

  test('of files count every line but the last line end', () => {
    const sized = fileSizes([{ path: 'a.ts', text: 'a\nb\n\nc\n' }]);
    expect(sized).toEqual([{ name: 'a.ts', lines: 4 }]);
  });

  test('of excepted ones may shrink and never grow', () => {
    expect(judged([{ name: 'a', lines: 90 }], { a: 90 })).toEqual([]);
    expect(judged([{ name: 'a', lines: 91 }], { a: 90 })).toHaveLength(1);
    expect(judged([{ name: 'a', lines: 89 }], { a: 90 })).toHaveLength(1);
    expect(judged([{ name: 'a', lines: 70 }], { a: 90 })).toHaveLength(1);
    expect(judged([], { a: 90 })).toHaveLength(1);
  });
});

describe('numbers that are measured', () => {
  const shown = (...text: readonly string[]) =>
    withoutUnit(shownQuantities(sample('safety/a.ts', ...text))).map(({ name }) => name);

  test('say their unit in their name', () => {
    const shownBy = sources
      .filter(({ path }) => /^(safety|procedures)\//.test(path))
      .map((file) => [file.path, shownQuantities(file)] as const);
    expect(unexplained(Object.fromEntries(shownBy), exceptions.callersUnit)).toEqual([]);
  });

  test('in the unit of the caller are excused by name, as long as they are there', () => {
    const found = { 'safety/a.ts': [{ name: 'limit', line: 1 }] };
    expect(unexplained(found, {})).toHaveLength(1);
    expect(unexplained(found, { 'safety/a.ts': ['limit'] })).toEqual([]);
    expect(unexplained(found, { 'safety/a.ts': ['limit', 'span'] })).toHaveLength(1);
  });

  test.each([
    ['export interface A { readonly pressure: number }', 'pressure'],
    ['export interface A { readonly casePressure: number | null }', 'casePressure'],
    ['export interface A { readonly rows: readonly { readonly travel: number }[] }', 'travel'],
    ['export type A = { travels: readonly number[] };', 'travels'],
    ['export function f(input: { readonly area: number }): number { return 1; }', 'area'],
    ['export function f({ area }: { readonly area: number }): void {}', 'area'],
    ['export function f(waitTime: number): void {}', 'waitTime'],
    ['export function f(): { readonly force: number } { return { force: 1 }; }', 'force'],
    ['export const f = (flow: number) => 1;', 'flow'],
    ['export const TORQUE_MAX = 40;', 'TORQUE_MAX'],
    ['export const TABLE = { stemDiameter: 0.0127 } as const;', 'stemDiameter'],
    ['export const schema = z.object({ threadPitch: z.number().positive() });', 'threadPitch'],
    ['export class A { readonly temperature: number = 1; }', 'temperature'],
    ['export class A { f(travel: number): void {} }', 'travel'],
  ])('without one are found: %s', (text, name) => {
    expect(shown(text)).toEqual([name]);
  });

  test.each([
    'export interface A { readonly casePressurePa: number; readonly pressurePaMax: number }',
    'export interface A { readonly springRateNPerM: number; readonly areaM2: number }',
    'export interface A { readonly travelFraction: number; readonly errorTolerancePercent: number }',
    "export interface A { readonly pressure: 'live' | 'held'; readonly flow: 'under' }",
    'export const WAIT_S = 60; export const SAFE_LIMIT_PA = { supply: 3 };',
    'function inside(pressure: number) {} interface Inside { readonly force: number }',
    'export function f(areaM2: number): number { const force = 2; return force; }',
  ])('pass with one, and so does what is not shown: %s', (text) => {
    expect(shown(text)).toEqual([]);
  });
});

describe('tests', () => {
  test('stand at the same path for each file of safety and of the calculations', () => {
    expect(withoutTest(sources)).toEqual([]);
  });

  const code = sample('safety/a.ts', 'export const a = 1;');

  test('that are missing, or that never load what they are named for, are found', () => {
    expect(withoutTest([code])).toEqual(['safety/a.ts has no tests/safety/a.test.ts']);
    const hollow = sample('tests/safety/a.test.ts', "import type { a } from '../../safety/a.ts';");
    expect(withoutTest([code, hollow])).toHaveLength(1);
    const test = sample('tests/safety/a.test.ts', "import { a } from '../../safety/a.ts';");
    expect(withoutTest([code, test])).toEqual([]);
  });

  test('are not asked for where there is nothing to run', () => {
    const types = sample(
      'safety/b.ts',
      "import type { A } from './a.ts';",
      'export interface B extends A {}',
    );
    const index = sample('safety/c.ts', "export * from './a.ts';", "export { a } from './a.ts';");
    expect(withoutTest([types, index])).toEqual([]);
  });
});

describe('texts', () => {
  test('hold no path of a machine, no registry, no style or script in a page, and no test left out', () => {
    expect(bannedTexts(files)).toEqual([]);
  });

  test.each([
    ['README.md', `see ${'/ho'}${'me/'}someone/notes`],
    ['tests/a.ts', `readFileSync('${'/t'}${'mp/'}x')`],
    ['server/a.ts', `const folder = 'C:${'\\'}Data';`],
    ['package-lock.json', `"${'resol'}ved": "https://host/x.tgz"`],
    ['.npmrc', `registry=https://${'registry.npm'}js.org`],
    ['views/pages/a.njk', '<p style="color:red">'],
    ['views/pictures/a.ts', "`<g style='fill:red'>`"],
    ['views/a.njk', '<style>p{}</style>'],
    ['views/a.njk', '<script>go()</script>'],
    ['views/a.njk', '<button onclick="go()">'],
    ['views/a.njk', '<div hx-on:click="go()">'],
    ['views/a.njk', '<a href="javascript:go()">'],
    ['tests/a.test.ts', `${'test'}.only('x', f)`],
    ['tests/a.test.ts', `${'describe'}.skip('x', f)`],
  ])('that do are found: %s, %s', (path, text) => {
    expect(bannedTexts([{ path, text }])).toHaveLength(1);
  });

  test('that only look alike pass', () => {
    const text =
      '<script src="/assets/a.js" defer></script> <link rel="stylesheet" href="/assets/style.css">';
    expect(bannedTexts([{ path: 'views/a.njk', text }])).toEqual([]);
  });

  test('on the top level are the agreed ones', () => {
    expect(strangersOnTop(topLevel())).toEqual([]);
    expect(strangersOnTop(['README.md', 'notes.txt', 'src'])).toEqual(['notes.txt', 'src']);
  });

  test('are looked for in all folders', () => {
    for (const folder of [
      'safety/',
      'procedures/calculations/',
      'server/',
      'views/components/',
      'tests/tidy/',
    ]) {
      expect(files.some(({ path }) => path.startsWith(folder))).toBe(true);
    }
  });
});
