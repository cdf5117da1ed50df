import type { TextFile } from './tree.ts';

/** A place in a text that must not be there. */
interface Ban {
  readonly what: string;
  readonly where: RegExp;
  readonly pattern: RegExp;
}

// Put together from halves, so that this file does not find itself.
const HOMES = ['/ho' + 'me/', '/Us' + 'ers/', '/ro' + 'ot/', '/wo' + 'rk/', '/t' + 'mp/', '/va' + 'r/'];
const REGISTRIES = [
  'registry\\.npm' + 'js',
  'registry\\.yarn' + 'pkg',
  'npm\\.pkg\\.github',
  '"resol' + 'ved"',
];

const BANS: readonly Ban[] = [
  {
    what: 'a path of one machine',
    where: /./,
    pattern: new RegExp(`(?<![\\w.:/-])(${HOMES.join('|')})\\w|[A-Z]:\\\\\\w`),
  },
  { what: 'the host of a registry', where: /./, pattern: new RegExp(REGISTRIES.join('|')) },
  { what: 'a style attribute', where: /^views\/.*\.(njk|ts)$/, pattern: /\sstyle\s*=\s*["'`{]/ },
  { what: 'a style element', where: /^views\/.*\.(njk|ts)$/, pattern: /<style\b/ },
  { what: 'a script in the page', where: /^views\/.*\.(njk|ts)$/, pattern: /<script\b(?![^>]*\ssrc=)/ },
  {
    what: 'a handler in the page',
    where: /^views\/.*\.(njk|ts)$/,
    pattern: /\s(on[a-z]+|hx-on[\w:-]*)\s*=\s*["']/,
  },
  { what: 'a script address', where: /^views\/.*\.(njk|ts)$/, pattern: /javascript:|["']js:/ },
  {
    what: 'a test that is left out',
    where: /^tests\/.*\.ts$/,
    pattern: /\b(test|it|describe)\.(skip|only|todo)\b/,
  },
];

export function bannedTexts(files: readonly TextFile[]): readonly string[] {
  return files.flatMap(({ path, text }) =>
    BANS.filter(({ where }) => where.test(path)).flatMap(({ what, pattern }) =>
      text.split('\n').flatMap((line, at) => (pattern.test(line) ? [`${path}:${at + 1} has ${what}`] : [])),
    ),
  );
}

const ALLOWED_ON_TOP = new Set([
  ...['.ci', 'procedures', 'safety', 'server', 'tests', 'views'],
  ...['README.md', 'DEVELOPERS.md', 'package.json', 'package-lock.json', 'tsconfig.json'],
  ...['biome.json', '.gitattributes', '.gitignore', '.npmrc'],
]);

/** Names on the top level that nobody agreed to. */
export function strangersOnTop(names: readonly string[]): readonly string[] {
  return names.filter((name) => !ALLOWED_ON_TOP.has(name));
}
