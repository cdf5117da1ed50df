/** Curves that are drawn by working the same calculation out again, with one input varied. */
import { CalcError } from '../../../procedures/calculations/calc-error.ts';
import { axisOf, type Line, numberIn, type Picture, plotted, type Worked } from './picture.ts';

type Values = Readonly<Record<string, unknown>>;

interface Sweep {
  readonly title: string;
  /** The input that is varied, and between what, in SI. */
  readonly over: string;
  readonly from: (values: Values) => number;
  readonly to: (values: Values) => number;
  /** The outputs that are drawn, all of one unit. */
  readonly lines: readonly string[];
  readonly yTitle: string;
  readonly xTitle?: string;
  readonly sentence: string;
}

const zero = (): number => 0;
const named = (name: string) => (values: Values) => numberIn(values, name);
/** As far as twice what was asked, and to `atLeast` where that is more. */
const twice =
  (name: string, atLeast = 0) =>
  (values: Values) =>
    Math.max(2 * numberIn(values, name), atLeast);

const SIGNAL = {
  over: 'signal',
  from: named('rangeLow'),
  to: named('rangeHigh'),
  lines: ['travelM'],
  yTitle: 'Travel',
  xTitle: 'Signal',
} as const;
const NOZZLE = {
  title: 'Back pressure against gap',
  over: 'gapM',
  from: zero,
  to: (values: Values) => Math.max(2 * numberIn(values, 'gapM'), numberIn(values, 'nozzleDiameterM') / 8),
  lines: ['backPressurePa'],
  yTitle: 'Back pressure',
  sentence: 'The back pressure falls from the supply towards nothing as the flapper opens.',
} as const;
const OUTLET = {
  over: 'outletPaAbs',
  from: (values: Values) => 0.001 * numberIn(values, 'inletPaAbs'),
  to: (values: Values) => 0.999 * numberIn(values, 'inletPaAbs'),
} as const;

/** By calculation. */
const SWEEPS: Readonly<Record<string, Sweep>> = {
  'signal-travel': {
    ...SIGNAL,
    title: 'Travel over signal',
    sentence: 'Travel over the signal, end to end.',
  },
  'current-travel': {
    ...SIGNAL,
    title: 'Travel over current',
    sentence: 'Travel over the current, end to end.',
  },
  'seating-travel': {
    ...SIGNAL,
    title: 'Travel over signal after the seating turns',
    sentence: 'Travel over the signal; the seat stops the plug before the end of the range.',
  },
  'inherent-characteristic': {
    title: 'Inherent characteristic',
    over: 'relativeTravel',
    from: zero,
    to: () => 1,
    lines: ['relativeFlowCoefficient'],
    yTitle: 'Share of the rated flow coefficient',
    sentence: 'Share of the rated flow coefficient over the lift.',
  },
  'forces-at-lift': {
    title: 'Forces over the lift, opening positive',
    over: 'liftM',
    from: zero,
    to: named('travelM'),
    lines: ['airN', 'springN', 'plugForceN', 'netN'],
    yTitle: 'Force',
    sentence:
      'Force of air, spring and process over the lift, and their sum; the process force is held as given.',
  },
  'adjuster-turns': {
    title: 'Shift of the bench set over the turns',
    over: 'turns',
    from: (values) => Math.min(0, 2 * numberIn(values, 'turns')),
    to: (values) => Math.max(0, 2 * numberIn(values, 'turns')),
    lines: ['benchSetShiftPa'],
    yTitle: 'Shift of both ends',
    sentence: 'The shift of both bench ends grows with the turns.',
  },
  'seating-turns': {
    title: 'Seat load gained over the turns',
    over: 'turns',
    from: zero,
    to: twice('turns', 4),
    lines: ['seatLoadGainN'],
    yTitle: 'Seat load gained',
    sentence: 'The seat load gained grows with the turns.',
  },
  'liquid-flow': {
    ...OUTLET,
    title: 'Flow over the outlet pressure',
    lines: ['flowM3PerS'],
    yTitle: 'Flow',
    sentence: 'The flow grows as the outlet pressure falls, and no further once the liquid chokes.',
  },
  'gas-flow': {
    ...OUTLET,
    title: 'Flow over the outlet pressure',
    lines: ['flowMolPerS'],
    yTitle: 'Flow',
    sentence: 'The flow grows as the outlet pressure falls, and no further once the gas chokes.',
  },
  'restriction-flow': {
    ...OUTLET,
    title: 'Flow over the outlet pressure',
    lines: ['flowAnrM3PerS'],
    yTitle: 'Flow of air at 20 °C and 100 kPa',
    sentence: 'The flow grows as the outlet pressure falls, and no further below the critical ratio.',
  },
  'hole-flow': {
    ...OUTLET,
    title: 'Flow over the outlet pressure',
    lines: ['massFlowKgPerS'],
    yTitle: 'Mass flow',
    sentence: 'The flow grows as the outlet pressure falls, and no further below the critical ratio.',
  },
  'drop-by-leak': {
    title: 'Fall of pressure over time',
    over: 'elapsedS',
    from: zero,
    to: twice('elapsedS'),
    lines: ['dropPa'],
    yTitle: 'Fall',
    sentence: 'The pressure falls evenly with time.',
  },
  'choked-discharge': {
    title: 'Decay of the pressure',
    over: 'elapsedS',
    from: zero,
    to: twice('elapsedS'),
    lines: ['endPa'],
    yTitle: 'Pressure, gauge',
    sentence: 'The pressure decays fast at first and ever more slowly.',
  },
  'nozzle-back-pressure': NOZZLE,
  'nozzle-back-pressure-simple': NOZZLE,
  verdict: {
    title: 'Chance of a wrong accept over the value',
    over: 'value',
    from: zero,
    to: (values) => 1.5 * Math.max(numberIn(values, 'limit'), Math.abs(numberIn(values, 'value'))),
    lines: ['wrongAcceptChance'],
    yTitle: 'Chance that the true value lies beyond the limit',
    sentence: 'The chance rises from nothing well inside the limit to certainty well beyond it.',
  },
  'guard-band': {
    title: 'What is left of the tolerance over the uncertainty ratio',
    over: 'ratio',
    from: () => 1,
    to: (values) => Math.max(10, numberIn(values, 'ratio')),
    lines: ['factor'],
    yTitle: 'Share of the tolerance',
    sentence: 'The better the gauge against the tolerance, the more of it is left.',
  },
  'air-energy': {
    title: 'Stored energy over the pressure',
    over: 'pressurePaAbs',
    from: named('atmospherePaAbs'),
    to: (values) => 1.5 * numberIn(values, 'pressurePaAbs'),
    lines: ['energyJ'],
    yTitle: 'Energy',
    sentence: 'The energy grows faster than the pressure.',
  },
};

const STEPS = 60;

/** The picture of a calculation that has one of this kind, or null. */
export function swept(worked: Worked): Picture | null {
  const sweep = SWEEPS[worked.calculation.id];
  if (sweep === undefined) return null;
  const { calculation, values, result, units } = worked;
  const [from, to] = [sweep.from(values), sweep.to(values)];
  const places = Array.from({ length: STEPS + 1 }, (_, at) => from + ((to - from) * at) / STEPS);
  const answers = places.flatMap((x) => {
    const answer = answerAt(worked, { ...values, [sweep.over]: x });
    return answer === null ? [] : [{ x, answer }];
  });
  const lines: Line[] = sweep.lines.map((name) => ({
    name: calculation.outputs[name]?.title ?? name,
    points: answers.flatMap(({ x, answer }) => pointsAt(x, answer[name])),
  }));
  const [first = ''] = sweep.lines;
  const here = { x: numberIn(values, sweep.over), y: numberIn(result, sweep.lines.at(-1) ?? first) };
  const inside = here.x >= Math.min(from, to) && here.x <= Math.max(from, to);
  const input = calculation.inputs[sweep.over];
  const dimension = input?.kind === 'number' ? input.dimension : 'ratio';
  return plotted({
    title: sweep.title,
    x: axisOf(sweep.over, { units, title: sweep.xTitle ?? input?.title ?? '', dimension }),
    y: axisOf(first, { units, title: sweep.yTitle }),
    lines,
    marks: inside ? [{ ...here, text: 'here' }] : [],
    sentence: sweep.sentence,
  });
}

function pointsAt(x: number, y: unknown): readonly { readonly x: number; readonly y: number }[] {
  return typeof y === 'number' ? [{ x, y }] : [];
}

/** Where the calculation refuses, the curve has a gap. */
function answerAt({ calculation }: Worked, values: Values): Readonly<Record<string, unknown>> | null {
  try {
    return calculation.run(values);
  } catch (error) {
    if (error instanceof CalcError) return null;
    throw error;
  }
}
