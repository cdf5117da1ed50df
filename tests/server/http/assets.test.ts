import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readAssets } from '../../../server/http/assets.ts';
import { ASSET_FILES } from '../../../views/assets.ts';
import { type AnApp, anApp, project } from '../an-app.ts';

const assets = readAssets(project);
let app: AnApp;
beforeAll(async () => {
  app = await anApp({ routes: [] });
});
afterAll(() => app.close());

describe('style, fonts and scripts', () => {
  test('are kept by browsers for good, each with its type', async () => {
    for (const [name, { type }] of Object.entries(ASSET_FILES)) {
      const response = await app.get(assets.address(name));
      expect([response.status, response.headers.get('content-type')], name).toEqual([200, type]);
      expect(response.headers.get('cache-control')).toBe('public, max-age=31536000, immutable');
      expect(response.headers.get('x-content-type-options')).toBe('nosniff');
      expect((await response.arrayBuffer()).byteLength).toBeGreaterThan(100);
    }
  });

  test('are found by the style sheet beside itself', async () => {
    const address = assets.address('style.css');
    const style = await (await app.get(address)).text();
    const fonts = Array.from(
      style.matchAll(/url\("([^"]+)"\)/g),
      ([, url]) => new URL(url ?? '', `http://x${address}`),
    );
    expect(fonts.map(({ pathname }) => pathname)).toEqual([
      assets.address('fonts/atkinson-400.woff2'),
      assets.address('fonts/atkinson-600.woff2'),
    ]);
  });

  test.each([
    '/assets/0000000000000000/style.css',
    `${assets.address('style.css')}/x`,
    assets.address('style.css').replace('style.css', '../../package.json'),
    assets.address('style.css').replace('style.css', '%2e%2e%2fpackage.json'),
    assets.address('style.css').replace('style.css', 'constructor'),
  ])('are nothing else: %s', async (path) => {
    expect((await app.get(path)).status).toBe(404);
  });

  test('are the ones that pages name', async () => {
    const page = await (await app.get('/')).text();
    const named = Array.from(page.matchAll(/(?:href|src)="(\/assets\/[^"]+)"/g), ([, path]) => path ?? '');
    expect(named).toHaveLength(7);
    for (const path of named) expect((await app.get(path)).status).toBe(200);
  });
});
