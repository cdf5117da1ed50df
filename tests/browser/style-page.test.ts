import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { axeViolations, smallTargets, sticksOut, widenText } from './harness/axe.ts';
import { DESK, NARROWEST, PHONE } from './harness/browser.ts';
import { inBrowser } from './harness/in-browser.ts';
import type { Listening } from './harness/listen.ts';
import { startStyleServer } from './harness/style-server.ts';

inBrowser('every part in every state', (open) => {
  let server: Listening;
  beforeAll(async () => {
    server = await startStyleServer();
  });
  afterAll(() => server.close());

  describe.each([
    ['at the desk', DESK],
    ['on a phone', PHONE],
  ])('%s', (_, viewport) => {
    test.each(['light', 'dark'] as const)('can be used by everybody, %s', async (colorScheme) => {
      const { page } = await open({ origin: server.origin, viewport, colorScheme });
      await page.goto('/');
      expect(await axeViolations(page)).toEqual([]);
    });
  });

  test.each([
    ['on a phone', PHONE],
    ['on the narrowest screen', NARROWEST],
  ])('fits without scrolling sideways %s', async (_, viewport) => {
    const { page } = await open({ origin: server.origin, viewport });
    await page.goto('/');
    expect(await sticksOut(page)).toEqual([]);
    await widenText(page);
    expect(await sticksOut(page)).toEqual([]);
  });

  test('has keys and buttons for gloved hands', async () => {
    const { page } = await open({ origin: server.origin, viewport: PHONE });
    await page.goto('/');
    expect(await smallTargets(page)).toEqual([]);
  });
});
