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

/** At rest, or as near as it comes, with the output that was given. */
export function rested(
  build: Build,
  of: { readonly outputPercent: number; readonly process: Doing['process']; readonly from?: State },
): State {
  const state = of.from ?? stateAt(build, 0.5);
  return run(build, { state, seconds: of.from === undefined ? 40 : 25, doing: { ...of } });
}
