import type { CheckId } from '../../troubleshooting/checks.ts';
import { checkOf } from '../../troubleshooting/checks.ts';
import type { OpeningId } from '../../troubleshooting/openings.ts';
import { type ValveFacts, valveFactsOf } from '../../troubleshooting/valve-facts.ts';
import { LOOKS, seeCheck } from '../answer.ts';
import type { Said } from '../answers/look.ts';
import { preparing } from '../answers/prepare.ts';
import { signalOpens } from '../build.ts';
import { readPressure } from '../gauge.ts';
import { atOnce } from '../in-steps.ts';
import { keptInSteps, lookRandom, restingAt, type SimulatedValve } from '../simulated.ts';

/** What the operator of the simulated valve says of it, and what the control room reads. */
export interface Complaint {
  readonly opening: OpeningId;
  /** Controller output, as signal. */
  readonly outputPercent: number;
  /** On the gauge at the valve; null where none is fitted. */
  readonly signalPa: number | null;
}

const OUTPUT_PERCENT = 60;

/** The first of these that fits is what the operator has seen; the plainest stands first. */
const SEEN: readonly (readonly [opening: OpeningId, check: CheckId, words: readonly string[]])[] = [
  ['leaksAtPacking', 'fluidOutside', ['gland']],
  ['doesNotMove', 'smallStep', ['no move']],
  ['hunts', 'smallStep', ['swings']],
  ['sticksThenJumps', 'smallStep', ['jumps']],
  ['slow', 'smallStep', ['slow']],
  ['movesPartWay', 'strokeByController', ['short of open', 'short of shut']],
  ['passesWhenShut', 'leakShut', ['passes', 'passes much']],
  ['hunts', 'trend', ['fast swing', 'saw-tooth']],
  ['flowWrong', 'flowAgainstTravel', ['more', 'less', 'does not follow']],
];

/**
 * What is complained of. A sound valve is complained of as well: its loop is said to control poorly.
 * @example complaintOf(simulatedValve(sheet, { faults: [], seed: 7 })).opening // 'controlsPoorly'
 */
export function complaintOf(valve: SimulatedValve): Complaint {
  return atOnce(complaining(valve));
}

/** The same in steps, of which none takes long. */
export function* complaining(valve: SimulatedValve): Generator<void, Complaint> {
  return yield* keptInSteps(valve, { key: 'complaint', steps: () => workOut(valve) });
}

function* workOut(valve: SimulatedValve): Generator<void, Complaint> {
  const facts = valveFactsOf(valve.build.frame.sheet);
  const signalPa = yield* signalOnGauge(valve, facts);
  for (const [opening, check, words] of SEEN) {
    const word = yield* seenWord(valve, check);
    if (words.includes(word)) return { opening, outputPercent: OUTPUT_PERCENT, signalPa };
    yield;
  }
  return { opening: 'controlsPoorly', outputPercent: OUTPUT_PERCENT, signalPa };
}

function* seenWord(valve: SimulatedValve, check: CheckId): Generator<void, string> {
  if (LOOKS[check] === undefined) return '';
  const hub = checkOf(check).hubs[0] ?? 'in service';
  yield* preparing(valve, { check, hub });
  return wordOf(check, seeCheck(valve, { check, hub, random: lookRandom(valve, `told ${check}`) }));
}

/** The word of a look: what was said, or the band that its number falls into. */
export function wordOf(check: CheckId, said: Said): string {
  if ('word' in said) return said.word;
  if ('cannotTell' in said) return '';
  const bands = Object.entries(checkOf(check).measured?.bands ?? {});
  const away = ([, [low, high]]: (typeof bands)[number]) => Math.max(low - said.value, said.value - high, 0);
  return bands.toSorted((a, b) => away(a) - away(b))[0]?.[0] ?? '';
}

function* signalOnGauge(valve: SimulatedValve, facts: ValveFacts): Generator<void, number | null> {
  if (!facts.gaugesFitted.includes('signal')) return null;
  const { frame } = valve.build;
  const opening = signalOpens(frame) ? OUTPUT_PERCENT : 100 - OUTPUT_PERCENT;
  const state = yield* restingAt(valve, { outputPercent: opening, process: 'on' });
  const read = readPressure(valve.build, {
    point: 'signal',
    truePa: state.signalPa,
    mostPa: 1.5 * frame.signalHighPa,
    random: lookRandom(valve, 'told signal'),
  });
  return read.value;
}
