import { afterAll, beforeAll, expect, test } from 'vitest';
import { openSiteJob } from '../builders/site-jobs.ts';
import { type AnApp, anApp, type Browser } from '../server/an-app.ts';
import { axeViolations, sticksOut } from './harness/axe.ts';
import { PHONE } from './harness/browser.ts';
import { inBrowser } from './harness/in-browser.ts';
import { type Listening, listen } from './harness/listen.ts';

let app: AnApp;
let served: Listening;
let supervisor: Browser;
const paths = { waiting: '/shift', done: '', open: '' };

/** The app behind a port of this machine, asked as the supervisor's own browser would. */
function serve(): Promise<Listening> {
  return listen(() => (request) => {
    const { pathname, search } = new URL(request.url);
    return app.app.request(`http://127.0.0.1:8430${pathname}${search}`, {
      headers: {
        host: '127.0.0.1:8430',
        cookie: supervisor.header,
        accept: request.headers.get('accept') ?? '',
      },
    });
  });
}

beforeAll(async () => {
  app = await anApp({ people: true });
  const who = {
    technician: (await app.signedIn('technician')).person,
    supervisor: (await app.signedIn('supervisor')).person,
  };
  const done = await openSiteJob(app, who);
  await done.playTo('done');
  const open = await openSiteJob(app, who);
  await open.playTo('holdWork');
  paths.done = `/jobs/${done.id}/record`;
  paths.open = `/jobs/${open.id}/record`;
  supervisor = (await app.signedIn('supervisor')).browser;
  served = await serve();
});
afterAll(async () => {
  await served?.close();
  await app?.close();
});

/** How many pages a printed file has. */
function pagesOf(pdf: Buffer): number {
  return pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
}

inBrowser('shift list and record', (open) => {
  test.each(['waiting', 'done', 'open'] as const)(
    'keep the accessibility rules and never scroll sideways: %s',
    async (which) => {
      for (const viewport of [undefined, PHONE]) {
        const { page } = await open({ origin: served.origin, ...(viewport && { viewport }) });
        await page.goto(paths[which]);
        expect(await sticksOut(page)).toEqual([]);
        expect(await axeViolations(page)).toEqual([]);
      }
    },
  );

  test.each(['done', 'open'] as const)(
    'print a record that is %s on as many pages of A4 and Letter as it says sheets',
    async (which) => {
      const { page } = await open({ origin: served.origin });
      await page.goto(paths[which]);
      const sheets = await page.locator('.record__sheet').count();
      expect(sheets).toBeGreaterThan(3);
      for (const format of ['A4', 'Letter'] as const)
        expect([format, pagesOf(await page.pdf({ format }))]).toEqual([format, sheets]);
    },
  );
});
