import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import nunjucks from 'nunjucks';
import type { OutputOptions, RolldownOptions } from 'rolldown';
import { TEMPLATE_OPTIONS } from '../../views/render.ts';
import { keepCode } from '../compiled-code.ts';
import { builtAssets } from '../http/assets.ts';
import { BUILT_ASSETS, VERIFIER } from '../project-folder.ts';

/** The server; `main.ts` beside it starts it. */
const PROGRAM = 'server/program.ts';

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
  const built = (files: readonly string[], chunks: string, kind: 'js' | 'cjs' = 'js'): Program => ({
    cwd: project,
    input: Object.fromEntries(files.map((file) => [file.replace(/\.ts$/, ''), join(project, file)])),
    platform: 'node',
    // It finds its compiled part beside its own files.
    external: ['@photostructure/sqlite'],
    output: {
      dir: to,
      format: kind === 'js' ? 'es' : 'cjs',
      entryFileNames: `[name].${kind}`,
      chunkFileNames: `${chunks}/[name].${kind}`,
    },
    logLevel: 'warn',
    // That templates are compiled here is what takes the time.
    checks: { pluginTimings: false },
  });
  return [
    {
      ...built([PROGRAM], 'server/parts', 'cjs'),
      plugins: [assetsOf(project), templatesOf(project), codeOf(PROGRAM, to)],
    },
    built(['server/main.ts'], 'server/parts'),
    built(commands, 'server/commands/parts'),
    built([VERIFIER.replace(/\.js$/, '.ts')], 'server/verifier/parts'),
    ...(more.length === 0 ? [] : [{ ...built(more, 'tests/parts'), plugins: [templatesOf(project)] }]),
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

/** Read by V8 once here, so that a start does not have to read all of it. */
function codeOf(program: string, to: string): NonNullable<RolldownOptions['plugins']> {
  return {
    name: 'code',
    writeBundle() {
      keepCode(join(to, program.replace(/\.ts$/, '.cjs')));
    },
  };
}

/** Every template as a function, so that a first look at a page does not have to read its templates. */
function templatesOf(project: string): NonNullable<RolldownOptions['plugins']> {
  const folder = join(project, 'views');
  return {
    name: 'templates',
    load: {
      filter: { id: join(folder, 'templates.ts') },
      handler() {
        const names = readdirSync(folder, { recursive: true, encoding: 'utf8' });
        const templates = names.filter((name) => name.endsWith('.njk')).sort();
        const members = templates.map((name) => asMember(name, readFileSync(join(folder, name), 'utf8')));
        return { code: `export const TEMPLATES = {\n${members.join('')}};\n`, moduleType: 'js' };
      },
    },
  };
}

/** A getter, so that nothing of a template is compiled before somebody looks at it. */
function asMember(path: string, text: string): string {
  return nunjucks.precompileString(text, {
    name: path.replaceAll('\\', '/'),
    env: new nunjucks.Environment([], TEMPLATE_OPTIONS),
    // Its types name one template; what it hands over is a list of them.
    wrapper: (templates) =>
      (templates as unknown as (typeof templates)[])
        .map(({ name, template }) => `get ${JSON.stringify(name)}() {\n${template}\n},\n`)
        .join(''),
  });
}
