import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gearText, rangeText } from '../../../procedures/test-gear/gear-text.ts';
import { readGear } from '../../../procedures/test-gear/read-gear.ts';
import { gearItem } from '../../builders/gear.ts';

const today = '2026-03-04';

/** Texts as a person writes them: a scale in whole or half marks, an accuracy grade. */
const texts = fc
  .record({
    scale: fc.constantFrom(
      { kind: 'pressure gauge', units: ['psi', 'kPa', 'bar', 'inH2O'] },
      { kind: 'dial indicator', units: ['in', 'mm'] },
      { kind: 'thermometer', units: ['degC', 'degF'] },
    ),
    which: fc.nat(3),
    low: fc.integer({ min: 0, max: 50 }),
    halves: fc.integer({ min: 1, max: 2000 }),
    grade: fc.constantFrom('0.1', '0.25', '0.5', '1.6', '2.5'),
    note: fc.constantFrom('', 'in the grey case'),
  })
  .map(({ scale, which, low, halves, grade, note }) => ({
    number: 'G-07',
    kind: scale.kind,
    unit: scale.units[which % scale.units.length] ?? '',
    rangeLow: String(low),
    rangeHigh: String(low + halves / 2),
    accuracyPercentOfSpan: grade,
    calibratedOn: '2025-11-02',
    dueOn: '2026-11-02',
    certificate: 'C-1',
    bleedsDown: '',
    note,
  }));

describe('test gear as texts', () => {
  test('what was typed comes back, and reads to the very same piece', () => {
    fc.assert(
      fc.property(texts, (typed) => {
        const read = readGear({ texts: typed, today });
        if (!read.ok) throw new Error(JSON.stringify(read.faults));
        expect(gearText(read.item)).toEqual(typed);
        expect(readGear({ texts: gearText(read.item), today })).toEqual(read);
      }),
    );
  });

  test('a regulator is no gauge: no accuracy, but whether it bleeds down', () => {
    const regulator = gearItem('regulator', { accuracyPercentOfSpan: 0, bleedsDown: false });
    expect(gearText(regulator)).toMatchObject({ accuracyPercentOfSpan: '', bleedsDown: 'no' });
    expect(readGear({ texts: gearText(regulator), today })).toEqual({ ok: true, item: regulator });
  });

  test('a range is said in the unit of its scale', () => {
    expect(rangeText(gearItem('signalGauge'))).toBe('0 to 30 psi');
    expect(rangeText(gearItem('travelIndicator'))).toBe('0 to 1 in');
  });
});
