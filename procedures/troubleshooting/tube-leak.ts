import { AIR, orificeFlow } from '../calculations/orifice-flow.ts';
import { circleAreaM2 } from '../calculations/plug-force.ts';

const ROOM_K = 293.15;
const ATMOSPHERE_PA_ABS = 101_325;
/** A drilled or torn hole, edges neither sharp nor round: judgement. */
const DISCHARGE_FACTOR = 0.7;
const AIR_VISCOSITY_PA_S = 1.81e-5;
/** Quarter-inch tube: 4.3 mm bore. A few fittings cost as much as so much tube: judgement. */
const BORE_M = 0.0043;
const FITTINGS_M = 0.5;
/** What a source gives way when it is asked for air. A good one hardly does; an unboosted one soon. Judgement. */
const DROOP_PA_PER_M3_PER_H = { strong: 500, weak: 4000 } as const;
/** More than so much an unboosted source cannot give: judgement. */
const WEAK_SOURCE_M3_PER_H = 1.5;

export interface LeakAtTheEnd {
  readonly holeM: number;
  readonly tubeM: number;
  /** Gauge pressure that the source would hold without a leak. */
  readonly sentPa: number;
  readonly source: 'strong' | 'weak';
}

export interface LeakSeen {
  readonly lostM3PerH: number;
  /** Gauge pressure at the source and at the leak, steady. */
  readonly sourcePa: number;
  readonly endPa: number;
}

/**
 * What a leak at the far end of a signal tube does to the pressures, steady.
 *
 * The hole passes what an orifice passes, the tube costs p1² − p2² = (f L/D) · G² R T (isothermal, smooth pipe,
 * laminar or Blasius), the source gives way in proportion. Solved by halving for the pressure at the leak.
 * A judgement model with figures of the trade, for the size of things and no more.
 * @param holeM   diameter of the hole; above 0
 * @param tubeM   from source to leak; 0 or more
 * @param sentPa  gauge; above 0
 * @returns air lost and both gauge pressures
 * @throws CalcError where an input is out of range, by the orifice
 * @example leakAtTheEnd({ holeM: 0.001, tubeM: 10, sentPa: 1e5, source: 'strong' }).endPa // about 93 300
 */
export function leakAtTheEnd(of: LeakAtTheEnd): LeakSeen {
  let [low, high] = [0, of.sentPa];
  for (let step = 0; step < 30; step++) {
    const middle = (low + high) / 2;
    const up = upstreamOf(of, middle);
    if (up.sourcePa > leftAtSource(of, up.lostM3PerH)) high = middle;
    else low = middle;
  }
  const endPa = (low + high) / 2;
  const { lostM3PerH, sourcePa } = upstreamOf(of, endPa);
  return { lostM3PerH, sourcePa: Math.min(of.sentPa, sourcePa), endPa };
}

/** What the source still holds when the hole takes its air. */
function leftAtSource(of: LeakAtTheEnd, lostM3PerH: number): number {
  if (of.source === 'weak' && lostM3PerH >= WEAK_SOURCE_M3_PER_H) return 0;
  return of.sentPa - DROOP_PA_PER_M3_PER_H[of.source] * lostM3PerH;
}

function upstreamOf(
  of: LeakAtTheEnd,
  endPa: number,
): { readonly lostM3PerH: number; readonly sourcePa: number } {
  const endPaAbs = endPa + ATMOSPHERE_PA_ABS;
  const { massFlowKgPerS, flowAnrM3PerS } = orificeFlow({
    areaM2: circleAreaM2(of.holeM),
    dischargeFactor: DISCHARGE_FACTOR,
    inletPaAbs: endPaAbs,
    outletPaAbs: ATMOSPHERE_PA_ABS,
    inletK: ROOM_K,
    ...AIR,
  });
  const fluxKgPerM2S = massFlowKgPerS / circleAreaM2(BORE_M);
  const reynolds = (fluxKgPerM2S * BORE_M) / AIR_VISCOSITY_PA_S;
  const frictionFactor = reynolds < 2300 ? 64 / Math.max(reynolds, 1) : 0.316 / reynolds ** 0.25;
  const lengths = (frictionFactor * (of.tubeM + FITTINGS_M)) / BORE_M;
  const squares = lengths * fluxKgPerM2S ** 2 * AIR.gasConstantJPerKgK * ROOM_K;
  return {
    lostM3PerH: flowAnrM3PerS * 3600,
    sourcePa: Math.sqrt(endPaAbs ** 2 + squares) - ATMOSPHERE_PA_ABS,
  };
}

/**
 * How fast a shut-in actuator falls through a hole.
 * @returns percent of the gauge pressure a minute, at the start
 * @example decayPercentPerMinute({ holeM: 0.0005, volumeM3: 0.0055, gaugePa: 1e5 }) // about 58
 */
export function decayPercentPerMinute(of: {
  readonly holeM: number;
  readonly volumeM3: number;
  readonly gaugePa: number;
}): number {
  const { massFlowKgPerS } = orificeFlow({
    areaM2: circleAreaM2(of.holeM),
    dischargeFactor: DISCHARGE_FACTOR,
    inletPaAbs: of.gaugePa + ATMOSPHERE_PA_ABS,
    outletPaAbs: ATMOSPHERE_PA_ABS,
    inletK: ROOM_K,
    ...AIR,
  });
  const lostPaPerS = (massFlowKgPerS * AIR.gasConstantJPerKgK * ROOM_K) / of.volumeM3;
  return (100 * 60 * lostPaPerS) / of.gaugePa;
}
