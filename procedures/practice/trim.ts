import type { Build } from './build.ts';

/** Equal percentage trim, fifty to one: the usual one. */
const RANGEABILITY = 50;
/** An unthreaded plug stands about here where the flow comes from below. Judgement. */
const LOOSE_PLUG_AT = 0.5;

/** Where the plug stands, the stem being where it is. */
function plugAt(build: Build, stemAt: number): number {
  if (build.plugOff) return build.frame.sheet.flow === 'over' ? 0 : LOOSE_PLUG_AT;
  return Math.min(1, Math.max(build.objectAt, stemAt - build.plugOffset));
}

/** Flow coefficient of a sound trim as a share of its rated one. */
export function trimKv(at: number): number {
  if (at <= 0) return 0;
  const share = RANGEABILITY ** (at - 1);
  // The last of the travel goes down to nothing at the seat.
  return at < 0.04 ? share * (at / 0.04) : share;
}

export interface Flow {
  /** Share of what a sound full-open valve passes. */
  readonly flowFraction: number;
  /** Drop over the valve as a share of the usual one at this flow. */
  readonly dropFraction: number;
}

/** What goes through the line with the stem at its place. */
export function flowThrough(
  build: Build,
  of: { readonly stemAt: number; readonly seatLeakFraction: number },
): Flow {
  const at = plugAt(build, of.stemAt);
  const own = trimKv(at) * build.kvFactor * build.wrongTrim + of.seatLeakFraction;
  const valve = Math.max(1e-5, own);
  const line = build.lineLoss > 0 ? (1 - build.lineLoss) * 0.25 : 5;
  const left = 1 / (1 + (valve / line) ** 2);
  const throughValve = valve * Math.sqrt(left * build.dropFactor * build.fluidFactor);
  const usual = trimKv(at);
  // What the flow that is there should cost over a sound trim at this place.
  const drop = usual > 0 ? left * build.dropFactor : 1;
  return { flowFraction: throughValve + build.bypassKv * Math.sqrt(build.dropFactor), dropFraction: drop };
}

/** Share of rated flow that passes with the valve driven shut, by what is left on the seat. */
export function seatLeakOf(build: Build, of: { readonly seatN: number; readonly stemAt: number }): number {
  const worn = build.seatLeakFraction + build.balanceLeakFraction;
  const lifted = trimKv(plugAt(build, of.stemAt));
  const wanted = build.frame.seatLoadN * build.seatLoadFactor;
  const short = wanted <= 0 ? 0 : Math.max(0, 1 - of.seatN / wanted);
  return worn + lifted + (lifted > 0 ? 0 : 0.02 * short);
}
