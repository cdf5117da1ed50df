import type { Page } from 'playwright-core';

/** What is asked of colours within a page, as the browser worked them out. */
export interface Colours {
  /** Red, green, blue, and how opaque where it says so. */
  channels(colour: string): readonly number[];
  /** The colour behind an element. */
  ground(element: Element | null): string;
  /** How one colour stands out from another, 1 to 21 (WCAG 2.2, contrast ratio). */
  contrast(one: string, other: string): number;
}

/** Lays them ready as `colours` in the page. */
export async function layColoursReady(page: Page): Promise<void> {
  await page.evaluate(() => {
    const channels = (colour: string): readonly number[] => (colour.match(/[\d.]+/g) ?? []).map(Number);
    const light = (colour: string): number => {
      const [r = 0, g = 0, b = 0] = channels(colour).map((each) => {
        const part = each / 255;
        return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
      });
      return 0.2126 * r + 0.7152 * g + 0.0722 * b;
    };
    const ground = (element: Element | null): string => {
      if (element === null) return 'rgb(255, 255, 255)';
      const { backgroundColor } = getComputedStyle(element);
      return (channels(backgroundColor)[3] ?? 1) === 1 ? backgroundColor : ground(element.parentElement);
    };
    const contrast = (one: string, other: string): number => {
      const [lighter = 0, darker = 0] = [light(one), light(other)].sort((a, b) => b - a);
      return (lighter + 0.05) / (darker + 0.05);
    };
    Object.assign(globalThis, { colours: { channels, ground, contrast } });
  });
}
