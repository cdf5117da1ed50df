import { bell, between, type Random, seeded } from '../../../../procedures/practice/random.ts';
import type { LoopSample } from '../../../../procedures/troubleshooting/loop-record/samples.ts';

/** A loop of first order with dead time, PI, and a valve that sticks by two numbers; a sample a second. */
export interface StickyLoop {
  /** Dead band with jump, and jump, in percent of the signal. */
  readonly stickPercent?: number;
  readonly jumpPercent?: number;
  readonly gain?: number;
  readonly lagS?: number;
  readonly deadS?: number;
  readonly controllerGain?: number;
  readonly resetS?: number;
  readonly noise?: number;
  readonly swing?: number;
  readonly swingPeriodS?: number;
  readonly swingShape?: 'sine' | 'steps';
  readonly integrates?: boolean;
  readonly lengthS?: number;
  readonly seed?: number;
}

/** Process, tuning and noise of the published example, where a case does not say otherwise. */
const USUAL = {
  stickPercent: 0,
  jumpPercent: 0,
  gain: 3,
  lagS: 10,
  deadS: 10,
  controllerGain: 0.2,
  resetS: 10,
  noise: 0.03,
  swing: 0,
  swingPeriodS: 60,
  swingShape: 'sine',
  integrates: false,
  lengthS: 1200,
  seed: 1,
} as const satisfies Required<StickyLoop>;

/**
 * Two-parameter valve: at rest until the signal has gone by the whole dead band against the last movement, or by the
 * jump in the same direction; then it follows, half of (dead band less jump) behind. Choudhury et al., Control
 * Engineering Practice 13 (2005) 641.
 */
function stickyValve(of: { readonly stickPercent: number; readonly jumpPercent: number }) {
  let [position, stoppedAt, direction, before] = [0, 0, 0, 0];
  let moving = false;
  return (signal: number): number => {
    const turned = Math.sign(signal - before) !== direction;
    if (moving && turned) {
      moving = false;
      stoppedAt = before;
    }
    const way = Math.sign(signal - stoppedAt);
    const wants = way === direction ? of.jumpPercent : of.stickPercent;
    if (!moving && way !== 0 && Math.abs(signal - stoppedAt) > wants) {
      moving = true;
      direction = way;
    }
    if (moving) position = signal - (direction * (of.stickPercent - of.jumpPercent)) / 2;
    before = signal;
    return position;
  };
}

const WARM_S = 1200;
/** Enough to break any valve loose once, so that a limit cycle begins. */
const KICK = 15;

/** The record once what the kick did has died out; everything about the middle of its range. */
export function stickyLoop(of: StickyLoop): readonly LoopSample[] {
  const loop = { ...USUAL, ...of };
  const random = seeded(loop.seed);
  const valve = stickyValve(loop);
  const late = Array.from({ length: loop.deadS }, () => 0);
  const fades = Math.exp(-1 / loop.lagS);
  const samples: LoopSample[] = [];
  let [process, integral] = [0, 0];
  for (let timeS = -WARM_S; timeS < loop.lengthS; timeS++) {
    const phase = Math.sin((2 * Math.PI * timeS) / loop.swingPeriodS);
    const swing = loop.swing * (loop.swingShape === 'sine' ? phase : Math.sign(phase));
    const measured = process + swing + loop.noise * bell(random);
    const error = (timeS + WARM_S > 20 && timeS + WARM_S < 60 ? KICK : 0) - measured;
    integral = within(integral + (loop.controllerGain / loop.resetS) * error);
    const output = within(loop.controllerGain * error + integral);
    const position = loop.stickPercent > 0 ? valve(output) : output;
    late.push(position);
    const come = late.shift() ?? 0;
    process = loop.integrates
      ? process + (loop.gain / loop.lagS) * come
      : fades * process + (1 - fades) * loop.gain * come;
    if (timeS >= 0)
      samples.push({
        timeS,
        outputPercent: 50 + output,
        process: 50 + measured,
        positionPercent: 50 + position,
        setPoint: 50,
      });
  }
  return samples;
}

function within(percent: number): number {
  return Math.min(50, Math.max(-50, percent));
}

/** As a record without the column of the stem. */
export function withoutPosition(samples: readonly LoopSample[]): readonly LoopSample[] {
  return samples.map((one) => ({ ...one, positionPercent: null }));
}

const log = (random: Random, [low, high]: readonly [number, number]) =>
  low * Math.exp(Math.log(high / low) * random());

/** Any loop that settles, tuned as a careful person tunes it. */
function anyLoop(random: Random) {
  const lagS = log(random, [3, 60]);
  const deadS = Math.max(1, Math.round(lagS * between(random, [0.1, 1])));
  const gain = log(random, [0.5, 3]);
  const wantedS = Math.max(deadS, lagS * between(random, [0.5, 1.5]));
  return {
    lagS,
    deadS,
    gain,
    controllerGain: lagS / (gain * (wantedS + deadS)),
    resetS: Math.min(lagS, 4 * (wantedS + deadS)),
    lengthS: Math.round(Math.min(4000, Math.max(900, 60 * (lagS + deadS)))),
    seed: Math.floor(random() * 1e6),
  };
}

/** The kinds of loops that the rates are told of. */
export const LOOPS_OF = {
  sticking: (random: Random): StickyLoop => {
    const stickPercent = log(random, [1.5, 10]);
    return {
      ...anyLoop(random),
      stickPercent,
      jumpPercent: stickPercent * between(random, [0.15, 1.1]),
      noise: log(random, [0.02, 0.2]),
    };
  },
  'a disturbance like a sine': (random: Random): StickyLoop => {
    const loop = anyLoop(random);
    const swingPeriodS = (loop.lagS + loop.deadS) * log(random, [2, 20]);
    return { ...loop, swing: log(random, [1, 6]), swingPeriodS, noise: log(random, [0.02, 0.3]) };
  },
  'noise alone': (random: Random): StickyLoop => ({ ...anyLoop(random), noise: log(random, [0.1, 1]) }),
  'tuned too tight': (random: Random): StickyLoop => {
    const loop = anyLoop(random);
    return {
      ...loop,
      controllerGain: loop.controllerGain * between(random, [1.5, 4]),
      resetS: loop.resetS * between(random, [0.4, 1]),
      noise: log(random, [0.05, 0.5]),
    };
  },
  'a disturbance in steps': (random: Random): StickyLoop => {
    const loop = anyLoop(random);
    const swingPeriodS = (loop.lagS + loop.deadS) * log(random, [3, 20]);
    return {
      ...loop,
      swing: log(random, [1, 6]),
      swingShape: 'steps',
      swingPeriodS,
      noise: log(random, [0.02, 0.3]),
    };
  },
} as const;
