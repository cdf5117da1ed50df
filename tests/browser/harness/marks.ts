import type { Page } from 'playwright-core';
import { type Colours, layColoursReady } from './colours.ts';

/**
 * Marks that the colours of the machine wipe out: what is drawn without a word, by a filling or a line of its own, and stands
 * out from its ground as the page came. A border stays whatever the colours are; a ground of its own does not. To be asked twice,
 * before the colours change (`asCame`) and after.
 *
 * @example
 * await drawnParts(page, 'remember');
 * await enterState(page, 'forced');
 * expect(await drawnParts(page, 'name the lost')).toEqual([]);
 */
export async function drawnParts(
  page: Page,
  asked: 'remember' | 'name the lost',
): Promise<readonly string[]> {
  await layColoursReady(page);
  return page.evaluate((what) => {
    const SEEN_FROM = 1.5;
    const { channels, ground, contrast } = (globalThis as unknown as { colours: Colours }).colours;
    const shines = (colour: string): boolean => channels(colour).length >= 3 && channels(colour)[3] !== 0;
    const standsOut = (colour: string, from: string): boolean =>
      shines(colour) && contrast(colour, from) >= SEEN_FROM;
    const paints = (element: Element): readonly string[] => {
      const { fill, stroke, backgroundColor, borderTopWidth, borderTopColor } = getComputedStyle(element);
      if (element instanceof SVGElement) return [fill, stroke];
      return Number.parseFloat(borderTopWidth) > 0 ? [backgroundColor, borderTopColor] : [backgroundColor];
    };
    const isSeen = (element: Element): boolean => {
      const from = ground(element.closest('svg')?.parentElement ?? element.parentElement);
      return paints(element).some((colour) => standsOut(colour, from));
    };
    const store = globalThis as unknown as { drawn?: readonly Element[] };
    if (what === 'remember') {
      const shapes = document.querySelectorAll(
        'svg :is(path, rect, circle, line, polygon, polyline, ellipse)',
      );
      const blanks = [
        ...document.querySelectorAll('body *:not(svg *, svg, input, select, textarea, img)'),
      ].filter((one) => one.childElementCount === 0 && one.textContent?.trim() === '');
      const all = [...shapes, ...blanks].filter(
        (one) => one.getClientRects().length > 0 && !one.closest('defs, .unseen, mask, clipPath'),
      );
      store.drawn = all.filter(isSeen);
      return [];
    }
    // What is cut out of a shape that is still seen is seen by it.
    const isCutOut = (element: Element): boolean => {
      for (let before = element.previousElementSibling; before; before = before.previousElementSibling)
        if (isSeen(before)) return true;
      return false;
    };
    const lost = (store.drawn ?? []).filter(
      (one) => !isSeen(one) && !(one instanceof SVGElement && isCutOut(one)),
    );
    return lost.map((one) => one.outerHTML.slice(0, 110));
  }, asked);
}
