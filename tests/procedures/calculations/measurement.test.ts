import { describe, expect, it } from 'vitest';
import {
  combinedUncertainty,
  gaugeUncertainty,
  instrumentErrorMaxPercent,
  testAccuracyRatio,
  testUncertaintyRatio,
  travelErrorUncertainty,
} from '../../../procedures/calculations/measurement.ts';
import { expectClose, expectRefused, refusesEachNonNumber, refusesOrAnswers } from './support.ts';

describe('the uncertainty of a gauge', () => {
  const good = { span: 30, accuracyPercent: 0.5, resolution: 0.1 };

  it('is percent of span, not of reading, with a rectangular spread', () => {
    expectClose(gaugeUncertainty({ span: 100, accuracyPercent: 1 }).expanded, 2 / Math.sqrt(3));
  });

  it('of an exact gauge is that of its digits alone: d over the root of twelve', () => {
    expectClose(
      gaugeUncertainty({ span: 100, accuracyPercent: 0, resolution: 0.1 }).standard,
      0.1 / Math.sqrt(12),
    );
  });

  it('of impossible figures is refused by name', () => {
    expectRefused(() => gaugeUncertainty({ ...good, accuracyPercent: 101 }), {
      code: 'CALC-002',
      name: 'accuracyPercent',
    });
    refusesEachNonNumber(gaugeUncertainty, good);
    refusesOrAnswers(gaugeUncertainty, good);
  });
});

describe('uncertainties put together', () => {
  it('add in squares', () => {
    expect(combinedUncertainty([2, 3, 6])).toBe(7);
    expectRefused(() => combinedUncertainty([]), { code: 'CALC-004', name: 'expanded' });
    expectRefused(() => combinedUncertainty([1, -1]), { code: 'CALC-002', name: 'uncertainty' });
  });

  it('of signal and travel become one of the travel error', () => {
    const good = { signalUncertainty: 0.06, signalSpan: 12, travelUncertainty: 0.1, ratedTravel: 20 };
    expectClose(travelErrorUncertainty(good).percent, Math.SQRT1_2);
    refusesEachNonNumber(travelErrorUncertainty, good);
    refusesOrAnswers(travelErrorUncertainty, good);
  });
});

describe('the ratios of a test', () => {
  it('are met at exactly four to one', () => {
    expect(testUncertaintyRatio({ toleranceHalfWidth: 0.4, expandedUncertainty: 0.1 }).meetsFourToOne).toBe(
      true,
    );
    expect(testUncertaintyRatio({ toleranceHalfWidth: 0.39, expandedUncertainty: 0.1 }).meetsFourToOne).toBe(
      false,
    );
    expect(testAccuracyRatio({ toleranceHalfWidth: 1.2, permittedError: 0.3 }).atMostAQuarter).toBe(true);
    expect(testAccuracyRatio({ toleranceHalfWidth: 1.1, permittedError: 0.3 }).atMostAQuarter).toBe(false);
  });

  it('of impossible figures are refused by name', () => {
    const uncertainty = { toleranceHalfWidth: 0.4, expandedUncertainty: 0.1 };
    refusesEachNonNumber(testUncertaintyRatio, uncertainty);
    refusesOrAnswers(testUncertaintyRatio, uncertainty);
    const accuracy = { toleranceHalfWidth: 0.4, permittedError: 0.1 };
    refusesEachNonNumber(testAccuracyRatio, accuracy);
    refusesOrAnswers(testAccuracyRatio, accuracy);
    expectRefused(() => instrumentErrorMaxPercent({ valveLimitPercent: 0 }), {
      code: 'CALC-002',
      name: 'valveLimitPercent',
    });
    expect(instrumentErrorMaxPercent({ valveLimitPercent: 2 })).toBe(0.5);
  });
});
