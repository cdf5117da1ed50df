import { describe, expect, it } from 'vitest';
import { endingOf } from '../../../procedures/calculations/name-endings.ts';
import { dimensionOfName, titleOf } from '../../../procedures/calculations/quantity-names.ts';
import { QUANTITY_TITLES } from '../../../procedures/calculations/quantity-titles.ts';
import { CALCULATIONS } from '../../../procedures/calculations/registry.ts';
import { MEASURE_TITLES } from '../../../procedures/calculations/titles-of-measures.ts';
import { WORD_TITLES } from '../../../procedures/calculations/titles-of-words.ts';

describe('what a quantity measures', () => {
  it.each([
    ['contactPa', 'pressure'],
    ['inletPaAbs', 'pressure'],
    ['startK', 'temperature'],
    ['temperatureUncertaintyK', 'temperatureDifference'],
    ['kv', 'flowCoefficient'],
    ['turnsToQuarter', 'turns'],
    ['openPercentClamped', 'percent'],
    ['relativeDensity', 'ratio'],
    ['toString', 'ratio'],
  ] as const)('is read off its name: %s is a %s', (name, dimension) => {
    expect(dimensionOfName(name)).toBe(dimension);
  });
});

describe('the title of a quantity', () => {
  it('is one for each name, in the list of its kind', () => {
    expect(Object.keys(QUANTITY_TITLES)).toHaveLength(
      Object.keys(MEASURE_TITLES).length + Object.keys(WORD_TITLES).length,
    );
    expect(Object.keys(MEASURE_TITLES).filter((name) => endingOf(name) === undefined)).toEqual([]);
    expect(Object.keys(WORD_TITLES).filter((name) => endingOf(name) !== undefined)).toEqual([]);
  });

  it('begins with a capital, ends without a stop, and does not repeat itself', () => {
    for (const title of Object.values(QUANTITY_TITLES)) expect(title).toMatch(/^[A-Zx].*[^.\s]$/);
  });

  it('tells the inputs of a calculation apart', () => {
    for (const { id, inputs } of CALCULATIONS) {
      const titles = Object.values(inputs).map(({ title }) => title);
      expect(new Set(titles).size, id).toBe(titles.length);
    }
  });

  it('is a mistake to ask for where there is none', () => {
    expect(() => titleOf('luckPercent')).toThrow('no title');
    expect(() => titleOf('toString')).toThrow('no title');
  });
});
