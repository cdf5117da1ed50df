import { readFileSync } from 'node:fs';

/** What a line says that a reply means: values by field, row by row, or words of an answer. */
export type Meaning =
  | {
      readonly kind: 'counts' | 'part' | 'if any';
      readonly rows: readonly Readonly<Record<string, string>>[];
    }
  | { readonly kind: 'ask' | 'no' | 'UNSURE' | 'SAFE' | 'PARK' | 'BACK' | 'Done' }
  | { readonly kind: 'told'; readonly words: string };

export interface GloveLine {
  readonly card: string;
  readonly written: string;
  readonly meaning: Meaning;
}

const VALUED = { '=': 'counts', '+': 'part', '~': 'if any' } as const;
const WORDS = ['ask', 'no', 'UNSURE', 'SAFE', 'PARK', 'BACK'] as const;

function meaningOf(text: string): Meaning {
  const word = WORDS.find((known) => known === text);
  if (word !== undefined) return { kind: word };
  const [mark = '', ...rest] = text.split(' ');
  const said = rest.join(' ');
  if (mark === 'told') return { kind: 'told', words: said };
  if (!(mark in VALUED)) throw new Error(`no meaning: ${text}`);
  if (said === 'Done') return { kind: 'Done' };
  const rows = said.split(' then ').map((row) =>
    Object.fromEntries(
      row.split('; ').map((pair) => {
        const [field = '', value = ''] = pair.split(': ');
        return [field, value];
      }),
    ),
  );
  return { kind: VALUED[mark as keyof typeof VALUED], rows };
}

/** `gloves.txt` came first; the others measure on what nothing had been made for. */
export const GLOVE_FILES = [
  'gloves.txt',
  'gloves-second.txt',
  'gloves-third.txt',
  'gloves-fourth.txt',
  'gloves-spanish.txt',
] as const;
export type GloveFile = (typeof GLOVE_FILES)[number];

/** What people type with gloves on. */
export function gloveLines(file: GloveFile): readonly GloveLine[] {
  return readFileSync(new URL(file, import.meta.url), 'utf8')
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('#'))
    .map(lineOf);
}

function lineOf(line: string): GloveLine {
  const [card, written, means, ...more] = line.split(' | ');
  if (card === undefined || written === undefined || means === undefined || more.length > 0)
    throw new Error(`not card, written and meaning: ${line}`);
  return {
    card: card.trim(),
    written: written.replaceAll('\\n', '\n').replaceAll('\\t', '\t'),
    meaning: meaningOf(means.trim()),
  };
}
