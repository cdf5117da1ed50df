import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { linearity } from '../../../procedures/calculations/linearity.ts';
import { between, expectClose, expectRefused } from './support.ts';

const anyCurve = fc
  .array(between(-5, 5), { minLength: 3, maxLength: 12 })
  .map((bends) => bends.map((bend, at) => ({ inputPercent: at * 8, outputPercent: at * 8 + bend })));

describe('the linearity of a curve', () => {
  it('is none on a straight line, whatever its slope', () => {
    const line = [0, 30, 100].map((inputPercent) => ({
      inputPercent,
      outputPercent: 3 - 0.7 * inputPercent,
    }));
    const { independentPercent, terminalPercent, zeroBasedPercent } = linearity(line);
    for (const deviation of [independentPercent, terminalPercent, zeroBasedPercent])
      expect(deviation).toBeLessThan(1e-12);
  });

  it('is strictest against the line through the ends, and mildest against the free one', () => {
    fc.assert(
      fc.property(anyCurve, (curve) => {
        const { independentPercent, terminalPercent, zeroBasedPercent } = linearity(curve);
        expect(independentPercent).toBeLessThanOrEqual(zeroBasedPercent + 1e-9);
        expect(zeroBasedPercent).toBeLessThanOrEqual(terminalPercent + 1e-9);
      }),
    );
  });

  it('is a true minimum: no other line does better', () => {
    fc.assert(
      fc.property(anyCurve, between(-1, 3), between(-10, 10), (curve, slope, offset) => {
        const worst = Math.max(
          ...curve.map((p) => Math.abs(p.outputPercent - offset - slope * p.inputPercent)),
        );
        expect(linearity(curve).independentPercent).toBeLessThanOrEqual(worst + 1e-9);
        const first = curve[0]?.outputPercent ?? 0;
        const fromZero = Math.max(
          ...curve.map((p) => Math.abs(p.outputPercent - first - slope * p.inputPercent)),
        );
        expect(linearity(curve).zeroBasedPercent).toBeLessThanOrEqual(fromZero + 1e-9);
      }),
    );
  });

  it('does not change with the order of the points, nor with a tilt of the whole curve', () => {
    fc.assert(
      fc.property(anyCurve, between(-2, 2), (curve, tilt) => {
        const before = linearity(curve);
        const after = linearity(
          curve.toReversed().map((p) => ({ ...p, outputPercent: p.outputPercent + tilt * p.inputPercent })),
        );
        expectClose(after.independentPercent + 1, before.independentPercent + 1);
        expectClose(after.terminalPercent + 1, before.terminalPercent + 1);
      }),
    );
  });

  it('is not said of two inputs, or of more points than can be searched', () => {
    const two = [0, 50, 50].map((inputPercent, at) => ({ inputPercent, outputPercent: at }));
    expectRefused(() => linearity(two), { code: 'CALC-004', name: 'points' });
    const many = Array.from({ length: 401 }, (_, at) => ({ inputPercent: at, outputPercent: at }));
    expectRefused(() => linearity(many), { code: 'CALC-004', name: 'points' });
  });
});
