import axe from 'axe-core';
import type { Page } from 'playwright-core';

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** What a theme alone can break: themes differ in the colours of their tokens and in nothing else. */
const OF_COLOURS = ['color-contrast'];
/** What larger letters alone can break: the same elements stand elsewhere, and some scroll. */
const OF_PLACES = ['color-contrast', 'target-size', 'scrollable-region-focusable'];
const RULES = { colours: OF_COLOURS, places: OF_PLACES } as const;

export type Asked = 'all' | keyof typeof RULES;

/**
 * What axe finds wrong on the page as it stands, in words: rule, help and the places. The script goes in as code to
 * evaluate, since a page with our policy loads none that it did not bring. What it finds right is not written out: on a
 * page of 8,000 elements that alone took 4 s of 10.
 *
 * @param what `colours`: only what can differ from one theme to another; `places`: from one size of letters to another
 */
export async function axeViolations(page: Page, what: Asked = 'all'): Promise<readonly string[]> {
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axe.source);
  const runOnly =
    what === 'all'
      ? { type: 'tag' as const, values: TAGS }
      : { type: 'rule' as const, values: [...RULES[what]] };
  const found = await page.evaluate(async (only) => {
    const run = (globalThis as unknown as { axe: typeof axe }).axe.run;
    const { violations } = await run(document, { runOnly: only, resultTypes: ['violations'] });
    return violations.map(({ id, help, nodes }) => ({
      id,
      help,
      places: nodes.map(({ target, failureSummary }) => `${target.join(' ')}: ${failureSummary ?? ''}`),
    }));
  }, runOnly);
  return found.flatMap(({ id, help, places }) => places.map((place) => `${id}, ${help}: ${place}`));
}

/** What makes the page scroll sideways: how far, and the elements that stick out the most; empty when nothing does. */
export async function sticksOut(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const { scrollWidth, clientWidth } = document.documentElement;
    if (scrollWidth <= clientWidth) return [];
    const isCut = (element: Element): boolean => {
      const parent = element.parentElement;
      return parent !== null && (getComputedStyle(parent).overflowX !== 'visible' || isCut(parent));
    };
    // A text can stick out of the element that it stands in.
    const reach = (element: Element): number => {
      const range = document.createRange();
      range.selectNodeContents(element);
      return Math.max(element.getBoundingClientRect().right, range.getBoundingClientRect().right);
    };
    const out = [...document.querySelectorAll('body *')]
      .filter((element) => !isCut(element) && getComputedStyle(element).overflowX === 'visible')
      .map((element) => ({ element, right: reach(element) }))
      .filter(({ right }) => right > clientWidth)
      .sort((one, other) => one.element.innerHTML.length - other.element.innerHTML.length)
      .slice(0, 5);
    const names = out.map(({ element, right }) => `${element.outerHTML.slice(0, 80)} reaches ${right}`);
    return [`${scrollWidth - clientWidth} px too wide`, ...names];
  });
}

/**
 * Keys and buttons that are too small for a gloved hand, in CSS pixels either way: 72 for PIN keys (19 mm at 96 px an
 * inch), 44 for everything else that acts.
 */
export async function smallTargets(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const acting = [
      ...document.querySelectorAll('button, input:not([type=hidden]), select, textarea, .button'),
    ];
    return acting.flatMap((element) => {
      const labels = element instanceof HTMLInputElement ? [...(element.labels ?? [])] : [];
      // What is pressed is the box with its label.
      const boxes = [element, ...labels].map((part) => part.getBoundingClientRect());
      const width = Math.max(...boxes.map((box) => box.right)) - Math.min(...boxes.map((box) => box.left));
      const height = Math.max(...boxes.map((box) => box.height));
      const leastPx = element.matches('[data-key]') ? 72 : 44;
      const seen = width > 0 && height > 0;
      // A fraction of a pixel is lost where the page is scaled.
      return seen && Math.min(width, height) < leastPx - 0.5
        ? [`${element.outerHTML.slice(0, 90)} is ${width} x ${height}, at least ${leastPx}`]
        : [];
    });
  });
}

/** Spacing that readers set for themselves and a page must bear (WCAG 1.4.12). */
export async function widenText(page: Page): Promise<void> {
  // Through the browser's own interface for style sheets: the policy of the page forbids a style element.
  await page.evaluate(() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(`* { line-height: 1.5 !important; letter-spacing: 0.12em !important;
      word-spacing: 0.16em !important; } p { margin-block-end: 2em !important; }`);
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
  });
}
