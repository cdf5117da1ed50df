import { CalcError } from './calc-error.ts';
import { ABOVE_ZERO, refuseOutside } from './checks.ts';
import { LARGEST_RELATIVE_CAPACITY, N } from './flow-constants.ts';

export interface Fittings {
  /** Nominal size of the valve. */
  readonly valveM: number;
  readonly pipeInM: number;
  readonly pipeOutM: number;
}

export interface FittingLosses {
  /** Sum of loss and recovery of both reducers; may be negative. */
  readonly sum: number;
  /** Inlet alone. */
  readonly inlet: number;
}

/**
 * Loss coefficients of the reducers at a valve.
 *
 * Shape: three diameters in, two coefficients out.
 *   0.5 (1 − (d/D1)²)² + (1 − (d/D2)²)² + (1 − (d/D1)⁴) − (1 − (d/D2)⁴)
 * Valid: short concentric reducers, pipes not narrower than the valve.
 * @param valveM    above 0
 * @param pipeInM   not below valveM
 * @param pipeOutM  not below valveM
 * @returns sum of both, and inlet part
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-18] piping geometry
 * @example fittingLosses({ valveM: 0.05, pipeInM: 0.08, pipeOutM: 0.1 }) // { sum: 0.6580810547, inlet: 1.0330810547 }
 */
export function fittingLosses({ valveM, pipeInM, pipeOutM }: Fittings): FittingLosses {
  refuseOutside({ valveM }, ABOVE_ZERO);
  refuseOutside({ pipeInM, pipeOutM }, { atLeast: valveM });
  const [inShare, outShare] = [(valveM / pipeInM) ** 2, (valveM / pipeOutM) ** 2];
  const inlet = 0.5 * (1 - inShare) ** 2 + (1 - inShare ** 2);
  return { sum: inlet + (1 - outShare) ** 2 - (1 - outShare ** 2), inlet };
}

export interface PipingFactors {
  readonly losses: FittingLosses;
  /** Of the reducers on the capacity: FP. */
  readonly pipingFactor: number;
  /** FLP; with no fittings the valve's FL. */
  readonly recoveryWithPiping: number;
  /** xTP; with no fittings the valve's xT. */
  readonly dropRatioWithPiping: number;
  /** Whether the coefficient lies in the range that the equations were tested for. */
  readonly tested: boolean;
}

/**
 * Factors of the reducers at a valve of a given capacity: FP, FLP and xTP.
 *
 * Shape: capacity, sizes, FL and xT in, factors out. FP = 1/√(1 + Σζ/N2 · (C/d²)²)
 * Valid: C/(N18 d²) below 0.047; beyond it the factors are given and `tested` is false.
 * @param kv                 above 0
 * @param fittings           sizes of valve and pipes; blank: no fittings, factors of 1
 * @param recoveryFl         of the valve; above 0, at most 1
 * @param pressureDropRatioXt  of the valve; above 0
 * @returns losses, FP, FLP, xTP, and whether the range is a tested one
 * @throws CalcError CALC-001 or CALC-002 by the name of the input; CALC-006 if the recovery of the outlet leaves no root
 * @source [S-18] piping geometry
 * @example pipingFactors({ kv: 70.88904, fittings: { valveM: 0.05, pipeInM: 0.08, pipeOutM: 0.1 }, recoveryFl: 0.85,
 *   pressureDropRatioXt: 0.6 }).dropRatioWithPiping // 0.6252911
 */
export function pipingFactors(input: {
  readonly kv: number;
  readonly fittings?: Fittings | null;
  readonly recoveryFl?: number;
  readonly pressureDropRatioXt?: number;
}): PipingFactors {
  const { kv, fittings = null, recoveryFl = 1, pressureDropRatioXt = 1 } = input;
  refuseOutside({ kv, pressureDropRatioXt }, ABOVE_ZERO);
  refuseOutside({ recoveryFl }, { above: 0, atMost: 1 });
  if (fittings === null) {
    const losses = { sum: 0, inlet: 0 };
    return {
      losses,
      pipingFactor: 1,
      recoveryWithPiping: recoveryFl,
      dropRatioWithPiping: pressureDropRatioXt,
      tested: true,
    };
  }
  const losses = fittingLosses(fittings);
  const relative = kv / (fittings.valveM * 1000) ** 2;
  const inside = 1 + (losses.sum / N.n2) * relative ** 2;
  if (inside <= 1e-6) {
    throw new CalcError({
      code: 'CALC-006',
      name: 'kv',
      value: kv,
      range: 'a smaller coefficient for these pipes',
      unit: '',
    });
  }
  const pipingFactor = 1 / Math.sqrt(inside);
  return {
    losses,
    pipingFactor,
    recoveryWithPiping: recoveryFl / Math.sqrt(1 + (recoveryFl ** 2 / N.n2) * losses.inlet * relative ** 2),
    dropRatioWithPiping:
      pressureDropRatioXt /
      pipingFactor ** 2 /
      (1 + ((pressureDropRatioXt * losses.inlet) / N.n5) * relative ** 2),
    tested: relative / N.n18 < LARGEST_RELATIVE_CAPACITY,
  };
}
