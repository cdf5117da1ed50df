import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { oncePerRun } from './once-per-run.ts';
import { ROOT } from './root.ts';

/** What tests start as a program of its own; each brings what it imports. */
const PROGRAMS = [
  'server',
  'procedures',
  'views',
  'safety',
  'tests/faults/writer.ts',
  'tests/faults/bare-writer.ts',
  'tests/faults/moved-clock.ts',
];

/**
 * The program compiled, so that a plain Node process can run it: Node 20 does not read TypeScript. All programs are
 * compiled at once, the first time in a run that one is asked for.
 *
 * @param script path from the root of the project, for example `tests/faults/writer.ts`
 * @returns path of the JavaScript file; gone when the run is through
 */
export async function compiled(script: string): Promise<string> {
  const folder = await oncePerRun('compiled', compileTo);
  return join(folder, script.replace(/\.ts$/, '.js'));
}

function compileTo(folder: string): void {
  const config = {
    extends: join(ROOT, 'tsconfig.json'),
    // The types are checked before the tests.
    compilerOptions: { rootDir: ROOT, outDir: folder, sourceMap: false, noCheck: true },
    include: PROGRAMS.map((program) => join(ROOT, program)),
    exclude: [join(ROOT, 'views/assets')],
  };
  const configFile = `${folder}.json`;
  writeFileSync(configFile, JSON.stringify(config));
  const compiler = join(
    dirname(createRequire(import.meta.url).resolve('typescript/package.json')),
    'bin',
    'tsc',
  );
  execFileSync(process.execPath, [compiler, '-p', configFile], { stdio: 'inherit' });
}
