import { ABOVE_ZERO, refuseOutside, ZERO_OR_MORE } from './checks.ts';
import { N } from './flow-constants.ts';
import { type GasFlow, type GasInput, gasFlow } from './gas-flow.ts';
import { fromSi, toSi } from './units.ts';

/**
 * Rated capacity with water at the test drop: what the leak limits of classes II to IV are a fraction of.
 *
 * Shape: rated coefficient, drop and density in, a flow out. Q = 0.1 · Kv · √(Δp in kPa/relative density), m³/h
 * Valid: turbulent, not choked, no fittings; the drop of the *test*, not of the service.
 * @param ratedKv          at full travel; above 0
 * @param testDropPa       above 0
 * @param relativeDensity  of the test liquid; above 0; 1 for water
 * @returns flow in m³/s
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-18] incompressible flow
 * @example ratedCapacityLiquidM3PerS({ ratedKv: 100, testDropPa: 400000, relativeDensity: 1 }) // 0.05555556
 */
export function ratedCapacityLiquidM3PerS(input: {
  readonly ratedKv: number;
  readonly testDropPa: number;
  readonly relativeDensity: number;
}): number {
  const { ratedKv, testDropPa, relativeDensity } = input;
  refuseOutside({ ratedKv, testDropPa, relativeDensity }, ABOVE_ZERO);
  const dropKpa = fromSi({ valueSi: testDropPa, unit: 'kPa' });
  return toSi({ value: ratedKv * N.n1 * Math.sqrt(dropKpa / relativeDensity), unit: 'm3/h' });
}

export interface GasTest extends Omit<GasInput, 'inletPaAbs' | 'outletPaAbs' | 'fittings'> {
  readonly ratedKv: number;
  readonly inletPa: number;
  readonly outletPa: number;
  readonly atmospherePaAbs: number;
}

/**
 * Rated capacity with a gas at the test pressures.
 *
 * Shape: rated coefficient, gauge pressures, barometer and gas in; flow and each factor out, as gasFlow.
 * Valid: at 350 kPa to atmosphere most globe valves choke, so that the limit hangs on the xT of the open valve: it is
 *   asked for, never assumed. No fittings.
 * @param ratedKv              at full travel; above 0
 * @param inletPa              gauge; 0 or more
 * @param outletPa             gauge; 0 or more, below the inlet
 * @param atmospherePaAbs      barometer; above 0
 * @param temperatureK         above 0
 * @param molarMassKgPerMol    above 0
 * @param heatRatio            above 1, at most 2
 * @param compressibility      above 0
 * @param pressureDropRatioXt  at rated travel; above 0, at most 1
 * @param form                 iec-normal, iec-standard or isa-scfh
 * @returns flow in mol/s, x, Y, whether it chokes
 * @throws CalcError CALC-001, CALC-002, CALC-003 or CALC-005 by the name of the input
 * @source [S-18] compressible flow
 * @example ratedCapacityGas({ ratedKv: 40, inletPa: 350e3, outletPa: 0, atmospherePaAbs: 101325, temperatureK: 293.15,
 *   molarMassKgPerMol: 0.02897, heatRatio: 1.4, compressibility: 1, pressureDropRatioXt: 0.72, form: 'iec-normal' }).choked // true
 */
export function ratedCapacityGas(input: GasTest): GasFlow {
  const { ratedKv, inletPa, outletPa, atmospherePaAbs } = input;
  refuseOutside({ atmospherePaAbs }, ABOVE_ZERO);
  refuseOutside({ inletPa, outletPa }, ZERO_OR_MORE);
  return gasFlow({
    ...input,
    kv: ratedKv,
    inletPaAbs: inletPa + atmospherePaAbs,
    outletPaAbs: outletPa + atmospherePaAbs,
  });
}

/**
 * Rated capacity with a gas by the simplified form of the Chinese standard.
 *
 * Shape: coefficient, pressures, density and temperature in, a flow and the branch out.
 *   4.73 Kv √(Δp · Pm/(G · T)) below half the inlet pressure, 2.9 P1 · Kv/√(G · T) from there, kPa and m³/h
 * Valid: Pm is the mean of inlet and outlet; about 12 % above the standard's gas equation when choked at xT 0.72.
 * @param ratedKv          above 0
 * @param inletPaAbs       above 0
 * @param outletPaAbs      0 or more, below the inlet
 * @param specificGravity  gas density over that of air; above 0
 * @param temperatureK     above 0
 * @returns flow in mol/s (counted there as normal cubic metres), and whether the choked branch was taken
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-20] from memory
 * @example ratedCapacityGasSimplified({ ratedKv: 40, inletPaAbs: 451325, outletPaAbs: 101325, specificGravity: 1,
 *   temperatureK: 293.15 }).choked // true
 */
export function ratedCapacityGasSimplified(input: {
  readonly ratedKv: number;
  readonly inletPaAbs: number;
  readonly outletPaAbs: number;
  readonly specificGravity: number;
  readonly temperatureK: number;
}): { readonly flowMolPerS: number; readonly choked: boolean } {
  const { ratedKv, inletPaAbs, outletPaAbs, specificGravity, temperatureK } = input;
  refuseOutside({ ratedKv, inletPaAbs, specificGravity, temperatureK }, ABOVE_ZERO);
  refuseOutside({ outletPaAbs }, { atLeast: 0, below: inletPaAbs });
  const [inletKpa, outletKpa] = [inletPaAbs / 1000, outletPaAbs / 1000];
  const [dropKpa, meanKpa] = [inletKpa - outletKpa, (inletKpa + outletKpa) / 2];
  const choked = dropKpa >= inletKpa / 2;
  const flow = choked
    ? (2.9 * inletKpa * ratedKv) / Math.sqrt(specificGravity * temperatureK)
    : 4.73 * ratedKv * Math.sqrt((dropKpa * meanKpa) / (specificGravity * temperatureK));
  return { flowMolPerS: toSi({ value: flow, unit: 'Nm3/h' }), choked };
}
