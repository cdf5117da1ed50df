import { es } from '../../../views/language/es.ts';
import { figuresIn } from '../../../views/language/figures.ts';
import { translatePage } from '../../../views/language/translate-page.ts';
import { wordsOf } from '../../../views/language/words.ts';
import { attributeOf, type Page, readHtml } from '../html.ts';

type Element = Page['elements'][number];

const figures = figuresIn('es');
const spanish = wordsOf({ language: 'es', catalogue: es });
/** Words of three small letters and more, but for those that hold a digit or stand in a name of a thing. */
const WORD = /(?<![\p{L}\p{N}_./-])\p{L}\p{Ll}{2,}(?![\p{N}_/])/gu;

/**
 * Texts of a page that come out of the Spanish catalogue as they went in, or in part: what nobody has said yet. Words of
 * people and of the plant are left out where the page marks them so, and so is what is written alike in both.
 *
 * @param alike texts that are the same in both languages, or belong to nobody's language: units, names of standards
 */
export function englishLeft(drawn: string, alike: ReadonlySet<string>): readonly string[] {
  // A tag is kept whole once all is said: before that it stood in its sentence.
  const html = drawn.replaceAll(/<span class="whole">([^<]*)<\/span>/g, '$1');
  const said = translatePage(html, spanish);
  const before = new Set(textsOf(html));
  const same = textsOf(said.html).filter((text) => before.has(text) && isWordy(text, alike));
  return [...new Set([...said.missing, ...same])].filter(
    (text) => !Object.hasOwn(es, text) && !alike.has(text),
  );
}

function isWordy(text: string, alike: ReadonlySet<string>): boolean {
  return !figures.isFigures(text) && (text.match(WORD) ?? []).some((word) => !alike.has(word));
}

function textsOf(html: string): readonly string[] {
  return readHtml(html)
    .elements.filter((one) => !isLeft(one))
    .flatMap(({ childNodes }) =>
      childNodes.flatMap((node) => ('value' in node && node.nodeName === '#text' ? [node.value] : [])),
    )
    .map((text) => text.trim().replaceAll(/\s+/g, ' '))
    .filter((text) => text !== '');
}

/** Marked as left as it is, by itself or above; or no text of the page. */
function isLeft(element: Element): boolean {
  if (['script', 'style', 'textarea', 'code', 'pre', 'title'].includes(element.tagName)) return true;
  if (attributeOf(element, 'translate') === 'no') return true;
  if (element.tagName !== 'html' && attributeOf(element, 'lang') !== undefined) return true;
  const { parentNode } = element;
  return parentNode !== null && 'tagName' in parentNode && isLeft(parentNode);
}
