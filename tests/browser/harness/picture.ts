import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';

const FOLDER = process.env.YOKESIDE_PICTURES;

/** The page as it stands, for whoever wants to look at what a test saw: into the folder that `YOKESIDE_PICTURES` names. */
export async function picture(page: Page, name: string): Promise<void> {
  if (FOLDER === undefined) return;
  mkdirSync(FOLDER, { recursive: true });
  await page.screenshot({ path: join(FOLDER, `${name}.png`) });
}
