import type { Build } from '../build.ts';
import { atOnce } from '../in-steps.ts';
import { running } from '../run.ts';
import type { State } from '../state.ts';
import type { Doing } from '../step.ts';

/** A stroke as it was watched, ten looks a second. */
export interface Stroke {
  readonly travelFraction: readonly number[];
  readonly outputPercent: readonly number[];
  /** After the dwell at either end of the signal. */
  readonly openAt: number;
  readonly shutAt: number;
  /** How far behind it was when the output had come to its end. */
  readonly behind: number;
  readonly dwell: readonly number[];
}

const RAMP_S = 40;
const DWELL_S = 14;
/** A little beyond both ends, so that the stem is held against them. Common practice, no source. */
const BEYOND_PERCENT = 5;

interface Stroking {
  readonly state: State;
  readonly process: Doing['process'];
  readonly rig?: (percent: number) => number;
}

/** The same as `stroking`, at once. */
export function strokeOf(build: Build, of: Stroking): Stroke {
  return atOnce(stroking(build, of));
}

/** Slowly shut to open and back, with a rest at each end; in steps of a second. */
export function* stroking(build: Build, of: Stroking): Generator<void, Stroke> {
  const travelFraction: number[] = [];
  const output: number[] = [];
  const { state } = of;
  const doing = (outputPercent: number): Doing => ({
    outputPercent,
    process: of.process,
    ...(of.rig === undefined ? {} : { rigPa: of.rig(outputPercent) }),
  });
  function* part(of: { readonly seconds: number; readonly from: number; readonly to: number }) {
    let n = 0;
    yield* running(build, {
      state,
      seconds: of.seconds,
      doing: (timeS) => doing(of.from + ((of.to - of.from) * timeS) / of.seconds),
      seen: (now) => {
        if (n++ % 10 !== 0) return;
        travelFraction.push(now.stemAt);
        output.push(of.from + ((of.to - of.from) * n) / (of.seconds * 100));
      },
    });
  }
  const [shut, open] = [-BEYOND_PERCENT, 100 + BEYOND_PERCENT];
  yield* part({ seconds: DWELL_S, from: shut, to: shut });
  const shutAt = state.stemAt;
  yield* part({ seconds: RAMP_S, from: shut, to: open });
  const behindOpen = 1 - state.stemAt;
  yield* part({ seconds: DWELL_S, from: open, to: open });
  const openAt = state.stemAt;
  const dwell = travelFraction.slice(-(DWELL_S - 4) * 10);
  yield* part({ seconds: RAMP_S, from: open, to: shut });
  const behindShut = state.stemAt;
  yield* part({ seconds: DWELL_S, from: shut, to: shut });
  const least = Math.min(shutAt, state.stemAt);
  const behind = Math.max(behindOpen - (1 - openAt), behindShut - least);
  return { travelFraction, outputPercent: output, openAt, shutAt: state.stemAt, behind, dwell };
}

/** How often it sat still though it was asked to go, and then went by more than so much at once. */
export function jumpsOf(
  travelFraction: readonly number[],
  of: { readonly stillS: number; readonly jump: number },
): number {
  let [count, still] = [0, 0];
  for (let n = 4; n < travelFraction.length; n++) {
    const now = Math.abs((travelFraction[n] ?? 0) - (travelFraction[n - 1] ?? 0));
    const soon = Math.abs(
      (travelFraction[Math.min(n + 3, travelFraction.length - 1)] ?? 0) - (travelFraction[n - 1] ?? 0),
    );
    if (now < 4e-4) still += 0.1;
    else {
      if (still >= of.stillS && soon > of.jump) count += 1;
      still = 0;
    }
  }
  return count;
}
