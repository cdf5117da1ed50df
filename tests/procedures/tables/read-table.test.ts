import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { csvRecords, csvText } from '../../../procedures/tables/csv-text.ts';
import { namedColumns } from '../../../procedures/tables/named-columns.ts';
import { csvReading, readCsv, readJson } from '../../../procedures/tables/read-table.ts';
import type { TableForm } from '../../../procedures/tables/table-form.ts';

const COLUMNS = namedColumns({ names: ['number', 'colour'], called: 'pots' });
const POTS: TableForm<{ readonly number: string; readonly colour: string }> = {
  many: 'pots',
  none: 'There is no pot in it.',
  rowsMax: 3,
  listName: 'pots',
  key: 'number',
  mustHave: [{ name: 'number', head: 'number' }],
  column: COLUMNS.column,
  jsonText: COLUMNS.jsonText,
  readRow: ({ number = '', colour = '', ...rest }) => {
    const unknown = COLUMNS.unknownNames(rest);
    if (unknown.length > 0) return { faults: unknown };
    return colour === 'none' ? { faults: [{ names: ['colour'], what: 'No colour.' }] } : { number, colour };
  },
  keyOf: ({ number }) => number,
};

describe('any table', () => {
  test('reads the same rows from CSV and from JSON, and says how far it is', () => {
    const csv = readCsv(POTS, 'number;colour\r\n1;red\r\n\r\n2;blue');
    const json = readJson(POTS, {
      pots: [
        { number: 1, colour: 'red' },
        { number: '2', colour: 'blue' },
      ],
    });
    expect([csv.rows.map(({ row }) => row), json.rows.map(({ row }) => row)]).toEqual([
      [2, 4],
      [1, 2],
    ]);
    expect(csv.rows.map(({ colour }) => colour)).toEqual(json.rows.map(({ colour }) => colour));
    expect([...csvReading(POTS, 'number\n1\n2')]).toEqual([
      { rows: 1, of: 2 },
      { rows: 2, of: 2 },
    ]);
  });

  test.each([
    ['number,colour\n1,red\n2,none\n1,red', '3 colour: No colour.|4 number: 1 stands in row 2 already.'],
    ['colour\nred', '1 number: The column number is missing.'],
    ['number,shape\n1,round', '1 shape: “shape” is no column of pots. There are: number, colour.'],
    ['number\n1\n2\n3\n4', 'null null: There are 4 pots; at most 3 are taken at once. Split them.'],
    ['number', 'null null: There is no pot in it.'],
    ['number\n1,red', '2 null: It has 2 cells; the head has 1.'],
  ])('%j is refused whole, each cell by name', (text, said) => {
    const { rows, faults } = readCsv(POTS, text);
    expect(rows).toEqual([]);
    expect(faults.map(({ row, column, what }) => `${row} ${column}: ${what}`).join('|')).toBe(said);
  });

  test('of JSON with a name that is no column says so by place', () => {
    expect(readJson(POTS, { pots: [{ number: '1' }, { number: '2', shape: true }] }).faults).toMatchObject([
      { row: 2, column: 'shape' },
    ]);
  });

  test('that is written comes back cell by cell, whatever stands in it', () => {
    const cell = fc.string({ unit: 'grapheme', maxLength: 12 }).filter((text) => !text.includes('\ufeff'));
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell), { minLength: 1, maxLength: 5 }), (rows) => {
        // A table program that guesses what divides cells goes by the head.
        const records = [['number', 'colour'], ...rows.map((row) => [...row])];
        expect(csvRecords(csvText(records))).toEqual({ records });
      }),
    );
  });
});
