/** A record of the loop as page, paper and programs show it: drawn, judged in words, and as numbers. */
import type { Answer } from '../../../procedures/job.ts';
import { LOOP_LIMITS, type LoopReason } from '../../../procedures/troubleshooting/loop-record/judge.ts';
import { readLoopCsv } from '../../../procedures/troubleshooting/loop-record/read-csv.ts';
import type { LoopSample } from '../../../procedures/troubleshooting/loop-record/samples.ts';
import { loopOrbit, loopTrend } from '../../../views/pictures/loop-record.ts';

export interface LoopView {
  readonly place: number;
  /** What it says, in a sentence. */
  readonly said: string;
  readonly rows: readonly { readonly label: string; readonly value: string }[];
  /** Some rows of the record, evenly through it: every one stands in the log. */
  readonly table: { readonly heads: readonly string[]; readonly rows: readonly (readonly string[])[] };
  readonly trend: string;
  readonly orbit: string;
}

/** Rows of the record that are written out. */
const ROWS_SHOWN = 12;

const REASONS: Readonly<Record<Exclude<LoopReason, 'agree'>, string>> = {
  disagree: 'the methods contradict each other',
  'one method': 'it allows one method alone, and two must agree',
  open: 'fewer than two methods come to an answer',
  'no swing': 'the output hardly moves in it',
  'few periods': 'it holds fewer than six half swings',
  'not regular': 'it does not swing regularly',
  'too coarse': 'it has fewer than ten rows in a half swing',
  gaps: 'rows are missing in it',
  'at its limit': 'the output stands at the end of its range',
};

const DRAWN = new WeakMap<object, LoopView | null>();

/** The view of the record that came with an answer; null where none did. Drawn once for each line. */
export function loopView(answer: Answer): LoopView | null {
  const { csv } = answer;
  const table = csv?.loopRecord;
  if (csv === undefined || table === undefined) return null;
  const before = DRAWN.get(csv);
  if (before !== undefined) return before;
  const view = drawn(answer, readLoopCsv(table).samples);
  DRAWN.set(csv, view);
  return view;
}

function drawn(answer: Answer, samples: readonly LoopSample[]): LoopView | null {
  if (samples.length === 0) return null;
  const said = verdictOf(answer);
  return {
    place: answer.place,
    said,
    rows: figuresOf(answer),
    table: tableOf(samples),
    trend: trendOf(samples, said),
    orbit: orbitOf(samples, said),
  };
}

function verdictOf({ figures }: Answer): string {
  if (figures.found === 'sticks') return 'The valve sticks: two published methods agree.';
  if (figures.found === 'no sign') return 'No sign that the valve sticks: two published methods agree.';
  const reason = REASONS[figures.loopReason as keyof typeof REASONS];
  return `No verdict: ${reason ?? 'it could not be judged'}.`;
}

function figuresOf({ figures }: Answer): LoopView['rows'] {
  const number = (name: string, digits: number): string | null => {
    const value = figures[name];
    return typeof value === 'number' ? value.toFixed(digits).replace('-', '\u2212') : null;
  };
  const index = (name: keyof typeof LOOP_LIMITS): string => {
    const { sticksFrom, notTo } = LOOP_LIMITS[name];
    const value = number(name, 2);
    const limits = `${sticksFrom} and more sticks, ${String(notTo).replace('-', '\u2212')} and less does not`;
    return value === null ? 'not to be had' : `${value} (${limits})`;
  };
  const period = number('periodS', 0);
  return [
    { label: 'length', value: `${number('loopS', 0) ?? '0'} s, ${number('loopRows', 0) ?? '0'} rows` },
    { label: 'output swings by', value: `${number('swingPercent', 1) ?? '0.0'} %` },
    { label: 'period', value: period === null ? 'none' : `${period} s` },
    { label: 'shape, triangle or sine', value: index('curveFit') },
    { label: 'error, relay or sine', value: index('relayFit') },
    { label: 'output moves, stem stands', value: index('shape') },
  ];
}

function tableOf(samples: readonly LoopSample[]): LoopView['table'] {
  const [first] = samples;
  const has = { position: first?.positionPercent !== null, setPoint: first?.setPoint !== null };
  const every = Math.max(1, Math.ceil(samples.length / ROWS_SHOWN));
  const shown = samples.filter((_, at) => at % every === 0);
  const columns = [
    shown.map(({ timeS }) => timeS),
    shown.map(({ outputPercent }) => outputPercent),
    shown.map(({ process }) => process),
    ...(has.position ? [shown.map(({ positionPercent }) => positionPercent ?? 0)] : []),
    ...(has.setPoint ? [shown.map(({ setPoint }) => setPoint ?? 0)] : []),
  ].map(alike);
  const rows = shown.map((_, at) => columns.map((column) => column[at] ?? ''));
  return {
    heads: [
      'time, s',
      'output, %',
      'process value',
      ...(has.position ? ['position, %'] : []),
      ...(has.setPoint ? ['set point'] : []),
    ],
    rows,
  };
}

/** Figures of one column, with as many decimals as the longest of them has. */
function alike(values: readonly number[]): readonly string[] {
  const digits = Math.max(0, ...values.map((value) => cell(value).split('.')[1]?.length ?? 0));
  return values.map((value) => value.toFixed(digits).replace('-', '\u2212'));
}

function cell(value: number): string {
  return String(Number(value.toPrecision(5))).replace('-', '\u2212');
}

function trendOf(samples: readonly LoopSample[], said: string): string {
  const has = (of: 'positionPercent' | 'setPoint') => samples[0]?.[of] !== null;
  const signal = { name: 'output', values: samples.map((one) => one.outputPercent) };
  const position = { name: 'position', values: samples.map((one) => one.positionPercent ?? 0) };
  const process = { name: 'process value', values: samples.map((one) => one.process) };
  const wanted = { name: 'set point', values: samples.map((one) => one.setPoint ?? 0) };
  return loopTrend({
    title: 'Trend',
    timesS: samples.map((one) => one.timeS),
    bands: [
      {
        axis: has('positionPercent') ? 'output, %; position dashed' : 'output, %',
        traces: has('positionPercent') ? [signal, position] : [signal],
      },
      {
        axis: has('setPoint') ? 'process value; set point dashed' : 'process value',
        traces: has('setPoint') ? [process, wanted] : [process],
      },
    ],
    sentence: `Trend of output and process value over ${cell(samples.at(-1)?.timeS ?? 0)} seconds. ${said}`,
  });
}

function orbitOf(samples: readonly LoopSample[], said: string): string {
  const hasPosition = samples[0]?.positionPercent !== null;
  const up = hasPosition
    ? { name: 'position, %', values: samples.map((one) => one.positionPercent ?? 0) }
    : { name: 'process value', values: samples.map((one) => one.process) };
  const what = hasPosition ? 'position' : 'process value';
  return loopOrbit({
    title: `Output against ${what}`,
    across: { name: 'output, %', values: samples.map((one) => one.outputPercent) },
    up,
    sentence: `Output across, ${what} upwards. ${said}`,
  });
}
