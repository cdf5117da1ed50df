import { ABOVE_ZERO, ANY_NUMBER, refuseOutside, ZERO_OR_MORE } from './checks.ts';
import { GAS_CONSTANT_J_PER_MOL_K } from './gas-states.ts';

/** Block in and watch: what was read at the start and at the end. Pressures are gauge, the barometer absolute. */
export interface DecayInput {
  /** Everything that is shut in, hoses and gauge included. */
  readonly volumeM3: number;
  readonly startPa: number;
  readonly endPa: number;
  readonly startAtmospherePaAbs: number;
  readonly endAtmospherePaAbs: number;
  readonly startK: number;
  readonly endK: number;
  readonly elapsedS: number;
  /** Expanded uncertainties (about 95 %) of one reading each; 0 where left out. */
  readonly gaugeUncertaintyPa?: number;
  readonly temperatureUncertaintyK?: number;
  readonly barometerUncertaintyPa?: number;
  readonly volumeUncertaintyM3?: number;
}

export interface Decay {
  readonly startPaAbs: number;
  readonly endPaAbs: number;
  /** Fall of the gauge reading, and what of it is not a leak; positive: the gauge fell for it. */
  readonly gaugeFallPa: number;
  readonly fallByTemperaturePa: number;
  readonly fallByBarometerPa: number;
  readonly fallByLeakPa: number;
  readonly lostMol: number;
  /** Positive: gas was lost; negative: gas came in. */
  readonly leakMolPerS: number;
  readonly leakUncertaintyMolPerS: number;
  readonly leakSeen: 'out' | 'in' | 'none that this gauge can tell';
}

/**
 * Leak from the pressure that a shut-in volume loses.
 *
 * Shape: readings at start and end in, amount of gas lost and its uncertainty out.
 *   n = (V/R) · (p1/T1 − p2/T2)/Δt with absolute pressures and temperatures
 * Valid: ideal gas, the same temperature through the volume; wait until the heat of filling is gone.
 * @param volumeM3               hoses included; above 0
 * @param startPa                gauge; any number above full vacuum
 * @param endPa                  gauge; any number above full vacuum
 * @param startAtmospherePaAbs   above 0
 * @param endAtmospherePaAbs     above 0
 * @param startK                 above 0
 * @param endK                   above 0
 * @param elapsedS               above 0
 * @param gaugeUncertaintyPa     0 or more; left out: 0; likewise the three below
 * @param temperatureUncertaintyK  0 or more
 * @param barometerUncertaintyPa   0 or more
 * @param volumeUncertaintyM3      0 or more
 * @returns absolute pressures, the parts of the fall, amount lost, leak in mol/s with uncertainty, and what it says
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-23] the balance of a published decay test
 * @example pressureDecay({ volumeM3: 0.002, startPa: 140000, endPa: 130000, startAtmospherePaAbs: 101325,
 *   endAtmospherePaAbs: 101325, startK: 293.15, endK: 293.15, elapsedS: 300 }).leakMolPerS // 2.735172e-5
 */
export function pressureDecay(input: DecayInput): Decay {
  const { volumeM3, startPa, endPa, startAtmospherePaAbs, endAtmospherePaAbs, startK, endK, elapsedS } =
    input;
  refuseOutside({ volumeM3, startAtmospherePaAbs, endAtmospherePaAbs, startK, endK, elapsedS }, ABOVE_ZERO);
  refuseOutside({ startPa }, { above: -startAtmospherePaAbs });
  refuseOutside({ endPa }, { above: -endAtmospherePaAbs });
  const startPaAbs = startPa + startAtmospherePaAbs;
  const endPaAbs = endPa + endAtmospherePaAbs;
  const unleakedPaAbs = startPaAbs * (endK / startK);
  const lostMol = (volumeM3 / GAS_CONSTANT_J_PER_MOL_K) * (startPaAbs / startK - endPaAbs / endK);
  const leakMolPerS = lostMol / elapsedS;
  const leakUncertaintyMolPerS = uncertaintyOf({ ...input, startPaAbs, endPaAbs, leakMolPerS });
  return {
    startPaAbs,
    endPaAbs,
    gaugeFallPa: startPa - endPa,
    fallByTemperaturePa: startPaAbs - unleakedPaAbs,
    fallByBarometerPa: endAtmospherePaAbs - startAtmospherePaAbs,
    fallByLeakPa: unleakedPaAbs - endPaAbs,
    lostMol,
    leakMolPerS,
    leakUncertaintyMolPerS,
    leakSeen:
      Math.abs(leakMolPerS) <= leakUncertaintyMolPerS
        ? 'none that this gauge can tell'
        : leakMolPerS > 0
          ? 'out'
          : 'in',
  };
}

/**
 * Pressure that a closed volume shows after a change of temperature, without any leak.
 *
 * Shape: gauge pressure, barometer and two temperatures in; the new gauge pressure and the change out.
 * Valid: ideal gas; 1 K at 500 kPa absolute is 1.7 kPa.
 * @param pressurePa       gauge; above full vacuum
 * @param atmospherePaAbs  above 0
 * @param startK           above 0
 * @param endK             above 0
 * @returns gauge pressure at the end, and the change
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-23] gas law at constant volume
 * @example closedVolume({ pressurePa: 400000, atmospherePaAbs: 101325, startK: 293.15, endK: 292.15 })
 *   // { endPa: 398289.87, changePa: -1710.13 }
 */
export function closedVolume(input: {
  readonly pressurePa: number;
  readonly atmospherePaAbs: number;
  readonly startK: number;
  readonly endK: number;
}): { readonly endPa: number; readonly changePa: number } {
  const { pressurePa, atmospherePaAbs, startK, endK } = input;
  refuseOutside({ atmospherePaAbs, startK, endK }, ABOVE_ZERO);
  refuseOutside({ pressurePa }, { above: -atmospherePaAbs });
  const changePa = (pressurePa + atmospherePaAbs) * (endK / startK - 1);
  return { endPa: pressurePa + changePa, changePa };
}

interface ConstantLeak {
  readonly volumeM3: number;
  readonly leakMolPerS: number;
  readonly temperatureK: number;
}

/**
 * Pressure that a constant leak takes from a volume in a time.
 *
 * Shape: four numbers in, a drop out. Δp = n · R · T · Δt/V
 * Valid: constant leak and temperature; a choked hole leaks less as the pressure falls.
 * @param volumeM3      above 0
 * @param leakMolPerS   0 or more
 * @param temperatureK  above 0
 * @param elapsedS      0 or more
 * @returns drop in Pa
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-23] gas law at constant volume
 * @example dropByLeakPa({ volumeM3: 0.002, leakMolPerS: toSi({ value: 50, unit: 'Nml/min' }), temperatureK: 293.15, elapsedS: 300 }) // 13593.0
 */
export function dropByLeakPa(input: ConstantLeak & { readonly elapsedS: number }): number {
  const { volumeM3, leakMolPerS, temperatureK, elapsedS } = input;
  refuseOutside({ volumeM3, temperatureK }, ABOVE_ZERO);
  refuseOutside({ leakMolPerS, elapsedS }, ZERO_OR_MORE);
  return (leakMolPerS * GAS_CONSTANT_J_PER_MOL_K * temperatureK * elapsedS) / volumeM3;
}

/**
 * How long to wait to see a leak on this gauge.
 *
 * Shape: leak, volume and gauge in, drop and time out. The drop that can be told is three times the step or drift.
 * Valid: constant leak and temperature; 1 K of drift may hide the leak, which no wait mends.
 * @param volumeM3      above 0
 * @param leakMolPerS   that shall be seen; above 0
 * @param temperatureK  above 0
 * @param smallestPa    smallest step of the gauge or its drift, the larger; above 0
 * @returns smallest drop that can be told, and the wait
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-23] gas law at constant volume; three times the step is common practice
 * @example waitForLeak({ volumeM3: 0.002, leakMolPerS: 3.7179e-5, temperatureK: 293.15, smallestPa: 500 })
 *   // { seenDropPa: 1500, waitS: 33.105 }
 */
export function waitForLeak(input: ConstantLeak & { readonly smallestPa: number }): {
  readonly seenDropPa: number;
  readonly waitS: number;
} {
  const { leakMolPerS, smallestPa } = input;
  refuseOutside({ leakMolPerS, smallestPa }, ABOVE_ZERO);
  const seenDropPa = 3 * smallestPa;
  return { seenDropPa, waitS: seenDropPa / dropByLeakPa({ ...input, elapsedS: 1 }) };
}

/** Readings taken as independent: larger than with one gauge for both, never smaller. */
function uncertaintyOf(of: DecayInput & Pick<Decay, 'startPaAbs' | 'endPaAbs' | 'leakMolPerS'>): number {
  const { gaugeUncertaintyPa = 0, temperatureUncertaintyK = 0, barometerUncertaintyPa = 0 } = of;
  const { volumeUncertaintyM3 = 0 } = of;
  refuseOutside({ gaugeUncertaintyPa, temperatureUncertaintyK, barometerUncertaintyPa }, ZERO_OR_MORE);
  refuseOutside({ volumeUncertaintyM3 }, ZERO_OR_MORE);
  refuseOutside({ leakMolPerS: of.leakMolPerS }, ANY_NUMBER);
  const pressurePa = Math.hypot(gaugeUncertaintyPa, barometerUncertaintyPa);
  const ofReadings = Math.hypot(
    pressurePa / of.startK,
    pressurePa / of.endK,
    (of.startPaAbs * temperatureUncertaintyK) / of.startK ** 2,
    (of.endPaAbs * temperatureUncertaintyK) / of.endK ** 2,
  );
  const ofVolume = (of.leakMolPerS * volumeUncertaintyM3) / of.volumeM3;
  return Math.hypot((of.volumeM3 / (GAS_CONSTANT_J_PER_MOL_K * of.elapsedS)) * ofReadings, ofVolume);
}
