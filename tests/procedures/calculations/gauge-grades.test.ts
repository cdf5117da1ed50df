import { describe, expect, it } from 'vitest';
import {
  ASME_GRADES,
  type AsmeGrade,
  asmeGaugeError,
  chineseGaugeError,
  EN_CLASSES,
  type EnClass,
  enGaugeError,
} from '../../../procedures/calculations/gauge-grades.ts';
import { expectRefused, refusesEachNonNumber, refusesOrAnswers } from './support.ts';

describe('a gauge of an ASME grade', () => {
  it('of grade A is allowed twice as much in the outer quarters', () => {
    const percents = [0, 24.9, 25, 25.1, 50, 74.9, 75, 100].map(
      (reading) => asmeGaugeError({ grade: 'A', scaleHigh: 100, reading }).percentOfSpan,
    );
    expect(percents).toEqual([2, 2, 2, 1, 1, 1, 2, 2]);
  });

  it('says which figures were read and which remembered', () => {
    const kinds = (Object.keys(ASME_GRADES) as AsmeGrade[]).map(
      (grade) => [grade, asmeGaugeError({ grade, scaleHigh: 1, reading: 0.5 }).kind] as const,
    );
    expect(kinds.filter(([, kind]) => kind === 'memory').map(([grade]) => grade)).toEqual(['B', 'C', 'D']);
  });

  it('with a scale that does not begin at zero counts from its beginning', () => {
    const vacuum = asmeGaugeError({ grade: 'A', scaleLow: -100, scaleHigh: 300, reading: 100 });
    expect(vacuum).toMatchObject({ part: 'middle half', error: 4 });
  });

  it('of impossible figures is refused by name', () => {
    const good = { grade: 'A' as const, scaleLow: 0, scaleHigh: 100, reading: 50 };
    expectRefused(() => asmeGaugeError({ ...good, reading: 101 }), { code: 'CALC-002', name: 'reading' });
    expectRefused(() => asmeGaugeError({ ...good, scaleHigh: 0 }), { code: 'CALC-002', name: 'scaleHigh' });
    expectRefused(() => asmeGaugeError({ ...good, grade: 'E' as AsmeGrade }), {
      code: 'CALC-005',
      name: 'grade',
    });
    refusesEachNonNumber(asmeGaugeError, good);
    refusesOrAnswers(asmeGaugeError, good);
  });
});

describe('a gauge of another standard', () => {
  it('by EN 837-1 has one limit over the scale, of seven classes', () => {
    const errors = EN_CLASSES.map(
      (enClass) => enGaugeError({ enClass, scaleHigh: 10, reading: 0 }).percentOfSpan,
    );
    expect(errors).toEqual([0.1, 0.25, 0.6, 1, 1.6, 2.5, 4]);
    expectRefused(() => enGaugeError({ enClass: '0.4' as EnClass, scaleHigh: 10, reading: 0 }), {
      code: 'CALC-005',
      name: 'enClass',
    });
  });

  it('by the Chinese rule has the next wider limit in the last tenth', () => {
    const percents = [0.5, 0.9, 0.91, 1].map(
      (reading) => chineseGaugeError({ gaugeClass: '1', scaleHigh: 1, reading }).percentOfSpan,
    );
    expect(percents).toEqual([1, 1, 1.6, 1.6]);
    expectRefused(() => chineseGaugeError({ gaugeClass: '4' as '1', scaleHigh: 1, reading: 0 }), {
      code: 'CALC-005',
      name: 'gaugeClass',
    });
  });
});
