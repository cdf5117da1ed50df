import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { OutputOptions, RolldownOptions } from 'rolldown';
import { builtAssets } from '../http/assets.ts';
import { BUILT_ASSETS, VERIFIER } from '../project-folder.ts';

interface Program extends RolldownOptions {
  readonly output: OutputOptions;
}

/**
 * What is built, as rolldown takes it: the server and each command as one file of JavaScript, with what only some starts need
 * beside it; the verifier alone, since an export carries it; style, fonts and scripts as they are served.
 *
 * @param project the folder that holds `package.json`
 * @param to the folder to build into; inside the project, so that the packages are found
 * @param more programs of the tests, by path from the project
 */
export function programs(project: string, to: string, more: readonly string[] = []): readonly Program[] {
  const commands = readdirSync(join(project, 'server/commands')).map((name) => `server/commands/${name}`);
  const built = (files: readonly string[], chunks: string): Program => ({
    cwd: project,
    input: Object.fromEntries(files.map((file) => [file.replace(/\.ts$/, ''), join(project, file)])),
    platform: 'node',
    // It finds its compiled part beside its own files.
    external: ['@photostructure/sqlite'],
    output: { dir: to, format: 'es', entryFileNames: '[name].js', chunkFileNames: `${chunks}/[name].js` },
    logLevel: 'warn',
  });
  const server = built(['server/main.ts'], 'server/parts');
  return [
    { ...server, plugins: [assetsOf(project)] },
    built(commands, 'server/commands/parts'),
    built([VERIFIER.replace(/\.js$/, '.ts')], 'server/verifier/parts'),
    ...(more.length === 0 ? [] : [built(more, 'tests/parts')]),
  ];
}

/** Packed once here, which takes longer than all else that a start reads. */
function assetsOf(project: string): NonNullable<RolldownOptions['plugins']> {
  return {
    name: 'assets',
    generateBundle() {
      for (const [name, { bytes }] of builtAssets(project))
        this.emitFile({ type: 'asset', fileName: `${BUILT_ASSETS}/${name}`, source: bytes });
    },
  };
}
