import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { zeroAndSpan } from '../../../procedures/calculations/zero-and-span.ts';
import { between, expectClose, expectRefused } from './support.ts';

const INPUTS = [0, 25, 50, 75, 100];
const curve = (of: (input: number) => number) =>
  INPUTS.map((inputPercent) => ({ inputPercent, outputPercent: of(inputPercent) }));

describe('zero and span of a stroke', () => {
  it('are told apart where the seat holds the low end', () => {
    // By hand: a line three percent low, cut off at the seat. Through its ends it would seem three percent short.
    const { zeroErrorPercent, spanErrorPercent, terminalPercent } = zeroAndSpan({
      points: curve((input) => Math.max(0, input - 3)),
      reverse: false,
      heldPercent: 0.5,
    });
    expectClose(zeroErrorPercent, -3);
    expectClose(spanErrorPercent, 0);
    expectClose(terminalPercent, 0);
  });

  it('of any straight line are its two numbers, rising or falling', () => {
    fc.assert(
      fc.property(between(-4, 4), between(-8, 8), fc.boolean(), (zero, span, reverse) => {
        const slope = (1 + span / 100) * (reverse ? -1 : 1);
        const found = zeroAndSpan({
          points: curve((input) => (reverse ? 100 : 0) + zero + slope * input),
          reverse,
          heldPercent: 0,
        });
        expectClose(found.zeroErrorPercent + 100, zero + 100);
        expectClose(found.spanErrorPercent + 100, span + 100);
        expect(found.terminalPercent).toBeLessThan(1e-9);
      }),
    );
  });

  it('leave to the line what neither of them cures', () => {
    const found = zeroAndSpan({
      points: curve((input) => 1 + 0.98 * input + (input === 50 ? 4 : 0)),
      reverse: false,
      heldPercent: 0,
    });
    expectClose(found.terminalPercent, 4);
    expect(found.pointsUsed).toBe(5);
  });

  it('keep every point where too few are free', () => {
    const found = zeroAndSpan({ points: curve((input) => input), reverse: false, heldPercent: 30 });
    expect(found.pointsUsed).toBe(5);
  });

  it('are not said of two inputs', () => {
    expectRefused(
      () =>
        zeroAndSpan({
          points: [
            { inputPercent: 0, outputPercent: 1 },
            { inputPercent: 100, outputPercent: 99 },
          ],
          reverse: false,
          heldPercent: 0,
        }),
      { code: 'CALC-004', name: 'points' },
    );
  });
});
