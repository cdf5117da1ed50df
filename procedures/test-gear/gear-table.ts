/** Test gear as a table or as JSON: read whole or not at all, and written so that it reads back to the very same. */
import { csvText } from '../tables/csv-text.ts';
import { namedColumns } from '../tables/named-columns.ts';
import { readCsv } from '../tables/read-table.ts';
import type { TableForm, TableRead } from '../tables/table-form.ts';
import { GEAR_FIELDS, type GearFieldName } from './fields.ts';
import type { GearItem } from './gear.ts';
import { gearText } from './gear-text.ts';
import { readGear } from './read-gear.ts';

/** More than any plant has. */
const GEAR_ROWS_MAX = 2000;

const NAMES: readonly GearFieldName[] = GEAR_FIELDS.map(({ name }) => name);

const COLUMNS = namedColumns({ names: NAMES, called: 'test gear' });

export interface GearRow {
  readonly item: GearItem;
}

/** @param today  YYYY-MM-DD: nothing is calibrated tomorrow */
export function gearTable(today: string): TableForm<GearRow> {
  return {
    many: 'pieces',
    none: 'There is no test gear in it.',
    rowsMax: GEAR_ROWS_MAX,
    listName: 'testGear',
    key: 'number',
    mustHave: [{ name: 'number', head: 'number' }],
    column: COLUMNS.column,
    jsonText: COLUMNS.jsonText,
    readRow: (texts) => {
      const unknown = COLUMNS.unknownNames(texts);
      if (unknown.length > 0) return { faults: unknown };
      const read = readGear({ texts, today });
      if (read.ok) return { item: read.item };
      return { faults: Object.entries(read.faults).map(([name, what]) => ({ names: [name], what })) };
    },
    keyOf: ({ item }) => item.number,
  };
}

/**
 * Test gear from a table: comma, semicolon or tab between the cells, the names of the fields in its head. All rows are
 * taken, or none and every wrong cell named.
 *
 * @example readGearCsv('number,kind,unit,rangeLow,rangeHigh,...\r\nG-07,pressure gauge,psi,0,30,...', '2026-03-04').rows[0].row // 2
 */
export function readGearCsv(text: string, today: string): TableRead<GearRow> {
  return readCsv(gearTable(today), text);
}

/**
 * Test gear as a table that reads back to the very same; no cell begins like a formula.
 * @example writeGearCsv([]).startsWith('\ufeffnumber,kind,unit') // true
 */
export function writeGearCsv(items: readonly GearItem[]): string {
  return csvText([NAMES, ...items.map((item) => NAMES.map((name) => gearText(item)[name]))]);
}
