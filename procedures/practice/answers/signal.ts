import type { Build } from '../build.ts';
import { readPressure } from '../gauge.ts';
import { bell } from '../random.ts';
import { rested } from '../run.ts';
import { askedSignal, currentMa } from '../signal-path.ts';
import { restedAt } from '../simulated.ts';
import type { State } from '../state.ts';
import { type At, type Looks, processOf, type Said, seenBy, spanPa, word } from './look.ts';

/** Half a signal, give or take: what the loop happens to ask. */
const USUAL_PERCENT = 60;

function commandPa(at: At, outputPercent: number): number {
  return at.valve.build.frame.signalLowPa + spanPa(at) * askedSignal(at.valve.build, outputPercent);
}

function gaugeOf(at: At, of: { readonly point: 'source' | 'signal'; readonly truePa: number }) {
  const { build } = at.valve;
  return readPressure(build, { ...of, mostPa: 1.5 * build.frame.signalHighPa, random: at.random });
}

function loopCurrent({ valve: { build }, random }: At): Said {
  const asked = currentMa({ ...build, currentFactor: 1 }, USUAL_PERCENT);
  const mA = currentMa(build, USUAL_PERCENT);
  if (mA < 0.5) return word('none');
  return { value: mA - asked + 0.02 * bell(random), readSigma: 0.02 };
}

function sourceOutlet(at: At): Said {
  const { valve, random } = at;
  if (seenBy(random, { there: valve.build.wetFraction > 0, share: 0.6 * valve.build.wetFraction }))
    return word('wanders');
  const state = restedAt(valve, { outputPercent: USUAL_PERCENT, process: processOf(at.hub) });
  const read = gaugeOf(at, { point: 'source', truePa: state.sourcePa });
  return off(at, { read, againstPa: commandPa(at, USUAL_PERCENT) });
}

function off(
  at: At,
  of: { readonly read: { readonly value: number; readonly sigma: number }; readonly againstPa: number },
): Said {
  const factor = 100 / spanPa(at);
  return { value: (of.read.value - of.againstPa) * factor, readSigma: of.read.sigma * factor };
}

function sourceFivePoints(at: At): Said {
  const { valve } = at;
  const errors = [0, 25, 50, 75, 100].map((outputPercent) => {
    const state = restedAt(valve, { outputPercent, process: 'bypassed' });
    const { value } = gaugeOf(at, { point: 'source', truePa: state.sourcePa });
    const asked = askedSignal(valve.build, outputPercent);
    return { asked, error: (value - commandPa(at, outputPercent)) / spanPa(at) };
  });
  const top = errors.reduce((a, b) => (a.asked > b.asked ? a : b));
  const low = errors.reduce((a, b) => (a.asked < b.asked ? a : b));
  if (errors.every(({ error }) => Math.abs(error) < 0.025)) return word('follows');
  if (low.error > 0.5) return word('stays high');
  if (top.error < -0.4 && low.error < 0.1 && !evenly(errors)) return word('weak');
  return top.error < -0.75 ? word('weak') : word('off by a zero or span');
}

/** On a straight line: a zero or a span, and no source that gives out. */
function evenly(errors: readonly { readonly asked: number; readonly error: number }[]): boolean {
  const sorted = [...errors].sort((a, b) => a.asked - b.asked).map(({ error }) => error);
  const [first, , middle, , last] = sorted;
  return Math.abs((middle ?? 0) - ((first ?? 0) + (last ?? 0)) / 2) < 0.05;
}

interface BothGauges {
  readonly state: State;
  readonly moved: State;
}

function moved(at: At): BothGauges {
  const process = processOf(at.hub);
  const state = restedAt(at.valve, { outputPercent: USUAL_PERCENT, process });
  const further = rested(at.valve.build, {
    outputPercent: USUAL_PERCENT - 12,
    process,
    from: structuredClone(state),
  });
  return { state, moved: further };
}

function valveAgainst(at: At, against: 'source' | 'command'): Said {
  const { state, moved: later } = moved(at);
  const atValve = gaugeOf(at, { point: 'signal', truePa: state.signalPa });
  const span = spanPa(at);
  const source = gaugeOf(at, { point: 'source', truePa: state.sourcePa });
  const still = Math.abs(later.signalPa - state.signalPa) < 0.015 * span;
  const sourceMoved = Math.abs(later.sourcePa - state.sourcePa) > 0.06 * span;
  if (atValve.value < 0.02 * span && source.value > 0.15 * span) return word('nothing');
  if (against === 'source' && still && sourceMoved) return word('higher');
  const againstPa = against === 'source' ? source.value : commandPa(at, USUAL_PERCENT);
  const sigma = against === 'source' ? Math.hypot(atValve.sigma, source.sigma) : atValve.sigma;
  return off(at, { read: { value: atValve.value, sigma }, againstPa });
}

/** The same valve with the air shut off at its actuator or positioner: what lies beyond takes nothing. */
function beyondBlocked(build: Build): Build {
  const closed = structuredClone(build);
  for (const hole of ['diaphragmHoleM', 'caseHoleM', 'stemSealHoleM', 'crossHoleM', 'bellowsHoleM'] as const)
    closed[hole] = 0;
  return closed;
}

function blockSourceSide(at: At): Said {
  const outputPercent = askedSignal(at.valve.build, 100) > 0.5 ? 75 : 25;
  const low = (build: Build) => {
    const state = rested(build, { outputPercent, process: 'bypassed' });
    const { value } = gaugeOf(at, { point: 'source', truePa: state.signalPa });
    return (value - commandPa(at, outputPercent)) / spanPa(at) < -0.03;
  };
  if (!low(at.valve.build)) return word('full before and after');
  return word(low(beyondBlocked(at.valve.build)) ? 'stays low' : 'climbs to full');
}

function soapSignalTube(at: At): Said {
  const { valve, random } = at;
  const { signalPa } = restedAt(valve, { outputPercent: USUAL_PERCENT, process: processOf(at.hub) });
  const there = valve.build.tubeHoleM > 0 && signalPa > 4e3;
  return word(seenBy(random, { there, share: 0.96 }) ? 'bubbles' : 'none');
}

function traceTubing({ valve: { build }, random }: At): Said {
  if (seenBy(random, { there: build.tubesCrossed, share: 0.97 })) return word('crossed');
  if (seenBy(random, { there: build.tubeOpen < 1, share: 0.82 })) return word('pinched');
  if (seenBy(random, { there: build.outTubeOpen < 1, share: 0.82 })) return word('pinched behind');
  const shutOff = build.positionerCockOpen === 0;
  return word(seenBy(random, { there: shutOff, share: 0.8 }) ? 'air shut off' : 'right');
}

/** The way of the signal. */
export const looksAtSignal: Looks = {
  loopCurrent,
  sourceOutlet,
  sourceFivePoints,
  valveAgainstSource: (at) => valveAgainst(at, 'source'),
  valveAgainstCommand: (at) => valveAgainst(at, 'command'),
  soapSignalTube,
  traceTubing,
  accessories: ({ valve: { build }, random }) => {
    const booster = build.boosterHunts > 0 || build.boosterSlow > 0;
    const there = build.lockUpShut || build.tripVents || booster;
    return word(seenBy(random, { there, share: booster ? 0.88 : 0.96 }) ? 'tripped' : 'normal');
  },
  blockSourceSide,
};
