import type { TestProject } from 'vitest/node';
import { type FoundChromium, findChromium } from './chromium.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    chromium: FoundChromium;
  }
}

/** Before the first browser test, once: test files run side by side, and two that unpack together fail. */
export default async function setUp(project: TestProject): Promise<void> {
  const chromium = await findChromium();
  if ('missing' in chromium) console.warn(chromium.missing);
  project.provide('chromium', chromium);
}
