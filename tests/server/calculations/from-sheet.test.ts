import { describe, expect, test } from 'vitest';
import { CALCULATIONS, calculationOf } from '../../../procedures/calculations/registry.ts';
import { fromSheet } from '../../../server/calculations/from-sheet.ts';
import { readInputs } from '../../../server/calculations/read-inputs.ts';
import { aSheet } from '../../builders/sheets.ts';

const filled = (id: string, change: Parameters<typeof aSheet>[0] = {}) =>
  fromSheet(calculationOf(id), { sheet: aSheet(change), units: 'us' });

describe('a calculation filled from a valve sheet', () => {
  test('has the figures of the sheet with their units', () => {
    expect(filled('bench-set')).toEqual({
      effectiveAreaM2: '100 in²',
      benchSetLowPa: '3 psi',
      benchSetHighPa: '15 psi',
      travelM: '0.75 in',
    });
  });

  test('means the same whichever units its reader has', () => {
    const sheet = aSheet();
    for (const calculation of CALCULATIONS) {
      const [us, si] = (['us', 'si'] as const).map((units) => {
        const texts = fromSheet(calculation, { sheet, units });
        const { values, wrong } = readInputs(calculation, { texts, units });
        expect(wrong, calculation.id).toEqual({});
        return values;
      });
      for (const [name, value] of Object.entries(us ?? {})) {
        if (typeof value !== 'number') expect(si?.[name], calculation.id).toEqual(value);
        // What was worked out, the force on the plug, is said with five digits.
        else expect(Math.abs(Number(si?.[name]) - value)).toBeLessThanOrEqual(1e-4 * Math.abs(value));
      }
    }
  });

  test('takes the thread that it asks for: the stem’s for the plug, the adjuster’s for the spring', () => {
    const threads = { stemThreadPitchM: 0.00127, adjusterThreadPitchM: 0.0015875 };
    expect(filled('seating-turns', threads).threadPitchM).toBe('0.05 in');
    expect(filled('adjuster-turns', threads).threadPitchM).toBe('0.0625 in');
    expect(filled('adjuster-turns', threads)).not.toHaveProperty('turns');
  });

  test('leaves open what the sheet leaves open, and what it only seems to say', () => {
    expect(filled('shut-off-margin', { seatLoadNPerM: null })).not.toHaveProperty('seatLoadNeedNPerM');
    expect(filled('seat-leak-gas', { pressureDropRatioXt: null })).not.toHaveProperty('pressureDropRatioXt');
    expect(filled('nozzle-back-pressure')).toEqual({});
    expect(filled('current-travel')).not.toHaveProperty('rangeLow');
    expect(filled('packing-friction', { packingKind: 'other' })).not.toHaveProperty('packing');
    expect(filled('seat-load-need', { seatLoadSource: 'maker’s letter' })).not.toHaveProperty('table');
    expect(filled('seat-load-need', { seatLoadSource: 'sizing-guide-2008' })).toHaveProperty('table');
    expect(filled('stem-thread', { stemThread: 'M12x1.25' })).toEqual({});
    expect(filled('spring-energy', { springHeldBy: 'no spring', springRateNPerM: null })).toEqual({});
  });

  test('says a yes or no, a choice, and the force on the plug at the drop that it must hold', () => {
    expect(filled('seating-obstacles', { bellowsSeal: true })).toMatchObject({
      bellowsSeal: 'yes',
      stemPinned: 'no',
    });
    expect(filled('plug-force')).toMatchObject({ flow: 'under' });
    const { portDiameterM, shutOffDropPa, flow } = aSheet();
    expect(flow).toBe('under');
    const forceN = (shutOffDropPa * Math.PI * portDiameterM ** 2) / 4;
    expect(Number.parseFloat(filled('shut-end').plugForceOpeningN ?? '')).toBeCloseTo(forceN / 4.4482216, 1);
  });
});
