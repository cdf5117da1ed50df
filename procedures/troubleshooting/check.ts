import type { ActionClass } from '../../safety/action-classes.ts';
import type { Facts } from '../facts.ts';
import type { GaugePoint, ValveFacts } from './valve-facts.ts';

/** How the valve stands while it is looked at: doing its work, on its bypass, or with every energy locked off. */
export const HUBS = ['in service', 'bypassed', 'isolated'] as const;
export type Hub = (typeof HUBS)[number];

/** A stretch of the axis of a measured check. */
export type Stretch = readonly [low: number, high: number];

/**
 * A check that gives a number. The axis is a deviation from what this valve should read, so that one axis serves
 * every valve; `readings/` works it out from what the gauge said.
 */
export interface Measured {
  readonly axis: string;
  /** Standard deviation of a sound valve on the axis, beside the gauge's own uncertainty. */
  readonly soundSigma: number;
  /** Where a sound valve reads; 0 where left out. */
  readonly soundAt?: number;
  /** Where a sound valve of such a kind reads otherwise, or scatters more. */
  readonly soundOn?: (v: ValveFacts) => { readonly soundAt?: number; readonly soundSigma: number };
  /** A misread number may lie anywhere here. */
  readonly anywhere: Stretch;
  /** Into which words a number falls. Together they cover the axis. */
  readonly bands: Readonly<Record<string, Stretch>>;
  /** Where a cause that names only the word is taken to read. */
  readonly typical: Readonly<Record<string, Stretch>>;
  /** Where a number lies that somebody reads off in place of a word which is no stretch of the axis. Judgement. */
  readonly numberOf?: Readonly<Record<string, Stretch>>;
}

/**
 * Something to look at or to measure that tells causes apart. The first outcome is what a sound valve gives.
 * Minutes and misread shares are judgement unless a source stands beside them.
 */
export interface Check {
  readonly title: string;
  /** What to do, verb first. */
  readonly todo: string;
  readonly minutes: number;
  /** Where it can be done. A look at a dead valve is no worse than at a live one; a soap test needs air. */
  readonly hubs: readonly Hub[];
  /** The operator must agree: it moves the process, or may. */
  readonly consent?: true;
  /** Air from a limited local source, also where the valve is isolated: that is energising again. */
  readonly testAir?: true;
  /** Positioner cover open with air on: hands clear, and where the area allows it. */
  readonly coverOpen?: true;
  readonly gauges?: (v: ValveFacts) => readonly GaugePoint[];
  /** What it exposes people to, by the table of action classes. */
  readonly exposes?: (v: ValveFacts) => readonly ActionClass[];
  /** Share of answers that have nothing to do with the valve: seen wrong, written wrong, looked at the wrong thing. */
  readonly misread: number;
  readonly outcomes: Readonly<Record<string, string>>;
  /** Outcomes that only one kind of actuator can have. */
  readonly onlyOn?: Readonly<Record<string, Facts['actuator']>>;
  readonly measured?: Measured;
  /** The word for a gauge that shows nothing: it proves nothing unless the gauge was seen alive. */
  readonly zero?: string;
  /** Left out: there is such a check on every valve. */
  readonly when?: (v: ValveFacts) => boolean;
  /**
   * What a cause shows here follows from what it shows at another check: the words there that count as a word here.
   * Whatever the cause is, no larger a share of its answers counts so.
   */
  readonly seenFrom?: {
    /** Its id. */
    readonly check: string;
    readonly words: Readonly<Record<string, string>>;
    readonly shareMost: number;
  };
  /** Never asked for: only taken in where somebody brings it. */
  readonly broughtOnly?: true;
}

export const ANY_HUB: readonly Hub[] = HUBS;
/** Needs air, and nothing that is locked off. */
export const AIR_ON: readonly Hub[] = ['in service', 'bypassed'];
export const IN_SERVICE: readonly Hub[] = ['in service'];
export const BYPASSED: readonly Hub[] = ['bypassed'];
export const ISOLATED: readonly Hub[] = ['isolated'];

/**
 * Minutes from one hub to another: bypass 30 and isolation 45 more, handing back less; judgement, as the minutes of
 * the checks. Where the line has no bypass, the process itself must be stopped for it.
 * @example moveMinutes({ from: 'in service', to: 'isolated' }) // 75
 */
export function moveMinutes({ from, to }: { readonly from: Hub; readonly to: Hub }): number {
  const [a, b] = [HUBS.indexOf(from), HUBS.indexOf(to)];
  let minutes = 0;
  for (let step = a; step < b; step++) minutes += step === 0 ? 30 : 45;
  for (let step = a; step > b; step--) minutes += step === 1 ? 10 : 30;
  return minutes;
}

/** Fitting a gauge parts a live line, and the valve may jump as its air is lost: on the bypass. */
export const FIT_GAUGE = { hub: 'bypassed', exposes: 'fitGaugeIntoLiveLine' } as const satisfies {
  readonly hub: Hub;
  readonly exposes: ActionClass;
};

/** Judgement. */
export const FIT_GAUGE_MINUTES: Readonly<Record<GaugePoint, number>> = {
  source: 8,
  signal: 8,
  actuator: 8,
  cylinderTop: 10,
  cylinderBottom: 10,
  nozzle: 10,
  nozzleTop: 10,
  nozzleBottom: 10,
  supply: 10,
};
