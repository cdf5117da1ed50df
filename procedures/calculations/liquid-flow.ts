import { CalcError } from './calc-error.ts';
import { kvFor } from './capacity-search.ts';
import { ABOVE_ZERO, refuseOutside, refuseUnlessRising, ZERO_OR_MORE } from './checks.ts';
import { type Fittings, type PipingFactors, pipingFactors } from './fittings.ts';
import { N, TURBULENT_FROM } from './flow-constants.ts';
import { fromSi, toSi } from './units.ts';

export interface LiquidInput {
  readonly inletPaAbs: number;
  readonly outletPaAbs: number;
  /** Density over that of water at 15 °C (999.1033 kg/m³). */
  readonly relativeDensity: number;
  readonly vapourPaAbs: number;
  readonly criticalPaAbs: number;
  readonly recoveryFl: number;
  readonly fittings?: Fittings | null;
}

export interface LiquidFlow extends PipingFactors {
  readonly kv: number;
  readonly flowM3PerS: number;
  readonly dropPa: number;
  /** FF: how far below the vapour pressure the throat falls when choked. */
  readonly criticalRatioFactor: number;
  readonly dropChokedPa: number;
  readonly choked: boolean;
  readonly dropSizingPa: number;
}

/**
 * Liquid flow that a valve passes.
 *
 * Shape: coefficient and state in, flow and each factor out. Q = C · N1 · FP · √(Δp/(ρ/ρ0)), Δp at most the choked one
 * Valid: turbulent, single phase, Newtonian; absolute pressures. FF = 0.96 − 0.28 √(Pv/Pc)
 * @param kv               above 0
 * @param inletPaAbs       above 0
 * @param outletPaAbs      0 or more, below the inlet
 * @param relativeDensity  above 0
 * @param vapourPaAbs      0 or more
 * @param criticalPaAbs    above 0
 * @param recoveryFl       FL; above 0, at most 1
 * @param fittings         sizes of valve and pipes; blank: none
 * @returns flow in m³/s, drop, choked drop, FF, FP, FLP, whether it chokes
 * @throws CalcError CALC-001, CALC-002 or CALC-003 by the name of the input; CALC-006 if the liquid boils at the inlet
 * @source [S-18] incompressible flow
 * @example liquidFlow({ kv: 63, inletPaAbs: 1e6, outletPaAbs: 2e5, relativeDensity: 1, vapourPaAbs: 2340,
 *   criticalPaAbs: 22064e3, recoveryFl: 0.9 }).flowM3PerS // 0.0494975
 */
export function liquidFlow(input: LiquidInput & { readonly kv: number }): LiquidFlow {
  const { kv, inletPaAbs, outletPaAbs, relativeDensity, recoveryFl, fittings = null } = input;
  refuseOutside({ relativeDensity }, ABOVE_ZERO);
  refuseOutside({ outletPaAbs }, ZERO_OR_MORE);
  refuseUnlessRising({ outletPaAbs, inletPaAbs });
  const piping = pipingFactors({ kv, fittings, recoveryFl });
  const { criticalRatioFactor, dropChokedPa } = liquidChoking({
    ...input,
    recoveryFl: piping.recoveryWithPiping / piping.pipingFactor,
  });
  const dropPa = inletPaAbs - outletPaAbs;
  const dropSizingPa = Math.min(dropPa, dropChokedPa);
  const dropKpa = fromSi({ valueSi: dropSizingPa, unit: 'kPa' });
  const flowM3PerH = kv * N.n1 * piping.pipingFactor * Math.sqrt(dropKpa / relativeDensity);
  return {
    kv,
    flowM3PerS: toSi({ value: flowM3PerH, unit: 'm3/h' }),
    dropPa,
    criticalRatioFactor,
    dropChokedPa,
    choked: dropPa >= dropChokedPa,
    dropSizingPa,
    ...piping,
  };
}

/**
 * Flow coefficient that a liquid flow needs.
 *
 * Shape: flow and state in; the inverse of liquidFlow, solved to convergence.
 * Valid: as liquidFlow.
 * @param flowM3PerS       above 0
 * @param inletPaAbs       above 0
 * @param outletPaAbs      0 or more, below the inlet
 * @param relativeDensity  above 0
 * @param vapourPaAbs      0 or more
 * @param criticalPaAbs    above 0
 * @param recoveryFl       FL; above 0, at most 1
 * @param fittings         sizes of valve and pipes; blank: none
 * @returns Kv with each factor
 * @throws CalcError CALC-001, CALC-002 or CALC-003 by the name of the input; CALC-006 if there is no answer
 * @source [S-18] incompressible flow, worked examples 1 and 2
 * @example liquidKv({ flowM3PerS: 0.1, inletPaAbs: 680e3, outletPaAbs: 220e3, relativeDensity: 965.4 / 999.1033,
 *   vapourPaAbs: 70.1e3, criticalPaAbs: 22120e3, recoveryFl: 0.9 }).kv // 164.99548
 */
export function liquidKv(input: LiquidInput & { readonly flowM3PerS: number }): LiquidFlow {
  const { flowM3PerS } = input;
  refuseOutside({ flowM3PerS }, ABOVE_ZERO);
  const flowOf = (kv: number) => liquidFlow({ ...input, kv }).flowM3PerS;
  return liquidFlow({ ...input, kv: kvFor({ flowOf, wanted: flowM3PerS, name: 'flowM3PerS' }) });
}

/**
 * The drop at which a liquid chokes in a valve.
 *
 * Shape: inlet, vapour and critical pressure and FL in; FF, choked drop and outlet pressure out.
 *   Δp = FL² · (P1 − FF · Pv)
 * Valid: absolute pressures; with reducers FL is replaced by FLP/FP and may pass 1.
 * @param inletPaAbs     above FF times the vapour pressure
 * @param vapourPaAbs    0 or more
 * @param criticalPaAbs  above 0, above the vapour pressure
 * @param recoveryFl     above 0
 * @returns FF, choked drop, outlet pressure at which it chokes
 * @throws CalcError CALC-001, CALC-002 or CALC-003 by the name of the input; CALC-006 if the liquid boils at the inlet
 * @source [S-18] choked incompressible flow
 * @example liquidChoking({ inletPaAbs: 680000, vapourPaAbs: 69682.893, criticalPaAbs: 22048320, recoveryFl: 0.6 }).outletPaAbs // 458887.53
 */
export function liquidChoking(input: {
  readonly inletPaAbs: number;
  readonly vapourPaAbs: number;
  readonly criticalPaAbs: number;
  readonly recoveryFl: number;
}): { readonly criticalRatioFactor: number; readonly dropChokedPa: number; readonly outletPaAbs: number } {
  const { inletPaAbs, vapourPaAbs, criticalPaAbs, recoveryFl } = input;
  refuseOutside({ inletPaAbs, criticalPaAbs, recoveryFl }, ABOVE_ZERO);
  refuseOutside({ vapourPaAbs }, ZERO_OR_MORE);
  refuseUnlessRising({ vapourPaAbs, criticalPaAbs });
  const criticalRatioFactor = 0.96 - 0.28 * Math.sqrt(vapourPaAbs / criticalPaAbs);
  const overPa = inletPaAbs - criticalRatioFactor * vapourPaAbs;
  if (overPa <= 0) {
    const range = 'above the vapour pressure: the liquid boils before the valve';
    throw new CalcError({
      code: 'CALC-006',
      name: 'inletPaAbs',
      value: inletPaAbs,
      range,
      unit: 'Pa absolute',
    });
  }
  const dropChokedPa = recoveryFl ** 2 * overPa;
  return { criticalRatioFactor, dropChokedPa, outletPaAbs: inletPaAbs - dropChokedPa };
}

/**
 * Valve Reynolds number, and whether the flow is turbulent.
 *
 * Shape: flow, viscosity, coefficient and valve in, a number and a yes or no out.
 * Valid: below 10 000 the equations here do not hold, and no laminar ones are given: say so and stop.
 * @param flowM3PerS          above 0
 * @param viscosityM2PerS     kinematic; above 0
 * @param kv                  above 0
 * @param recoveryFl          above 0, at most 1
 * @param styleModifierFd     of the valve; above 0
 * @param valveM              nominal size; above 0
 * @returns Reynolds number, and whether it is 10 000 or more
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-18] valve Reynolds number
 * @example valveReynolds({ flowM3PerS: 0.1, viscosityM2PerS: 3.26e-7, kv: 164.99548, recoveryFl: 0.9, styleModifierFd: 0.46,
 *   valveM: 0.15 }) // { reynolds: 2967024, turbulent: true }
 */
export function valveReynolds(input: {
  readonly flowM3PerS: number;
  readonly viscosityM2PerS: number;
  readonly kv: number;
  readonly recoveryFl: number;
  readonly styleModifierFd: number;
  readonly valveM: number;
}): { readonly reynolds: number; readonly turbulent: boolean } {
  const { flowM3PerS, viscosityM2PerS, kv, recoveryFl, styleModifierFd, valveM } = input;
  refuseOutside({ flowM3PerS, viscosityM2PerS, kv, styleModifierFd, valveM }, ABOVE_ZERO);
  refuseOutside({ recoveryFl }, { above: 0, atMost: 1 });
  const flowM3PerH = fromSi({ valueSi: flowM3PerS, unit: 'm3/h' });
  const approach = ((recoveryFl * kv) ** 2 / (N.n2 * (valveM * 1000) ** 4) + 1) ** 0.25;
  const reynolds =
    ((N.n4 * styleModifierFd * flowM3PerH) / (viscosityM2PerS * Math.sqrt(kv * recoveryFl))) * approach;
  return { reynolds, turbulent: reynolds >= TURBULENT_FROM };
}
