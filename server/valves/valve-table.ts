/** How valve sheets come in by tables. */
import { writeSheetsJson } from '../../procedures/valve-sheet/json.ts';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import { type SheetItem, VALVE_TABLE } from '../../procedures/valve-sheet/table.ts';
import { changed, type RowChange, type TableKind } from '../tables/table-kind.ts';
import { isUnchanged, savedSheet } from './valve-acts.ts';
import { type Valve, valveKind } from './valve-stream.ts';

export const valveTable: TableKind<SheetItem> = {
  form: () => VALVE_TABLE,
  /** 5,000 sheets with long notes. */
  bytesMax: 12 * 1024 * 1024,
  keptAs: 'valve-table',
  codes: { cells: 'VAL-006', other: 'VAL-007' },
  kept: 'No sheet was changed',
  beside: ({ sheet }) => [{ kind: valveKind, id: sheet.tag }],
  look: (standing, { sheet, contradictions }) => {
    const valve = standing.state(valveKind, sheet.tag);
    const change = changeOf(valve, sheet);
    const against = contradictions.map(({ code, what }) => `${code}: ${what}`);
    const says = change === 'changed' && valve.sheet !== null ? fieldsChanged(valve.sheet, sheet) : [];
    return { change, says: [...says, ...against], stands: valve.revision };
  },
  draft: ({ sheet, texts }) => savedSheet(sheet, texts),
};

function changeOf(valve: Valve, sheet: ValveSheet): RowChange {
  if (valve.sheet === null) return 'new';
  if (valve.retired) return 'taken back into use';
  return isUnchanged(valve, sheet) ? 'unchanged' : 'changed';
}

function fieldsChanged(before: ValveSheet, after: ValveSheet): readonly string[] {
  const [was = {}, is = {}] = writeSheetsJson([before, after]).valveSheets;
  return changed(Object.keys(is).map((name) => [name, was[name] ?? '', is[name] ?? '']));
}
