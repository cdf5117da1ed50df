import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { textOf } from '../pages/texts.ts';
import { type AtCard, atCard } from './at-card.ts';

let at: AtCard;
beforeAll(async () => {
  at = await atCard('rigShutIn');
});
afterAll(() => at?.close());

async function page(): Promise<string> {
  return textOf(await (await at.app.get(`/jobs/${at.job.id}`, { as: at.technician.browser })).text());
}

describe('A wait', () => {
  test('says how many seconds are left, and of one that it is left', async () => {
    // The card waits 20 s, and the clock stands while nobody moves it.
    at.app.wait(18_000);
    expect(await page()).toContain('2 seconds are left of the wait.');
    at.app.wait(1000);
    expect(await page()).toContain('1 second is left of the wait.');
  });

  test('that is ended a second too early is refused with the one second that is left', async () => {
    const { problem } = await at.sendJson(await at.cardFields('answer'));
    expect(problem.what).toBe('The wait is not over: 1 s is left.');
  });
});
