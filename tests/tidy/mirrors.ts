import { importsOf } from './imports.ts';
import type { Parsed } from './syntax.ts';

/** Folders in which every file has a test of its own, at the same path below `tests/`. */
const MIRRORED = ['safety/', 'procedures/calculations/'];

/** Tables that a test of another name goes through line by line. That test must import the table. */
const TESTED_ELSEWHERE: Readonly<Record<string, string>> = {
  'procedures/calculations/sources.ts': 'tests/docstrings.test.ts',
  'procedures/calculations/calculation-types.ts': 'tests/procedures/calculations/registry.test.ts',
  'procedures/calculations/quantity-titles.ts': 'tests/procedures/calculations/quantity-names.test.ts',
  'procedures/calculations/titles-of-measures.ts': 'tests/procedures/calculations/quantity-names.test.ts',
  'procedures/calculations/titles-of-words.ts': 'tests/procedures/calculations/quantity-names.test.ts',
  'procedures/calculations/entries/actuator.ts': 'tests/procedures/calculations/registry.test.ts',
  'procedures/calculations/entries/bolting.ts': 'tests/procedures/calculations/registry.test.ts',
  'procedures/calculations/entries/current.ts': 'tests/procedures/calculations/registry.test.ts',
  'procedures/calculations/entries/cycle.ts': 'tests/procedures/calculations/registry.test.ts',
  'procedures/calculations/entries/energy.ts': 'tests/procedures/calculations/registry.test.ts',
  'procedures/calculations/entries/flow.ts': 'tests/procedures/calculations/registry.test.ts',
  'procedures/calculations/entries/leak.ts': 'tests/procedures/calculations/registry.test.ts',
  'procedures/calculations/entries/leak-measured.ts': 'tests/procedures/calculations/registry.test.ts',
  'procedures/calculations/entries/measuring.ts': 'tests/procedures/calculations/registry.test.ts',
  'procedures/calculations/entries/pneumatics.ts': 'tests/procedures/calculations/registry.test.ts',
  'procedures/calculations/entries/seat-leakage.ts': 'tests/procedures/calculations/registry.test.ts',
  'procedures/calculations/entries/seating.ts': 'tests/procedures/calculations/registry.test.ts',
  'procedures/calculations/entries/signal.ts': 'tests/procedures/calculations/registry.test.ts',
  'procedures/calculations/entries/stroke.ts': 'tests/procedures/calculations/registry.test.ts',
  'safety/requirements.ts': 'tests/requirements.test.ts',
  'safety/required/energy-isolation.ts': 'tests/requirements.test.ts',
  'safety/required/faults.ts': 'tests/requirements.test.ts',
  'safety/required/hold-points.ts': 'tests/requirements.test.ts',
  'safety/required/interface.ts': 'tests/requirements.test.ts',
  'safety/required/reliability.ts': 'tests/requirements.test.ts',
  'safety/required/signatures.ts': 'tests/requirements.test.ts',
  'safety/required/web-security.ts': 'tests/requirements.test.ts',
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
