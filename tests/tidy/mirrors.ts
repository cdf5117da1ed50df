import { importsOf } from './imports.ts';
import type { Parsed } from './syntax.ts';

/** Folders in which every file has a test of its own, at the same path below `tests/`. */
const MIRRORED = ['safety/', 'procedures/calculations/'];

/** Tables that a test of another name goes through line by line. That test must import the table. */
const TESTED_ELSEWHERE: Readonly<Record<string, string>> = {
  'procedures/calculations/sources.ts': 'tests/docstrings.test.ts',
  'safety/requirements.ts': 'tests/requirements.test.ts',
};

/**
 * Files of the mirrored folders without a test. A file that is gone when the program runs (types alone), or that
 * only passes on what others export, needs none: there is nothing in it to run.
 */
export function withoutTest(files: readonly Parsed[]): readonly string[] {
  const byPath = new Map(files.map((file) => [file.path, file]));
  return files
    .filter(({ path }) => MIRRORED.some((folder) => path.startsWith(folder)))
    .filter((file) => !isNothingToRun(file))
    .flatMap((file) => {
      const elsewhere = TESTED_ELSEWHERE[file.path];
      const wanted = elsewhere ?? `tests/${file.path.replace(/\.ts$/, '.test.ts')}`;
      const test = byPath.get(wanted);
      if (test === undefined) return [`${file.path} has no ${wanted}`];
      const imports = importsOf(test).some(({ to, erased }) => to === file.path && !erased);
      return imports ? [] : [`${wanted} does not import ${file.path}`];
    });
}

function isNothingToRun(file: Parsed): boolean {
  return file.program.body.every((node) => {
    if (node.type === 'ImportDeclaration' || node.type === 'ExportAllDeclaration') return true;
    const declared = node.type === 'ExportNamedDeclaration' ? node.declaration : node;
    return (
      !declared || declared.type === 'TSInterfaceDeclaration' || declared.type === 'TSTypeAliasDeclaration'
    );
  });
}
