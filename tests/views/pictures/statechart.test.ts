import { describe, expect, test } from 'vitest';
import { statechart } from '../../../views/pictures/statechart.ts';
import { attributeOf, readHtml } from '../html.ts';

const box = (number: number, ways: readonly number[], kind: 'step' | 'hold' | 'end' = 'step') => ({
  number,
  title: `Step ${number} with a title that is long enough to be wrapped onto a second line`,
  kind,
  ways: ways.map((to) => ({ label: 'yes', to })),
  makeSafe: kind === 'end' ? null : 9,
});

describe('the chart of a phase', () => {
  const drawn = statechart({
    boxes: [box(1, [2, 4]), box(2, [3, 1], 'hold'), box(3, [1, 20]), box(4, [], 'end')],
    sentence: 'Four steps',
  });

  test('is a picture with its sentence, and no fault', () => {
    const { faults, elements } = readHtml(drawn);
    expect(faults).toEqual([]);
    const svg = elements.find(({ tagName }) => tagName === 'svg');
    if (svg === undefined) throw new Error('no picture');
    expect(attributeOf(svg, 'aria-label')).toBe('Four steps');
    expect(drawn).not.toMatch(/NaN|undefined/);
  });

  test('has an arrow down to the next box, a lane for every other way in the phase, and none out of it', () => {
    const down = drawn.match(/M21 [\d.]+V/g) ?? [];
    const lanes = drawn.match(/M471 [\d.]+H/g) ?? [];
    expect(down).toHaveLength(2);
    expect(lanes).toHaveLength(3);
    expect(drawn).toContain('yes: 20');
  });

  test('never lays two ways over one another', () => {
    const spans = [...drawn.matchAll(/M471 ([\d.]+)H([\d.]+)V([\d.]+)H/g)].map(([, from, x, to]) => ({
      x: Number(x),
      low: Math.min(Number(from), Number(to)),
      high: Math.max(Number(from), Number(to)),
    }));
    for (const one of spans)
      for (const other of spans)
        if (one !== other && one.x === other.x)
          expect(one.high < other.low || other.high < one.low).toBe(true);
  });
});
