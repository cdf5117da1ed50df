import type { Page } from 'playwright-core';
import { type Colours, layColoursReady } from './colours.ts';

/**
 * Words that break in the middle, so that a line holds single letters: what is too narrow for its own text. Numbers of checks
 * and other long ones are made to break; what stands in a part that scrolls sideways is read by moving it.
 */
export async function brokenWords(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const broken: string[] = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const parent = node.parentElement;
      if (parent === null || parent.closest('svg, .unseen, select, script, template')) continue;
      for (const { 0: word, index } of (node.textContent ?? '').matchAll(/[^\s/–-]+/g)) {
        if (word.length < 2 || word.length > 14) continue;
        const range = document.createRange();
        range.setStart(node, index);
        range.setEnd(node, index + word.length);
        const lines = new Set(Array.from(range.getClientRects(), ({ top }) => Math.round(top)));
        if (lines.size > 1) broken.push(`${word} in ${parent.outerHTML.slice(0, 90)}`);
      }
    }
    return broken;
  });
}

export interface LeastContrast {
  readonly ratio: number;
  readonly large: number;
}

/** Texts that stand out too little from the ground behind them, by the colours that the browser worked out (WCAG 1.4.3, 1.4.6). */
export async function faintTexts(page: Page, least: LeastContrast): Promise<readonly string[]> {
  await layColoursReady(page);
  return page.evaluate(({ ratio, large }) => {
    const { ground, contrast } = (globalThis as unknown as { colours: Colours }).colours;
    const faint = new Set<string>();
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const element = node.parentElement;
      if (
        element === null ||
        !node.textContent?.trim() ||
        element.closest('svg, .unseen, template, [disabled]')
      )
        continue;
      const { color, fontSize, fontWeight, visibility } = getComputedStyle(element);
      if (visibility !== 'visible' || element.getClientRects().length === 0) continue;
      const px = Number.parseFloat(fontSize);
      const found = contrast(color, ground(element));
      const isLarge = px >= 24 || (px >= 18.66 && Number(fontWeight) >= 600);
      if (found < (isLarge ? large : ratio))
        faint.add(`${found.toFixed(2)}: ${color} on ${ground(element)}, ${element.outerHTML.slice(0, 80)}`);
    }
    return [...faint];
  }, least);
}

/** What is set smaller than it must be, by selector, in CSS pixels; what is not on the page at all is a fault too. */
export async function smallLetters(
  page: Page,
  leastPx: Readonly<Record<string, number>>,
): Promise<readonly string[]> {
  return page.evaluate(
    (least) =>
      Object.entries(least).flatMap(([selector, px]) => {
        const found = [...document.querySelectorAll(selector)].filter(
          (one) => one.getClientRects().length > 0,
        );
        if (found.length === 0) return [`${selector} is not there`];
        return found
          .filter((one) => Number.parseFloat(getComputedStyle(one).fontSize) < px)
          .map(
            (one) =>
              `${selector}: ${getComputedStyle(one).fontSize}, at least ${px} px, ${one.outerHTML.slice(0, 80)}`,
          );
      }),
    leastPx,
  );
}

/** What moves of itself, or would move, where a person asked that nothing does. */
export async function movingParts(page: Page): Promise<readonly string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll('body *')]
      .filter((element) => {
        const { transitionDuration, animationName } = getComputedStyle(element);
        return (
          animationName !== 'none' || transitionDuration.split(', ').some((one) => Number.parseFloat(one) > 0)
        );
      })
      .map((element) => element.outerHTML.slice(0, 90)),
  );
}

/** A typeface as its makers packed it. */
export interface Original {
  readonly weight: string;
  readonly base64: string;
}

/** Letters that the typeface of the page draws otherwise than its original, or in another width; its figures are those of one width. */
export async function letteredOtherwise(
  page: Page,
  { letters, original }: { readonly letters: string; readonly original: Original },
): Promise<readonly string[]> {
  return page.evaluate(
    async ({ all, weight, base64 }) => {
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      const face = new FontFace('Original', bytes, { weight, featureSettings: '"tnum"' });
      document.fonts.add(await face.load());
      await document.fonts.load(`${weight} 40px Yokeside`);
      const canvas = document.createElement('canvas');
      [canvas.width, canvas.height] = [80, 80];
      const context = canvas.getContext('2d', { willReadFrequently: true });
      if (context === null) throw new Error('This browser draws nothing.');
      const drawn = (letter: string, family: string) => {
        context.clearRect(0, 0, 80, 80);
        context.font = `${weight} 40px ${family}`;
        context.fillText(letter, 10, 50);
        const { data } = context.getImageData(0, 0, 80, 80);
        return `${context.measureText(letter).width} ${data.join()}`;
      };
      const otherwise = [...all].filter((letter) => drawn(letter, 'Yokeside') !== drawn(letter, 'Original'));
      document.fonts.delete(face);
      return otherwise;
    },
    { all: letters, ...original },
  );
}
