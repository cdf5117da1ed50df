import type { Page, Request } from 'playwright-core';
import { expect, test } from 'vitest';
import { jobKind } from '../../server/jobs/job-stream.ts';
import type { DemoPerson } from '../../server/pages/set-up.ts';
import { answerByJson } from './harness/answer-by-json.ts';
import { DESK, NARROWEST } from './harness/browser.ts';
import { demoPlant, loadedPlant } from './harness/demo-plant.ts';
import { openByClicking } from './harness/do-job.ts';
import { inBrowser } from './harness/in-browser.ts';
import { inRole, signIn } from './harness/people.ts';
import { picture } from './harness/picture.ts';
import { faultsOfPage } from './harness/whole-page.ts';

inBrowser('three people at three screens', (open) => {
  const plant = demoPlant({ startsAt: new Date('2026-06-01T08:00:00Z') });

  async function answerTo(
    page: Page,
    { id, step }: { readonly id: string; readonly step: string },
  ): Promise<void> {
    for (let cards = 0; cards < 60; cards += 1) {
      if ((await plant.server.services.log.state(jobKind, id)).step === step) return;
      await answerByJson({ page, server: plant.server, id });
    }
    throw new Error(`the job did not come to ${step}`);
  }

  async function atScreen(person: DemoPerson, address: string): Promise<Page> {
    const { page } = await open({ origin: plant.server.origin });
    await signIn(page, person);
    await page.goto(address);
    return page;
  }

  test('see one job move at once: the list of what is to be signed, the signature, and who answered what somebody was typing (HP-45)', {
    timeout: 240_000,
  }, async () => {
    const technicians = plant.people.filter((one) => one.role === 'technician');
    const [first, second] = [technicians[0] as DemoPerson, technicians[1] as DemoPerson];
    const technician = await atScreen(first, '/shift');
    const id = await openByClicking({
      page: technician,
      server: plant.server,
      tag: 'FV-101',
      place: 'bench',
      supervisor: first,
    });
    const { page: supervisor } = await open({ origin: plant.server.origin });
    await signIn(supervisor, inRole(plant.people, 'supervisor'));
    // A slow link: the list is there before it hears of anything, and must not miss what was answered meanwhile.
    let listen = () => {};
    const link = new Promise<void>((there) => {
      listen = there;
    });
    await supervisor.route('**/live', async (route) => {
      await link;
      await route.continue();
    });
    await supervisor.goto('/to-sign');
    expect(await supervisor.locator(`#job-${id}`).count()).toBe(0);
    await picture(supervisor, 'to-sign-before');

    await answerTo(technician, { id, step: 'holdWork' });
    listen();
    await supervisor.locator(`#job-${id}`).waitFor();
    expect(await faultsOfPage(supervisor)).toEqual([]);
    await picture(supervisor, 'to-sign-waits');

    const other = await atScreen(second, `/jobs/${id}#card`);
    await other.getByRole('heading', { name: 'Before plug stem or adjuster is turned' }).waitFor();
    const form = supervisor.locator(`#sign-${id}`);
    await form.locator('input[name=pin]').fill(inRole(plant.people, 'supervisor').pin);
    await form.locator('.button--sign').click();
    await supervisor.locator(`#job-${id}`).waitFor({ state: 'detached' });
    await other.getByRole('heading', { name: 'Connect one regulator and its gauge to the case' }).waitFor();
    const news = other.locator('#news');
    await news.getByText(/Signed by Supervisor .* This is the job now\./).waitFor();
    await picture(other, 'second-technician-news');

    await answerTo(technician, { id, step: 'asFoundCycle' });
    await other.goto(`/jobs/${id}#card`);
    await other.locator('#card [name=travelM]').fill('12 %');
    const where = () => other.evaluate(() => [window.scrollY, document.activeElement?.getAttribute('name')]);
    const before = await where();
    await answerByJson({ page: technician, server: plant.server, id });
    await news.getByText(/Answered by Technician .* What you typed stays here/).waitFor();
    expect(await where()).toEqual(before);
    expect(await other.locator('#card [name=travelM]').inputValue()).toBe('12 %');
    expect(await faultsOfPage(other)).toEqual([]);
    await picture(other, 'second-technician-typing');
    await other.locator('#card form .button--main').first().click();
    await other
      .getByText(/This step was answered by Technician/)
      .first()
      .waitFor();
    expect(await other.locator('.said--unsent').textContent()).toContain('12 %');
    await picture(other, 'second-technician-refused');
    expect((await plant.server.services.log.state(jobKind, id)).tables.asFoundCycle).toHaveLength(1);
  });
});

inBrowser('the narrowest screen', (open) => {
  test('keeps valve, job, procedure, revision and place in view, however far down (HP-36); what stands beside a card can be used by everybody', {
    timeout: 120_000,
  }, async () => {
    const { server, people } = await loadedPlant(new Date('2026-06-01T08:00:00Z'));
    try {
      const { page } = await open({ origin: server.origin, viewport: NARROWEST });
      await signIn(page, inRole(people, 'technician'));
      await page.goto('/jobs/12');
      for (const where of ['top', 'bottom'] as const) {
        await page.evaluate(
          (end) => window.scrollTo(0, end === 'top' ? 0 : document.body.scrollHeight),
          where,
        );
        for (const text of ['TV-302', 'job 12, valve', 'Stroke check and plug adjustment, rev. ', 'step'])
          expect(await inView(page, text), `${text} at the ${where}`).toBe(true);
      }
      await picture(page, 'narrowest');
      await page.setViewportSize(DESK);
      // Steps and the page for the radio are looked at with every other page in `states.test.ts`.
      for (const beside of ['radio?heard=x', 'lines/16/again']) {
        await page.goto(`/jobs/12/${beside}`);
        expect(await faultsOfPage(page), beside).toEqual([]);
        await picture(page, `beside-${beside.replaceAll(/\W/g, '-')}`);
      }
    } finally {
      await server.close();
    }
  });
});

/** Whether a text of the head stands inside the screen, not covered and not scrolled away. */
function inView(page: Page, text: string): Promise<boolean> {
  return page.evaluate((wanted) => {
    const all = [...document.querySelectorAll('header.head *')];
    const found =
      all.find((one) => one.children.length === 0 && one.textContent?.includes(wanted)) ??
      all.find((one) => one.textContent?.trim().startsWith(wanted));
    const box = found?.getBoundingClientRect();
    if (found === undefined || box === undefined || box.height === 0) return false;
    const top = document.elementFromPoint(box.left + 2, box.top + box.height / 2);
    return box.top >= 0 && box.bottom <= window.innerHeight && top?.closest('header.head') !== null;
  }, text);
}

inBrowser('a screen whose link is lost', (open) => {
  test('says so within five seconds, switches off what would post into the dark, and never making safe (HP-47)', {
    timeout: 120_000,
  }, async () => {
    const { server, people } = await loadedPlant(new Date('2026-06-01T08:00:00Z'));
    const { page } = await open({ origin: server.origin });
    await signIn(page, inRole(people, 'technician'));
    await page.clock.install();
    const isChannel = (request: Request) => request.resourceType() === 'eventsource';
    const listens = page.waitForResponse((response) => isChannel(response.request()));
    await openByClicking({
      page,
      server,
      tag: 'FV-101',
      place: 'bench',
      supervisor: inRole(people, 'supervisor'),
    });
    await listens;
    // Until its end is heard, the page may still hear what the server said before.
    const over = Promise.race([
      page.waitForEvent('requestfinished', isChannel),
      page.waitForEvent('requestfailed', isChannel),
    ]);
    await server.close();
    await over;
    // By the clock of the page, so that a busy machine changes nothing.
    const lostAt = await page.evaluate(() => Date.now());
    const mainButton = page.locator('#card form .button--main').first();
    await page.clock.pauseAt(lostAt + 1000);
    expect(await mainButton.isDisabled()).toBe(false);
    await page.clock.pauseAt(lostAt + 5000);
    await page.getByRole('alert').filter({ hasText: 'The server is away' }).waitFor();
    await expect.poll(() => mainButton.isDisabled()).toBe(true);
    expect(await page.locator('.button--safe').isDisabled()).toBe(false);
    await picture(page, 'link-lost');
  });
});
