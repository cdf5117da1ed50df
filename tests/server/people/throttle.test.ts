import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { afterFailure, heldForS, type Throttle, TRIES_MAX, waitS } from '../../../server/people/throttle.ts';

const at = (s: number) => new Date(Date.UTC(2024, 0, 15, 8) + s * 1000);

describe('wrong tries in a row', () => {
  test('are free four times, then wait 30 s, doubling, and a day from the tenth on (WS-09)', () => {
    const waits = Array.from({ length: 12 }, (_, index) => waitS(index));
    expect(waits).toEqual([0, 0, 0, 0, 0, 30, 60, 120, 240, 480, 86_400, 86_400]);
  });

  test('hold for exactly so long after the last one', () => {
    let throttle: Throttle | undefined;
    for (let failure = 1; failure <= 5; failure += 1) throttle = afterFailure(throttle, at(failure));
    expect(heldForS(throttle, at(5))).toBe(30);
    expect(heldForS(throttle, at(34))).toBe(1);
    expect(heldForS(throttle, at(35))).toBe(0);
  });

  test('let a guesser have at most ten tries in a day, at whatever pace', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 7200 }), { maxLength: 200 }), (pauses) => {
        let now = 0;
        let throttle: Throttle | undefined;
        const triedAt: number[] = [];
        for (const pause of pauses) {
          now += pause;
          if (heldForS(throttle, at(now)) > 0) continue;
          throttle = afterFailure(throttle, at(now));
          triedAt.push(now);
        }
        const inFirst = (s: number) => triedAt.filter((time) => time - (triedAt[0] ?? 0) < s).length;
        expect(inFirst(86_400)).toBeLessThanOrEqual(TRIES_MAX);
      }),
    );
  });
});
