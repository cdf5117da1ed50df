import { type DefaultTreeAdapterMap, parse, parseFragment } from 'parse5';

type Node = DefaultTreeAdapterMap['node'];
type Element = DefaultTreeAdapterMap['element'];

const VOID = new Set([
  'area',
  'base',
  'br',
  'col',
  'hr',
  'img',
  'input',
  'link',
  'meta',
  'source',
  'track',
  'wbr',
]);

export interface Page {
  readonly elements: readonly Element[];
  /** What is wrong with the text as HTML; empty when nothing is. */
  readonly faults: readonly string[];
}

/**
 * Reads HTML as a browser would and lists every place where the browser had to guess: parse errors, and any
 * element that it opened, closed or moved by itself. Duplicate ids and style attributes are listed too.
 */
export function readHtml(html: string): Page {
  const errors: string[] = [];
  const onParseError = (error: { code: string; startOffset: number }) =>
    errors.push(
      `${error.code} near ${html.slice(Math.max(0, error.startOffset - 30), error.startOffset + 30)}`,
    );
  const whole = html.trimStart().toLowerCase().startsWith('<!doctype');
  const root = whole
    ? parse(html, { onParseError, sourceCodeLocationInfo: true })
    : parseFragment(html, { onParseError, sourceCodeLocationInfo: true });
  const elements = elementsOf(root);
  return { elements, faults: [...errors, ...guesses(html, root), ...attributeFaults(elements)] };
}

export function attributeOf(element: Element, name: string): string | undefined {
  return element.attrs.find((attribute) => attribute.name === name)?.value;
}

export function textOf(node: Node): string {
  if ('value' in node && node.nodeName === '#text') return node.value;
  return 'childNodes' in node ? node.childNodes.map(textOf).join('') : '';
}

function elementsOf(node: Node): Element[] {
  const here = 'tagName' in node ? [node] : [];
  return [...here, ...childrenOf(node).flatMap(elementsOf)];
}

/** What stands inside, also inside a template, which keeps its content apart. */
function childrenOf(node: Node): readonly Node[] {
  if ('content' in node) return node.content.childNodes;
  return 'childNodes' in node ? node.childNodes : [];
}

/** Tags in the order that the tree has them, against tags in the order that the text has them. */
function guesses(html: string, root: Node): string[] {
  const inTree = tagsOfTree(root);
  const inText = tagsOfText(html);
  const at = inText.findIndex((tag, index) => tag !== inTree[index]);
  if (at === -1 && inText.length === inTree.length) return [];
  return [
    `tags differ: text has ${inText.slice(at - 2, at + 3).join(' ')}, tree has ${inTree.slice(at - 2, at + 3).join(' ')}`,
  ];
}

function tagsOfTree(node: Node): string[] {
  const inner = childrenOf(node).flatMap(tagsOfTree);
  if (!('tagName' in node)) return inner;
  const name = node.tagName.toLowerCase();
  const selfClosed = inner.length === 0 && node.sourceCodeLocation?.endTag === undefined;
  return VOID.has(name) || selfClosed ? [name] : [name, ...inner, `/${name}`];
}

function tagsOfText(html: string): string[] {
  const tags = [...html.matchAll(/<(\/?)([a-zA-Z][\w-]*)(?:"[^"]*"|'[^']*'|[^>"'])*>/g)];
  return tags.map((tag) => `${tag[1]}${(tag[2] ?? '').toLowerCase()}`);
}

function attributeFaults(elements: readonly Element[]): string[] {
  const ids = elements.flatMap((element) => attributeOf(element, 'id') ?? []);
  const twice = ids.filter((id, index) => ids.indexOf(id) !== index);
  const styled = elements.filter((element) => attributeOf(element, 'style') !== undefined);
  const handlers = elements.flatMap((element) =>
    element.attrs.filter((attribute) => /^on/.test(attribute.name)),
  );
  return [
    ...twice.map((id) => `id ${id} stands twice`),
    ...styled.map((element) => `style attribute on ${element.tagName}`),
    ...handlers.map((attribute) => `handler ${attribute.name} in the page`),
  ];
}
