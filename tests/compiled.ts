import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { goneAfterwards } from './folders.ts';

const root = fileURLToPath(new URL('..', import.meta.url));

/**
 * Compiles a script and what it imports, so that a plain Node process can run it: Node 20 does not read TypeScript.
 *
 * @param script path from the root of the project, for example `tests/faults/writer.ts`
 * @returns path of the JavaScript file; gone when the tests of the file are through
 */
export function compiled(script: string): string {
  // Inside the project, so that its packages are found.
  const cache = join(root, '.cache');
  mkdirSync(cache, { recursive: true });
  const folder = goneAfterwards(mkdtempSync(join(cache, 'compiled-')));
  const config = {
    extends: join(root, 'tsconfig.json'),
    compilerOptions: { rootDir: root, outDir: folder, sourceMap: false },
    files: [join(root, script)],
    include: [],
  };
  const configFile = join(folder, 'tsconfig.json');
  writeFileSync(configFile, JSON.stringify(config));
  const compiler = join(
    dirname(createRequire(import.meta.url).resolve('typescript/package.json')),
    'bin',
    'tsc',
  );
  execFileSync(process.execPath, [compiler, '-p', configFile], { stdio: 'inherit' });
  return join(folder, relative(root, join(root, script)).replace(/\.ts$/, '.js'));
}
