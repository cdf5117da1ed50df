import { attributeOf, type Page, readHtml, textOf } from '../../views/html.ts';

type Element = Page['elements'][number];

/** Names that say nothing of the act. */
const EMPTY_NAMES = new Set(['ok', 'okay', 'cancel', 'yes', 'no', 'submit', 'go', 'continue', 'next', '']);

/** A date that is read as two, by who writes the day first and by who writes the month first; a clock of twelve hours. */
const READ_AS_TWO = [
  /\b(?:[0-2]?\d|3[01])[/.](?:[0-2]?\d|3[01])[/.](?:\d{4}|\d{2})\b/g,
  // Not the end of a code that is read out: `1T1-9AM`.
  /(?<![\w-])\d{1,2}(?::\d{2})? ?[ap]\.?m\b\.?(?!-)/gi,
];

/**
 * What is wrong with a whole page for who cannot see it, cannot drag, or reads numbers the other way.
 *
 * @example pageFaults('<p>3/4/2026</p>') // ['0 main parts', ..., '3/4/2026 is read in two ways']
 */
export function pageFaults(html: string): readonly string[] {
  const { elements } = readHtml(html);
  const shown = elements.filter((one) => !isWithin(one, ['template', 'script', 'style']) && !isHidden(one));
  return [...orderFaults(shown), ...actFaults(shown), ...numberFaults(shown)];
}

function orderFaults(elements: readonly Element[]): readonly string[] {
  const count = (tag: string) => elements.filter(({ tagName }) => tagName === tag).length;
  const text = (tag: string) => textOf(elements.find(({ tagName }) => tagName === tag) ?? nothing).trim();
  const html = elements.find(({ tagName }) => tagName === 'html') ?? nothing;
  return [
    ...(count('main') === 1 ? [] : [`${count('main')} main parts`]),
    ...(count('h1') === 1 ? [] : [`${count('h1')} first headings`]),
    ...(text('title').endsWith(' · Yokeside') && !text('title').startsWith('·') ? [] : ['no title']),
    ...((attributeOf(html, 'lang') ?? '') === '' ? ['no language'] : []),
    ...(elements.some((one) => attributeOf(one, 'class') === 'skip') ? [] : ['no way past the head']),
  ];
}

function actFaults(elements: readonly Element[]): readonly string[] {
  return elements.flatMap((one) => {
    const has = (name: string) => attributeOf(one, name);
    const name = (has('aria-label') ?? textOf(one)).trim();
    const trigger = has('hx-trigger') ?? '';
    return [
      ...(one.tagName === 'button' && EMPTY_NAMES.has(name.toLowerCase()) ? [`a button says "${name}"`] : []),
      ...(has('draggable') !== undefined || has('type') === 'range' ? [`${one.tagName} wants dragging`] : []),
      ...(/\b(?:change|blur|focus)\b/.test(trigger) ? [`sends unasked: ${trigger}`] : []),
    ];
  });
}

function numberFaults(elements: readonly Element[]): readonly string[] {
  // A field shows what its person typed, as they typed it.
  const texts = elements.flatMap((one) => (one.tagName === 'textarea' ? [] : ownTexts(one)));
  return texts.flatMap((text) =>
    READ_AS_TWO.flatMap((pattern) =>
      (text.match(pattern) ?? []).map((found) => `${found} is read in two ways`),
    ),
  );
}

const ownTexts = (element: Element): readonly string[] =>
  element.childNodes.flatMap((node) => ('value' in node && node.nodeName === '#text' ? [node.value] : []));

function isWithin(element: Element, tags: readonly string[]): boolean {
  const { parentNode } = element;
  if (tags.includes(element.tagName)) return true;
  return parentNode !== null && 'tagName' in parentNode && isWithin(parentNode, tags);
}

function isHidden(element: Element): boolean {
  const { parentNode } = element;
  if (attributeOf(element, 'hidden') !== undefined) return true;
  return parentNode !== null && 'tagName' in parentNode && isHidden(parentNode);
}

const nothing = readHtml('<i></i>').elements[0] as Element;

/** What the link to help in the head of a page says; `not in the head` where it has none. */
export function helpPlace(html: string): string {
  const { elements } = readHtml(html);
  const link = elements.find(
    (one) => one.tagName === 'a' && attributeOf(one, 'href') === '/help' && isWithin(one, ['header']),
  );
  return link === undefined ? 'not in the head' : textOf(link).trim();
}
