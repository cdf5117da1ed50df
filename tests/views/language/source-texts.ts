import { parsed, type SyntaxNode, walk } from '../../tidy/syntax.ts';
import type { TextFile } from '../../tidy/tree.ts';
import { isShown, type Shown } from './template-texts.ts';

/** Properties whose text somebody reads, even where it is one word. */
const READ = new Set(
  'label text word words title how what kept next heading why note caption help summaryText because criterion allows'.split(
    ' ',
  ),
);
/** Texts for programs and for people who work on the program, not for the screen. */
const UNREAD_PROPERTY = new Set([
  'summary',
  'name',
  'path',
  'template',
  'description',
  'source',
  'date',
  'change',
]);
/** Lists of what people may write, which nobody reads. */
const LISTENED_FOR = new Set(['words', 'asked']);
const THROWN = /^(?:TypeError|Error|RangeError|CalcError)$/;

export interface SourceTexts {
  /** Whatever they are for: what a translation must at least be of. */
  readonly all: readonly string[];
  /** Those that look like prose for a screen. */
  readonly prose: readonly Shown[];
}

/** The texts of a source file; `{}` where something is put in. */
export function sourceTexts(file: TextFile): SourceTexts {
  const all: string[] = [];
  const prose: Shown[] = [];
  walk(parsed(file).program, (node, above) => {
    const found = textOf(node, above);
    if (found === null || !isShown(found)) return;
    const text = found.trim().replace(/\s+/g, ' ');
    all.push(text);
    if (!isUnread(node, above) && (isProse(text) || isReadWord(node, above)))
      prose.push({ path: file.path, text });
  });
  return { all, prose };
}

function textOf(node: SyntaxNode, above: readonly SyntaxNode[]): string | null {
  if (node.type === 'Literal') return typeof node.value === 'string' ? node.value : null;
  if (node.type !== 'TemplateLiteral' || above.at(-1)?.type === 'TaggedTemplateExpression') return null;
  return node.quasis.map(({ value }) => value.cooked ?? '').join('{}');
}

/** Two words of letters beside each other, or one that ends a sentence. */
function isProse(text: string): boolean {
  if (/^[a-z-]+\/|<\/?[a-z]|^[.#/]|\bhttps?:|[{}]\s*[;=]|^\w+[.(]/.test(text.replaceAll('{}', '')))
    return false;
  // Classes of the style sheet.
  if (
    /^(?:[a-z\d_{}-]+ )*[a-z\d_{}-]+$/.test(text) &&
    /-(?:line|fill|ground|ink|hatch|text|number)\b|\b(?:bold|halo)\b/.test(text)
  )
    return false;
  return /\p{L}[\p{L}’']*[,:;.]? \(?\p{L}/u.test(text) || /\p{L}{2,} \{\}|\{\} \p{L}{2,}/u.test(text);
}

function isReadWord(node: SyntaxNode, above: readonly SyntaxNode[]): boolean {
  const parent = above.at(-1);
  return parent?.type === 'Property' && parent.value === node && READ.has(nameOf(parent.key));
}

function isUnread(node: SyntaxNode, above: readonly SyntaxNode[]): boolean {
  const parent = above.at(-1);
  if (parent === undefined) return false;
  if (/^(?:Import|Export)\w*Declaration$|^ImportExpression$|^TSLiteralType$/.test(parent.type)) return true;
  if (parent.type === 'Property' && parent.key === node) return true;
  if (parent.type === 'BinaryExpression' && /^[=!]==$/.test(parent.operator)) return true;
  return above.some(
    (one) =>
      (one.type === 'NewExpression' && one.callee.type === 'Identifier' && THROWN.test(one.callee.name)) ||
      (one.type === 'Property' &&
        one.value.type === 'ArrayExpression' &&
        LISTENED_FOR.has(nameOf(one.key))) ||
      (one.type === 'Property' &&
        UNREAD_PROPERTY.has(nameOf(one.key)) &&
        one.value.type !== 'ObjectExpression'),
  );
}

function nameOf(key: SyntaxNode): string {
  if (key.type === 'Identifier') return key.name;
  return key.type === 'Literal' ? String(key.value) : '';
}
