import axe from 'axe-core';
import type { Page } from 'playwright-core';

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/**
 * What axe finds wrong on the page as it stands, in words: rule, help and the places. The script goes in as code to
 * evaluate, since a page with our policy loads none that it did not bring.
 */
export async function axeViolations(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe.source);
  const found = await page.evaluate(async (tags) => {
    const run = (globalThis as unknown as { axe: typeof axe }).axe.run;
    const { violations } = await run(document, { runOnly: { type: 'tag', values: [...tags] } });
    return violations.map(({ id, help, nodes }) => ({
      id,
      help,
      places: nodes.map(({ target, failureSummary }) => `${target.join(' ')}: ${failureSummary ?? ''}`),
    }));
  }, TAGS);
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
    const out = [...document.querySelectorAll('body *')]
      .filter((element) => !isCut(element))
      .map((element) => ({ element, right: element.getBoundingClientRect().right }))
      .filter(({ right }) => right > clientWidth)
      .sort((one, other) => other.right - one.right)
      .slice(0, 5);
    const names = out.map(({ element, right }) => `${element.outerHTML.slice(0, 80)} reaches ${right}`);
    return [`${scrollWidth - clientWidth} px too wide`, ...names];
  });
}
