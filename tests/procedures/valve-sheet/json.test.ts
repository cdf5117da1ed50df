import { describe, expect, test } from 'vitest';
import { readSheetsJson, writeSheetsJson } from '../../../procedures/valve-sheet/json.ts';
import { ROWS_MAX } from '../../../procedures/valve-sheet/table.ts';
import { aSheet, FV_214 } from '../../builders/sheets.ts';

describe('valve sheets as JSON', () => {
  test('come back as the very same, each quantity with its unit', () => {
    const sheets = [aSheet(), aSheet({ tag: 'FV-2', units: 'si', caseRatingPa: 350000 })];
    const json = writeSheetsJson(sheets);
    expect(json.valveSheets[0]).toMatchObject({
      travelM: '0.75 in',
      benchSetHighPa: '15 psi',
      bellowsSeal: 'no',
    });
    expect(json.valveSheets[1]).toMatchObject({ caseRatingPa: '350 kPa', balanceSealDiameterM: '' });
    expect(readSheetsJson(JSON.parse(JSON.stringify(json))).rows.map(({ sheet }) => sheet)).toEqual(sheets);
  });

  test('a bare number is in the unit that the name says; true, false and null are what they are', () => {
    const sheet = {
      ...FV_214,
      travelM: 0.01905,
      processTemperatureC: -1.5e-7,
      packingRings: 5,
      bellowsSeal: false,
      installedLowPa: null,
    };
    const { rows, faults } = readSheetsJson({ valveSheets: [sheet] });
    expect(faults).toEqual([]);
    expect(rows[0]?.sheet).toMatchObject({
      travelM: 0.01905,
      processTemperatureC: -1.5e-7,
      packingRings: 5,
      bellowsSeal: false,
    });
  });

  test.each([
    [null, 'It is not {"valveSheets"'],
    [[], 'It is not {"valveSheets"'],
    [{ valveSheets: [{ tag: {} }] }, 'It is not {"valveSheets"'],
    [{ valveSheets: [] }, 'There is no valve in it.'],
    [{ valveSheets: Array.from({ length: ROWS_MAX + 1 }, () => ({})) }, 'at most 5000'],
    [{ valveSheets: [{ ...FV_214, travelM: 1e300 }] }, 'has an exponent'],
    [{ valveSheets: [{ ...FV_214, colour: 'red' }] }, 'is no field of a valve sheet'],
  ])('%#: what cannot be read says why', (value, says) => {
    const { rows, faults } = readSheetsJson(value);
    expect(rows).toEqual([]);
    expect(faults.map(({ what }) => what).join()).toContain(says);
  });

  test('a fault names the place in the list and the field', () => {
    const { faults } = readSheetsJson({ valveSheets: [FV_214, { ...FV_214, tag: 'FV-2', travelM: 'ten' }] });
    expect(faults).toMatchObject([{ row: 2, column: 'travelM' }]);
  });
});
