import { compactScript, compactStyle } from './compact.ts';

/**
 * What a page loads, by the address below `/assets/`. The server reads these once at its start; an entry
 * with several parts is served as one file, in this order.
 */
export const ASSET_FILES: Readonly<Record<string, AssetSource>> = {
  'style.css': {
    parts: [
      'assets/style/1-tokens.css',
      'assets/style/2-ground.css',
      'assets/style/3-head.css',
      'assets/style/4-forms.css',
      'assets/style/5-card.css',
      'assets/style/5b-asks.css',
      'assets/style/6-acts.css',
      'assets/style/7-tables.css',
      'assets/style/8-drawing.css',
      'assets/style/8b-large-letters.css',
      'assets/style/13-signing.css',
      'assets/style/9-print.css',
    ],
    type: 'text/css; charset=utf-8',
    compact: compactStyle,
  },
  // Every page but a job's: a first look at a job does not load it, nor what only some pages show.
  'pages.css': {
    parts: ['assets/style/20-pages.css', 'assets/style/21-lists.css'],
    type: 'text/css; charset=utf-8',
    compact: compactStyle,
  },
  'valves.css': {
    parts: ['assets/style/11-valves.css'],
    type: 'text/css; charset=utf-8',
    compact: compactStyle,
  },
  'record.css': {
    parts: ['assets/style/18-record.css'],
    type: 'text/css; charset=utf-8',
    compact: compactStyle,
  },
  'calculations.css': {
    parts: ['assets/style/12-calculations.css'],
    type: 'text/css; charset=utf-8',
    compact: compactStyle,
  },
  // Finding a fault alone has causes and their chances.
  'faults.css': {
    parts: ['assets/style/15-faults.css'],
    type: 'text/css; charset=utf-8',
    compact: compactStyle,
  },
  'procedures.css': {
    parts: ['assets/style/14-procedures.css', 'assets/style/17-guide.css'],
    type: 'text/css; charset=utf-8',
    compact: compactStyle,
  },
  'practice.css': {
    parts: ['assets/style/16-practice.css'],
    type: 'text/css; charset=utf-8',
    compact: compactStyle,
  },
  'style-page.css': {
    parts: ['assets/style/10-style-page.css'],
    type: 'text/css; charset=utf-8',
    compact: compactStyle,
  },
  'icon.svg': { parts: ['assets/icon.svg'], type: 'image/svg+xml' },
  'yokeside.js': {
    parts: ['assets/yokeside.js'],
    type: 'text/javascript; charset=utf-8',
    compact: compactScript,
  },
  // Fetched once a page stands. In one file, since what is alike in both is then sent once.
  'later.js': {
    parts: ['assets/signed-in.js', 'assets/live.js'],
    type: 'text/javascript; charset=utf-8',
    compact: compactScript,
  },
  'htmx.js': { module: 'htmx.org/dist/htmx.min.js', type: 'text/javascript; charset=utf-8' },
  'fonts/atkinson-400.woff2': {
    module: '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff2',
    isKerned: false,
    type: 'font/woff2',
  },
  'fonts/atkinson-600.woff2': {
    module: '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-600-normal.woff2',
    isKerned: true,
    type: 'font/woff2',
  },
  'fonts/LICENSE.txt': {
    module: '@fontsource/atkinson-hyperlegible-next/LICENSE',
    type: 'text/plain; charset=utf-8',
  },
};

export type AssetSource =
  /** Files below `views/`, joined. */
  | {
      readonly parts: readonly string[];
      readonly type: string;
      /** The same in fewer letters, as it is served. */
      readonly compact?: (text: string) => string;
    }
  /** A file of an installed package, as `require.resolve` names it. */
  | {
      readonly module: string;
      readonly type: string;
      /** Of letters: whether pairs close up. What is large is semibold; at the size of a text nobody misses it. */
      readonly isKerned?: boolean;
    };
