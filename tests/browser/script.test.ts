import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, expect, inject, test } from 'vitest';
import { SECURITY_HEADERS } from '../../server/http/security.ts';
import { ASSET_FILES } from '../../views/assets.ts';
import { createRenderer } from '../../views/render.ts';
import { screenChoice } from '../../views/screen-choice.ts';
import { ROOT } from '../root.ts';
import { openBrowser, openPage } from './harness/browser.ts';
import { inBrowser } from './harness/in-browser.ts';
import { layoutShift } from './harness/layout-shift.ts';
import { type Listening, listen } from './harness/listen.ts';

const VIEWS = join(ROOT, 'views');
const renderer = createRenderer({ folder: VIEWS });
const part = (component: string, macro: string, params: object) =>
  renderer.render('parts/example.njk', { component, macro, params });

/** What the little server behind the page has seen and how it behaves. */
const server = {
  posts: [] as URLSearchParams[],
  /** Answers to acts wait for it. */
  answers: Promise.resolve(),
  requestId: 1,
  alive: true,
  person: 'T1',
  /** Goes away in the middle of an act: before it is kept, or after, and before the answer. */
  dies: 'never' as 'never' | 'before' | 'after',
};

/** The piece that is swapped: a card, a signature, and the foot with its reply line. */
function work(reply: object = {}): string {
  const card = part('open-card', 'openCard', {
    id: 'card',
    number: server.requestId,
    heading: `Step ${server.requestId}`,
  });
  const foot = part('job-foot', 'jobFoot', {
    reply: {
      action: '/act',
      target: '#work',
      draft: 'reply',
      hidden: { requestId: `request-${server.requestId}` },
      ...reply,
    },
    safe: { action: '/safe' },
  });
  const signature = part('signature', 'signature', {
    action: '/sign',
    allows: [],
    person: 'S2',
    sign: { text: 'Sign', name: 'act', value: 'sign' },
  });
  const secret = part('field', 'field', { label: 'Secret', name: 'secret', type: 'password' });
  return `<div class="job" id="work">${card}${signature}<form data-draft="secret">${secret}</form>${foot}</div>`;
}

function page(): string {
  const blank = renderer.render('layout.njk', {
    page: { lang: 'en', title: 'Job', screen: screenChoice(undefined), person: server.person },
  });
  return blank.replace(
    '<main id="main" tabindex="-1">',
    (main) => `${main}<h1 class="unseen">Job</h1>${work()}`,
  );
}

function answer(
  body: string | Uint8Array<ArrayBuffer>,
  type = 'text/html; charset=utf-8',
  status = 200,
): Response {
  return new Response(body, { status, headers: { ...SECURITY_HEADERS, 'content-type': type } });
}

function asset(name: string): Response {
  const source = ASSET_FILES[name];
  if (source === undefined) return new Response(null, { status: 404 });
  const files =
    'module' in source
      ? [createRequire(import.meta.url).resolve(source.module)]
      : source.parts.map((file) => join(VIEWS, file));
  return answer(new Uint8Array(Buffer.concat(files.map((file) => readFileSync(file)))), source.type);
}

async function act(request: Request): Promise<Response> {
  const fields = new URLSearchParams(await request.text());
  const { dies } = server;
  server.dies = 'never';
  if (dies === 'before') return gone();
  server.posts.push(fields);
  if (dies === 'after') {
    server.requestId += 1;
    return gone();
  }
  await server.answers;
  const htmx = request.headers.get('HX-Request') === 'true';
  if (fields.get('reply') === 'wrong')
    return answer(work({ value: 'wrong', error: 'Not counted.' }), undefined, 422);
  server.requestId += 1;
  return htmx ? answer(work()) : new Response(null, { status: 303, headers: { location: '/' } });
}

/** The connection breaks: no answer at all. */
function gone(): Response {
  return new Response(new ReadableStream({ start: (body) => body.error(new Error('gone')) }));
}

function sent(requestId: string): Response {
  const kept = server.posts.some((fields) => fields.get('requestId') === requestId);
  return answer(JSON.stringify({ kept }), 'application/json');
}

async function respond(request: Request): Promise<Response> {
  const { pathname } = new URL(request.url);
  if (pathname.startsWith('/assets/')) return asset(pathname.slice('/assets/'.length));
  if (!server.alive) return answer('', undefined, 503);
  if (pathname.startsWith('/sent/')) return sent(pathname.slice('/sent/'.length));
  return request.method === 'POST' ? act(request) : answer(page());
}

const focused = (page: Page) =>
  page.evaluate(() => document.activeElement?.textContent?.trim() || document.activeElement?.id);
const reply = (page: Page) => page.getByLabel('Write a reading, or ask');
const count = (page: Page) => page.getByRole('button', { name: 'Count it' });

inBrowser('the script of the page', (open) => {
  let site: Listening;
  beforeAll(async () => {
    site = await listen(() => respond);
  });
  afterAll(() => site.close());
  beforeEach(() => {
    const answers = Promise.resolve();
    Object.assign(server, { posts: [], answers, requestId: 1, alive: true, dies: 'never' });
  });

  async function start(options: { javaScript?: boolean } = {}): Promise<Page> {
    const { page } = await open({ origin: site.origin, ...options });
    await page.goto('/');
    return page;
  }

  /** Where milliseconds count: the page has a clock that the test alone moves on, so that a busy machine changes nothing. */
  async function startAtRest(): Promise<Page> {
    const { page } = await open({ origin: site.origin });
    await page.clock.install({ time: 0 });
    await page.goto('/');
    await page.clock.pauseAt(60_000);
    await page.evaluate(() => {
      document.addEventListener('htmx:beforeRequest', () => {
        document.documentElement.dataset.begun = `${Number(document.documentElement.dataset.begun ?? 0) + 1}`;
      });
    });
    return page;
  }
  /** How many acts the page at rest has begun to send: known at once, where a post would still be on its way. */
  const begun = (page: Page) => page.evaluate(() => Number(document.documentElement.dataset.begun));

  test('goes on at the new card when an answer was counted', async () => {
    const page = await start();
    await reply(page).fill('9 psi 50 %');
    await reply(page).press('Enter');
    await page.getByRole('heading', { name: 'Step 2' }).waitFor();
    await expect.poll(() => focused(page)).toBe('Step 2');
    expect(server.posts.map((fields) => fields.get('reply'))).toEqual(['9 psi 50 %']);
  });

  test('keeps what was typed and goes to the field where an answer was refused (UI-20)', async () => {
    const page = await start();
    await reply(page).fill('wrong');
    await count(page).click();
    await page.getByText('Not counted.').waitFor();
    expect(await reply(page).inputValue()).toBe('wrong');
    await expect.poll(() => focused(page)).toBe('reply');
  });

  test('takes two taps within half a second for one act, also where the card was redrawn between them (UI-30)', async () => {
    const page = await startAtRest();
    await page.evaluate(() => {
      const tap = () => document.querySelector<HTMLButtonElement>('.reply button')?.click();
      document.addEventListener('htmx:afterSettle', tap, { once: true });
      tap();
      tap();
    });
    await page.getByRole('heading', { name: 'Step 2' }).waitFor();
    await page.clock.runFor(499);
    await expect.poll(() => focused(page)).toBe('Step 2');
    await count(page).click();
    expect(await begun(page)).toBe(1);
    await page.clock.runFor(1);
    await count(page).click();
    await page.getByRole('heading', { name: 'Step 3' }).waitFor();
    expect(server.posts).toHaveLength(2);
  });

  test('lets nobody wait to make safe', async () => {
    const page = await start();
    await reply(page).fill('9 psi');
    await count(page).click({ noWaitAfter: true });
    await page.getByRole('button', { name: 'Make safe and stop' }).click();
    await expect.poll(() => server.posts.length).toBe(2);
  });

  test('says that it is keeping only when keeping takes long, and posts once however often it is tapped meanwhile (R-13)', async () => {
    const page = await startAtRest();
    let answer = () => {};
    server.answers = new Promise((resolve) => {
      answer = resolve;
    });
    await count(page).click();
    const keeping = page.getByText('keeping…');
    await page.clock.runFor(399);
    expect(await keeping.isVisible()).toBe(false);
    await page.clock.runFor(1);
    expect(await keeping.isVisible()).toBe(true);
    await page.clock.runFor(5000);
    await count(page).click();
    expect(await begun(page)).toBe(1);
    answer();
    await page.getByRole('heading', { name: 'Step 2' }).waitFor();
    expect(await keeping.isVisible()).toBe(false);
    expect(server.posts).toHaveLength(1);
  });

  test('says that it does not know where the server went away in the middle of an act, asks by the request’s number, and assumes nothing (R-17)', async () => {
    // A browser of its own: nobody watches its errors, which belong here.
    const browser = await openBrowser(inject('chromium'));
    try {
      const { page } = await openPage(browser, { origin: site.origin });
      await page.goto('/');
      const banner = page.locator('#away');
      server.dies = 'before';
      await reply(page).fill('9 psi 50 %');
      await count(page).click();
      await banner.filter({ hasText: 'Whether this was kept is not known' }).waitFor();
      await banner.filter({ hasText: 'This was not kept. Send it again.' }).waitFor();
      expect(await reply(page).inputValue()).toBe('9 psi 50 %');
      server.dies = 'after';
      await count(page).click();
      await banner.filter({ hasText: 'Whether this was kept is not known' }).waitFor();
      await page.getByRole('heading', { name: 'Step 2' }).waitFor();
      expect(await banner.isVisible()).toBe(false);
      expect(server.posts.map((fields) => fields.get('requestId'))).toEqual(['request-1']);
    } finally {
      await browser.close();
    }
  });

  test('writes the PIN with the keys', async () => {
    const page = await start();
    const pin = page.getByLabel('PIN', { exact: true });
    for (const key of ['4', '7', '1', 'Rub out', '0'])
      await page.getByRole('button', { name: key, exact: true }).click();
    expect(await pin.inputValue()).toBe('470');
    await page.getByRole('button', { name: 'Clear' }).click();
    expect(await pin.inputValue()).toBe('');
  });

  test('offers after a reload what was typed and not sent, and fills nothing in unasked (UI-17)', async () => {
    const page = await start();
    await reply(page).pressSequentially('12 psi 75');
    await page.getByLabel('Secret').pressSequentially('4711');
    server.requestId += 1;
    await page.reload();
    expect(await reply(page).inputValue()).toBe('');
    expect(await page.evaluate(() => JSON.stringify(localStorage))).not.toContain('4711');
    // Signed out, and somebody else signed in at the same screen.
    server.person = 'T2';
    await page.reload();
    expect(await page.getByText('not sent').count()).toBe(0);
    server.person = 'T1';
    await page.reload();
    await page.getByRole('button', { name: 'Put it back' }).click();
    expect(await reply(page).inputValue()).toBe('12 psi 75');
    expect(await page.getByText('not sent').count()).toBe(0);
  });

  test('offers nothing once it was counted or thrown away', async () => {
    const page = await start();
    await reply(page).fill('9 psi');
    await count(page).click();
    await page.getByRole('heading', { name: 'Step 2' }).waitFor();
    await expect.poll(() => page.evaluate(() => localStorage.length)).toBe(0);
    await page.reload();
    expect(await page.getByText('not sent').count()).toBe(0);
    await reply(page).fill('10 psi');
    await page.reload();
    await page.getByRole('button', { name: 'Throw it away' }).click();
    await page.reload();
    expect(await page.getByText('not sent').count()).toBe(0);
  });

  test('changes the look at once and for the next page, without asking the server', async () => {
    const page = await start();
    await page.getByRole('button', { name: 'Sun, dark' }).click();
    expect(await page.evaluate(() => ({ ...document.documentElement.dataset }))).toMatchObject({
      theme: 'dark',
      contrast: 'sun',
    });
    expect(await page.evaluate(() => getComputedStyle(document.body).color)).toBe('rgb(255, 255, 255)');
    const cookies = await page.context().cookies();
    expect(cookies.map(({ name, value }) => `${name}=${value}`)).toEqual(['screen=night']);
    expect(server.posts).toEqual([]);
  });

  test('is not needed: a plain form is sent, and keys that would do nothing are not shown', async () => {
    const page = await start({ javaScript: false });
    expect(await page.getByRole('button', { name: 'Rub out' }).isVisible()).toBe(false);
    await reply(page).fill('9 psi');
    await count(page).click();
    await page.getByRole('heading', { name: 'Step 2' }).waitFor();
    expect(server.posts.map((fields) => fields.get('reply'))).toEqual(['9 psi']);
  });

  test('keeps what was typed and says so plainly while the server is away (UI-10)', async () => {
    const browser = await openBrowser(inject('chromium'));
    try {
      const { page } = await openPage(browser, { origin: site.origin });
      await page.goto('/');
      server.alive = false;
      await reply(page).fill('9 psi 50 %');
      await count(page).click();
      const banner = page.getByRole('alert').filter({ hasText: 'The server is away' });
      await banner.waitFor();
      expect(await reply(page).inputValue()).toBe('9 psi 50 %');
      server.alive = true;
      await page.waitForTimeout(600);
      await count(page).click();
      await page.getByRole('heading', { name: 'Step 2' }).waitFor();
      expect(await banner.count()).toBe(0);
      expect(server.posts.map((fields) => fields.get('requestId'))).toEqual(['request-1']);
    } finally {
      await browser.close();
    }
  });

  test('nothing on the page moves after its first paint (UI-30)', async () => {
    const page = await start();
    expect(await layoutShift(page)).toBe(0);
  });
});
