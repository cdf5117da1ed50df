import nunjucks from 'nunjucks';
import type { TextFile } from '../../tidy/tree.ts';

/** A text as the screen would show it; `{}` where something is put in. */
export interface Shown {
  readonly path: string;
  readonly text: string;
}

const CODE = /\{#[\s\S]*?#\}|\{%-?([\s\S]*?)-?%\}|\{\{-?[\s\S]*?-?\}\}/g;
const HTML_TAG = /<!--[\s\S]*?-->|<[!/]?[a-zA-Z](?:"[^"]*"|'[^']*'|[^>"'])*>/g;
const SPOKEN =
  /\s(?:alt|title|placeholder|aria-label|aria-description|data-text|data-unknown|data-unkept|data-unasked|data-idle|data-shift|data-over|data-answered|data-answered-typing|data-list-changed|data-show-card|data-show-list)="([^"]*)"/g;
const [IF, ELSE, END, BREAK] = ['\u0002', '\u0003', '\u0004', '\u0005'] as const;

/** Every text that a template shows by itself, in its markup and in what it hands to components. */
export function templateTexts({ path, text }: TextFile): readonly Shown[] {
  const marked = text.replace(CODE, (whole, block?: string) => {
    if (whole.startsWith('{#')) return '';
    if (whole.startsWith('{{')) return '{}';
    const word = (block ?? '').trim().split(/\s/)[0];
    return word === 'if' ? IF : word === 'else' || word === 'elif' ? ELSE : word === 'endif' ? END : BREAK;
  });
  const attributes = [...marked.matchAll(HTML_TAG)].flatMap(([tag]) =>
    [...tag.matchAll(SPOKEN)].map((match) => match[1] ?? ''),
  );
  const runs = marked.replace(/<(script|style|textarea)\b[\s\S]*?<\/\1>/g, '<br>').split(HTML_TAG);
  return [...[...attributes, ...runs].flatMap(variants), ...stringsIn(text)]
    .map((one) => unescaped(one).trim().replace(/\s+/g, ' '))
    .filter(isShown)
    .map((one) => ({ path, text: one }));
}

/** Letters beside the gaps, and no name of a class or an address. */
export function isShown(text: string): boolean {
  return /\p{L}{2}/u.test(text.replaceAll('{}', ' ')) && !/="|<\//.test(text);
}

/** A run with and without what stands in its own conditions. */
function variants(run: string): readonly string[] {
  const pieces = run.split(BREAK);
  return pieces.flatMap((piece) =>
    isBalanced(piece) ? expanded(piece) : piece.split(new RegExp(`[${IF}${ELSE}${END}]`)),
  );
}

function isBalanced(piece: string): boolean {
  let depth = 0;
  for (const letter of piece) {
    if (letter === IF) depth += 1;
    if (letter === END) depth -= 1;
    if (depth < 0 || (depth === 0 && letter === ELSE)) return false;
  }
  return depth === 0;
}

const INNERMOST = new RegExp(`${IF}([^${IF}${END}]*)${END}`);

function expanded(piece: string): readonly string[] {
  const match = INNERMOST.exec(piece);
  if (match === null) return [piece];
  const ways = (match[1] ?? '').split(ELSE);
  const all = ways.length === 1 ? [...ways, ''] : ways;
  return all.flatMap((way) => expanded(piece.replace(match[0], () => way)));
}

/** Texts between quotes inside the template's own code: what a component is handed. */
function stringsIn(source: string): readonly string[] {
  return [...source.matchAll(/\{[{%]-?([\s\S]*?)-?[%}]\}/g)].flatMap(([whole]) => {
    const isStatement = /^\{%-?\s*(?:include|extends|from|import)\b/.test(whole);
    return isStatement ? [] : stringsOfCode(whole);
  });
}

interface Token {
  readonly type: string;
  readonly value: unknown;
}

function stringsOfCode(code: string): readonly string[] {
  const lexer = (nunjucks as unknown as { lexer: { lex(source: string): { nextToken(): Token | null } } })
    .lexer;
  const tokens: Token[] = [];
  const stream = lexer.lex(code);
  for (let token = stream.nextToken(); token !== null; token = stream.nextToken()) {
    if (token.type !== 'whitespace') tokens.push(token);
  }
  return tokens.flatMap((token, at) => {
    if (token.type !== 'string' || isName(tokens, at)) return [];
    const isSum = tokens[at - 1]?.value === '+' || tokens[at + 1]?.value === '+';
    return [isSum ? sumAround(tokens, at) : String(token.value)];
  });
}

/** Compared, a key, an address, a class: nobody reads it. */
function isName(tokens: readonly Token[], at: number): boolean {
  const value = String(tokens[at]?.value);
  const before = tokens[at - 1]?.value;
  if (before === '==' || before === '!=' || tokens[at + 1]?.value === '==') return true;
  if (UNREAD.has(before === ':' ? String(tokens[at - 2]?.value) : '')) return true;
  return /^[/#]|--|="|<\/|^\S+\.(?:css|js|svg|woff2)$/.test(value.trim());
}

/** Options of components that take a name, an address or a state. */
const UNREAD = new Set(
  'name value kind href act id state mark form target action inputmode autocomplete size type hold_id step way autofocus scope'.split(
    ' ',
  ),
);

/** Ends of a sum: what stands beyond belongs to something else. */
const END_OF_SUM = new Set([
  ',',
  ':',
  'if',
  'else',
  'or',
  'and',
  '==',
  '!=',
  '{',
  '}',
  '{%',
  '%}',
  '{{',
  '}}',
  '=',
  'in',
  'set',
]);

/** The whole sum that a text is a part of: `"line " + n + " of " + m` is `line {} of {}`. */
function sumAround(tokens: readonly Token[], at: number): string {
  const [from, to] = [edge(tokens, { at, by: -1 }), edge(tokens, { at, by: 1 })];
  const pieces: Token[][] = [[]];
  let depth = 0;
  for (const token of tokens.slice(from, to + 1)) {
    depth += isOpening(token) ? 1 : isClosing(token) ? -1 : 0;
    if (token.value === '+' && depth === 0) pieces.push([]);
    else pieces.at(-1)?.push(token);
  }
  return pieces
    .map(([first, ...more]) => (first?.type === 'string' && more.length === 0 ? String(first.value) : '{}'))
    .join('')
    .replace(/(?:\{\})+/g, '{}');
}

function edge(tokens: readonly Token[], { at, by }: { readonly at: number; readonly by: 1 | -1 }): number {
  let depth = 0;
  let next = at;
  for (;;) {
    const token = tokens[next + by];
    if (token === undefined) return next;
    const enters = by === 1 ? isOpening(token) : isClosing(token);
    const leaves = by === 1 ? isClosing(token) : isOpening(token);
    if (leaves && depth === 0) return next;
    if (
      depth === 0 &&
      token.type !== 'string' &&
      END_OF_SUM.has(String(token.value).trim().replace(/-/g, ''))
    )
      return next;
    depth += enters ? 1 : leaves ? -1 : 0;
    next += by;
  }
}

const isOpening = ({ type }: Token) => /^left-/.test(type);
const isClosing = ({ type }: Token) => /^right-/.test(type);

function unescaped(text: string): string {
  return text
    .replaceAll('&amp;', '&')
    .replaceAll('&nbsp;', '\u00a0')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"');
}
