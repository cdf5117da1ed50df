import { type AuditedJob, type Exception, exception, type JobLine } from './exception.ts';

/** Rows at a seat or a stop read the same every time, and a stem that was turned moves the seat. */
const MIDDLE = { from: 0.15, to: 0.85 };
/** Coarser than this, and an honest reader lands on the same mark again and again. */
const GRID_MAX = 0.005;
const SCATTER_MIN = 0.0006;
const FREEDOM_MIN = 6;

interface Point {
  readonly signal: number;
  /** Of the travel of the sheet. */
  readonly travel: number;
}

/**
 * Stroke readings that lie on straight lines better than anybody reads a dial.
 *
 * The test: all stroke rows of a job in the middle of the travel, a straight line through each run of one direction, all
 * of one slope, and the scatter about these lines (root of the sum of squares over the degrees of freedom), pooled over the job. It is told where there are
 * at least 6 degrees of freedom, readings are given to 0.5 % of travel or finer, and the scatter is below 0.06 % of travel.
 * Friction, offset and a shifted range move whole runs and do not count; a valve that bows only adds scatter.
 *
 * False alarms: 3 in 10,000 simulated honest jobs with a reading error of 0.25 % of travel (one standard deviation) given to
 * 0.1 %, fewer than 20 in 10,000 given to 0.5 %. Both are simulated again by the tests; no plant has been measured.
 */
export function tooPerfect({ opened, lines }: AuditedJob): readonly Exception[] {
  const span = opened.sheet.travelM ?? 0;
  const rows = lines.filter(({ kind }) => kind === 'row-read');
  if (span <= 0 || rows.length === 0) return [];
  if (rows.some((row) => gridOf(row, span) > GRID_MAX)) return [];
  const { squares, freedom } = residual(runsOf(rows, span).filter((run) => run.length > 1));
  if (freedom < FREEDOM_MIN) return [];
  const scatter = Math.sqrt(squares / freedom);
  const last = rows.at(-1);
  if (scatter >= SCATTER_MIN || last === undefined) return [];
  const what = `scatter ${(scatter * 100).toFixed(3)} % of travel, with ${freedom} degrees of freedom`;
  return [{ ...exception('tooPerfect', last, what), lines: rows.map(({ place }) => place) }];
}

const readingOf = ({ inputs }: JobLine, field: string) =>
  (inputs.readings ?? []).find((reading) => reading.field === field);

/** The last digit that was given, of the travel. */
function gridOf(row: JobLine, span: number): number {
  const travel = readingOf(row, 'travelM');
  const digits = /^\s*(-?\d*(?:[.,](\d*))?)/.exec(travel?.typed ?? '');
  const value = Number((digits?.[1] ?? '').replace(',', '.'));
  if (travel === undefined || !(Math.abs(value) > 0)) return 0;
  const unitSi = Math.abs(travel.valueSi / value);
  return (10 ** -(digits?.[2]?.length ?? 0) * unitSi) / span;
}

/** Rows of one table that go one way. */
function runsOf(rows: readonly JobLine[], span: number): readonly (readonly Point[])[] {
  const runs: Point[][] = [];
  let before: { readonly step: string; readonly signal: number; readonly way: number } | null = null;
  for (const row of rows) {
    const signal = readingOf(row, 'signalPa')?.valueSi;
    const travel = readingOf(row, 'travelM')?.valueSi;
    if (signal === undefined || travel === undefined) continue;
    const { step } = row.inputs;
    const way: number = before?.step === step ? Math.sign(signal - before.signal) : 0;
    if (before === null || before.step !== step || (before.way !== 0 && way !== before.way)) runs.push([]);
    const share = travel / span;
    if (share > MIDDLE.from && share < MIDDLE.to) runs.at(-1)?.push({ signal, travel: share });
    before = { step, signal, way };
  }
  return runs.filter((run) => new Set(run.map(({ signal }) => signal)).size > 1);
}

/** What is left beside the best straight lines: one of its own for each run, all of one slope, as one spring gives. */
function residual(runs: readonly (readonly Point[])[]): {
  readonly squares: number;
  readonly freedom: number;
} {
  const about = runs.flatMap((run) => {
    const mean = (of: (point: Point) => number): number =>
      run.reduce((sum, point) => sum + of(point), 0) / run.length;
    const [signal, travel] = [mean((point) => point.signal), mean((point) => point.travel)];
    return run.map((point) => ({ signal: point.signal - signal, travel: point.travel - travel }));
  });
  const sum = (of: (point: Point) => number): number => about.reduce((total, point) => total + of(point), 0);
  const slope = sum(({ signal, travel }) => signal * travel) / sum(({ signal }) => signal ** 2);
  return {
    squares: sum(({ signal, travel }) => (travel - slope * signal) ** 2),
    freedom: about.length - runs.length - 1,
  };
}
