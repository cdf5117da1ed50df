import type { Build } from './build.ts';
import { atOnce } from './in-steps.ts';
import { type State, stateAt } from './state.ts';
import { type Doing, STEP_S, step } from './step.ts';

interface Running {
  readonly state: State;
  readonly seconds: number;
  readonly doing: Doing | ((timeS: number) => Doing);
  readonly seen?: (state: State) => void;
}

const STEPS_A_SECOND = Math.round(1 / STEP_S);

/** Lets time pass, in steps of a second of it; `seen` is called a hundred times in each. */
export function* running(build: Build, of: Running): Generator<void, State> {
  const { state, seconds, doing, seen } = of;
  const steps = Math.round(seconds / STEP_S);
  const startS = state.timeS;
  for (let n = 0; n < steps; n++) {
    step(build, state, typeof doing === 'function' ? doing(state.timeS - startS) : doing);
    seen?.(state);
    if (n % STEPS_A_SECOND === STEPS_A_SECOND - 1) yield;
  }
  return state;
}

/** The same at once. */
export function run(build: Build, of: Running): State {
  return atOnce(running(build, of));
}

/**
 * A relay or a tube that has shut the actuator in keeps what stood there when it did: a valve at work, half open. Behind
 * a tube that is nearly shut it is still there, since filling it anew takes longer than anybody waits.
 */
function* beforeIt(build: Build, process: Doing['process']): Generator<void, State> {
  const state = stateAt(build, 0.5);
  if (!build.lockUpShut && build.outTubeOpen >= 1) return state;
  const open = { ...build, lockUpShut: false, outTubeOpen: 1 };
  return yield* running(open, { state, seconds: 30, doing: { outputPercent: 50, process } });
}

interface Resting {
  readonly outputPercent: number;
  readonly process: Doing['process'];
  readonly from?: State;
}

/** At rest, or as near as it comes, with the output that was given; in steps of a second. */
export function* resting(build: Build, of: Resting): Generator<void, State> {
  const state = of.from ?? (yield* beforeIt(build, of.process));
  return yield* running(build, { state, seconds: of.from === undefined ? 40 : 25, doing: { ...of } });
}

/** The same at once. */
export function rested(build: Build, of: Resting): State {
  return atOnce(resting(build, of));
}
