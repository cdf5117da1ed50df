import type { Build } from './build.ts';
import { bell, type Random } from './random.ts';
import { running as passing } from './run.ts';
import { type State, stateAt } from './state.ts';
import { type Doing, step } from './step.ts';
import { flowThrough } from './trim.ts';

/** One look at the loop a second. */
export interface Sample {
  readonly timeS: number;
  readonly setPoint: number;
  readonly process: number;
  readonly outputPercent: number;
  readonly travelFraction: number;
}

export interface LoopRecord {
  readonly samples: readonly Sample[];
  readonly state: State;
  readonly changedAtS: number;
  readonly stepAtS: number;
}

/** A flow loop with some tank behind it. The process value is a share of the transmitter's range. Judgement. */
const RANGE_FLOW = 0.4;
const LAG_S = 8;
const SENSOR_S = 2;
const DEAD_S = 1.5;
const GAIN_PERCENT = 25;
const INTEGRAL_S = 10;
const NOISE = 0.0015;
const SWING_S = 40;

const WARM_S = 60;
const SETTLING_S = 120;
const CHANGED_S = 60;
const STEPPED_S = 130;
const END_S = 300;

interface Running {
  process: number;
  sensed: number;
  integral: number;
  outputPercent: number;
  readonly delayed: number[];
}

/**
 * The last hours of the loop, in short: a fault that came at once comes after the first minute, any other was there
 * before; then the set point is moved a little. `held` freezes the output from a moment on. In steps of a second.
 */
export function* loopRecord(
  sound: Build,
  of: { readonly faulty: Build; readonly random: Random },
): Generator<void, LoopRecord> {
  const at = 0.59;
  const now = () => (of.faulty.cameAtOnce && samples.length < CHANGED_S ? sound : of.faulty);
  const samples: Sample[] = [];
  const first = of.faulty.cameAtOnce ? sound : of.faulty;
  const state = stateAt(first, at);
  yield* passing(first, { state, seconds: WARM_S / 2, doing: { outputPercent: 100 * at, process: 'on' } });
  const running = starting(first, { state, outputPercent: 100 * at });
  for (let second = 0; second < END_S; second++) {
    const setPoint = (of.faulty.demand / RANGE_FLOW) * (second < STEPPED_S ? 1 : 1.06);
    oneSecond(now(), { state, running, setPoint, second, random: of.random });
    samples.push({
      timeS: second,
      setPoint,
      process: running.sensed,
      outputPercent: running.outputPercent,
      travelFraction: state.stemAt,
    });
    yield;
  }
  return { samples, state, changedAtS: CHANGED_S, stepAtS: STEPPED_S };
}

/**
 * The loop as it is with its set point left alone; it has settled, or swings as it does, before the record begins. A
 * step is a second of the loop, so that others may be served between.
 */
export function* calmRecord(
  build: Build,
  of: { readonly seconds: number; readonly random: Random },
): Generator<void, readonly Sample[]> {
  const outputPercent = 59;
  const state = stateAt(build, outputPercent / 100);
  yield* passing(build, { state, seconds: WARM_S / 2, doing: { outputPercent, process: 'on' } });
  const running = starting(build, { state, outputPercent });
  const setPoint = build.demand / RANGE_FLOW;
  const samples: Sample[] = [];
  for (let second = -SETTLING_S; second < of.seconds; second++) {
    oneSecond(build, { state, running, setPoint, second, random: of.random });
    if (second >= 0)
      samples.push({
        timeS: second,
        setPoint,
        process: running.sensed,
        outputPercent: running.outputPercent,
        travelFraction: state.stemAt,
      });
    yield;
  }
  return samples;
}

function starting(build: Build, of: { readonly state: State; readonly outputPercent: number }): Running {
  const value =
    flowThrough(build, { stemAt: of.state.stemAt, seatLeakFraction: 0 }).flowFraction / RANGE_FLOW;
  return {
    process: value,
    sensed: value * (1 + build.measureOff),
    integral: of.outputPercent,
    outputPercent: of.outputPercent,
    delayed: [],
  };
}

const TENTH_S = 0.1;

/** One second of loop: the controller looks ten times, the valve a hundred. */
function oneSecond(
  build: Build,
  of: {
    readonly state: State;
    readonly running: Running;
    readonly setPoint: number;
    readonly second: number;
    readonly random: Random;
  },
): void {
  const { running, state } = of;
  for (let tenth = 0; tenth < 10; tenth++) {
    const doing: Doing = { outputPercent: running.outputPercent, process: 'on' };
    for (let n = 0; n < 10; n++) step(build, state, doing);
    sense(build, { ...of, timeS: of.second + tenth * TENTH_S });
    control(build, of);
  }
}

function sense(
  build: Build,
  of: { readonly state: State; readonly running: Running; readonly timeS: number; readonly random: Random },
): void {
  const { running } = of;
  const { flowFraction: flow } = flowThrough(build, {
    stemAt: of.state.stemAt,
    seatLeakFraction: build.seatLeakFraction,
  });
  const swing = build.disturbance * Math.sin((2 * Math.PI * of.timeS) / SWING_S);
  running.delayed.push((flow / RANGE_FLOW) * (1 + swing));
  const come = running.delayed.length > DEAD_S / TENTH_S ? (running.delayed.shift() ?? 0) : running.process;
  running.process += ((come - running.process) * TENTH_S) / LAG_S;
  const told = running.process * (1 + build.measureOff) + NOISE * bell(of.random);
  running.sensed += ((told - running.sensed) * TENTH_S) / SENSOR_S;
}

function control(build: Build, of: { readonly running: Running; readonly setPoint: number }): void {
  const { running } = of;
  if (build.mode === 'held') return;
  const error = (of.setPoint - running.sensed) * (build.loopWrongWay ? -1 : 1);
  const gain = GAIN_PERCENT * build.loopGain;
  running.integral += (gain * error * TENTH_S) / INTEGRAL_S;
  running.integral = Math.min(105, Math.max(-5, running.integral));
  running.outputPercent = Math.min(105, Math.max(-5, running.integral + gain * error));
}

/** The output held by hand: how the process goes on, a look a second. */
export function heldInManual(
  build: Build,
  of: { readonly record: LoopRecord; readonly random: Random },
): readonly number[] {
  const tail = of.record.samples.slice(-60);
  const outputPercent = tail.reduce((sum, one) => sum + one.outputPercent, 0) / tail.length;
  const state = structuredClone(of.record.state);
  const running = { ...starting(build, { state, outputPercent }), process: tail.at(-1)?.process ?? 0 };
  running.sensed = running.process;
  const seen: number[] = [];
  const manual = { ...build, mode: 'held' as const };
  for (let second = 0; second < 120; second++) {
    oneSecond(manual, { state, running, setPoint: 0, second, random: of.random });
    seen.push(running.sensed);
  }
  return seen;
}
