import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Json } from '../../../procedures/json.ts';
import { fingerprintOf } from '../../../server/log/chain.ts';
import { streamOf } from '../../../server/log/stream-kind.ts';
import { TELL_NOBODY, type Tell } from '../../../server/long/long-work.ts';
import { aSheet } from '../../builders/sheets.ts';
import { type AnApp, anApp, type Browser } from '../an-app.ts';

const VALVES = 230;
const tagOf = (at: number): string => `FV-${1000 + at}`;

let app: AnApp;
let browser: Browser;

async function save(
  kind: string,
  { tag, inputs }: { readonly tag: string; readonly inputs: Json },
): Promise<void> {
  const stream = streamOf('valve', tag);
  await app.services.log.act({
    requestId: randomUUID(),
    fingerprint: fingerprintOf({ stream, kind }),
    person: null,
    screen: 'test',
    streams: [stream],
    decide: () => ({ entries: [{ stream, kind, inputs, outcome: {}, effects: {} }], answer: {} }),
  });
}

async function saveSheet(tag: string): Promise<void> {
  // A sheet is plain data.
  const sheet = aSheet({ tag }) as unknown as Json;
  await save('valve-sheet-saved', { tag, inputs: { sheet, typed: {} } });
}

beforeAll(async () => {
  app = await anApp({ people: true });
  ({ browser } = await app.signedIn('engineer'));
  await Promise.all(Array.from({ length: VALVES }, (_, at) => saveSheet(tagOf(at))));
});
afterAll(() => app.close());

/** Stops a reading before its so many-th valve. */
const stopBefore =
  (valve: number): Tell =>
  async ({ done }) => {
    if (done === valve) throw new Error('somebody stopped it');
  };

describe('The readings of a plant', () => {
  test('go on from where they were stopped, and are then read again only where something was written', async () => {
    const { readings } = app.services.lists;
    expect(await readings.wanting()).toBe(VALVES);
    await expect(readings.valves(stopBefore(30))).rejects.toThrow('somebody stopped it');
    expect(await readings.wanting()).toBe(VALVES - 30);
    const [one, other] = await Promise.all([readings.valves(TELL_NOBODY), readings.valves(TELL_NOBODY)]);
    expect([one.length, other.length]).toEqual([VALVES, VALVES]);
    expect(await readings.wanting()).toBe(0);
    await saveSheet(tagOf(VALVES));
    await save('valve-retired', { tag: tagOf(3), inputs: {} });
    expect(await readings.wanting()).toBe(2);
    const tags = (await readings.valves(TELL_NOBODY)).map(({ tag }) => tag);
    expect(tags).toHaveLength(VALVES);
    expect([tags.includes(tagOf(VALVES)), tags.includes(tagOf(3))]).toEqual([true, false]);
  });

  test('of many valves show how far they are, once for each who looks, and then the plant', async () => {
    const again = await anApp({ store: app.services.store, people: false });
    const asked = { as: browser, headers: { accept: 'text/html' } };
    const [one, other] = await Promise.all([again.get('/history', asked), again.get('/history', asked)]);
    for (const { status, headers } of [one, other]) {
      // A quick machine has read them all before a page would show how far it is.
      if (status === 303) expect(headers.get('location')).toMatch(/^\/long-work\//);
      else expect(status).toBe(200);
    }
    expect(one.headers.get('location')).toBe(other.headers.get('location'));
    const told = await again.get('/history', { as: browser, headers: { accept: 'application/json' } });
    expect(await told.json()).toMatchObject({ valves: VALVES, checked: 0 });
  });
});
