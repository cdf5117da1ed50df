import { brotliDecompressSync, gunzipSync, gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { z } from 'zod';
import { route } from '../../../server/http/route.ts';
import { ASSET_FILES } from '../../../views/assets.ts';
import { type AnApp, anApp } from '../an-app.ts';

const LINES = 'data: one and the same\n\n'.repeat(200);

function stream(contentType: string) {
  const body = new ReadableStream({
    start: (controller) => {
      controller.enqueue(new TextEncoder().encode(LINES));
      controller.close();
    },
  });
  return { contentType, body };
}

const answer = z.object({});
const news = route({
  method: 'GET',
  path: '/news',
  name: 'showNews',
  summary: 'x',
  roles: 'anyone',
  answer,
  handle: () => ({ data: {}, raw: stream('text/event-stream') }),
});
const exported = route({
  method: 'GET',
  path: '/exported',
  name: 'showExport',
  summary: 'x',
  roles: 'anyone',
  answer,
  handle: () => ({ data: {}, raw: stream('text/plain; charset=utf-8') }),
});

let app: AnApp;
beforeAll(async () => {
  app = await anApp({ people: true, routes: [news, exported] });
});
afterAll(() => app.close());

const asked = (path: string, coding: string) => app.get(path, { headers: { 'accept-encoding': coding } });
const bytesOf = async (response: Response) => Buffer.from(await response.arrayBuffer());

/** Each form has a request id of its own. */
const withoutIds = (page: string) => page.replace(/request-\d+/g, '');

describe('an answer to a browser that takes gzip', () => {
  test('is the same page in fewer bytes, and caches are told that there are two', async () => {
    const plain = await app.get('/help');
    const packed = await asked('/help', 'gzip, deflate');
    expect([plain.headers.get('content-encoding'), packed.headers.get('content-encoding')]).toEqual([
      null,
      'gzip',
    ]);
    for (const each of [plain, packed]) expect(each.headers.get('vary')).toContain('Accept-Encoding');
    const [whole, bytes] = [await plain.text(), await bytesOf(packed)];
    expect(withoutIds(gunzipSync(bytes).toString('utf8'))).toBe(withoutIds(whole));
    expect(bytes.length).toBeLessThan(whole.length / 2);
    expect(packed.headers.get('content-length')).toBe(String(bytes.length));
    expect(packed.headers.get('content-security-policy')).toBe(plain.headers.get('content-security-policy'));
  });

  test('takes fewer bytes still where brotli is taken, and is the same page', async () => {
    const plain = await (await app.get('/help')).text();
    const small = await asked('/help', 'gzip, br');
    const bytes = await bytesOf(small);
    expect(small.headers.get('content-encoding')).toBe('br');
    expect(withoutIds(brotliDecompressSync(bytes).toString('utf8'))).toBe(withoutIds(plain));
    expect(bytes.length).toBeLessThan((await bytesOf(await asked('/help', 'gzip'))).length);
  });

  test('keeps its status and its cookies', async () => {
    const wrong = await app.post(
      '/sign-in',
      { who: 't1', pin: '1' },
      { headers: { 'accept-encoding': 'gzip' } },
    );
    expect([wrong.status, wrong.headers.get('content-encoding')]).toEqual([403, 'gzip']);
    expect(gunzipSync(await bytesOf(wrong)).toString()).toContain('Name and PIN do not belong together.');
    const choice = await app.post('/screen', { screen: 'night' }, { headers: { 'accept-encoding': 'gzip' } });
    expect(choice.headers.getSetCookie()).toHaveLength(1);
  });

  test('stays as it is where it is short, or where the browser does not want it', async () => {
    expect((await asked('/alive', 'gzip')).headers.get('content-encoding')).toBeNull();
    for (const coding of ['', 'identity', 'gzip;q=0', 'deflate'])
      expect((await asked('/help', coding)).headers.get('content-encoding'), coding).toBeNull();
  });

  test.each(['/news', '/exported'])('is not held back while it is being made: %s', async (path) => {
    const response = await asked(path, 'gzip, br');
    expect(response.headers.get('content-encoding')).toBeNull();
    expect(await response.text()).toBe(LINES);
  });
});

describe('the files of a page', () => {
  const files = ['style.css', 'htmx.js', 'yokeside.js', 'icon.svg', 'fonts/atkinson-400.woff2'];

  async function addressOf(name: string): Promise<string> {
    const page = await (await app.get('/help')).text();
    const address = new RegExp(`/assets/[0-9a-f]{16}/${name}`).exec(page)?.[0];
    if (address === undefined) throw new Error(`The page does not load ${name}.`);
    return address;
  }

  test('are sent in the smallest form that the browser takes, fonts as they are', async () => {
    for (const name of files) {
      const address = await addressOf(name);
      const plain = await bytesOf(await asked(address, 'identity'));
      const small = await asked(address, 'gzip, br');
      const bytes = await bytesOf(small);
      const coding = small.headers.get('content-encoding');
      expect(coding, name).toBe(/woff2|svg/.test(name) ? null : 'br');
      expect(coding === 'br' ? brotliDecompressSync(bytes) : bytes, name).toEqual(plain);
      expect(small.headers.get('cache-control')).toContain('immutable');
      // The second time it comes ready made.
      expect(await bytesOf(await asked(address, 'gzip, br'))).toEqual(bytes);
    }
  });

  test('of a first page are at most 60 kB on the wire, with the page itself and without the fonts', async () => {
    const page = await bytesOf(await asked('/sign-in', 'gzip'));
    let bytes = page.length;
    for (const name of Object.keys(ASSET_FILES).filter((one) =>
      /^(style\.css|htmx\.js|yokeside\.js|icon\.svg)$/.test(one),
    ))
      bytes += (await bytesOf(await asked(await addressOf(name), 'gzip'))).length;
    expect(bytes).toBeLessThan(60_000);
    expect(gzipSync(page).length).toBeGreaterThan(500);
  });
});
