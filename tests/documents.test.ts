import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
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
    name === 'ci' ? [] : [name],
  );
}

/** The packages of the table, one a row. */
function packageRows(text: string): readonly string[] {
  const table = text.slice(text.indexOf('## Packages'));
  return [...table.matchAll(/^\| `([^`]+)` \| \S.*\|$/gm)].map(([, name = '']) => name);
}

/** What looks like a path of ours in backticks. */
function pathsNamedIn(text: string): readonly string[] {
  const named = [...text.matchAll(/`([\w.-]+\/[\w./-]*|[\w.-]+\.(?:md|json|ts))`/g)].map(
    ([, path = '']) => path,
  );
  return named.filter((path) =>
    /^(safety|procedures|views|server|tests|\.ci|README|DEVELOPERS)\b/.test(path),
  );
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

  test('names paths that are there', () => {
    const named = [...pathsNamedIn(developers), ...pathsNamedIn(readme)];
    expect(named.length).toBeGreaterThan(10);
    expect(named.filter((path) => !existsSync(join(ROOT, path)))).toEqual([]);
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
    const decisions = developers.slice(developers.indexOf('## Decisions'), developers.indexOf('## Packages'));
    const starts = decisions.split('\n').filter((line) => line.startsWith('**'));
    expect(starts.length).toBeGreaterThan(5);
    expect(starts.filter((line) => !/^\*\*\d{4}-\d{2}-\d{2} [A-Za-z]/.test(line))).toEqual([]);
  });
});

describe('the readers of documents', () => {
  test('see what is wrong in a bad one', () => {
    expect(commandsOf('```sh\nnpm ci\nnpm start\n```\n')).toEqual(['npm ci', 'npm start']);
    expect(scriptsNamedIn('`npm run gone`, `npm ci`')).toEqual(['gone']);
    expect(packageRows('## Packages\n| `a` | why |\n| `b` |  |\n')).toEqual(['a']);
    expect(pathsNamedIn('`server/gone.ts` and `tests/<path>` and `word`')).toEqual(['server/gone.ts']);
  });
});
