import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { UnitSystem } from '../../../procedures/calculations/units.ts';
import { columnName, headOf } from '../../../procedures/valve-sheet/columns.ts';
import { contradictionsOf, stoppingIn } from '../../../procedures/valve-sheet/contradictions.ts';
import { readSheetsCsv, writeSheetsCsv } from '../../../procedures/valve-sheet/csv.ts';
import { FIELDS } from '../../../procedures/valve-sheet/fields.ts';
import { readSheet } from '../../../procedures/valve-sheet/read-sheet.ts';
import { ROWS_MAX } from '../../../procedures/valve-sheet/table.ts';
import { aSheet, aSheetOf, FV_214 } from '../../builders/sheets.ts';
import { sheetTexts } from './sheet-arbitrary.ts';

/** FV-214 as rows of a table, each with some cells changed. */
function table(...rows: readonly Readonly<Record<string, string>>[]): string {
  const head = FIELDS.map((field) => headOf(field, 'us'));
  const body = rows.map((row) => FIELDS.map(({ name }) => ({ ...FV_214, ...row })[name] ?? ''));
  return [head, ...body]
    .map((cells) => cells.map((cell) => `"${cell.replaceAll('"', '""')}"`).join(','))
    .join('\n');
}

function faultsOf(text: string): readonly string[] {
  const { rows, faults } = readSheetsCsv(text);
  expect(rows).toEqual([]);
  return faults.map(({ row, column, what }) => `${row ?? ''} ${column ?? ''}: ${what}`);
}

describe('a table of valve sheets', () => {
  test('reads each row to the sheet that the form gives', () => {
    const { rows, faults } = readSheetsCsv(table({}, { tag: 'FV-215', travelM: '19,05 mm' }));
    expect(faults).toEqual([]);
    expect(rows.map(({ row, sheet }) => [row, sheet])).toEqual([
      [2, aSheet()],
      [3, aSheetOf({ tag: 'FV-215', travelM: '19,05 mm' })],
    ]);
  });

  test('the head says the unit of a column, whatever the valve’s own units are', () => {
    const si = readSheetsCsv(table({ units: 'si' }));
    expect(si.rows[0]?.sheet.benchSetHighPa).toBe(aSheet().benchSetHighPa);
    const kPa = readSheetsCsv(
      table({ benchSetLowPa: '20', benchSetHighPa: '100' }).replaceAll(
        /benchSet(Low|High) \[psi\]/g,
        'benchSet$1 [kPa]',
      ),
    );
    expect(kPa.rows[0]?.sheet).toMatchObject({ benchSetLowPa: 20000, benchSetHighPa: 100000 });
  });

  const plain = aSheet({ location: 'Unit 3', notes: '' });
  test.each([';', '\t'])('cells may be divided by %j, decimals then by a comma', (sign) => {
    const text = writeSheetsCsv([plain], 'us').replaceAll(',', sign).replaceAll('0.75', '0,75');
    expect(readSheetsCsv(text).rows[0]?.sheet).toEqual(plain);
    expect(readSheetsCsv(text.replace('\ufeff', `\ufeffsep=${sign}\r\n`)).rows[0]?.sheet).toEqual(plain);
  });

  test('blank rows are passed over and do not shift the count', () => {
    const [head, row] = table({}).split('\n');
    const gap = `${head}\n\n,,\n${row}`;
    expect(readSheetsCsv(gap).rows.map((each) => each.row)).toEqual([4]);
  });

  test('contradictions that do not stop come with the row', () => {
    const { rows } = readSheetsCsv(table({ seatLoadSource: '' }));
    expect(rows[0]?.contradictions.map(({ code }) => code)).toEqual(['VAL-123']);
  });

  test('every wrong cell is named by row and column, and nothing is half imported', () => {
    expect(
      faultsOf(
        table(
          {},
          { tag: 'FV-215', travelM: 'ten', bellowsSeal: '' },
          { tag: 'FV-216', benchSetLowPa: '1,234' },
        ),
      ),
    ).toEqual([
      '3 travel [in]: “ten in” is not a number. Write digits, for example 12.5.'.replace('ten in', 'ten'),
      '3 bellowsSeal: Bellows seal is missing. Write yes or no.',
      expect.stringContaining('4 benchSetLow [psi]: “1,234” may mean 1.234 or 1234'),
    ]);
  });

  test('a row that contradicts itself is named with its columns', () => {
    expect(faultsOf(table({ failPosition: 'open' }))).toEqual([
      expect.stringContaining('2 failPosition, airAction, springHeldBy: VAL-102: With a spring'),
    ]);
  });

  test('a valve that stands twice is refused', () => {
    expect(faultsOf(table({}, { tag: 'fv-214' }))).toEqual(['3 tag: FV-214 stands in row 2 already.']);
  });

  test.each([
    ['', ': There is no head with column names.'],
    ['colour\nred', '1 colour: “colour” is no column of a valve sheet'],
    [
      table({}).replace('travel [in]', 'travel'),
      '1 travel: travel needs its unit in the head, as travel [in] or travel [mm].',
    ],
    [table({}).replace('travel [in]', 'travel [psi]'), '[psi] is no unit for travel'],
    [table({}).replace('travel [in]', 'travel [furlong]'), '[furlong] is no unit for travel'],
    [table({}).replace('"service"', '"service [in]"'), 'service has no unit'],
    [table({}).replace('"location"', '"service"'), '1 service: This column stands twice.'],
    [table({}).replace('"travel [in]"', '"benchSetTolerance [psi]"'), 'The column travel is missing.'],
    [table({}).split('\n')[0] ?? '', ': There is no valve in it.'],
    [`${table({})},"more"`, '2 : It has 76 cells; the head has 75.'],
    ['tag,service\n"FV-1,x', ': A quotation mark is opened and never closed.'],
    ['tag,service\nFV-1,a "b" c', ': A quotation mark stands inside a cell'],
    [`tag\n${'x'.repeat(60000)}`, 'is longer than 50000 letters'],
  ])('%#: a table that cannot be read says why', (text, says) => {
    expect(faultsOf(text).join('\n')).toContain(says);
  });

  test('more faults than anybody reads are counted, not listed', () => {
    const rows = Array.from({ length: 230 }, (_, index) => ({ tag: `FV-${index}`, travelM: 'ten' }));
    const read = readSheetsCsv(table(...rows));
    expect([read.rows.length, read.faults.length, read.moreFaults]).toEqual([0, 200, 30]);
  });

  test('more rows than are taken at once are refused', () => {
    const [head = '', row = ''] = table({}).split('\n');
    expect(faultsOf([head, ...Array.from({ length: ROWS_MAX + 1 }, () => row)].join('\n'))).toEqual([
      ' : There are 5001 valves; at most 5000 are taken at once. Split them.',
    ]);
  });
});

describe('a table that is written', () => {
  test('names each column without the unit that its field carries, and with the one of its cells', () => {
    const [head] = writeSheetsCsv([], 'us').slice(1).split('\r\n');
    expect(head?.split(',').slice(0, 4)).toEqual(['tag', 'service', 'location', 'units']);
    expect(head).toContain(',benchSetLow [psi],benchSetHigh [psi],springRate [lbf/in],');
    expect(writeSheetsCsv([], 'si')).toContain(',benchSetLow [kPa],benchSetHigh [kPa],springRate [N/mm],');
    expect(new Set(FIELDS.map(columnName)).size).toBe(FIELDS.length);
  });

  test.each(['=1+1', '+1', '@SUM(A1)', '-cmd', "'=1", '\u2212x'])(
    'no cell begins like a formula: %s',
    (service) => {
      const text = writeSheetsCsv([aSheet({ service })], 'us');
      const cell = text.split('\r\n')[1]?.split(',')[1] ?? '';
      expect(cell).not.toMatch(/^[=+\-@]/);
      expect(readSheetsCsv(text).rows[0]?.sheet.service).toBe(service);
    },
  );

  test('a negative number stays a number', () => {
    const text = writeSheetsCsv([aSheet({ units: 'si', processTemperatureC: -5 })], 'si');
    expect(text).toContain(',-5,');
  });

  test('any sheets come back as the very same, in either system of units', () => {
    fc.assert(
      fc.property(
        fc.array(sheetTexts, { minLength: 1, maxLength: 4 }),
        fc.constantFrom<UnitSystem>('us', 'si'),
        (many, system) => {
          const sheets = many.map((texts, index) => {
            const read = readSheet({ texts: { ...texts, tag: `V-${index}` } });
            if (!read.ok) throw new Error(JSON.stringify(read.faults));
            return read.sheet;
          });
          const { rows, faults } = readSheetsCsv(writeSheetsCsv(sheets, system));
          if (sheets.every((sheet) => stoppingIn(contradictionsOf(sheet)).length === 0)) {
            expect(rows.map(({ sheet }) => sheet)).toEqual(sheets);
          } else {
            // Whatever stops a sheet stops it from a table too, and nothing else does.
            expect(faults.every(({ what }) => what.startsWith('VAL-'))).toBe(true);
          }
        },
      ),
      { numRuns: process.env.YOKESIDE_LONG === '1' ? 1000 : 100 },
    );
  });

  test('sheets that agree with themselves come back as the very same', () => {
    const sheets = [
      aSheet(),
      aSheetOf({
        tag: 'FV-2',
        units: 'si',
        travelM: '15 mm',
        springRateNPerM: '',
        notes: '=A1\n"quoted", ; \'x',
      }),
      aSheetOf({
        tag: 'FV-3',
        caseRatingPa: '3.5 bar',
        ratedKv: '12.3 Kv',
        processTemperatureC: '-12.5 degC',
      }),
    ];
    for (const system of ['us', 'si'] as const) {
      expect(readSheetsCsv(writeSheetsCsv(sheets, system)).rows.map(({ sheet }) => sheet)).toEqual(sheets);
    }
  });
});
