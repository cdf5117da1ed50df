/** Pictures that are no sweep of one input: tables of readings, springs, decay, bolts. */
import { axisOf, type Line, numberIn, type Picture, plotted, type Worked } from './picture.ts';

interface StrokeRow {
  readonly signalPa: number;
  readonly travelM: number;
  readonly direction: 'up' | 'down';
}

function rowsIn<T>(values: Readonly<Record<string, unknown>>, name: string): readonly T[] {
  // The calculation has taken them, so they have the shape that its registry entry asks for.
  return values[name] as readonly T[];
}

function stroke({ values, units }: Worked): Picture {
  const rows = rowsIn<StrokeRow>(values, 'rows');
  const way = (direction: 'up' | 'down'): Line => ({
    name: direction === 'up' ? 'signal going up' : 'signal coming down',
    points: rows
      .filter((row) => row.direction === direction)
      .map(({ signalPa, travelM }) => ({ x: signalPa, y: travelM })),
  });
  const low = numberIn(values, 'rangeLowPa') || numberIn(values, 'benchSetLowPa');
  const high = numberIn(values, 'rangeHighPa') || numberIn(values, 'benchSetHighPa');
  const rated = numberIn(values, 'ratedTravelM');
  const opens = values.airAction === 'air-to-open';
  return plotted({
    title: 'Stroke curve',
    x: axisOf('signalPa', { units, title: 'Signal' }),
    y: axisOf('travelM', { units, title: 'Travel' }),
    lines: [
      way('up'),
      way('down'),
      {
        name: 'wanted',
        points: [
          { x: low, y: opens ? 0 : rated },
          { x: high, y: opens ? rated : 0 },
        ],
      },
    ],
    sentence: 'Travel over signal, going up and coming down, beside the line that is wanted.',
  });
}

interface Sample {
  readonly timeS: number;
  readonly travelPercent: number;
}

function step({ values, result, units }: Worked): Picture {
  const samples = rowsIn<Sample>(values, 'samples');
  const began = numberIn(values, 'stepTimeS');
  const after = (name: string, text: string) =>
    typeof result[name] === 'number' ? [{ x: began + result[name], text }] : [];
  return plotted({
    title: 'Step response',
    x: axisOf('timeS', { units }),
    y: axisOf('travelPercent', { units }),
    lines: [
      { name: 'travel', points: samples.map(({ timeS, travelPercent }) => ({ x: timeS, y: travelPercent })) },
    ],
    uprights: [
      { x: began, text: 'step' },
      ...after('deadTimeS', 'dead time'),
      ...after('t63S', 'T63'),
      ...after('t86S', 'T86'),
    ],
    sentence: 'Travel over time, with the input step, the end of the dead time, T63 and T86.',
  });
}

function lag({ values, result, units }: Worked): Picture {
  const [deadS, tauS] = [numberIn(values, 'deadTimeS'), numberIn(values, 'timeConstantS')];
  const places = Array.from({ length: 61 }, (_, at) => ((deadS + 5 * tauS) * at) / 60);
  const at = (timeS: number) => (timeS <= deadS ? 0 : 100 * (1 - Math.exp(-(timeS - deadS) / tauS)));
  return plotted({
    title: 'A lag behind a dead time',
    x: axisOf('timeS', { units }),
    y: axisOf('stepPercent', { units, title: 'Share of the step' }),
    lines: [{ name: 'share of the step', points: places.map((timeS) => ({ x: timeS, y: at(timeS) })) }],
    uprights: [
      { x: numberIn(result, 't63S'), text: 'T63' },
      { x: numberIn(result, 't86S'), text: 'T86' },
    ],
    sentence:
      'Nothing moves during the dead time; then 63 % of the step within one time constant and 86 % within two.',
  });
}

/** Two springs side by side: pressure at both ends of the lift. */
function ranges(
  { units, values }: Worked,
  of: { readonly bench: readonly [number, number]; readonly installed: readonly [number, number] },
): Picture {
  const opens = values.airAction === 'air-to-open';
  const line = (name: string, [low, high]: readonly [number, number]): Line => ({
    name,
    points: [
      { x: 0, y: opens ? low : high },
      { x: 100, y: opens ? high : low },
    ],
  });
  return plotted({
    title: 'Pressure over the opening',
    x: axisOf('percent', { units, title: 'Open' }),
    y: axisOf('pressurePa', { units, title: 'Pressure on the diaphragm' }),
    lines: [line('on the bench', of.bench), line('installed, with the process', of.installed)],
    sentence: 'Bench set and installed range meet at the open end; the process moves the shut end.',
  });
}

function installed(worked: Worked): Picture {
  const { values, result } = worked;
  return ranges(worked, {
    bench: [numberIn(values, 'benchSetLowPa'), numberIn(values, 'benchSetHighPa')],
    installed: [numberIn(result, 'lowPa'), numberIn(result, 'highPa')],
  });
}

function benchWanted(worked: Worked): Picture {
  const { values, result } = worked;
  return ranges(worked, {
    bench: [numberIn(result, 'lowPa'), numberIn(result, 'highPa')],
    installed: [numberIn(values, 'installedLowPa'), numberIn(values, 'installedHighPa')],
  });
}

function decay({ values, result, units }: Worked): Picture {
  const [start, end, elapsed] = ['startPa', 'endPa', 'elapsedS'].map((name) => numberIn(values, name)) as [
    number,
    number,
    number,
  ];
  const tight = end + numberIn(result, 'fallByLeakPa');
  const line = (name: string, to: number): Line => ({
    name,
    points: [
      { x: 0, y: start },
      { x: elapsed, y: to },
    ],
  });
  return plotted({
    title: 'Decay of the pressure',
    x: axisOf('timeS', { units }),
    y: axisOf('pressurePa', { units }),
    lines: [line('as read', end), line('a tight volume, by temperature and barometer alone', tight)],
    sentence:
      'The gauge from start to end beside what a tight volume would have read: between them lies the leak.',
  });
}

function seen({ values, result, units }: Worked): Picture {
  const [waitS, dropPa] = [numberIn(result, 'waitS'), numberIn(result, 'seenDropPa')];
  return plotted({
    title: 'Fall of pressure over the wait',
    x: axisOf('timeS', { units, title: 'Wait' }),
    y: axisOf('dropPa', { units, title: 'Fall' }),
    lines: [
      {
        name: 'fall by the leak',
        points: [
          { x: 0, y: 0 },
          { x: 1.5 * waitS, y: 1.5 * dropPa },
        ],
      },
      {
        name: 'step or drift of the gauge',
        points: [
          { x: 0, y: numberIn(values, 'smallestPa') },
          { x: 1.5 * waitS, y: numberIn(values, 'smallestPa') },
        ],
      },
    ],
    marks: [{ x: waitS, y: dropPa, text: 'seen' }],
    sentence: 'The leak is seen once the fall is three times the step or drift of the gauge.',
  });
}

interface Bolt {
  readonly bolt: number;
  readonly rightM: number;
  readonly upM: number;
  readonly rank: number;
}

function bolts({ result }: Worked): Picture {
  const circle = rowsIn<Bolt>(result, 'circle');
  const order = rowsIn<number>(result, 'order').join(', ');
  return {
    plot: null,
    bolts: {
      bolts: circle.map(({ bolt, rightM, upM, rank }) => ({ bolt, right: rightM, up: upM, rank })),
      sentence: `Bolts numbered clockwise from the top, tightened in the order ${order}; each nut carries its place in the order.`,
    },
    table: null,
  };
}

/** By calculation. */
export const OWN_PICTURES: Readonly<Record<string, (worked: Worked) => Picture>> = {
  'stroke-table': stroke,
  'stroke-friction': stroke,
  'step-response': step,
  'first-order-times': lag,
  'installed-range': installed,
  'bench-set-wanted': benchWanted,
  'pressure-decay': decay,
  'wait-for-leak': seen,
  'cross-pattern': bolts,
};
