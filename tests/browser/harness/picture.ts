import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';

const FOLDER = process.env.YOKESIDE_PICTURES;

/** The page as it stands, for whoever wants to look at what a test saw: into the folder that `YOKESIDE_PICTURES` names. */
export async function picture(page: Page, name: string): Promise<void> {
  if (FOLDER === undefined) return;
  mkdirSync(FOLDER, { recursive: true });
  await page.screenshot({ path: join(FOLDER, `${name}.png`) });
}

/** The words of the open card and what stands beside it, for whoever wants to read what a test saw. */
export async function words(page: Page, name: string): Promise<void> {
  if (FOLDER === undefined) return;
  mkdirSync(FOLDER, { recursive: true });
  // biome-ignore lint/performance/useDomNodeTextContent: read as it stands on the screen, line by line
  const read = await page.locator('#card').innerText();
  writeFileSync(join(FOLDER, `${name}.txt`), `${read}\n`);
}
