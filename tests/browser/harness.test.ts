import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { axeViolations, sticksOut } from './harness/axe.ts';
import { NARROWEST, openBrowser, openPage } from './harness/browser.ts';
import { findChromium } from './harness/chromium.ts';
import { inBrowser } from './harness/in-browser.ts';
import { brokenWords, faintTexts, movingParts, smallLetters } from './harness/letters.ts';
import { type Listening, listen } from './harness/listen.ts';
import { coloursOfPdf } from './harness/pdf-colours.ts';

describe('the browser of the tests', () => {
  const on = { env: {}, platform: 'linux', arch: 'x64' } as const;

  test('is the one that CHROMIUM names, and a wrong name is an error', async () => {
    const named = await findChromium({ ...on, env: { CHROMIUM: process.execPath } });
    expect(named).toEqual({ executablePath: process.execPath, environment: {} });
    await expect(findChromium({ ...on, env: { CHROMIUM: 'nowhere' } })).rejects.toThrow('not there');
  });

  test('comes with the tests on Linux x64, and its absence elsewhere is said in words', async () => {
    for (const machine of [{ platform: 'win32' }, { platform: 'darwin' }, { arch: 'arm64' }] as const) {
      expect(await findChromium({ ...on, ...machine })).toHaveProperty(
        'missing',
        expect.stringContaining('CHROMIUM'),
      );
    }
    if (process.platform === 'linux' && process.arch === 'x64') {
      expect(await findChromium(on)).toHaveProperty('executablePath');
    }
  });
});

/** A page with one fault of each kind that the watch is for. */
const BAD_PAGE = `<!doctype html><html lang="en"><head><title>Bad</title><link rel="icon" href="data:,">
<script src="/script.js"></script></head><body><main><h1>Bad</h1><button></button>
<script>document.title = 'ran'</script><img alt="" src="/missing.png">
<div id="wide">wide</div></main></body></html>`;
const BAD_SCRIPT = "document.getElementById('nowhere').id; ";
const POLICY = "default-src 'self'; img-src 'self' data:";

inBrowser('the watch over a page', (open) => {
  let server: Listening;
  beforeAll(async () => {
    server = await listen(() => (request) => {
      const { pathname } = new URL(request.url);
      if (pathname === '/script.js') return answer(BAD_SCRIPT, 'text/javascript');
      if (pathname === '/refused') return answer('<!doctype html><title>No</title>', 'text/html', 422);
      if (pathname === '/broken') return answer('<!doctype html><title>No</title>', 'text/html', 500);
      if (pathname === '/bad') return answer(BAD_PAGE, 'text/html');
      if (pathname === '/wide') return answer(BAD_PAGE.replace('id="wide"', 'class="w"'), 'text/html');
      return new Response(null, { status: 404 });
    });
  });
  afterAll(() => server.close());

  /** Opened outside the chapter's own pages, which fail on any fault. */
  async function faultsAt(path: string, wanted = 0): Promise<readonly string[]> {
    const browser = await openBrowser(inject('chromium'));
    try {
      const { page, watch } = await openPage(browser, { origin: server.origin });
      await page.goto(path);
      // What the console says may be told after the page has come.
      await expect.poll(() => watch.faults().length).toBeGreaterThanOrEqual(wanted);
      return watch.faults();
    } finally {
      await browser.close();
    }
  }

  test('writes down errors of scripts, breaches of the policy and missing files', async () => {
    const faults = (await faultsAt('/bad', 3)).join('\n');
    expect(faults).toContain('script: Cannot read properties of null');
    expect(faults).toContain('policy script-src-elem breached by inline');
    expect(faults).toContain('404 for');
  });

  test('takes a refusal for an ordinary answer, and a broken page for none', async () => {
    expect((await faultsAt('/refused')).filter((fault) => !fault.includes('favicon'))).toEqual([]);
    expect((await faultsAt('/broken')).join()).toContain('500 for');
  });

  test('finds with axe what a person with a screen reader would miss', async () => {
    const browser = await openBrowser(inject('chromium'));
    try {
      const { page } = await openPage(browser, { origin: server.origin, viewport: NARROWEST });
      await page.goto('/bad');
      expect((await axeViolations(page)).join()).toContain('button-name');
      expect(await sticksOut(page)).toEqual([]);
      await page.evaluate(() => {
        const wide = document.getElementById('wide');
        if (wide) wide.style.width = '500px';
      });
      expect((await sticksOut(page)).join()).toContain('id="wide"');
    } finally {
      await browser.close();
    }
  });

  test('finds words that break, texts that are faint or small, and what moves', async () => {
    const { page } = await open({ origin: server.origin });
    await page.setContent(
      '<!doctype html><html lang="en"><title>Bad</title><main><h1>Bad</h1><p>Adjustment of the plug</p></main>',
    );
    const set = (name: string, value: string) =>
      page.evaluate(
        ([of, to]) => document.querySelector('p')?.style.setProperty(of ?? '', to ?? ''),
        [name, value],
      );
    const seen = async () =>
      [
        await brokenWords(page),
        await faintTexts(page, { ratio: 4.5, large: 3 }),
        await smallLetters(page, { p: 16 }),
        await movingParts(page),
      ].map(({ length }) => length);
    expect(await seen()).toEqual([0, 0, 0, 0]);
    for (const [name, value] of [
      ['width', '3em'],
      ['overflow-wrap', 'anywhere'],
      ['color', 'rgb(150, 150, 150)'],
      ['font-size', '15px'],
      ['transition', 'opacity 1s'],
    ] as const)
      await set(name, value);
    expect(await seen()).toEqual([1, 1, 1, 1]);
    expect(coloursOfPdf(await page.pdf())).toEqual([]);
    await set('color', 'rgb(200, 0, 0)');
    expect(coloursOfPdf(await page.pdf()).length).toBe(1);
  });

  test('finds nothing on a page that is right', async () => {
    const { page, watch } = await open({ origin: server.origin });
    await page.setContent('<!doctype html><html lang="en"><title>Good</title><main><h1>Good</h1></main>');
    expect(await axeViolations(page)).toEqual([]);
    expect(watch.faults()).toEqual([]);
  });
});

function answer(body: string, type: string, status = 200): Response {
  return new Response(body, { status, headers: { 'content-type': type, 'content-security-policy': POLICY } });
}
