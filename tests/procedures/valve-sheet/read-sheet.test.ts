import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { UnitSystem } from '../../../procedures/calculations/units.ts';
import { fieldText } from '../../../procedures/valve-sheet/field-text.ts';
import { FIELDS, fieldNamed } from '../../../procedures/valve-sheet/fields.ts';
import { readSheet } from '../../../procedures/valve-sheet/read-sheet.ts';
import type { ValveSheet } from '../../../procedures/valve-sheet/sheet.ts';
import { aSheet, aSheetOf, FV_214 } from '../../builders/sheets.ts';
import { sheetTexts } from './sheet-arbitrary.ts';

function faultsOf(texts: Readonly<Record<string, string>>): Readonly<Record<string, string>> {
  const read = readSheet({ texts: { ...FV_214, ...texts } });
  return read.ok ? {} : read.faults;
}

/** What the form shows of a sheet: the texts that are sent back when nothing was changed. */
function asTexts(sheet: ValveSheet, system: UnitSystem): Record<string, string> {
  return Object.fromEntries(
    FIELDS.map((field) => [field.name, fieldText(field, { value: sheet[field.name], system })]),
  );
}

describe('a valve sheet from texts', () => {
  test('numbers become SI by the exact factors, and the pitch comes out of the thread', () => {
    const sheet = aSheet();
    expect(sheet.benchSetHighPa).toBe(15 * 6894.757293168361);
    expect(sheet.effectiveAreaM2).toBeCloseTo(0.064516, 15);
    expect(sheet.travelM).toBeCloseTo(0.01905, 15);
    expect(sheet.springRateNPerM).toBeCloseTo(280202.936394, 5);
    expect(sheet.stemThreadPitchM).toBeCloseTo(0.00127, 15);
    expect(sheet.processTemperatureC).toBeCloseTo(87.777777778, 8);
  });

  test('a number may carry its own unit, with comma or point', () => {
    expect(aSheetOf({ travelM: '19,05 mm' }).travelM).toBeCloseTo(0.01905, 15);
    expect(aSheetOf({ ratedKv: '12 Kv' }).ratedKv).toBe(12);
    expect(aSheetOf({ processTemperatureC: '90 °C' }).processTemperatureC).toBe(90);
  });

  test('numbers without a unit are in the units that the form was in, not in those that the sheet now asks for', () => {
    const read = readSheet({ texts: { ...FV_214, units: 'si' }, typedIn: 'us' });
    expect(read.ok && read.sheet.benchSetHighPa).toBe(15 * 6894.757293168361);
    expect(read.ok && read.sheet.units).toBe('si');
  });

  test('air action and fail position that are not on the plate are worked out', () => {
    expect(aSheetOf({ airAction: '', failPosition: '' })).toMatchObject({
      airAction: 'air-to-open',
      failPosition: 'shut',
    });
    expect(aSheetOf({ airMovesStem: 'down', airAction: '', failPosition: '' })).toMatchObject({
      airAction: 'air-to-close',
      failPosition: 'open',
    });
  });

  test('blank tolerances are the usual ones, and each says that it has no source', () => {
    const names = [
      'errorTolerancePercent',
      'hysteresisTolerancePercent',
      'repeatabilityTolerancePercent',
      'benchSetTolerancePa',
    ];
    const sheet = aSheetOf(Object.fromEntries(names.map((name) => [name, ''])));
    expect(sheet).toMatchObject({
      errorTolerancePercent: 5,
      hysteresisTolerancePercent: 10,
      repeatabilityTolerancePercent: 2,
    });
    expect(sheet.benchSetTolerancePa).toBe(0.25 * 6894.757293168361);
    for (const name of names)
      expect(fieldNamed(name)).toMatchObject({ usual: { mark: 'common practice, no source' } });
  });

  test('a tag is written in capitals, so that one valve has one sheet', () => {
    expect(aSheetOf({ tag: ' fv-214 ' }).tag).toBe('FV-214');
  });

  test.each([
    ['tag', '', 'Tag is missing'],
    ['tag', 'FV/214', 'is no tag'],
    ['tag', '-214', 'is no tag'],
    ['tag', 'F'.repeat(41), 'is no tag'],
    ['units', '', 'Choose one of: us, si.'],
    ['units', 'metric', '“metric” is not a choice'],
    ['plugCloses', 'sideways', 'Choose one of: down, up.'],
    ['bellowsSeal', '', 'Write yes or no.'],
    ['bellowsSeal', 'perhaps', 'neither yes nor no'],
    ['travelM', '', 'Rated travel is missing'],
    ['travelM', 'ten', '“ten” is not a number'],
    ['travelM', '0', 'above 0 in'],
    ['travelM', '-0.75', 'above 0 in'],
    ['travelM', '0.75 psi', 'measures pressure, not length'],
    ['travelM', '1,234', 'may mean 1.234 or 1234'],
    ['travelM', '3/4', 'Write 0.75.'],
    ['benchSetHighPa', '1e9', 'has an exponent'],
    ['benchSetHighPa', '0x10', 'another base'],
    ['benchSetHighPa', 'NaN', 'is not a number'],
    ['benchSetHighPa', '15 psia', 'is absolute pressure'],
    ['benchSetLowPa', '-3', 'at least 0 psi'],
    ['caseRatingPa', '1000', 'at most 290.07'],
    ['packingRings', '2.5', 'no count'],
    ['packingRings', '0', 'from 1 to 40'],
    ['packingRings', '41', 'from 1 to 40'],
    ['stemThread', 'M12', 'has no pitch'],
    ['stemThread', '', 'Plug stem thread is missing'],
    ['notes', 'a\u0000b', 'cannot be shown'],
    ['service', 'two\nlines', 'cannot be shown'],
    ['service', 'x'.repeat(201), 'at most 200'],
    ['colour', 'red', 'is no field of a valve sheet'],
  ])('%s %j is refused by name', (name, text, says) => {
    expect(faultsOf({ [name]: text })).toEqual({ [name]: expect.stringContaining(says) });
  });

  test('every wrong field is named at once', () => {
    expect(Object.keys(faultsOf({ travelM: 'ten', benchSetLowPa: '1e9', bellowsSeal: '' })).sort()).toEqual([
      'bellowsSeal',
      'benchSetLowPa',
      'travelM',
    ]);
  });

  test('every field of the form is a field of the sheet, and the sheet has no other but the pitches', () => {
    const pitches = ['stemThreadPitchM', 'adjusterThreadPitchM'];
    expect([...FIELDS.map(({ name }) => name as string), ...pitches].sort()).toEqual(
      Object.keys(aSheet()).sort(),
    );
    expect(new Set(FIELDS.map(({ name }) => name)).size).toBe(FIELDS.length);
  });
});

describe('the text that a value is shown as', () => {
  test.each([
    ['travelM', 0.75 * 0.0254, 'us', '0.75'],
    ['travelM', 0.75 * 0.0254, 'si', '0.75 in'],
    ['travelM', 0.01905, 'si', '19.05'],
    ['benchSetHighPa', 15 * 6894.757293168361, 'us', '15'],
    ['caseRatingPa', 200000, 'us', '200 kPa'],
    ['benchSetHighPa', 15 * 6894.757293168361, 'si', '15 psi'],
    ['processTemperatureC', 90, 'us', '90 degC'],
    ['processTemperatureC', 90, 'si', '90'],
    ['pressureDropRatioXt', 0.72, 'us', '0.72'],
  ] as const)('%s %d in %s is %s', (name, value, system, text) => {
    const field = fieldNamed(name);
    if (field === undefined) throw new Error(name);
    expect(fieldText(field, { value, system })).toBe(text);
  });

  test('a sheet that is shown in US or SI units and saved again is the very same', () => {
    fc.assert(
      fc.property(sheetTexts, fc.constantFrom<UnitSystem>('us', 'si'), (texts, system) => {
        const first = readSheet({ texts });
        if (!first.ok) throw new Error(JSON.stringify(first.faults));
        const again = readSheet({ texts: asTexts(first.sheet, system), typedIn: system });
        expect(again).toEqual(first);
      }),
      { numRuns: 300 },
    );
  });

  test('any value in SI comes back to the last bit', () => {
    const quantities = FIELDS.filter((field) => field.kind === 'quantity');
    fc.assert(
      fc.property(
        fc.constantFrom(...quantities),
        fc.double({ min: 1e-9, max: 0.49, noNaN: true }),
        fc.constantFrom<UnitSystem>('us', 'si'),
        (field, value, system) => {
          fc.pre(field.name !== 'caseRatingPa');
          const texts = { ...FV_214, [field.name]: fieldText(field, { value, system }) };
          const read = readSheet({ texts, typedIn: system });
          expect(read.ok ? read.sheet[field.name] : read.faults).toBe(value);
        },
      ),
      { numRuns: 1000 },
    );
  });
});
