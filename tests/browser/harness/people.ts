import type { Page } from 'playwright-core';
import type { DemoPerson } from '../../../server/pages/set-up.ts';

/** The first person of the demo plant in a role. */
export function inRole(people: readonly DemoPerson[], role: DemoPerson['role']): DemoPerson {
  const person = people.find((one) => one.role === role);
  if (person === undefined) throw new Error(`The demo plant has no ${role}.`);
  return person;
}

/** Signs in by the page, as a person does. */
export async function signIn(page: Page, person: Pick<DemoPerson, 'id' | 'pin'>): Promise<void> {
  await page.goto('/sign-in');
  await page.getByLabel('Name or id').fill(person.id);
  await page.getByLabel('PIN', { exact: true }).fill(person.pin);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.waitForURL((url) => !url.pathname.startsWith('/sign-in'));
}

/** Addresses of the pages that the menu offers whoever is signed in. */
export async function menuOf(page: Page): Promise<readonly string[]> {
  return page
    .locator('nav.menu a')
    .evaluateAll((links) => links.map((link) => link.getAttribute('href') ?? ''));
}
