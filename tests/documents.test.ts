import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { ASSET_FILES } from '../views/assets.ts';
import { ROOT } from './root.ts';
import { everyFile } from './tidy/tree.ts';

const files = new Map(everyFile().map(({ path, text }) => [path, text]));
const readme = files.get('README.md') ?? '';
const developers = files.get('DEVELOPERS.md') ?? '';
const packageFile = JSON.parse(files.get('package.json') ?? '{}') as Readonly<
  Record<'scripts' | 'dependencies' | 'devDependencies', Readonly<Record<string, string>>>
>;

/** Lines of the fenced blocks: what a reader types. */
function commandsOf(text: string): readonly string[] {
  return [...text.matchAll(/^```\w*\n([\s\S]*?)^```/gm)].flatMap(([, block = '']) =>
    block.trim().split('\n'),
  );
}

/** `npm start`, `npm run verify`: what they call in package.json. */
function scriptsNamedIn(text: string): readonly string[] {
  return [...text.matchAll(/\bnpm (?:run )?([a-z-]+)/g)].flatMap(([, name = '']) =>
    ['ci', 'install'].includes(name) ? [] : [name],
  );
}

/** The packages of the table, one a row. */
function packageRows(text: string): readonly string[] {
  const table = text.slice(text.indexOf('## Packages'));
  return [...table.matchAll(/^\| `([^`]+)` \| \S.*\|$/gm)].map(([, name = '']) => name);
}

/** What is written for people: the sheets of procedures are printed, and tested by themselves. */
const documents = [...files].filter(([path]) => path.endsWith('.md') && !path.endsWith('.sheet.md'));

/** Names of files and folders in backticks, whole or from any folder on: `engine/reader.ts`, `titles-of-*.ts`, `exact/`. */
function namesIn(text: string): readonly string[] {
  const name = /`((?:[\w.*-]+\/)*[\w.*-]*(?:\/|[\w*]\.(?:ts|mjs|js|json|md|txt|njk|css))|\.ci\/[\w.]+)`/g;
  return [...text.matchAll(name)].map(([, found = '']) => found);
}

/** `readReply`, `LISTS_FORM`: words in backticks that only a source can have. */
function codeNamesIn(text: string): readonly string[] {
  const found = Array.from(text.matchAll(/`(?:\w+\.)?([A-Za-z][A-Za-z_]+)`/g), ([, name = '']) => name);
  return found.filter((name) => /[a-z][A-Z]|_/.test(name) || /^[A-Z]{3,}$/.test(name));
}

/** Made on the machine of whoever runs it: these lie in no clone. */
const MADE_LATER = ['.cache/', 'verify.mjs', ...Object.keys(ASSET_FILES)];

/** Those of the names that no path ends with, or goes through. */
function lost(names: readonly string[], paths: readonly string[]): readonly string[] {
  return names.filter((name) => {
    if (MADE_LATER.includes(name)) return false;
    const asWritten = name.replace(/[.]/g, '\\.').replace(/\*/g, '[^/]*');
    const there = new RegExp(`(^|/)${asWritten}${name.endsWith('/') ? '' : '$'}`);
    return !paths.some((path) => there.test(path));
  });
}

describe('README.md', () => {
  test('gives exactly two commands, and the second is what CI runs', () => {
    expect(commandsOf(readme)).toEqual(['npm ci && npm start', 'npm ci && npm test']);
    const run = (files.get('.ci/run') ?? '').split('\n').filter((line) => !/^(#|set |$)/.test(line));
    expect(run).toEqual(['npm ci && npm test']);
  });

  test('begins with the job, and shows only pictures that are there', () => {
    expect(readme.split('\n\n')[1]).toMatch(/technician/);
    const pictures = [...readme.matchAll(/!\[[^\]]+\]\(([^)]+)\)/g)].map(([, path = '']) => path);
    expect(pictures.filter((path) => !existsSync(join(ROOT, path)))).toEqual([]);
  });

  test('names the settings that the program reads', () => {
    const program = [...files].filter(([path]) => path.startsWith('server/')).map(([, text]) => text);
    const read = new Set(program.join('\n').match(/\bYOKESIDE_[A-Z_]+\b/g));
    const named = new Set(readme.match(/\bYOKESIDE_[A-Z_]+\b/g));
    expect([...named].sort()).toEqual([...read].sort());
  });
});

describe('DEVELOPERS.md', () => {
  const installed = Object.keys({ ...packageFile.dependencies, ...packageFile.devDependencies });

  test('has one line for each package, and no line for another', () => {
    expect([...packageRows(developers)].sort()).toEqual([...installed].sort());
  });

  test('explains every command, as does nothing but what package.json has', () => {
    const scripts = Object.keys(packageFile.scripts).filter((name) => !/^(pre|post)/.test(name));
    const named = scriptsNamedIn(developers);
    expect(scripts.filter((name) => name !== 'build' && !named.includes(name))).toEqual([]);
    expect([...named, ...scriptsNamedIn(readme)].filter((name) => !(name in packageFile.scripts))).toEqual(
      [],
    );
  });

  test('dates every decision', () => {
    const decisions = developers.slice(developers.indexOf('## Decisions'));
    const starts = decisions.split('\n').filter((line) => line.startsWith('- '));
    expect(starts.length).toBeGreaterThan(5);
    expect(starts.filter((line) => !/^- \*\*\d{4}-\d{2}-\d{2} [A-Za-z]/.test(line))).toEqual([]);
  });

  test('lists its chapters and their parts at its top, in their order', () => {
    const [own, ...rest] = Array.from(developers.matchAll(/^##(#?) (.+)$/gm), ([, part = '', title = '']) => {
      const address = title
        .toLowerCase()
        .replaceAll(/[^\w -]/g, '')
        .replaceAll(' ', '-');
      return `${part && '  '}- [${title}](#${address})`;
    });
    expect(own).toBe('- [Contents](#contents)');
    const contents = developers.slice(developers.indexOf('## Contents'), developers.indexOf('## What'));
    expect(contents.split('\n').filter((line) => line.includes('['))).toEqual(rest);
  });

  test('names functions and constants that a source has', () => {
    const words = new Set(
      [...files].flatMap(([path, text]) => (/\.(?:ts|njk|js)$/.test(path) ? (text.match(/\w+/g) ?? []) : [])),
    );
    const named = codeNamesIn(developers);
    expect(named.length).toBeGreaterThan(20);
    expect(named.filter((name) => !words.has(name))).toEqual([]);
  });
});

describe('whatever is written for people', () => {
  test.each(documents)('names files and folders that are there: %s', (_, text) => {
    expect(lost(namesIn(text), [...files.keys()])).toEqual([]);
  });

  test('names enough of them for that to mean something', () => {
    expect(namesIn(developers).length).toBeGreaterThan(100);
  });

  test('dates what was measured', () => {
    const measured = documents.filter(([path]) => path.endsWith('MEASURED.md'));
    expect(measured.map(([path]) => path).filter((path) => !developers.includes(`\`${path}\``))).toEqual([]);
    expect(measured.length).toBeGreaterThan(2);
    expect(measured.filter(([, text]) => !/\bOn \d{4}-\d{2}-\d{2}\b/.test(text))).toEqual([]);
  });
});

test.each(['README.md', 'DEVELOPERS.md'])('%s is no wider than an editor, tables apart', (path) => {
  const lines = (files.get(path) ?? '').split('\n');
  expect(lines.filter((line) => line.length > 120 && !line.startsWith('|'))).toEqual([]);
});

describe('the readers of documents', () => {
  test('see what is wrong in a bad one', () => {
    expect(commandsOf('```sh\nnpm ci\nnpm start\n```\n')).toEqual(['npm ci', 'npm start']);
    expect(scriptsNamedIn('`npm run gone`, `npm ci`')).toEqual(['gone']);
    expect(packageRows('## Packages\n| `a` | why |\n| `b` |  |\n')).toEqual(['a']);
    expect(namesIn('`server/a.ts`, `b-*.ts`, `c/`, `tests/<path>.ts`, `word`, `1.5`, `.ci/run`')).toEqual([
      ...['server/a.ts', 'b-*.ts', 'c/', '.ci/run'],
    ]);
    expect(codeNamesIn('`readReply`, `store.inTurn`, `LISTS_FORM`, `PAGES`, `word`, `npm test`')).toEqual([
      ...['readReply', 'inTurn', 'LISTS_FORM', 'PAGES'],
    ]);
    const paths = ['server/c/a.ts', 'tests/b-one.ts'];
    expect(lost(['a.ts', 'c/a.ts', 'b-*.ts', 'c/', 'server/'], paths)).toEqual([]);
    expect(lost(['d.ts', 'ver/c/a.ts', 'b-*.js', 'a/', 'one.ts'], paths)).toHaveLength(5);
  });
});
