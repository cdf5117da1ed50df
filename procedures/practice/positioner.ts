import { jetM2, passKgPerS } from './air.ts';
import { type Both, type Build, ENDS, otherEnd } from './build.ts';
import { backPressure } from './signal-path.ts';
import type { State } from './state.ts';

/** Gap between flapper and nozzle as a share of the gap at balance. Judgement. */
const GAP = { least: 0.03, most: 8 } as const;
/** Overlap of a relay at balance: it bleeds, and holds a free end at two thirds of its supply. Judgement. */
const BLEED = 0.1;
const EXHAUST_WIDER = 1.35;
/** A relay at full opening strokes a sound valve in so many seconds. Judgement. */
const STROKE_S = 3;

/** How far the signal asks past the place that the feedback tells: positive loads the end of a rising signal. */
export function errorOf(build: Build, state: State): number {
  const { frame } = build;
  const spanPa = frame.signalHighPa - frame.signalLowPa;
  const share = (state.signalPa - frame.signalLowPa) / spanPa;
  const at = frame.risingEnd === 'opens' ? state.feedbackAt : 1 - state.feedbackAt;
  const told = build.rangeSpringOff || build.feedback === 0 ? 0.5 : at * build.feedback;
  return share * build.spanFactor + build.zeroOff - told;
}

/** The share of its stroke that a nozzle or a relay of one end goes for an error. */
function nozzleAim(build: Build, of: { readonly error: number; readonly end: keyof Both }): number {
  const { frame } = build;
  const loads = frame.relayAnEnd ? of.end : frame.coveredEnd;
  const sign = loads === frame.risingEnd ? 1 : -1;
  const clean = 1 - sign * build.gain * of.error * (1 - 0.6 * build.flapperAskew);
  // Out of square, an edge keeps it from closing and the middle of its swing is moved.
  const gapFraction = Math.max(GAP.least + 0.25 * build.flapperAskew, Math.min(GAP.most, clean));
  const part = frame.relayAnEnd ? of.end : 'opens';
  return backPressure({ gapFraction, nozzle: build.nozzle[part], restriction: build.restriction[part] });
}

/** Follows the pilot with its lag. */
export function pilotAfter(build: Build, of: { readonly state: State; readonly dtS: number }): void {
  const { frame } = build;
  const error = errorOf(build, of.state);
  const pace = Math.min(1, of.dtS / build.pilotLagS);
  for (const end of ENDS) {
    if (!frame.relayAnEnd && end === 'shuts') continue;
    const aim =
      frame.positioner === 'electropneumatic' ? electricAim(build, error) : nozzleAim(build, { error, end });
    of.state.nozzle[end] += (aim - of.state.nozzle[end]) * pace;
  }
}

function electricAim(build: Build, error: number): number {
  const aim = build.electricStuckAt ?? 0.5 + 0.5 * build.gain * error;
  return Math.min(1, Math.max(0, aim));
}

/** How far the relay of an end stands open: 1 fills, -1 empties. */
function relayOpening(build: Build, of: { readonly state: State; readonly end: keyof Both }): number {
  const { frame } = build;
  const own = frame.relayAnEnd ? of.end : frame.coveredEnd;
  const at = frame.relayAnEnd ? of.end : 'opens';
  const stuck = build.relayStuckAt[at];
  const share = frame.positioner === 'electropneumatic' ? electricFor(build, of.state) : of.state.nozzle[at];
  const open = Math.min(1, Math.max(-1, stuck ?? (share - 0.5) * 3));
  return frame.relayAnEnd || of.end === own ? open : -open;
}

/** The electric part loads the end of a rising signal. */
function electricFor(build: Build, state: State): number {
  return build.frame.risingEnd === build.frame.coveredEnd ? state.nozzle.opens : 1 - state.nozzle.opens;
}

/** What the nozzles bleed at balance, at a supply of two bar: judgement. */
const PILOT_KG_PER_S = 8e-5;
const PILOT_AT_PA = 2e5;

/** Air that bleeds from the nozzles all the time: none where a flapper covers them or their restriction is plugged. */
export function pilotBleedKgPerS(
  build: Build,
  of: { readonly state: State; readonly fedPa: number },
): number {
  const ends = build.frame.relayAnEnd ? ENDS : (['opens'] as const);
  const open = ends.reduce((sum, end) => {
    const through = Math.min(1, build.restriction[end]) * Math.max(0, 1 - of.state.nozzle[end]);
    return sum + 2 * through * (build.nozzle[end] < 0.1 ? 0 : 1);
  }, 0);
  return (PILOT_KG_PER_S * open * Math.max(0, of.fedPa)) / PILOT_AT_PA / ends.length;
}

/** Jet of a relay at full opening. */
export function relayJetM2(build: Build): number {
  const { areaM2, travelM, deadStrokeM, supplyPa } = build.frame;
  const filledKg = (areaM2 * (travelM + deadStrokeM) * (supplyPa + 101_325)) / 84_147;
  const perM2 = ((supplyPa + 101_325) * 0.6847) / 290;
  return filledKg / STROKE_S / perM2;
}

/**
 * What flows into an end of the actuator from the positioner.
 * @returns into the end, taken from the supply, and blown off, each in kg/s
 */
export function portFlow(
  build: Build,
  of: { readonly state: State; readonly end: keyof Both; readonly fedPa: number; readonly jetM2: number },
): { readonly inKgPerS: number; readonly usedKgPerS: number; readonly blownKgPerS: number } {
  const { state, end } = of;
  const relayEnd = build.tubesCrossed ? otherEnd(end) : end;
  const open = relayOpening(build, { state, end: relayEnd });
  const pace = 1 - 0.9 * build.boosterSlow;
  const narrow = build.outTubeOpen * pace;
  const fill = of.jetM2 * narrow * Math.min(1, Math.max(0, open + BLEED));
  const empty = of.jetM2 * narrow * EXHAUST_WIDER * Math.min(1, Math.max(0, BLEED - open));
  const endPa = state.endPa[end];
  const usedKgPerS = Math.max(0, passKgPerS({ areaM2: fill, fromPa: of.fedPa, toPa: endPa }));
  const back = Math.min(0, passKgPerS({ areaM2: fill, fromPa: of.fedPa, toPa: endPa }));
  const blownKgPerS = passKgPerS({ areaM2: empty, fromPa: endPa, toPa: 0 });
  const wornKgPerS = passKgPerS({ areaM2: jetM2(build.relayLeakM), fromPa: endPa, toPa: 0 }) * narrow;
  return {
    inKgPerS: usedKgPerS + back - blownKgPerS - wornKgPerS,
    usedKgPerS,
    blownKgPerS: blownKgPerS + wornKgPerS,
  };
}
