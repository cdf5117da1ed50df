import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { jobKind } from '../../server/jobs/job-stream.ts';
import { PHONE } from './harness/browser.ts';
import { demoPlant } from './harness/demo-plant.ts';
import { openByClicking } from './harness/do-job.ts';
import { inBrowser } from './harness/in-browser.ts';
import { nextTap } from './harness/next-tap.ts';
import { inRole, signIn } from './harness/people.ts';
import { picture } from './harness/picture.ts';
import { faultsOfPage } from './harness/whole-page.ts';

/** What is written on each card, what it is understood as, and where that leads. */
const CARDS = [
  { reply: 'done', understood: /not counted yet/, to: 'knowEnergies' },
  { reply: 'yes', understood: /Yes/, to: 'rigGauges' },
  { reply: '9 psi 9,0', understood: /Signal gauge.*9 psi.*Second gauge.*9,0 psi/s, to: 'rigShutIn' },
  { reply: 'done', understood: /not counted yet/, to: 'rigHold' },
  { reply: '9.0 psi 9.0', understood: /Before the wait.*After it/s, to: 'rigBleed' },
  { reply: 'it follows, yes', understood: /Yes/, to: 'consent' },
] as const;

inBrowser('cards answered by the reply line alone', (open) => {
  const plant = demoPlant({ startsAt: new Date('2026-06-01T08:00:00Z') });

  const jobOf = (id: string) => plant.server.services.log.state(jobKind, id);

  async function opened(page: Page, tag: string): Promise<string> {
    await signIn(page, inRole(plant.people, 'technician'));
    return openByClicking({
      page,
      server: plant.server,
      tag,
      place: 'line',
      supervisor: inRole(plant.people, 'supervisor'),
    });
  }

  /** Enter sends, what was understood is shown, nothing is counted; Enter on its button counts it. */
  async function answer(page: Page, id: string, card: (typeof CARDS)[number]): Promise<void> {
    const before = await jobOf(id);
    plant.server.wait(30_000);
    await page.locator('#reply').fill(card.reply);
    await page.keyboard.press('Enter');
    const said = page.locator('#foot-said');
    await said.locator('[data-count]').waitFor();
    expect(await said.textContent()).toMatch(card.understood);
    expect((await jobOf(id)).seq).toBe(before.seq);
    expect(await page.locator('#reply').inputValue()).toBe(card.reply);
    await nextTap(page);
    await page.locator('[data-count]:focus').waitFor();
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await jobOf(id)).step).toBe(card.to);
    await page.locator('[data-count]').waitFor({ state: 'detached' });
    await nextTap(page);
  }

  test('with the script, by the keyboard alone', { timeout: 120_000 }, async () => {
    const { page } = await open({ origin: plant.server.origin });
    const id = await opened(page, 'FV-101');
    await page.locator('#reply').focus();
    for (const card of CARDS) {
      await answer(page, id, card);
      // It goes on in the line, and the line says which card it answers now.
      expect(await page.locator('#reply:focus').getAttribute('aria-describedby')).toBe('card-heading');
    }
    // A scanned tag ends with Enter; it goes to the line from wherever the focus is, and counts nothing.
    await page.locator('#card-heading').focus();
    await page.keyboard.type('what is bench set?\n');
    await page.locator('.replied__told').waitFor();
    expect(await page.locator('#foot-said').textContent()).toMatch(/On FV-101: bench set, low/);
    await picture(page, 'reply-told');
    await page.locator('#reply').fill('yes');
    await nextTap(page);
    await page.keyboard.press('Enter');
    await page.locator('.replied .understood').waitFor();
    expect(await page.locator('#foot-said').textContent()).toMatch(/still wanted: Name the operator by role/);
    await picture(page, 'reply-partial');
    await page.locator('#reply').fill('name: shift operator; who watches: board operator; yes');
    await nextTap(page);
    await page.keyboard.press('Enter');
    await page.locator('[data-count]:focus').waitFor();
    await picture(page, 'reply-understood');
    expect(await faultsOfPage(page)).toEqual([]);
    await page.keyboard.type('back');
    expect(await page.locator('#reply:focus').inputValue()).toBe('back');
    expect((await jobOf(id)).step).toBe('consent');
  });

  test('without any script, as plain forms', { timeout: 120_000 }, async () => {
    const { page } = await open({ origin: plant.server.origin, javaScript: false });
    const id = await opened(page, 'FV-102');
    for (const card of CARDS) await answer(page, id, card);
    expect(await page.locator('#reply').inputValue()).toBe('');
  });

  test('on a phone, where several things may be meant and none is taken', { timeout: 120_000 }, async () => {
    const { page } = await open({ origin: plant.server.origin, viewport: PHONE });
    const id = await opened(page, 'FV-103');
    await answer(page, id, CARDS[0]);
    await answer(page, id, CARDS[1]);
    await page.locator('#reply').fill('9');
    await page.keyboard.press('Enter');
    await page.locator('.replied__choices').waitFor();
    await picture(page, 'reply-phone-choices');
    expect(await faultsOfPage(page)).toEqual([]);
    const seq = (await jobOf(id)).seq;
    await nextTap(page);
    await page.locator('.replied__choices button').first().click();
    await page.locator('.replied .understood').waitFor();
    expect(await page.locator('#foot-said').textContent()).toMatch(/Second gauge/);
    expect((await jobOf(id)).seq).toBe(seq);
  });
});
