import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { compactScript, compactStyle } from '../../views/compact.ts';

const folder = fileURLToPath(new URL('../../views', import.meta.url));
const read = (path: string) => readFileSync(`${folder}/${path}`, 'utf8');
const styles = readdirSync(`${folder}/assets/style`).map((name) => read(`assets/style/${name}`));
const script = read('assets/yokeside.js');

const bare = (css: string) =>
  css
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/\s+/g, '')
    .replace(/;\}/g, '}');

test('a compact style sheet says the same, rule by rule', () => {
  for (const css of styles) {
    expect(bare(compactStyle(css))).toBe(bare(css));
    expect(compactStyle(css).split('}').length).toBe(css.replace(/\/\*[\s\S]*?\*\//g, '').split('}').length);
  }
});

test('spaces that mean something stay', () => {
  expect(compactStyle('a :hover { inset: 0 1px; width: calc(100vh - 1px) }')).toBe(
    'a :hover{inset:0 1px;width:calc(100vh - 1px)}',
  );
  expect(compactStyle('@media (min-width: 9px) and (scripting: none) { a  b > c { margin: -1px 0 } }')).toBe(
    '@media (min-width:9px) and (scripting:none){a b>c{margin:-1px 0}}',
  );
});

test('a compact script keeps every statement and drops only lines that are comments', () => {
  const kept = script.split('\n').filter((line) => !/^\s*(\/\/|$)/.test(line));
  expect(compactScript(script).split('\n')).toEqual(kept.map((line) => line.trim()));
  const spanning = script.split('\n').filter((line) => line.split('`').length % 2 === 0);
  expect(spanning).toEqual([]);
});
