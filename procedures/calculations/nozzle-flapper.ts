import { ABOVE_ZERO, refuseOutside, ZERO_OR_MORE } from './checks.ts';
import { type Gas, orificeFlow } from './orifice-flow.ts';
import { circleAreaM2 } from './plug-force.ts';

/** A fixed restriction that feeds a nozzle, and a flapper before it. */
export interface NozzleGeometry {
  readonly restrictionDiameterM: number;
  readonly nozzleDiameterM: number;
}

/**
 * Back pressure of a nozzle by the textbook form.
 *
 * Shape: geometry, gap and supply in, gauge pressure out. pn/ps = 1/(1 + 16 · dn² · x²/dr⁴)
 * Valid: incompressible, both discharge factors equal, gap up to a quarter of the nozzle. At 140 kPa it is up to a
 *   third off the compressible answer: say which is used.
 * @param restrictionDiameterM  above 0
 * @param nozzleDiameterM       above 0
 * @param gapM                  0 or more
 * @param supplyPa              gauge; 0 or more
 * @returns gauge pressure in Pa
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-26] textbook form, from memory
 * @example nozzleBackPressureSimplePa({ restrictionDiameterM: 0.25e-3, nozzleDiameterM: 0.8e-3, gapM: 0.02e-3, supplyPa: 140e3 }) // 68340.2
 */
export function nozzleBackPressureSimplePa(
  input: NozzleGeometry & { readonly gapM: number; readonly supplyPa: number },
): number {
  const { restrictionDiameterM, nozzleDiameterM, gapM, supplyPa } = input;
  refuseOutside({ restrictionDiameterM, nozzleDiameterM }, ABOVE_ZERO);
  refuseOutside({ gapM, supplyPa }, ZERO_OR_MORE);
  const ratio = (4 * nozzleDiameterM * gapM) / restrictionDiameterM ** 2;
  return supplyPa / (1 + ratio ** 2);
}

/**
 * Gap at which the textbook form gives a back pressure.
 *
 * Shape: geometry, supply and back pressure in, a gap out; the inverse of nozzleBackPressureSimplePa.
 * Valid: as there.
 * @param restrictionDiameterM  above 0
 * @param nozzleDiameterM       above 0
 * @param supplyPa              gauge; above 0
 * @param backPressurePa        gauge; above 0, at most the supply
 * @returns gap in m
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-26] textbook form, from memory
 * @example nozzleGapSimpleM({ restrictionDiameterM: 0.25e-3, nozzleDiameterM: 0.8e-3, supplyPa: 140e3, backPressurePa: 20e3 }) // 4.784160e-5
 */
export function nozzleGapSimpleM(
  input: NozzleGeometry & { readonly supplyPa: number; readonly backPressurePa: number },
): number {
  const { restrictionDiameterM, nozzleDiameterM, supplyPa, backPressurePa } = input;
  refuseOutside({ restrictionDiameterM, nozzleDiameterM, supplyPa }, ABOVE_ZERO);
  refuseOutside({ backPressurePa }, { above: 0, atMost: supplyPa });
  return (restrictionDiameterM ** 2 / (4 * nozzleDiameterM)) * Math.sqrt(supplyPa / backPressurePa - 1);
}

export interface NozzleInput extends NozzleGeometry, Gas {
  readonly gapM: number;
  readonly supplyPa: number;
  readonly atmospherePaAbs: number;
  readonly temperatureK: number;
  readonly dischargeFactorRestriction: number;
  readonly dischargeFactorNozzle: number;
  /** Part of the restriction's area that is not plugged; 1 where left out. */
  readonly restrictionOpenShare?: number;
}

export interface NozzleState {
  readonly backPressurePa: number;
  readonly restrictionChoked: boolean;
  readonly nozzleChoked: boolean;
  readonly massFlowKgPerS: number;
  /** The gap is so wide that the nozzle bore itself limits: beyond a quarter of its diameter. */
  readonly gapSaturated: boolean;
}

/** Halvings of the pressure interval: down to the last bit. */
const STEPS = 80;

/**
 * Back pressure of a nozzle with compressible air.
 *
 * Shape: geometry, gap, supply and gas in; the pressure at which what the restriction feeds leaves through the gap.
 * Valid: curtain π · dn · x up to the nozzle bore. Restriction and nozzle are never both choked at 140 kPa. A plugged
 *   restriction lowers the back pressure, a plugged nozzle raises it to the supply.
 * @param restrictionDiameterM        above 0
 * @param nozzleDiameterM             above 0
 * @param gapM                        0 or more
 * @param supplyPa                    gauge; above 0
 * @param atmospherePaAbs             above 0
 * @param temperatureK                above 0
 * @param dischargeFactorRestriction  above 0, at most 1
 * @param dischargeFactorNozzle       above 0, at most 1; not the same in real parts
 * @param heatRatio                   above 1, at most 2
 * @param gasConstantJPerKgK          above 0
 * @param restrictionOpenShare        from 0 (plugged) to 1; 1 where left out
 * @returns gauge pressure, which of the two chokes, mass flow, whether the gap is beyond its effect
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-25] isentropic orifices in series
 * @example nozzleBackPressure({ restrictionDiameterM: 0.25e-3, nozzleDiameterM: 0.8e-3, gapM: 0.02e-3, supplyPa: 140e3,
 *   atmospherePaAbs: 101325, temperatureK: 293.15, dischargeFactorRestriction: 0.8, dischargeFactorNozzle: 0.8,
 *   heatRatio: 1.4, gasConstantJPerKgK: 287.05 }).backPressurePa // 91697
 */
export function nozzleBackPressure(input: NozzleInput): NozzleState {
  const {
    restrictionDiameterM,
    nozzleDiameterM,
    gapM,
    supplyPa,
    atmospherePaAbs,
    restrictionOpenShare = 1,
  } = input;
  refuseOutside({ restrictionDiameterM, nozzleDiameterM, supplyPa, atmospherePaAbs }, ABOVE_ZERO);
  refuseOutside({ gapM }, ZERO_OR_MORE);
  refuseOutside({ restrictionOpenShare }, { atLeast: 0, atMost: 1 });
  const air = { ...input, inletK: input.temperatureK };
  const feed = (backPaAbs: number) =>
    orificeFlow({
      ...air,
      areaM2: restrictionOpenShare * circleAreaM2(restrictionDiameterM),
      dischargeFactor: input.dischargeFactorRestriction,
      inletPaAbs: supplyPa + atmospherePaAbs,
      outletPaAbs: Math.min(backPaAbs, supplyPa + atmospherePaAbs),
    });
  const curtainM2 = Math.PI * nozzleDiameterM * gapM;
  const boreM2 = circleAreaM2(nozzleDiameterM);
  const leave = (backPaAbs: number) =>
    orificeFlow({
      ...air,
      areaM2: Math.min(curtainM2, boreM2),
      dischargeFactor: input.dischargeFactorNozzle,
      inletPaAbs: backPaAbs,
      outletPaAbs: Math.min(atmospherePaAbs, backPaAbs),
    });
  let [low, high] = [atmospherePaAbs, supplyPa + atmospherePaAbs];
  for (let step = 0; step < STEPS; step++) {
    const middle = (low + high) / 2;
    if (feed(middle).massFlowKgPerS > leave(middle).massFlowKgPerS) low = middle;
    else high = middle;
  }
  const backPaAbs = (low + high) / 2;
  return {
    backPressurePa: backPaAbs - atmospherePaAbs,
    restrictionChoked: feed(backPaAbs).choked,
    nozzleChoked: leave(backPaAbs).choked,
    massFlowKgPerS: leave(backPaAbs).massFlowKgPerS,
    gapSaturated: curtainM2 > boreM2,
  };
}
