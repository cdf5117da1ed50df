import { ABOVE_ZERO, refuseOutside, ZERO_OR_MORE } from './checks.ts';
import { GAS_STATES } from './gas-states.ts';
import { circleAreaM2 } from './plug-force.ts';
import { ANR_DENSITY_KG_PER_M3 } from './sonic-conductance.ts';

/** Air as the pneumatic equations take it. */
export const AIR = { heatRatio: 1.4, gasConstantJPerKgK: 287.05 } as const;

export interface Gas {
  readonly heatRatio: number;
  readonly gasConstantJPerKgK: number;
}

/**
 * Outlet over inlet pressure at which an ideal nozzle chokes.
 *
 * Shape: ratio of specific heats in, a ratio out. (2/(k + 1))^(k/(k − 1))
 * Valid: ideal gas, isentropic; real parts choke at 0.2 to 0.5.
 * @param heatRatio  above 1, at most 2
 * @returns ratio of absolute pressures
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-25] isentropic nozzle
 * @example criticalPressureRatio({ heatRatio: 1.4 }) // 0.5282818
 */
export function criticalPressureRatio({ heatRatio }: { readonly heatRatio: number }): number {
  refuseOutside({ heatRatio }, { above: 1.0001, atMost: 2 });
  return (2 / (heatRatio + 1)) ** (heatRatio / (heatRatio - 1));
}

/**
 * Outlet pressure below which a part chokes.
 *
 * Shape: inlet and barometer in gauge terms and a critical ratio in, a gauge pressure out.
 * Valid: the ratio is of absolute pressures: gauge pressures in it are the usual mistake.
 * @param inletPa                gauge; 0 or more
 * @param atmospherePaAbs        above 0
 * @param criticalPressureRatio  of the part; above 0, below 1
 * @returns gauge pressure in Pa; below 0 it does not choke to atmosphere
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-25] choking at the critical ratio
 * @example chokingOutletPa({ inletPa: 551580.58, atmospherePaAbs: 101352.93, criticalPressureRatio: 0.528 }) // 243395.96
 */
export function chokingOutletPa(input: {
  readonly inletPa: number;
  readonly atmospherePaAbs: number;
  readonly criticalPressureRatio: number;
}): number {
  const { inletPa, atmospherePaAbs } = input;
  refuseOutside({ inletPa }, ZERO_OR_MORE);
  refuseOutside({ atmospherePaAbs }, ABOVE_ZERO);
  refuseOutside({ criticalPressureRatio: input.criticalPressureRatio }, { above: 0, below: 1 });
  return (inletPa + atmospherePaAbs) * input.criticalPressureRatio - atmospherePaAbs;
}

export interface OrificeInput extends Gas {
  readonly areaM2: number;
  /** Cd: effective over geometric area. */
  readonly dischargeFactor: number;
  readonly inletPaAbs: number;
  readonly outletPaAbs: number;
  readonly inletK: number;
}

export interface OrificeFlow {
  readonly pressureRatio: number;
  readonly choked: boolean;
  readonly massFlowKgPerS: number;
  readonly flowAnrM3PerS: number;
}

/**
 * Gas flow through a small hole.
 *
 * Shape: area, Cd, gas and state in, mass flow out; the choked branch below the critical ratio.
 * Valid: ideal gas, isentropic to the throat; absolute pressures. Air: heat ratio 1.4, gas constant 287.05 J/(kg·K).
 * @param areaM2             geometric; 0 or more
 * @param dischargeFactor    Cd; above 0, at most 1
 * @param inletPaAbs         above 0
 * @param outletPaAbs        0 or more, not above the inlet
 * @param inletK             above 0
 * @param heatRatio          above 1, at most 2
 * @param gasConstantJPerKgK above 0
 * @returns pressure ratio, whether it chokes, mass flow, and the same as volume of air at ANR
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-25] isentropic orifice
 * @example orificeFlow({ areaM2: circleAreaM2(0.0003), dischargeFactor: 0.8, inletPaAbs: 240e3, outletPaAbs: 101.3e3,
 *   inletK: 293.15, heatRatio: 1.4, gasConstantJPerKgK: 287.05 }).massFlowKgPerS // 3.20354e-5
 */
export function orificeFlow(input: OrificeInput): OrificeFlow {
  const {
    areaM2,
    dischargeFactor,
    inletPaAbs,
    outletPaAbs,
    inletK,
    heatRatio: k,
    gasConstantJPerKgK,
  } = input;
  refuseOutside({ areaM2 }, ZERO_OR_MORE);
  refuseOutside({ inletPaAbs, inletK, gasConstantJPerKgK }, ABOVE_ZERO);
  refuseOutside({ dischargeFactor }, { above: 0, atMost: 1 });
  refuseOutside({ outletPaAbs }, { atLeast: 0, atMost: inletPaAbs });
  const pressureRatio = outletPaAbs / inletPaAbs;
  const critical = criticalPressureRatio({ heatRatio: k });
  const choked = pressureRatio <= critical;
  const throat = Math.max(pressureRatio, critical);
  // At a ratio of 1 the two powers may differ by the last bit the wrong way round.
  const shape = Math.max(0, throat ** (2 / k) - throat ** ((k + 1) / k));
  const velocityTerm = Math.sqrt(((2 * k) / ((k - 1) * gasConstantJPerKgK * inletK)) * shape);
  const massFlowKgPerS = dischargeFactor * areaM2 * inletPaAbs * velocityTerm;
  return { pressureRatio, choked, massFlowKgPerS, flowAnrM3PerS: massFlowKgPerS / ANR_DENSITY_KG_PER_M3 };
}

/**
 * Sonic conductance that a round hole stands for.
 *
 * Shape: diameter, Cd and gas in, C and effective area out. C = choked mass flow/(1.185 kg/m³ · p1) at 20 °C
 * Valid: as orificeFlow.
 * @param diameterM           above 0
 * @param dischargeFactor     Cd; above 0, at most 1
 * @param heatRatio           above 1, at most 2
 * @param gasConstantJPerKgK  above 0
 * @returns conductance in m³/(s·Pa), effective area in m²
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-24] definition of C, with [S-25] for the choked flow
 * @example conductanceOfHole({ diameterM: 0.001, dischargeFactor: 0.8, heatRatio: 1.4, gasConstantJPerKgK: 287.05 })
 *   // { conductanceM3PerSPa: 1.251578e-9, effectiveAreaM2: 6.283185e-7 }
 */
export function conductanceOfHole(
  input: Gas & { readonly diameterM: number; readonly dischargeFactor: number },
): {
  readonly conductanceM3PerSPa: number;
  readonly effectiveAreaM2: number;
} {
  const { diameterM, dischargeFactor } = input;
  refuseOutside({ diameterM }, ABOVE_ZERO);
  const areaM2 = circleAreaM2(diameterM);
  const inletPaAbs = GAS_STATES.anr.pressurePaAbs;
  const { flowAnrM3PerS } = orificeFlow({
    ...input,
    areaM2,
    inletPaAbs,
    outletPaAbs: 0,
    inletK: GAS_STATES.anr.temperatureK,
  });
  return { conductanceM3PerSPa: flowAnrM3PerS / inletPaAbs, effectiveAreaM2: dischargeFactor * areaM2 };
}
