import { airAtTravelOff } from '../../troubleshooting/readings/axis.ts';
import { actuatorGauge } from '../../troubleshooting/valve-facts.ts';
import type { Build } from '../build.ts';
import { readPressure, readTravel } from '../gauge.ts';
import { atOnce } from '../in-steps.ts';
import { rested, run, running } from '../run.ts';
import { keptInSteps, restedAt, restingAt, type SimulatedValve } from '../simulated.ts';
import { type State, stateAt } from '../state.ts';
import { type At, type Looks, pointerAt, processOf, type Said, turns, word } from './look.ts';
import { jumpsOf, type Stroke, strokeOf, stroking } from './strokes.ts';

function travelAgainstOutput(at: At): Said {
  const { valve } = at;
  const process = processOf(at.hub);
  const low = restedAt(valve, { outputPercent: 40, process });
  const high = rested(valve.build, { outputPercent: 65, process, from: structuredClone(low) });
  // Against what it does when nothing is asked of it: a valve that drifts is not one that follows.
  const left = rested(valve.build, { outputPercent: 40, process, from: structuredClone(low) });
  const change = high.stemAt - left.stemAt;
  if (Math.abs(change) < 0.02) {
    const stands = pointerAt(at, high);
    return word(stands < 0.04 ? 'stays shut' : stands > 0.96 ? 'stays open' : 'stays part way');
  }
  if (change < 0) return word('other way');
  const [state, outputPercent] = at.random() < 0.5 ? ([low, 40] as const) : ([high, 65] as const);
  const { travelM } = valve.build.frame;
  const read = readTravel(valve.build, { stemAt: pointerAt(at, state), random: at.random });
  return { value: (100 * read.value) / travelM - outputPercent, readSigma: (100 * read.sigma) / travelM };
}

interface SmallSteps {
  readonly travelFraction: readonly number[];
  /** Where the stem stood before the first. */
  readonly before: number;
  readonly quickS: number;
}

const UP_S = 24;

/** Up by a per cent every two seconds, and down again; then one step at once, to see how long it takes. In steps of a second. */
function* smallSteps(of: {
  readonly build: Build;
  readonly state: State;
  readonly process: 'on' | 'bypassed';
}): Generator<void, SmallSteps> {
  const before = of.state.stemAt;
  const travelFraction: number[] = [];
  let n = 0;
  const seen = (now: State) => {
    if (n++ % 10 === 0) travelFraction.push(now.stemAt);
  };
  const creep = (timeS: number) => 50 + Math.floor(timeS < UP_S ? timeS / 2 : UP_S - timeS / 2);
  yield* running(of.build, {
    ...of,
    seconds: 2 * UP_S + 4,
    doing: (timeS) => ({ outputPercent: timeS > 2 * UP_S ? 50 : creep(timeS), process: of.process }),
    seen,
  });
  const from = of.state.stemAt;
  const quick: number[] = [];
  yield* running(of.build, {
    ...of,
    seconds: 14,
    doing: { outputPercent: 65, process: of.process },
    seen: (now) => {
      if (n++ % 10 === 0) quick.push(now.stemAt);
    },
  });
  const goal = of.state.stemAt - from;
  const at = quick.findIndex((one) => Math.abs(one - from) > 0.8 * Math.abs(goal));
  return { travelFraction, before, quickS: at < 0 ? 14 : at / 10 };
}

/** How a valve, this one or while it was sound, answers small steps; in steps of a second. */
export function* stepping(
  valve: SimulatedValve,
  of: { readonly which: 'build' | 'sound'; readonly process: 'on' | 'bypassed' },
): Generator<void, SmallSteps> {
  const { which, process } = of;
  return yield* keptInSteps(valve, {
    key: `small step ${which} ${process}`,
    *steps() {
      const state = yield* restingAt(valve, { outputPercent: 50, process, which });
      return yield* smallSteps({ build: valve[which], state, process });
    },
  });
}

function smallStep(at: At): Said {
  const { valve } = at;
  const process = processOf(at.hub);
  const seen = atOnce(stepping(valve, { which: 'build', process }));
  const usual = atOnce(stepping(valve, { which: 'sound', process }));
  const range = Math.max(...seen.travelFraction) - Math.min(...seen.travelFraction);
  if (turns(seen.travelFraction, 0.008) >= 5) return word('swings');
  const top = seen.travelFraction[10 * UP_S - 2] ?? 0;
  if (top - seen.before < -0.02) return word('other way');
  if (range < 0.01) return word('no move');
  if (jumpsOf(seen.travelFraction, { stillS: 3, jump: 0.02 }) >= 1) return word('jumps');
  return word(seen.quickS > Math.max(2, 2.5 * usual.quickS) ? 'slow' : 'smooth');
}

function judged(stroke: Stroke, of: { readonly usualBehind: number }): Said {
  const range = Math.max(...stroke.travelFraction) - Math.min(...stroke.travelFraction);
  if (turns(stroke.dwell, 0.01) >= 4) return word('overshoots');
  if (range < 0.05) return word('does not move');
  if (stroke.openAt < stroke.shutAt - 0.1) return word('other way');
  const [shortOpen, shortShut] = [1 - stroke.openAt, stroke.shutAt];
  if (jumpsOf(stroke.travelFraction, { stillS: 1.2, jump: 0.02 }) >= 3) return word('in jumps');
  if (Math.max(shortOpen, shortShut) > 0.03)
    return word(shortOpen >= shortShut ? 'short of open' : 'short of shut');
  if (onlyOpenOrShut(stroke)) return word('in jumps');
  return word(stroke.behind > 0.12 + 2 * of.usualBehind ? 'slow' : 'full and smooth');
}

/** At a quarter still shut, at three quarters already open: it was read at each. */
function onlyOpenOrShut({ travelFraction, outputPercent }: Stroke): boolean {
  const at = (percent: number) => travelFraction[outputPercent.findIndex((one) => one >= percent)] ?? 0.5;
  return at(25) < 0.06 && at(75) > 0.94;
}

/** A full stroke by the controller as it was while nothing was wrong, in steps of a second. */
export function* strokingSound(valve: SimulatedValve): Generator<void, Stroke> {
  return yield* keptInSteps(valve, {
    key: 'usual stroke',
    steps: () => stroking(valve.sound, { state: stateAt(valve.sound, 0.5), process: 'bypassed' }),
  });
}

/** The same as it is now. */
export function* strokingNow(valve: SimulatedValve): Generator<void, Stroke> {
  return yield* keptInSteps(valve, {
    key: 'stroke',
    *steps() {
      const state = yield* restingAt(valve, { outputPercent: 50, process: 'bypassed' });
      return yield* stroking(valve.build, { state, process: 'bypassed' });
    },
  });
}

function strokeByController({ valve }: At): Said {
  const { behind } = atOnce(strokingSound(valve));
  return judged(atOnce(strokingNow(valve)), { usualBehind: behind });
}

/** Its own source and supply left out: air of the rig at the inlet of the positioner, or at the actuator. */
function onRig(build: Build, sound: Build): Build {
  const { frame } = build;
  return {
    ...structuredClone(build),
    frame,
    headerPa: sound.headerPa,
    supplySetPa: sound.supplySetPa,
    supplyDroopPaSPerKg: sound.supplyDroopPaSPerKg,
    currentFactor: 1,
    sourceOffset: 0,
    sourceFactor: 1,
    sourceRestriction: 1,
    sourceNozzle: 1,
    sourceDroopPaSPerKg: 1.5e6 + (build.rigHoleM > 0 ? 3e7 : 0),
    sourceMostKgPerS: 1.6e-3,
    tubeHoleM: build.rigHoleM,
    tubeOpen: 1,
    lockUpShut: build.frame.positioner === 'none' ? false : build.lockUpShut,
    tripVents: build.frame.positioner === 'none' ? false : build.tripVents,
  };
}

function strokeOnTestAir({ valve }: At): Said {
  const build = onRig(valve.build, valve.sound);
  const { frame } = build;
  const straight = frame.positioner === 'none';
  const spanPa = frame.signalHighPa - frame.signalLowPa;
  const rig = (percent: number) =>
    Math.max(0, frame.signalLowPa + (spanPa * (frame.risingEnd === 'opens' ? percent : 100 - percent)) / 100);
  const stroke = strokeOf(build, {
    state: stateAt(build, frame.risingEnd === 'opens' ? 0.02 : 0.98),
    process: 'bypassed',
    ...(straight ? { rig } : {}),
  });
  return judged(stroke, { usualBehind: Math.max(0.05, atOnce(strokingSound(valve)).behind) });
}

function endPa(build: Build, state: State): number {
  const { frame } = build;
  return frame.doubleActing ? state.endPa.opens - state.endPa.shuts : state.endPa[frame.risingEnd];
}

function actuatorRead(at: At, truePa: number) {
  const { build } = at.valve;
  const { frame } = build;
  const point = frame.doubleActing
    ? 'cylinderTop'
    : actuatorGauge(at.facts) === 'signal'
      ? 'signal'
      : 'actuator';
  const mostPa = frame.doubleActing ? frame.supplyPa : 1.2 * Math.max(frame.supplyPa, frame.signalHighPa);
  return readPressure(build, { point, truePa, mostPa, random: at.random });
}

/** Creeps off its seat, a per cent a second. */
function leavesSeatAt(at: At): Said {
  const { build } = at.valve;
  const { frame } = build;
  const state = rested(build, { outputPercent: -5, process: 'bypassed' });
  const start = state.stemAt;
  let leftPa: number | null = null;
  run(build, {
    state,
    seconds: 85,
    doing: (timeS) => ({ outputPercent: -5 + timeS, process: 'bypassed' }),
    seen: (now) => {
      if (leftPa === null && now.stemAt > start + 0.01) leftPa = endPa(build, now);
    },
  });
  if (leftPa === null) return word('never');
  const { sheet } = frame;
  const frictionPa = frame.packingN / frame.areaM2;
  if (frame.doubleActing)
    return word(leftPa > 0.15 * frame.supplyPa + frictionPa ? 'high' : 'as it should be');
  const rangePa = sheet.benchSetHighPa - sheet.benchSetLowPa;
  const opens = frame.risingEnd === 'opens';
  const wantedPa = opens ? sheet.benchSetLowPa + frictionPa : sheet.benchSetHighPa - frictionPa;
  const read = actuatorRead(at, leftPa);
  return { value: (100 * (read.value - wantedPa)) / rangePa, readSigma: (100 * read.sigma) / rangePa };
}

/** Pressures at half travel, creeping up and creeping down. */
function upAgainstDown(at: At): Said {
  const { build } = at.valve;
  const {
    frame,
    frame: { sheet },
  } = build;
  const state = rested(build, { outputPercent: 25, process: 'bypassed' });
  const met: number[] = [];
  let side = state.stemAt < 0.5;
  const from = state.stemAt;
  let [moved, leastPa, mostPa] = [0, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  run(build, {
    state,
    seconds: 120,
    doing: (timeS) => ({ outputPercent: timeS < 60 ? 25 + timeS : 145 - timeS, process: 'bypassed' }),
    seen: (now) => {
      moved = Math.max(moved, Math.abs(now.stemAt - from));
      leastPa = Math.min(leastPa, endPa(build, now));
      mostPa = Math.max(mostPa, endPa(build, now));
      if (now.stemAt < 0.5 === side) return;
      side = now.stemAt < 0.5;
      met.push(endPa(build, now));
    },
  });
  const rangePa = frame.doubleActing ? frame.supplyPa : sheet.benchSetHighPa - sheet.benchSetLowPa;
  const [up, down] = [met[0], met.at(-1)];
  if (up === undefined || down === undefined || met.length < 2)
    // Half travel is not met: by a stem that holds against all the air, or by one that nothing drives.
    return moved < 0.02 && mostPa - leastPa > 0.3 * rangePa ? word('very wide') : { cannotTell: true };
  const [one, two] = [actuatorRead(at, Math.max(0, up)), actuatorRead(at, Math.max(0, down))];
  return {
    value: (100 * Math.abs(frame.doubleActing ? up - down : one.value - two.value)) / rangePa,
    readSigma: (140 * one.sigma) / rangePa,
  };
}

function airAtTravel(at: At): Said {
  const { build } = at.valve;
  const { frame } = build;
  const process = processOf(at.hub);
  const state = rested(build, {
    outputPercent: 55,
    process,
    from: restedAt(at.valve, { outputPercent: 40, process }),
  });
  const truePa = state.endPa[frame.risingEnd];
  const asks = frame.positioner === 'none' ? state.sourcePa : frame.supplyPa;
  const stands = Math.abs(state.stemAt - 0.55) > 0.1;
  if (stands && asks > 2e4 && truePa < 0.25 * asks) return word('does not build');
  const off = airAtTravelOff(at.facts, {
    pressurePa: actuatorRead(at, truePa),
    openedM: readTravel(build, { stemAt: pointerAt(at, state), random: at.random }),
    // What the sheet's pressures push, faded with the travel; nothing where no pressure drop stands.
    plugForceOpeningN: process === 'on' ? frame.plugForceN * (1 - 0.8 * state.stemAt) : 0,
    came: 'opening',
  });
  return { value: off.value, readSigma: off.readSigma };
}

/** How the stem moves, and with how much air. */
export const looksAtStroke: Looks = {
  travelAgainstOutput,
  smallStep,
  strokeByController,
  strokeOnTestAir,
  leavesSeatAt,
  upAgainstDown,
  airAtTravel,
};
