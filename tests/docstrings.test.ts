import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { CALC_ERRORS, CalcError } from '../procedures/calculations/calc-error.ts';
import { SOURCES } from '../procedures/calculations/sources.ts';

const FOLDER = fileURLToPath(new URL('../procedures/calculations', import.meta.url));
const FILES = readdirSync(FOLDER)
  .filter((file) => file.endsWith('.ts'))
  .sort();

interface Documented {
  readonly file: string;
  readonly name: string;
  readonly text: string;
}

/** Every exported function with the comment that stands directly above it. */
const FUNCTIONS: readonly Documented[] = FILES.flatMap((file) => {
  const code = readFileSync(join(FOLDER, file), 'utf8');
  return [...code.matchAll(/^export function (\w+)/gm)].map(([line, name = '']) => {
    const above = code.slice(0, code.indexOf(`${line}`)).trimEnd();
    const start = above.endsWith('*/') ? above.lastIndexOf('/**') : above.length;
    const text = above
      .slice(start)
      .replace(/^\s*\/\*\*|\*\/$/g, '')
      .replace(/^ ?\* ?/gm, '');
    return { file, name, text };
  });
});

interface Example {
  readonly file: string;
  readonly call: string;
  readonly expected: string;
}

/** `call // expected`, over as many lines as it takes; the next tag ends it. */
const EXAMPLES: readonly Example[] = FUNCTIONS.flatMap(({ file, text }) =>
  [...text.matchAll(/@example\s([\s\S]*?)(?=\n\s*@|$)/g)].map(([, body = '']) => {
    const [call = '', ...expected] = body.split(/(?:^|\s)\/\/ /);
    return { file, call: call.trim(), expected: expected.join(' ').trim() };
  }),
);

/** Checks and list helpers are tools of the calculations, not calculations: the shape of their comment is free. */
const CALCULATIONS = FUNCTIONS.filter(
  ({ name, file }) =>
    !['checks.ts', 'numbers.ts', 'name-endings.ts'].includes(file) && !name.endsWith('Text'),
);

const EVERYTHING = everything();

async function everything(): Promise<Record<string, unknown>> {
  const modules = await Promise.all(
    FILES.map((file) => import(pathToFileURL(join(FOLDER, file)).href) as Promise<Record<string, unknown>>),
  );
  return Object.assign({}, ...modules) as Record<string, unknown>;
}

function evaluate(code: string, names: Readonly<Record<string, unknown>>): unknown {
  return new Function(...Object.keys(names), `'use strict'; return (${code});`)(...Object.values(names));
}

/** Half a unit of the last digit that is printed, but never looser than a thousandth of the value. */
function closeness(printed: string): number {
  const [mantissa = '', exponent = '0'] = printed.toLowerCase().split('e');
  const decimals = mantissa.split('.')[1]?.length ?? 0;
  const half = 0.5 * 10 ** (Number(exponent) - decimals);
  return Math.min(half, Math.abs(Number(printed)) * 1e-3) + Math.abs(Number(printed)) * 1e-12;
}

/** Replaces each printed number by what the call gave, where the two agree; then the two sides must be equal. */
function expectAsPrinted(got: unknown, expected: string): void {
  const numbers: string[] = [];
  const marked = expected.replace(/(?<![\w'.-])-?\d+(?:\.\d+)?(?:e[+-]?\d+)?(?![\w'])/g, (printed) => {
    numbers.push(printed);
    return `number(${numbers.length - 1})`;
  });
  const number = (at: number) => ({
    asymmetricMatch: (value: unknown) =>
      typeof value === 'number' &&
      Math.abs(value - Number(numbers[at])) <=
        closeness(numbers[at] ?? '') + (numbers[at] === '0' ? 1e-12 : 0),
    toAsymmetricMatcher: () => `about ${numbers[at] ?? ''}`,
  });
  const quoted = /^'[^']*'$/.test(expected);
  expect(got).toEqual(quoted ? expected.slice(1, -1) : evaluate(marked, { number }));
}

describe('the docstrings of the calculations', () => {
  it.each(EXAMPLES)('$file: $call', async ({ call, expected }) => {
    const names = await EVERYTHING;
    const code = /^throws (CALC-\d{3})$/.exec(expected)?.[1];
    if (code === undefined) {
      expectAsPrinted(evaluate(call, names), expected);
      return;
    }
    let thrown: unknown;
    try {
      evaluate(call, names);
    } catch (error) {
      thrown = error;
    }
    expect(thrown).toBeInstanceOf(CalcError);
    expect((thrown as CalcError).code).toBe(code);
  });

  it('find every exported function', () => {
    expect(FUNCTIONS.length).toBeGreaterThan(10);
  });

  it.each(CALCULATIONS)('$file: $name says shape, inputs, result, source and example', ({ text }) => {
    for (const part of ['Shape: ', '@param ', '@returns ', '@source ', '@example '])
      expect(text).toContain(part);
    const cited = [...text.matchAll(/\[(S-\d{2})\]/g)].map(([, id]) => id);
    const practice = /@source (common practice, no source|none: )/.test(text);
    expect(cited.length > 0 || practice, 'names a source').toBe(true);
    expect(cited.filter((id) => id === undefined || !Object.hasOwn(SOURCES, id))).toEqual([]);
  });

  it('name no error code that does not exist', () => {
    const named = FUNCTIONS.flatMap(({ text }) => text.match(/CALC-\d{3}/g) ?? []);
    expect(named.filter((code) => !Object.hasOwn(CALC_ERRORS, code))).toEqual([]);
  });

  it('leave no source uncited', () => {
    const all = FILES.map((file) => readFileSync(join(FOLDER, file), 'utf8')).join('\n');
    const uncited = Object.keys(SOURCES).filter(
      (id) => !all.includes(`[${id}]`) && !all.includes(`'${id}',`),
    );
    expect(uncited).toEqual([]);
  });
});
