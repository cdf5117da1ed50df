import { ABOVE_ZERO, oneOf, refuseOutside } from './checks.ts';
import { toSi } from './units.ts';

/** FCI lists ports in inches, IEC and GB the same rows in millimetres. */
export type ClassViSizes = 'inch' | 'millimetre';

export interface ClassViRow {
  readonly portIn: number;
  readonly portMm: number;
  readonly mlPerMin: number;
  /** With the tube of the standard; not given above 8 in. The millilitres decide. */
  readonly bubblesPerMin: number | null;
}

/** Leak of a soft seat by port [S-19]; rows above 8 in from a sister standard and [S-20]. */
export const CLASS_VI_ROWS: readonly ClassViRow[] = [
  { portIn: 1, portMm: 25, mlPerMin: 0.15, bubblesPerMin: 1 },
  { portIn: 1.5, portMm: 40, mlPerMin: 0.3, bubblesPerMin: 2 },
  { portIn: 2, portMm: 50, mlPerMin: 0.45, bubblesPerMin: 3 },
  { portIn: 2.5, portMm: 65, mlPerMin: 0.6, bubblesPerMin: 4 },
  { portIn: 3, portMm: 80, mlPerMin: 0.9, bubblesPerMin: 6 },
  { portIn: 4, portMm: 100, mlPerMin: 1.7, bubblesPerMin: 11 },
  { portIn: 6, portMm: 150, mlPerMin: 4, bubblesPerMin: 27 },
  { portIn: 8, portMm: 200, mlPerMin: 6.75, bubblesPerMin: 45 },
  { portIn: 10, portMm: 250, mlPerMin: 11.1, bubblesPerMin: null },
  { portIn: 12, portMm: 300, mlPerMin: 16, bubblesPerMin: null },
  { portIn: 14, portMm: 350, mlPerMin: 21.6, bubblesPerMin: null },
  { portIn: 16, portMm: 400, mlPerMin: 28.4, bubblesPerMin: null },
];

export interface ClassViFigure {
  readonly flowM3PerS: number;
  readonly mlPerMin: number;
  readonly bubblesPerMin: number | null;
  /** The row's port in m, or the two that the figure lies between. */
  readonly rowsM: readonly number[];
}

/** A seat this close to a row takes the row. */
const SAME_ROW_M = 0.002;

/**
 * The tabled leak of a class VI seat.
 *
 * Shape: a port and whose sizes in, a flow out. Within 2 mm of a row the row; between rows linear in the diameter squared
 * Valid: up to 400 mm (16 in) and 2 mm more; smaller ports take the first row.
 * @param portDiameterM  above 0, at most 0.402 (millimetre sizes) or 0.4084 (inch sizes)
 * @param sizes          inch for FCI, millimetre for IEC and GB
 * @returns flow in m³/s and ml/min, bubbles a minute where the table gives them, the rows used
 * @throws CalcError CALC-001 or CALC-002 by the name of the input; CALC-005 if the sizes are unknown
 * @source [S-19] table and [S-20] interpolation with the diameter squared
 * @example classViFigure({ portDiameterM: 0.09, sizes: 'millimetre' }).mlPerMin // 1.277778
 * @example classViFigure({ portDiameterM: 0.1016, sizes: 'inch' }).bubblesPerMin // 11
 */
export function classViFigure(input: {
  readonly portDiameterM: number;
  readonly sizes: ClassViSizes;
}): ClassViFigure {
  const { portDiameterM } = input;
  const sizes = oneOf<ClassViSizes>({ name: 'sizes', value: input.sizes, choices: ['inch', 'millimetre'] });
  const rows = CLASS_VI_ROWS.map((row) => ({
    ...row,
    portM: sizes === 'inch' ? toSi({ value: row.portIn, unit: 'in' }) : row.portMm / 1000,
  }));
  const largestM = rows.at(-1)?.portM ?? 0;
  refuseOutside({ portDiameterM }, ABOVE_ZERO);
  refuseOutside({ portDiameterM }, { atMost: largestM + SAME_ROW_M });
  const after = rows.findIndex(({ portM }) => portM > portDiameterM);
  const [lower, upper] = [rows[(after === -1 ? rows.length : after) - 1], rows[after]];
  const near = [lower, upper].find(
    (row) => row !== undefined && Math.abs(row.portM - portDiameterM) <= SAME_ROW_M + 1e-9,
  );
  const row = near ?? (lower === undefined ? upper : undefined);
  if (row !== undefined) return figure({ ...row, rowsM: [row.portM] });
  if (lower === undefined || upper === undefined)
    throw new Error(`no rows around a port of ${portDiameterM} m`);
  const share = (portDiameterM ** 2 - lower.portM ** 2) / (upper.portM ** 2 - lower.portM ** 2);
  const mlPerMin = lower.mlPerMin + share * (upper.mlPerMin - lower.mlPerMin);
  return figure({ mlPerMin, bubblesPerMin: null, rowsM: [lower.portM, upper.portM] });
}

function figure(of: {
  readonly mlPerMin: number;
  readonly bubblesPerMin: number | null;
  readonly rowsM: readonly number[];
}): ClassViFigure {
  const { mlPerMin, bubblesPerMin, rowsM } = of;
  return { flowM3PerS: toSi({ value: mlPerMin, unit: 'ml/min' }), mlPerMin, bubblesPerMin, rowsM };
}
