/**
 * The three measures of the search for a fault, side by side and never mixed, with their goals. The code is that of the
 * tests. `--runs` draws for each kind of valve in the table world, `--models` small models, `--every` every so many-th
 * cause in the simulator world, `--kinds` so many kinds of valve, `--seed` other draws. A size of 0 leaves its world out.
 */
import { parseArgs } from 'node:util';
import { modelOfValve } from '../../procedures/troubleshooting/engine/model-of-valve.ts';
import { furtherKinds, valveKinds } from '../procedures/practice/demo-sheets.ts';
import { simulatorWorld } from '../procedures/practice/measure-simulator.ts';
import { againstBest, ONE_LOOK, WITH_SLIPS } from '../procedures/troubleshooting/exact/measure.ts';
import { mostThatCanBeKnown, tableWorld } from '../procedures/troubleshooting/measure-table.ts';
import type { Figures } from '../procedures/troubleshooting/simulate.ts';
import { VALVES } from '../procedures/troubleshooting/valves.ts';

const NUMBERS = { runs: '40', models: '20', every: '6', kinds: '2', seed: '1' } as const;
const { values } = parseArgs({
  options: {
    runs: { type: 'string', default: NUMBERS.runs },
    models: { type: 'string', default: NUMBERS.models },
    every: { type: 'string', default: NUMBERS.every },
    kinds: { type: 'string', default: NUMBERS.kinds },
    seed: { type: 'string', default: NUMBERS.seed },
  },
});

function asked(name: keyof typeof NUMBERS): number {
  const number = Number(values[name]);
  if (!Number.isInteger(number) || number < 0) throw new Error(`--${name} wants a whole number`);
  return number;
}

const seed = asked('seed');

function say(cells: readonly (string | number)[]): void {
  const texts = cells.map((cell) => (typeof cell === 'number' ? cell.toFixed(3) : cell));
  console.log(texts.map((text, at) => (at === 0 ? text.padEnd(64) : text.padStart(10))).join(' '));
}

function sayTableWorld(): void {
  console.log('\n(a) TABLE WORLD: faults drawn by prior, answers drawn from the table of the engine');
  say([
    'faults alone; +- is the standard error',
    'first',
    '+-',
    'first 3',
    '+-',
    'minutes',
    'said-true',
    'said-known',
  ]);
  say(['goal', '>= 0.92', '', '>= 0.99', '', '', '+-0.03', '+-0.03']);
  for (const [kind, facts] of Object.entries(VALVES).slice(0, asked('kinds')))
    for (const extraMisread of [0, 0.1]) {
      const of = { runs: asked('runs'), seed, ...(extraMisread > 0 ? { extraMisread } : {}) };
      const model = modelOfValve(facts);
      const { single, advised, statedLessRight, statedLessKnown } = tableWorld(model, of);
      const slips = extraMisread > 0 ? ', 10 % extra misreads, untold' : '';
      const said = [statedLessRight, statedLessKnown];
      say([`${kind}${slips}`, ...withError(single), advised.minutes, ...said]);
      for (const looks of [1, 3]) {
        const most = mostThatCanBeKnown(model, { ...of, looks });
        say([`  every check read ${looks === 1 ? 'once' : 'three times'}`, ...withError(most), most.minutes]);
      }
    }
}

/** First and first three, each with the standard error of so many draws. */
function withError({ first, firstThree, runs }: Figures): readonly number[] {
  return [first, firstThree].flatMap((fraction) => [fraction, Math.sqrt((fraction * (1 - fraction)) / runs)]);
}

function sayExactModels(): void {
  console.log(
    '\n(b) EXACT MODELS: expected minutes to a cured valve over the least possible, worked out whole',
  );
  say(['', 'mean', 'worst', 'as good']);
  say(['goal', '<= 1.005', '<= 1.200']);
  const sizes = { 'each check once, nobody slips': ONE_LOOK, 'slips, up to three looks': WITH_SLIPS };
  for (const [kind, size] of Object.entries(sizes)) {
    const figures = againstBest({ size, models: asked('models'), seed });
    say([kind, figures.meanRatio, figures.worstRatio, figures.asGoodAsBestFraction]);
  }
}

function saySimulatorWorld(): void {
  console.log('\n(c) SIMULATOR WORLD: answers from forces and air; the last kinds are held out');
  say(['', 'first', 'min/list', 'sound', 'both in 3']);
  say(['goal', '>= 0.90', '<= 0.600', '>= 0.98', '>= 0.70']);
  const kinds = { ...firstOf(valveKinds()), ...firstOf(furtherKinds(), 'held out: ') };
  for (const [kind, sheet] of Object.entries(kinds)) {
    const of = { sheet, seed, everyNth: asked('every'), soundRuns: 10 };
    const { first, minutes, minutesByTextbook, sound, pairs } = simulatorWorld({
      ...of,
      severities: [0.25, 0.5, 0.8],
    });
    say([kind, first, minutes / minutesByTextbook, sound.calledSound, pairs.bothInFirstThree]);
  }
}

function firstOf<One>(kinds: Readonly<Record<string, One>>, before = ''): Readonly<Record<string, One>> {
  const some = Object.entries(kinds).slice(0, asked('kinds'));
  return Object.fromEntries(some.map(([kind, one]) => [`${before}${kind}`, one]));
}

if (asked('runs') > 0) sayTableWorld();
if (asked('models') > 0) sayExactModels();
if (asked('every') > 0) saySimulatorWorld();
