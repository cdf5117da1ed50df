import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bellowsTestPa, linkPlayLimitM } from '../../procedures/repair-limits.ts';
import { aSheet } from '../builders/sheets.ts';
import { validSheets } from '../builders/valid-sheets.ts';

describe('Numbers of the repairs before the actuator', () => {
  test('never tell anyone to exceed a limit, for any valid sheet', () => {
    fc.assert(
      fc.property(validSheets, (sheet) => {
        expect(bellowsTestPa(sheet)).toBeLessThanOrEqual(sheet.signalHighPa);
        expect(linkPlayLimitM(sheet)).toBeLessThan((sheet.hysteresisTolerancePercent / 100) * sheet.travelM);
      }),
    );
  });

  // By hand: half of 10 % of 0.75 in.
  test('leave the linkage half of the hysteresis: 0.0375 in of 0.75 in at 10 %', () => {
    expect(linkPlayLimitM(aSheet()) / 0.0254).toBeCloseTo(0.0375, 9);
  });
});
