import type { Build } from './build.ts';
import { type State, stateAt } from './state.ts';
import { type Doing, STEP_S, step } from './step.ts';

/** Lets time pass; `seen` is called after each step. */
export function run(
  build: Build,
  of: {
    readonly state: State;
    readonly seconds: number;
    readonly doing: Doing | ((timeS: number) => Doing);
    readonly seen?: (state: State) => void;
  },
): State {
  const { state, seconds, doing, seen } = of;
  const steps = Math.round(seconds / STEP_S);
  const startS = state.timeS;
  for (let n = 0; n < steps; n++) {
    step(build, state, typeof doing === 'function' ? doing(state.timeS - startS) : doing);
    seen?.(state);
  }
  return state;
}

/** A relay or a tube that has shut the actuator in keeps what stood there when it did: a valve at work, half open. */
function beforeIt(build: Build, process: Doing['process']): State {
  const state = stateAt(build, 0.5);
  if (!build.lockUpShut && build.outTubeOpen > 0) return state;
  const open = { ...build, lockUpShut: false, outTubeOpen: 1 };
  return run(open, { state, seconds: 30, doing: { outputPercent: 50, process } });
}

/** At rest, or as near as it comes, with the output that was given. */
export function rested(
  build: Build,
  of: { readonly outputPercent: number; readonly process: Doing['process']; readonly from?: State },
): State {
  const state = of.from ?? beforeIt(build, of.process);
  return run(build, { state, seconds: of.from === undefined ? 40 : 25, doing: { ...of } });
}
