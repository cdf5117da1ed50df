/** What the templates draw of a calculation, and the same as figures. Plain data. */
import type { CalcResult, Calculation } from '../../../procedures/calculations/calculation-types.ts';
import { dimensionOfName, titleOf } from '../../../procedures/calculations/quantity-names.ts';
import type { Dimension, UnitId } from '../../../procedures/calculations/unit-table.ts';
import { fromSi, preferredUnit, type UnitSystem, unitFor } from '../../../procedures/calculations/units.ts';
import type { BoltCircle } from '../../../views/pictures/bolt-circle.ts';
import type { Plot, PlotLine } from '../../../views/pictures/plot.ts';
import { figure } from '../figure.ts';

export interface PictureTable {
  readonly title: string;
  readonly columns: readonly { readonly label: string; readonly number: boolean }[];
  readonly rows: readonly (readonly string[])[];
}

export interface Picture {
  readonly plot: Plot | null;
  readonly bolts: BoltCircle | null;
  readonly table: PictureTable | null;
}

/** A calculation that was worked out. */
export interface Worked {
  readonly calculation: Calculation;
  readonly values: Readonly<Record<string, unknown>>;
  readonly result: CalcResult;
  readonly units: UnitSystem;
}

/** One axis: what stands on it, in which unit. */
export interface Axis {
  readonly title: string;
  readonly unit: UnitId;
}

interface AxisOf {
  readonly units: UnitSystem;
  /** As on the axis; left out: what the quantity is called anyway. */
  readonly title?: string;
  /** Where the name does not say it. */
  readonly dimension?: Dimension;
}

export function axisOf(name: string, { units, title, dimension = dimensionOfName(name) }: AxisOf): Axis {
  return { title: title ?? titleOf(name), unit: preferredUnit(dimension, units) };
}

function axisWords({ title, unit }: Axis): string {
  const { label } = unitFor(unit);
  return label === '' ? title : `${title}, ${label}`;
}

export interface Line {
  readonly name: string;
  /** SI. */
  readonly points: readonly { readonly x: number; readonly y: number }[];
}

export interface PlotOf {
  readonly title: string;
  readonly x: Axis;
  readonly y: Axis;
  readonly lines: readonly Line[];
  readonly marks?: readonly { readonly x: number; readonly y: number; readonly text: string }[];
  readonly uprights?: readonly { readonly x: number; readonly text: string }[];
  readonly sentence: string;
}

/** So many lines of figures stand for a curve. */
const ROWS_MAX = 12;

/** A plot in the units of its reader, with its figures as a table. */
export function plotted({ title, x, y, lines, marks = [], uprights = [], sentence }: PlotOf): Picture {
  const [inX, inY] = [x, y].map(
    ({ unit }) =>
      (valueSi: number) =>
        fromSi({ valueSi, unit }),
  ) as [(valueSi: number) => number, (valueSi: number) => number];
  const drawn: PlotLine[] = lines.map(({ name, points }) => ({
    name,
    points: points.map((point) => ({ x: inX(point.x), y: inY(point.y) })),
  }));
  return {
    plot: {
      title,
      xAxis: axisWords(x),
      yAxis: axisWords(y),
      lines: drawn,
      marks: marks.map((mark) => ({ ...mark, x: inX(mark.x), y: inY(mark.y) })),
      uprights: uprights.map((mark) => ({ ...mark, x: inX(mark.x) })),
      sentence,
    },
    bolts: null,
    table: tableOf({ title, x, y, lines }),
  };
}

/** Lines over the same places share the rows; where each has places of its own, they stand below each other. */
function tableOf({ title, x, y, lines }: Pick<PlotOf, 'title' | 'x' | 'y' | 'lines'>): PictureTable {
  const columns = [
    { label: 'line', number: false },
    ...[x, y].map((axis) => ({ label: axis.title, number: true })),
  ];
  const rows = lines.flatMap(({ name, points }) =>
    thinned(points).map((point) => [
      name,
      figure({ valueSi: point.x, unit: x.unit }),
      figure({ valueSi: point.y, unit: y.unit }),
    ]),
  );
  return { title, columns, rows };
}

function thinned<T>(points: readonly T[]): readonly T[] {
  if (points.length <= ROWS_MAX) return points;
  const last = points.length - 1;
  return Array.from({ length: ROWS_MAX }, (_, at) => points[Math.round((at * last) / (ROWS_MAX - 1))] as T);
}

/** An input that is known to be a number. */
export function numberIn(values: Readonly<Record<string, unknown>>, name: string): number {
  const value = values[name];
  return typeof value === 'number' ? value : 0;
}
