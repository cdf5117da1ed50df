import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  CURVE,
  type CurvePoint,
  curveScales,
  footOf,
  type StrokeCurve,
  strokeCurve,
} from '../../../views/pictures/stroke-curve.ts';
import { attributeOf, readHtml, textOf } from '../html.ts';

const words = {
  signalAxis: 'signal, psi',
  travelAxis: 'travel, %',
  band: 'band, 5 % each way',
  goingUp: 'going up',
  comingDown: 'coming down',
};

function points(pairs: readonly (readonly [number, number])[]): CurvePoint[] {
  return pairs.map(([signal, travel]) => ({ signal, travel }));
}

const asFound: StrokeCurve = {
  title: 'Stroke, as found',
  goingUp: points([
    [3, 0],
    [6, 18.3],
    [9, 43.1],
    [12, 67.8],
    [15, 93.2],
  ]),
  comingDown: points([
    [15, 93.2],
    [12, 75.2],
  ]),
  uncounted: { signal: 9, travel: 50, direction: 'down', text: '9 psi, 50 %' },
  wanted: [
    { signal: 3, travel: 0 },
    { signal: 15, travel: 100 },
  ],
  band: 5,
  signalTicks: [3, 6, 9, 12, 15],
  travelTicks: [0, 25, 50, 75, 100],
  friction: { travel: 72, fromSignal: 12.5, toSignal: 11.62, value: '0.88 psi', word: 'apart' },
  words,
  sentence: 'Travel over signal, FV-214 as found',
};

const anyCurve: fc.Arbitrary<StrokeCurve> = fc
  .record({
    low: fc.double({ min: -100, max: 200, noNaN: true }),
    span: fc.double({ min: 0.5, max: 500, noNaN: true }),
    rising: fc.boolean(),
    offs: fc.array(fc.double({ min: -30, max: 30, noNaN: true }), { minLength: 1, maxLength: 11 }),
    band: fc.double({ min: 0.1, max: 20, noNaN: true }),
    form: fc.constantFrom('card' as const, 'record' as const),
  })
  .map(({ low, span, rising, offs, band, form }) => {
    const at = (fraction: number, off: number) => ({
      signal: low + span * fraction,
      travel: (rising ? fraction : 1 - fraction) * 100 + off,
    });
    const along = offs.map((off, index) => at(offs.length === 1 ? 0.5 : index / (offs.length - 1), off));
    const { uncounted: _uncounted, friction: _friction, ...rest } = asFound;
    return {
      ...rest,
      goingUp: along,
      comingDown: [...along].reverse(),
      wanted: [at(0, 0), at(1, 0)] as const,
      band,
      form,
      signalTicks: [low, low + span / 2, low + span],
    };
  });

function texts(svg: string): string[] {
  return readHtml(svg)
    .elements.filter(({ tagName }) => tagName === 'text')
    .map(textOf);
}

describe('the stroke curve', () => {
  test('is sound HTML, without style attributes and without a number that is not a number', () => {
    fc.assert(
      fc.property(anyCurve, (curve) => {
        const svg = strokeCurve(curve);
        expect(readHtml(svg).faults).toEqual([]);
        expect(svg).not.toMatch(/NaN|undefined|Infinity/);
      }),
    );
  });

  test('puts every reading inside the plot, further right for more signal and higher for more travel', () => {
    fc.assert(
      fc.property(anyCurve, (curve) => {
        const { x, y } = curveScales(curve);
        for (const point of [...curve.goingUp, ...curve.comingDown]) {
          expect(x(point.signal)).toBeGreaterThanOrEqual(CURVE.left - 1e-6);
          expect(x(point.signal)).toBeLessThanOrEqual(CURVE.right + 1e-6);
          expect(y(point.travel)).toBeGreaterThanOrEqual(CURVE.top - 1e-6);
          expect(y(point.travel)).toBeLessThanOrEqual(footOf(curve) + 1e-6);
        }
        expect(x(curve.wanted[1].signal)).toBeGreaterThan(x(curve.wanted[0].signal));
        expect(y(100)).toBeLessThan(y(0));
      }),
    );
  });

  test('has a marker for each reading, filled going up and open coming down (UI-50)', () => {
    fc.assert(
      fc.property(anyCurve, (curve) => {
        const { elements } = readHtml(strokeCurve(curve));
        const filled = elements.filter((element) =>
          / -?[\d.]+l6 10h-12z$/.test(attributeOf(element, 'd') ?? ''),
        );
        const open = elements.filter((element) => /l6.5 -11h-13z$/.test(attributeOf(element, 'd') ?? ''));
        expect(filled).toHaveLength(curve.goingUp.length);
        expect(open).toHaveLength(curve.comingDown.length);
        expect(filled.every((element) => attributeOf(element, 'class') === 'ink-fill')).toBe(true);
        expect(open.every((element) => attributeOf(element, 'class')?.includes('ink-line'))).toBe(true);
      }),
    );
  });

  test('tells the two directions apart without colour: one solid, one dashed', () => {
    const { elements } = readHtml(strokeCurve(asFound));
    const curves = elements.filter((element) => attributeOf(element, 'stroke-width') === '2.4');
    expect(curves.map((element) => attributeOf(element, 'stroke-dasharray'))).toEqual([undefined, '8 4']);
  });

  test('names both lines, the band, the axes with their units, the friction and the uncounted point', () => {
    const said = texts(strokeCurve(asFound));
    for (const text of [...Object.values(words), '0.88 psi', 'apart', '9 psi, 50 %', 'Stroke, as found']) {
      expect(said).toContain(text);
    }
  });

  test('rings the reading that does not count yet with dots, and only that one', () => {
    const rings = (curve: StrokeCurve) =>
      readHtml(strokeCurve(curve)).elements.filter(({ tagName }) => tagName === 'circle');
    const { uncounted: _uncounted, ...counted } = asFound;
    expect(rings(asFound).map((ring) => attributeOf(ring, 'stroke-dasharray'))).toEqual(['2 3']);
    expect(rings(counted)).toEqual([]);
  });

  test('draws friction as wide as the signals that it lies between', () => {
    const { x } = curveScales(asFound);
    const dimension = readHtml(strokeCurve(asFound)).elements.find(
      (element) => attributeOf(element, 'stroke-width') === '1.4' && attributeOf(element, 'd')?.includes('H'),
    );
    const [, from, to] =
      /^M([\d.]+) [\d.]+H([\d.]+)/.exec((dimension && attributeOf(dimension, 'd')) ?? '') ?? [];
    expect(Math.abs(Number(from) - Number(to))).toBeCloseTo(Math.abs(x(12.5) - x(11.62)), 1);
  });

  test('writes the name of the band between two lines of the grid, not over one', () => {
    for (const form of ['card', 'record'] as const) {
      const curve = { ...asFound, form };
      const { elements } = readHtml(strokeCurve(curve));
      const name = elements.find((one) => one.tagName === 'text' && textOf(one) === words.band);
      const foot = Number((name && attributeOf(name, 'y')) ?? 0);
      const { y } = curveScales(curve);
      // Capitals of 14 px and the halo around them.
      for (const travel of curve.travelTicks)
        expect(y(travel) < foot - 14 || y(travel) > foot + 4, form).toBe(true);
    }
  });

  test('never draws the band below the foot of the plot', () => {
    fc.assert(
      fc.property(anyCurve, (curve) => {
        const { y } = curveScales(curve);
        const band = readHtml(strokeCurve(curve)).elements.find(
          (element) => attributeOf(element, 'class') === 'tint-fill',
        );
        const heights = [...((band && attributeOf(band, 'd')) ?? '').matchAll(/,(-?[\d.]+)/g)].map((match) =>
          Number(match[1]),
        );
        expect(heights.length).toBeGreaterThanOrEqual(4);
        expect(Math.max(...heights)).toBeLessThanOrEqual(y(0) + 0.01);
      }),
    );
  });
});
