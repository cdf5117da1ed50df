/**
 * Every value that a commissioning procedure judges or expects, beside what the page of its calculation gives for the
 * same readings, asked as JSON of a whole server; and a case that somebody else has published or worked out where one
 * fits. Cards and pages share their arithmetic: what is seen here is that a card puts the right number in the right place.
 */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type AnApp, anApp, type Browser } from '../an-app.ts';
import { AIR } from './judged/air.ts';
import type { Texts } from './judged/row.ts';
import { SEATS } from './judged/seats.ts';
import { SPRING } from './judged/springs.ts';
import { STROKES } from './judged/strokes.ts';

let app: AnApp;
let as: Browser;

beforeAll(async () => {
  app = await anApp({ people: true });
  as = (await app.signedIn('technician')).browser;
});
afterAll(() => app?.close());

async function page(id: string, texts: Texts): Promise<Readonly<Record<string, unknown>>> {
  const path = `/calculations/${id}?${new URLSearchParams(texts)}`;
  const response = await app.get(path, { as, headers: { accept: 'application/json' } });
  const answer = (await response.json()) as { readonly results?: Readonly<Record<string, unknown>> | null };
  if (response.status !== 200 || !answer.results) throw new Error(`${path}: ${JSON.stringify(answer)}`);
  return answer.results;
}

describe.each([
  ['a stroke, a signal, a step', STROKES],
  ['air on an actuator', AIR],
  ['a spring', SPRING],
  ['a seat', SEATS],
] as const)('What a card judges of %s', (_, rows) => {
  test.each(rows)(
    'is what the page of its calculation says: $what',
    async ({ job, card, page: of, known }) => {
      const played = job();
      const shown = card(played);
      const [id, texts, result] = of;
      const worked = Number((await page(id, texts(played)))[result]);
      const near = Math.max(Math.abs(worked), 1e-12);
      // A figure that a card says in words has the digits of its unit.
      const give = known !== undefined && known[2] < 2 ? Math.max(0.01 * near, 0.06) : 1e-6 * near;
      expect(Math.abs(shown - worked), `${shown} on the card, ${worked} on the page`).toBeLessThanOrEqual(
        give,
      );
      if (known !== undefined) expect(worked, known[1]).toBeCloseTo(known[0], known[2]);
    },
  );
});
