import type { PointKind } from '../../safety/isolation-points.ts';
import type { PointText } from '../points/point-acts.ts';
import type { SheetText } from './demo-valves.ts';

/** What stands behind each tag of a sheet. */
const KINDS: Readonly<Record<string, PointKind>> = {
  supplyPoint: 'cock',
  secondSupplyPoint: 'cock',
  inletPoint: 'block valve',
  outletPoint: 'block valve',
  bypassPoint: 'bypass valve',
  electricalPoint: 'breaker',
};

/** The isolation points of the demo plant's valves. @example demoPoints(DEMO_VALVES)[0].kind // 'cock' */
export function demoPoints(sheets: readonly SheetText[]): readonly PointText[] {
  const all = sheets.flatMap((sheet) =>
    Object.entries(KINDS).flatMap(([name, kind]) => {
      const tag = sheet[name] ?? '';
      return tag === '' ? [] : [{ tag, kind, place: sheet.location ?? '', lockable: true }];
    }),
  );
  return all.filter(({ tag }, at) => all.findIndex((one) => one.tag === tag) === at);
}
