/** Valve sheets for tests, each read from texts as a form gives them. */
import { readSheet } from '../../procedures/valve-sheet/read-sheet.ts';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import { FV_214 } from '../../server/demo/demo-valves.ts';

export { FV_214 };

/**
 * @example aSheet({ bellowsSeal: true }).tag // 'FV-214'
 */
export function aSheet(overrides: Partial<ValveSheet> = {}): ValveSheet {
  return { ...sheetOf(FV_214), ...overrides };
}

/** A sheet from texts; those of FV-214 stand where none are given. */
export function aSheetOf(texts: Readonly<Record<string, string>>): ValveSheet {
  return sheetOf({ ...FV_214, ...texts });
}

export function sheetOf(texts: Readonly<Record<string, string>>): ValveSheet {
  const read = readSheet({ texts });
  if (!read.ok) throw new Error(`The builder's sheet is refused: ${JSON.stringify(read.faults)}`);
  return read.sheet;
}
