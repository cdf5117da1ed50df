/** Under which licences the packages stand that the lock file names, and which of them this project takes. Pure. */
import { z } from 'zod';

export interface LicencedPackage {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
  /** Only where it is built and tested: nobody who runs the server has it. */
  readonly isForTests: boolean;
}

/** They ask for their text and a notice to go along, and nothing of whoever uses the program. */
const TAKEN: readonly string[] = [
  'MIT',
  'ISC',
  '0BSD',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'Apache-2.0',
  'MIT OR Apache-2.0',
  // The typeface: it may be served and bundled, not sold alone.
  'OFL-1.1',
];
/** A change to its files must stay open: no matter for a tool of the tests that nobody here changes. */
const TAKEN_FOR_TESTS: readonly string[] = ['MPL-2.0'];
/** Packages that name none in their `package.json`, with what their licence file says. */
const FROM_THEIR_FILE: Readonly<Record<string, string>> = { 'png-js': 'MIT' };

const LOCK = z.object({
  packages: z.record(
    z.string(),
    z.object({
      version: z.string().optional(),
      license: z.string().optional(),
      dev: z.boolean().optional(),
      devOptional: z.boolean().optional(),
    }),
  ),
});

/** @param lockFile text of `package-lock.json` */
export function licencesIn(lockFile: string): readonly LicencedPackage[] {
  return Object.entries(LOCK.parse(JSON.parse(lockFile)).packages)
    .filter(([path]) => path !== '')
    .map(([path, { version = '', license, dev, devOptional }]) => {
      const name = path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length);
      const licence = license ?? FROM_THEIR_FILE[name] ?? 'none named';
      return { name, version, licence, isForTests: dev === true || devOptional === true };
    })
    .sort((one, other) => (one.name < other.name ? -1 : 1));
}

/** Those whose licence nobody has taken yet. */
export function notTaken(packages: readonly LicencedPackage[]): readonly LicencedPackage[] {
  return packages.filter(
    ({ licence, isForTests }) =>
      !TAKEN.includes(licence) && !(isForTests && TAKEN_FOR_TESTS.includes(licence)),
  );
}

/** The list as a page for whoever has to look through it. */
export function licencePage(packages: readonly LicencedPackage[]): string {
  const rows = (of: readonly LicencedPackage[]) =>
    of.map(({ name, version, licence }) => `| \`${name}\` | ${version} | ${licence} |`).join('\n');
  const head = '| package | version | licence |\n| --- | --- | --- |';
  const [tests, runs] = [true, false].map((is) => packages.filter(({ isForTests }) => isForTests === is));
  return `# Licences of the packages

Printed by \`npm run licences\` from \`package-lock.json\`; a test fails where this page is old, or where a package comes under a licence
that nobody has taken yet (\`server/install/licences.ts\` says which, and why).

## What the server runs with

${head}
${rows(runs ?? [])}

## What builds and tests it

${head}
${rows(tests ?? [])}
`;
}
