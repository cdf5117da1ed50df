import { describe, expect, test } from 'vitest';
import { boltCircle as pointsOf } from '../../../procedures/calculations/bolting.ts';
import { boltCircle } from '../../../views/pictures/bolt-circle.ts';
import { attributeOf, readHtml, textOf } from '../html.ts';

function drawn(bolts: number): string {
  const circle = pointsOf({ bolts, circleDiameterM: 0.2 });
  return boltCircle({
    bolts: circle.map(({ bolt, rightM, upM, rank }) => ({ bolt, right: rightM, up: upM, rank })),
    sentence: `${bolts} bolts`,
  });
}

describe.each([4, 8, 12, 16, 24, 60])('the picture of %i bolts', (bolts) => {
  test('has a nut for each on its circle, the first at the top', () => {
    const { elements, faults } = readHtml(drawn(bolts));
    expect(faults).toEqual([]);
    const nuts = elements.filter(({ tagName }) => tagName === 'circle').slice(2);
    expect(nuts).toHaveLength(bolts);
    const at = (index: number, name: string) => Number(attributeOf(nuts[index] ?? (nuts[0] as never), name));
    expect([at(0, 'cx'), at(0, 'cy')]).toEqual([190, 40]);
    for (let index = 0; index < bolts; index++) {
      expect(Math.hypot(at(index, 'cx') - 190, at(index, 'cy') - 190)).toBeCloseTo(150, 0);
    }
    expect(drawn(bolts)).not.toMatch(/NaN|undefined/);
  });

  test('never lets two nuts touch, and leaves the numbers out only where they have no room', () => {
    const { elements } = readHtml(drawn(bolts));
    const [, , nut] = elements.filter(({ tagName }) => tagName === 'circle');
    const radius = Number(nut && attributeOf(nut, 'r'));
    expect(2 * radius).toBeLessThan(2 * 150 * Math.sin(Math.PI / bolts));
    const numbers = elements.filter(({ tagName }) => tagName === 'text').map(textOf);
    expect(numbers).toHaveLength(radius < 11 ? 0 : bolts);
    if (bolts === 4) expect(numbers).toEqual(['1', '3', '2', '4']);
  });
});
