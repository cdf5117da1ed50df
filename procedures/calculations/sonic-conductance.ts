import { ABOVE_ZERO, refuseOutside, ZERO_OR_MORE } from './checks.ts';
import { GAS_STATES, molPerM3 } from './gas-states.ts';

/** Density of air at the ANR state, 65 % humidity, as ISO 6358 has it; dry air would be 1.188. */
export const ANR_DENSITY_KG_PER_M3 = 1.185;

/** A pneumatic part as ISO 6358 describes it. */
export interface Restriction {
  readonly conductanceM3PerSPa: number;
  /** b: outlet over inlet pressure below which it chokes; 0.2 to 0.5 for parts, 0.528 only for an ideal nozzle. */
  readonly criticalPressureRatio: number;
}

export interface RestrictionFlow {
  readonly pressureRatio: number;
  readonly choked: boolean;
  readonly flowAnrM3PerS: number;
  readonly flowMolPerS: number;
  readonly massFlowKgPerS: number;
}

/**
 * Air flow through a part with a known sonic conductance.
 *
 * Shape: C, b and the state in, flow out. q = C · p1 · √(T0/T1) below b, times √(1 − ((r − b)/(1 − b))²) above it
 * Valid: absolute pressures, air, exponent 0.5 (the newer edition allows others).
 * @param conductanceM3PerSPa    C; above 0
 * @param criticalPressureRatio  b; 0 or more, below 1
 * @param inletPaAbs             above 0
 * @param outletPaAbs            0 or more, not above the inlet
 * @param inletK                 above 0
 * @returns pressure ratio, whether it chokes, flow at ANR in m³/s, in mol/s and in kg/s
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-24] ISO 6358 flow law
 * @example restrictionFlow({ conductanceM3PerSPa: 1e-8, criticalPressureRatio: 0.3, inletPaAbs: 7e5, outletPaAbs: 6e5, inletK: 293.15 }).flowAnrM3PerS // 0.00423783
 */
export function restrictionFlow(
  input: Restriction & { readonly inletPaAbs: number; readonly outletPaAbs: number; readonly inletK: number },
): RestrictionFlow {
  const { conductanceM3PerSPa, criticalPressureRatio, inletPaAbs, outletPaAbs, inletK } = input;
  refuseOutside({ conductanceM3PerSPa, inletPaAbs, inletK }, ABOVE_ZERO);
  refuseOutside({ criticalPressureRatio }, { atLeast: 0, below: 1 });
  refuseOutside({ outletPaAbs }, { atLeast: 0, atMost: inletPaAbs });
  const pressureRatio = outletPaAbs / inletPaAbs;
  const choked = pressureRatio <= criticalPressureRatio;
  const beyond = choked ? 0 : (pressureRatio - criticalPressureRatio) / (1 - criticalPressureRatio);
  const anr = GAS_STATES.anr;
  const flowAnrM3PerS =
    conductanceM3PerSPa *
    inletPaAbs *
    Math.sqrt(anr.temperatureK / inletK) *
    Math.sqrt(Math.max(0, 1 - beyond ** 2));
  return {
    pressureRatio,
    choked,
    flowAnrM3PerS,
    flowMolPerS: flowAnrM3PerS * molPerM3(anr),
    massFlowKgPerS: flowAnrM3PerS * ANR_DENSITY_KG_PER_M3,
  };
}

export interface Discharge {
  readonly timeConstantS: number;
  readonly endPaAbs: number;
  readonly endPa: number;
  /** How long the outlet stays choked; null where b is not given. Afterwards it empties more slowly. */
  readonly chokedForS: number | null;
}

/**
 * Pressure in a volume that empties through one choked part.
 *
 * Shape: volume, part, start and time in, pressure out. p = p0 · e^(−t/τ), τ = V/(C · 1 bar) · √(293.15 K/T)
 * Valid: isothermal, while the outlet is choked.
 * @param volumeM3               above 0
 * @param conductanceM3PerSPa    C; above 0
 * @param criticalPressureRatio  b; above 0, below 1; blank: the end of choking is not said
 * @param startPa                gauge; 0 or more
 * @param atmospherePaAbs        above 0
 * @param temperatureK           above 0
 * @param elapsedS               0 or more
 * @returns time constant, pressure absolute and gauge, how long it stays choked
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-24] ISO 6358 flow law with the gas law
 * @example chokedDischarge({ volumeM3: 0.002, conductanceM3PerSPa: 2e-11, startPa: 4e5, atmospherePaAbs: 101325,
 *   temperatureK: 293.15, elapsedS: 120 }) // { timeConstantS: 1000, endPaAbs: 444635, endPa: 343310, chokedForS: null }
 */
export function chokedDischarge(input: {
  readonly volumeM3: number;
  readonly conductanceM3PerSPa: number;
  readonly criticalPressureRatio?: number | null;
  readonly startPa: number;
  readonly atmospherePaAbs: number;
  readonly temperatureK: number;
  readonly elapsedS: number;
}): Discharge {
  const {
    volumeM3,
    conductanceM3PerSPa,
    criticalPressureRatio = null,
    atmospherePaAbs,
    temperatureK,
  } = input;
  refuseOutside({ volumeM3, conductanceM3PerSPa, atmospherePaAbs, temperatureK }, ABOVE_ZERO);
  refuseOutside({ startPa: input.startPa, elapsedS: input.elapsedS }, ZERO_OR_MORE);
  if (criticalPressureRatio !== null) refuseOutside({ criticalPressureRatio }, { above: 0, below: 1 });
  const startPaAbs = input.startPa + atmospherePaAbs;
  const anr = GAS_STATES.anr;
  const timeConstantS =
    (volumeM3 / (conductanceM3PerSPa * anr.pressurePaAbs)) * Math.sqrt(anr.temperatureK / temperatureK);
  const endPaAbs = startPaAbs * Math.exp(-input.elapsedS / timeConstantS);
  return {
    timeConstantS,
    endPaAbs,
    endPa: endPaAbs - atmospherePaAbs,
    chokedForS:
      criticalPressureRatio === null
        ? null
        : Math.max(0, timeConstantS * Math.log((startPaAbs * criticalPressureRatio) / atmospherePaAbs)),
  };
}
