import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Plot, plot, plotScales } from '../../../views/pictures/plot.ts';
import { attributeOf, readHtml, textOf } from '../html.ts';

const step: Plot = {
  title: 'Step response',
  xAxis: 'Time, s',
  yAxis: 'Travel, %',
  lines: [
    {
      name: 'travel',
      points: [
        { x: 0, y: 50 },
        { x: 1.2, y: 50 },
        { x: 2.2, y: 60 },
        { x: 4, y: 60 },
      ],
    },
  ],
  marks: [{ x: 2.2, y: 60, text: 'here' }],
  uprights: [{ x: 1.8, text: 'T63' }],
  sentence: 'Travel over time.',
};

const value = fc.double({ min: -1e6, max: 1e6, noNaN: true });
const point = fc.record({ x: value, y: value });
const anyPlot: fc.Arbitrary<Plot> = fc
  .record({
    lines: fc.array(fc.record({ name: fc.string(), points: fc.array(point, { maxLength: 20 }) }), {
      maxLength: 4,
    }),
    marks: fc.array(fc.record({ x: value, y: value, text: fc.string() }), { maxLength: 2 }),
    uprights: fc.array(fc.record({ x: value, text: fc.string() }), { maxLength: 4 }),
  })
  .map((parts) => ({ ...step, ...parts }));

describe('a plot', () => {
  test('is a picture with a name, its axes, its lines and what they stand for', () => {
    const { elements, faults } = readHtml(plot(step));
    expect(faults).toEqual([]);
    const [svg] = elements.filter(({ tagName }) => tagName === 'svg');
    expect(svg && attributeOf(svg, 'role')).toBe('img');
    expect(svg && attributeOf(svg, 'aria-label')).toBe('Travel over time.');
    const words = elements.filter(({ tagName }) => tagName === 'text').map(textOf);
    for (const word of ['Step response', 'Time, s', 'Travel, %', 'travel', 'here', 'T63'])
      expect(words).toContain(word);
  });

  test('puts every point, mark and upright inside its frame', () => {
    fc.assert(
      fc.property(anyPlot, (model) => {
        const { x, y } = plotScales(model);
        const points = [...model.lines.flatMap(({ points: those }) => those), ...(model.marks ?? [])];
        for (const each of points) {
          expect(x(each.x)).toBeGreaterThanOrEqual(57.9);
          expect(x(each.x)).toBeLessThanOrEqual(464.1);
          expect(y(each.y)).toBeGreaterThanOrEqual(63.9);
          expect(y(each.y)).toBeLessThanOrEqual(300.1);
        }
        for (const upright of model.uprights ?? []) expect(x(upright.x)).toBeLessThanOrEqual(464.1);
      }),
    );
  });

  test('is never drawn with what is no number, whatever its points', () => {
    fc.assert(
      fc.property(anyPlot, (model) => {
        const drawn = plot({
          ...model,
          lines: model.lines.map((line) => ({ ...line, name: 'line' })),
          marks: [],
        });
        expect(drawn).not.toMatch(/NaN|Infinity|undefined/);
      }),
    );
  });

  test('has an axis also where all that it shows is next to nothing', () => {
    for (const x of [3e-323, 1e-300, 0]) {
      const drawn = plot({ ...step, lines: [], marks: [], uprights: [{ x, text: 'here' }] });
      expect(drawn).not.toMatch(/NaN|Infinity|undefined/);
    }
  });

  test('draws the lines apart without colour, and escapes what it is told (UI-47)', () => {
    const [first] = step.lines;
    const four = ['one', 'two', 'three', '<four>'].map((name) => ({ points: first?.points ?? [], name }));
    const drawn = plot({ ...step, lines: four });
    const styles = [...drawn.matchAll(/<path d="M[^"]*L[^>]*>/g)].map(([path]) =>
      path.replace(/ d="[^"]*"/, ''),
    );
    expect(new Set(styles).size).toBe(4);
    expect(drawn).not.toContain('<four>');
  });

  test('writes no sign between thousands, and a minus that is one', () => {
    const drawn = plot({
      ...step,
      lines: [
        {
          name: 'a',
          points: [
            { x: 0, y: -2000 },
            { x: 1, y: 2000 },
          ],
        },
      ],
      marks: [],
    });
    expect(drawn).toContain('>2000<');
    expect(drawn).toContain('>\u22122000<');
    expect(drawn).not.toContain(',000');
  });
});
