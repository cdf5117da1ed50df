import type { Words } from './words.ts';

export interface Translated {
  readonly html: string;
  /** Prose that stayed English, in the order of the page. */
  readonly missing: readonly string[];
}

const TAG = /<!--[\s\S]*?-->|<![^>]*>|<\/?[a-zA-Z][^\s>/]*(?:"[^"]*"|'[^']*'|[^>"'])*>/g;
const SPOKEN = new Set(
  'alt title label placeholder aria-label aria-description aria-valuetext aria-roledescription data-text data-label data-unknown data-unkept data-unasked data-idle data-shift data-over data-live-said data-answered data-answered-typing data-list-changed data-show-card data-show-list'.split(
    ' ',
  ),
);
const VOID = new Set('area base br col hr img input link meta source track wbr'.split(' '));
/** Their text is no text of the page. */
const UNSPOKEN = new Set(['script', 'style', 'textarea', 'code', 'pre']);
/** Nothing can be put around a piece of their text. */
const PLAIN_TEXT = new Set(['title', 'option', 'text', 'tspan', 'desc']);

interface Open {
  readonly name: string;
  /** Left as it is: in English by itself, or nobody's to translate. */
  readonly isLeft: boolean;
}

/**
 * A page or a piece of one, said in another language. What stands below `lang` or `translate="no"` is left as it is:
 * a text of another language, or the words of a person. Prose without a translation is marked `lang="en"`, so that it
 * is read aloud rightly and nobody takes it for a fault of the reader.
 *
 * @example
 * translatePage('<p>Sign in</p>', spanish).html // '<p>Entrar</p>'
 */
export function translatePage(html: string, words: Words): Translated {
  const missing: string[] = [];
  const stack: Open[] = [];
  const top = () => stack.at(-1) ?? { name: '', isLeft: false };
  const say = (text: string, around: string) => {
    const said = sayText(text, { words, isPlain: PLAIN_TEXT.has(around) });
    missing.push(...said.missing);
    return said.html;
  };
  let out = '';
  let at = 0;
  for (const match of html.matchAll(TAG)) {
    const between = html.slice(at, match.index);
    out += top().isLeft ? between : say(between, top().name);
    at = match.index + match[0].length;
    const tag = match[0];
    const name = /^<\/?([a-zA-Z][^\s>/]*)/.exec(tag)?.[1]?.toLowerCase();
    if (name === undefined) out += tag;
    else if (tag.startsWith('</')) {
      out += tag;
      close(stack, name);
    } else {
      const isLeft = top().isLeft || leaves(tag, name);
      out += isLeft && !/^<html\b/i.test(tag) ? tag : sayAttributes(tag, { words, missing });
      if (!VOID.has(name) && !tag.endsWith('/>')) stack.push({ name, isLeft });
    }
  }
  out += top().isLeft ? html.slice(at) : say(html.slice(at), top().name);
  return { html: out, missing };
}

function close(stack: Open[], name: string): void {
  const at = stack.findLastIndex((one) => one.name === name);
  if (at >= 0) stack.length = at;
}

function leaves(tag: string, name: string): boolean {
  if (name === 'html') return false;
  return UNSPOKEN.has(name) || /\stranslate="no"|\slang="/.test(tag);
}

const ATTRIBUTE = /\s([a-zA-Z-]+)="([^"]*)"/g;

function sayAttributes(
  tag: string,
  { words, missing }: { readonly words: Words; readonly missing: string[] },
): string {
  return tag.replace(ATTRIBUTE, (whole, name: string, value: string) => {
    if (!SPOKEN.has(name.toLowerCase()) || value.trim() === '') return whole;
    const said = words.say(plain(value));
    missing.push(...said.missing);
    return ` ${name}="${escaped(said.text)}"`;
  });
}

function sayText(
  text: string,
  { words, isPlain }: { readonly words: Words; readonly isPlain: boolean },
): { readonly html: string; readonly missing: readonly string[] } {
  const inner = text.trim();
  if (inner === '') return { html: text, missing: [] };
  const said = words.say(plain(inner).replace(/\s+/g, ' '));
  const isEnglish = said.missing.length > 0 && said.text === said.missing[0];
  const shown = isEnglish ? inner : escaped(said.text);
  const marked = isEnglish && !isPlain ? `<span lang="en">${shown}</span>` : shown;
  return { html: text.replace(inner, () => marked), missing: said.missing };
}

const NAMED: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  apos: "'",
  nbsp: '\u00a0',
};

function plain(text: string): string {
  return text.replace(
    /&(?:#(\d+)|#x([\da-f]+)|(\w+));/gi,
    (whole, decimal?: string, hex?: string, name?: string) => {
      if (decimal !== undefined) return String.fromCodePoint(Number(decimal));
      if (hex !== undefined) return String.fromCodePoint(Number.parseInt(hex, 16));
      return NAMED[(name ?? '').toLowerCase()] ?? whole;
    },
  );
}

function escaped(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}
