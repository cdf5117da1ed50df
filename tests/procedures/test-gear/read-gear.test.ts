import { describe, expect, test } from 'vitest';
import { readGear } from '../../../procedures/test-gear/read-gear.ts';

const today = '2026-03-04';
const G_07: Readonly<Record<string, string>> = {
  number: 'g-07',
  kind: 'pressure gauge',
  unit: 'psi',
  rangeLow: '0',
  rangeHigh: '30',
  accuracyPercentOfSpan: '0.25',
  calibratedOn: '2025-11-02',
  dueOn: '2026-11-02',
  certificate: 'C-4471',
  note: '',
};

function faultsOf(texts: Readonly<Record<string, string>>): Readonly<Record<string, string>> {
  const read = readGear({ texts: { ...G_07, ...texts }, today });
  return read.ok ? {} : read.faults;
}

describe('test gear from texts', () => {
  test('a gauge is kept in SI, with the unit that its scale is marked in', () => {
    expect(readGear({ texts: G_07, today })).toEqual({
      ok: true,
      item: {
        number: 'G-07',
        kind: 'pressure gauge',
        dimension: 'pressure',
        unit: 'psi',
        rangeLowSi: 0,
        rangeHighSi: 30 * 6894.757293168361,
        accuracyPercentOfSpan: 0.25,
        calibratedOn: '2025-11-02',
        dueOn: '2026-11-02',
        certificate: 'C-4471',
        bleedsDown: null,
        note: '',
      },
    });
  });

  test('a regulator needs no accuracy, but must say whether it bleeds down', () => {
    const regulator = { ...G_07, kind: 'regulator', accuracyPercentOfSpan: '' };
    expect(readGear({ texts: { ...regulator, bleedsDown: 'yes' }, today })).toMatchObject({
      ok: true,
      item: { accuracyPercentOfSpan: 0, bleedsDown: true },
    });
    expect(Object.keys(faultsOf(regulator))).toEqual(['bleedsDown']);
  });

  test.each([
    ['number', '', 'Write the number'],
    ['number', 'G/07', 'Write the number'],
    ['kind', 'ruler', 'Choose one of: pressure gauge'],
    ['unit', 'mm', 'Choose one of: Pa, kPa'],
    ['unit', '', 'Choose one of: Pa, kPa'],
    ['rangeHigh', 'thirty', 'is not a number'],
    ['rangeHigh', '0', 'end above where it begins'],
    ['rangeHigh', '-30', 'end above where it begins'],
    ['rangeHigh', '30 mm', 'measures length, not pressure'],
    ['accuracyPercentOfSpan', '', 'Nothing was written'],
    ['accuracyPercentOfSpan', '0', 'above 0 %'],
    ['accuracyPercentOfSpan', '60', 'at most 50 %'],
    ['calibratedOn', '04/03/2026', '“04/03/2026” is no date'],
    ['calibratedOn', '2026-02-30', 'is no date'],
    ['calibratedOn', '', 'The date is missing'],
    ['calibratedOn', '2026-03-05', 'still to come'],
    ['dueOn', '2025-11-02', 'due after 2025-11-02'],
    ['bleedsDown', 'yes', 'Only a regulator'],
    ['note', 'x'.repeat(201), 'at most 200'],
    ['colour', 'red', 'no field of test gear'],
  ])('%s %j is refused by name', (name, text, says) => {
    expect(faultsOf({ [name]: text })).toEqual({ [name]: expect.stringContaining(says) });
  });
});
