import { expect, test } from 'vitest';
import { NARROWEST } from './harness/browser.ts';
import { tabThrough } from './harness/by-keys.ts';
import { demoPlant } from './harness/demo-plant.ts';
import { openByClicking } from './harness/do-job.ts';
import { inBrowser } from './harness/in-browser.ts';
import { inRole, signIn } from './harness/people.ts';
import { picture } from './harness/picture.ts';

const MINUTE_MS = 60_000;

inBrowser('a screen', (open) => {
  const plant = demoPlant({ startsAt: new Date('2026-06-01T08:00:00Z') });

  test('warns two minutes before nobody is there any more, keeps who presses a key, and says when it is over (UI-15)', async () => {
    const { page } = await open({ origin: plant.server.origin });
    await page.clock.install({ time: new Date('2026-06-01T08:00:00Z') });
    await signIn(page, inRole(plant.people, 'technician'));
    const told = page.locator('#staying');
    const pass = async (ms: number) => {
      plant.server.wait(ms);
      await page.clock.fastForward(ms);
    };
    await pass(27 * MINUTE_MS);
    expect(await told.isVisible()).toBe(false);
    await pass(MINUTE_MS);
    await told.waitFor();
    expect(await told.textContent()).toContain('you are signed out in 2 min');
    await picture(page, 'about-to-be-signed-out');
    await page.keyboard.press('Shift');
    await told.waitFor({ state: 'hidden' });
    await pass(28 * MINUTE_MS);
    await told.waitFor();
    await pass(2 * MINUTE_MS + 2000);
    await expect.poll(() => told.textContent()).toContain('You are signed out');
    expect(await told.getByRole('link', { name: 'Sign in' }).isVisible()).toBe(true);
  });

  test('opens an older line of a job in its place, by the keyboard too, and without a script as a page', async () => {
    const { page } = await open({ origin: plant.server.origin });
    await signIn(page, inRole(plant.people, 'technician'));
    await page.goto('/jobs/12');
    const older = page.locator('a.line').first();
    const id = (await older.getAttribute('id')) ?? '';
    await older.focus();
    await page.keyboard.press('Enter');
    const opened = page.locator(`details#${id}`);
    await opened.locator('.line__more').waitFor();
    await opened.locator('summary:focus').waitFor();
    await page.keyboard.press('Enter');
    await opened.locator('.line__more').waitFor({ state: 'hidden' });
    expect(page.url()).toMatch(/\/jobs\/12$/);

    const plain = await open({ origin: plant.server.origin, javaScript: false });
    await signIn(plain.page, inRole(plant.people, 'technician'));
    await plain.page.goto('/jobs/12');
    await plain.page.locator('a.line').first().click();
    expect(await plain.page.locator(`#${id} .line__more`).isVisible()).toBe(true);
  });

  test('shows where the keyboard is, never under what stays on the screen, down to the narrowest (UI-12)', async () => {
    const { page } = await open({ origin: plant.server.origin });
    await signIn(page, inRole(plant.people, 'technician'));
    await openByClicking({
      page,
      server: plant.server,
      tag: 'FV-101',
      place: 'bench',
      supervisor: inRole(plant.people, 'supervisor'),
    });
    for (const screen of [{ width: 1280, height: 800 }, NARROWEST]) {
      await page.setViewportSize(screen);
      const { stops, faults } = await tabThrough(page);
      expect(faults, `${screen.width} px`).toEqual([]);
      expect(stops).toBeGreaterThan(10);
    }
    // UI-31: what makes safe stands apart from what goes on.
    const boxes = await page.evaluate(() =>
      ['#card form .button--main', '.button--safe'].map((one) => {
        const box = document.querySelector(one)?.getBoundingClientRect();
        return box === undefined
          ? null
          : { top: box.top, bottom: box.bottom, left: box.left, right: box.right };
      }),
    );
    const [on, safe] = boxes;
    if (!on || !safe) throw new Error('The card has no button that goes on, or none that makes safe.');
    const gap = Math.max(
      safe.top - on.bottom,
      on.top - safe.bottom,
      safe.left - on.right,
      on.left - safe.right,
    );
    expect(gap).toBeGreaterThanOrEqual(12);
  });
});
