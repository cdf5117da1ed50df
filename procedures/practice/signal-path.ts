import { AIR_J_PER_KG, jetM2, passKgPerS, tubeLossPaSPerKg } from './air.ts';
import { type Build, signalOpens } from './build.ts';
import type { State } from './state.ts';

/** Widest and narrowest gap between flapper and nozzle, as shares of the gap at balance. Judgement. */
const GAP = { least: 0.05, most: 6 } as const;
/** Quarter-inch tube, its fittings as so much more of it. Judgement. */
const BORE_M = 0.0043;
const FITTINGS_M = 0.5;
/** Tube and bellows before a positioner. */
const DEAD_VOLUME_M3 = 2e-4;
/** A source is fed at a third above its range. Judgement. */
const SOURCE_SUPPLY_FACTOR = 1.35;

/**
 * Back pressure of a nozzle behind its restriction, as a share of their supply: 1 / (1 + 16 d_n² h² / d_r⁴), written
 * with everything as a share of its value at balance, where the back pressure is half the supply.
 * @example backPressure({ gapFraction: 1, nozzle: 1, restriction: 1 }) // 0.5
 */
export function backPressure(of: {
  readonly gapFraction: number;
  readonly nozzle: number;
  readonly restriction: number;
}): number {
  if (of.restriction <= 0) return 0;
  const ratio = (of.gapFraction * of.nozzle) / of.restriction;
  return 1 / (1 + ratio * ratio);
}

/** The share of the signal that the command asks: a rising signal opens, or shuts. */
export function askedSignal(build: Build, outputPercent: number): number {
  return signalOpens(build.frame) ? outputPercent / 100 : 1 - outputPercent / 100;
}

export function currentMa(build: Build, outputPercent: number): number {
  return (4 + 16 * askedSignal(build, outputPercent)) * build.currentFactor;
}

/** What the source would hold if nobody took air from it. */
export function sourceAskedPa(
  build: Build,
  of: { readonly outputPercent: number; readonly supplyPa: number },
) {
  const { frame } = build;
  const spanPa = frame.signalHighPa - frame.signalLowPa;
  const share = (currentMa(build, of.outputPercent) - 4) / 16;
  const wantedPa = frame.signalLowPa + spanPa * (share * build.sourceFactor + build.sourceOffset);
  const fedPa = Math.min(of.supplyPa, SOURCE_SUPPLY_FACTOR * frame.signalHighPa);
  const parts = { nozzle: build.sourceNozzle, restriction: build.sourceRestriction };
  const leastPa = fedPa * backPressure({ gapFraction: GAP.most, ...parts });
  const mostPa = fedPa * backPressure({ gapFraction: GAP.least, ...parts });
  return Math.min(mostPa, Math.max(leastPa, Math.min(wantedPa, fedPa), 0));
}

/**
 * Air from the source into the tube. The tube's own hole lies half way; where it is blocked nothing passes, and what
 * stands beyond stays.
 */
export function tubeFlow(
  build: Build,
  of: { readonly state: State; readonly askedPa: number; readonly lastKgPerS: number },
): { readonly flowKgPerS: number; readonly sourcePa: number } {
  if (build.tubeOpen <= 0) return { flowKgPerS: 0, sourcePa: of.askedPa };
  const open = Math.max(1e-3, build.sourceRestriction);
  const droop = build.sourceDroopPaSPerKg / open;
  const lossPaSPerKg = tubeLossPaSPerKg({
    lengthM: build.tubeM * (build.tubeHoleM > 0 ? 0.5 : 1) + FITTINGS_M,
    boreM: BORE_M * Math.sqrt(build.tubeOpen),
    flowKgPerS: of.lastKgPerS,
    meanPa: of.state.signalPa,
  });
  const most = build.sourceMostKgPerS * open;
  const wanted = (of.askedPa - of.state.signalPa) / (droop + lossPaSPerKg);
  const flowKgPerS = Math.min(most, Math.max(-most, wanted));
  return { flowKgPerS, sourcePa: Math.max(0, of.state.signalPa + lossPaSPerKg * flowKgPerS) };
}

/** Pressure at the positioner's inlet after a step: a small volume, so taken implicitly. */
export function inletAfter(
  build: Build,
  of: { readonly state: State; readonly askedPa: number; readonly dtS: number; readonly lastKgPerS: number },
): {
  readonly signalPa: number;
  readonly sourcePa: number;
  readonly lostKgPerS: number;
  readonly flowKgPerS: number;
} {
  const { state } = of;
  const { flowKgPerS, sourcePa } = tubeFlow(build, of);
  const holeM2 = jetM2(build.tubeHoleM) + jetM2(build.bellowsHoleM);
  const lostKgPerS = passKgPerS({ areaM2: holeM2, fromPa: state.signalPa, toPa: 0 });
  const perPa = AIR_J_PER_KG / DEAD_VOLUME_M3;
  const drive = of.askedPa - state.signalPa;
  const inPerPa = Math.abs(drive) < 1 ? 1e-7 : flowKgPerS / drive;
  const outPerPa = lostKgPerS / Math.max(100, state.signalPa);
  const weight = of.dtS * perPa;
  const signalPa = (state.signalPa + weight * inPerPa * of.askedPa) / (1 + weight * (inPerPa + outPerPa));
  return { signalPa: Math.max(0, signalPa), sourcePa, lostKgPerS, flowKgPerS };
}
