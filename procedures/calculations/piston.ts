import { ABOVE_ZERO, ANY_NUMBER, oneOf, refuseOutside, refuseUnlessRising, ZERO_OR_MORE } from './checks.ts';
import { circleAreaM2 } from './plug-force.ts';

export interface PistonInput {
  readonly boreM: number;
  /** Rod through the lower side. */
  readonly rodDiameterM: number;
  readonly sealFrictionN: number;
  /** Force of a spring, if one is fitted; positive pushes down. 0 where left out. */
  readonly springDownN?: number;
}

export interface PistonThrust {
  readonly upperAreaM2: number;
  readonly lowerAreaM2: number;
  readonly downBeforeFrictionN: number;
  /** Positive pushes down, negative up; 0 where the seal friction holds the piston. */
  readonly downN: number;
}

/**
 * Thrust of a double-acting piston.
 *
 * Shape: bore, rod, two pressures and friction in, areas and thrust out. F = p(upper) · A(upper) − p(lower) · A(lower)
 * Valid: rod through the lower side; full thrust needs the other side vented.
 * @param boreM          above 0
 * @param rodDiameterM   0 or more, below the bore
 * @param upperPa        gauge; 0 or more
 * @param lowerPa        gauge; 0 or more
 * @param sealFrictionN  against the motion; 0 or more
 * @param springDownN    positive pushes down; 0 where left out
 * @returns both areas, thrust before and after friction, positive downwards
 * @throws CalcError CALC-001 or CALC-002 by the name of the input; CALC-003 if the rod is not thinner than the bore
 * @source [S-06] pressure times area
 * @example pistonThrust({ boreM: 0.1524, rodDiameterM: 0.01905, upperPa: 551580.58, lowerPa: 68947.573, sealFrictionN: 177.9289 })
 *   // { upperAreaM2: 0.01824147, lowerAreaM2: 0.01795645, downBeforeFrictionN: 8823.59, downN: 8645.66 }
 */
export function pistonThrust(
  input: PistonInput & { readonly upperPa: number; readonly lowerPa: number },
): PistonThrust {
  const { upperPa, lowerPa, sealFrictionN, springDownN = 0 } = input;
  const { upperAreaM2, lowerAreaM2 } = pistonAreas(input);
  refuseOutside({ upperPa, lowerPa, sealFrictionN }, ZERO_OR_MORE);
  refuseOutside({ springDownN }, ANY_NUMBER);
  const downBeforeFrictionN = upperPa * upperAreaM2 - lowerPa * lowerAreaM2 + springDownN;
  const leftN = Math.max(0, Math.abs(downBeforeFrictionN) - sealFrictionN);
  return {
    upperAreaM2,
    lowerAreaM2,
    downBeforeFrictionN,
    downN: leftN === 0 ? 0 : Math.sign(downBeforeFrictionN) * leftN,
  };
}

/**
 * Smallest supply that gives a thrust with the other side vented.
 *
 * Shape: bore, rod, friction, direction and thrust in; a pressure out. p = (thrust + friction ∓ spring)/area
 * Valid: as pistonThrust; the far side at 0 gauge.
 * @param boreM          above 0
 * @param rodDiameterM   0 or more, below the bore
 * @param sealFrictionN  0 or more
 * @param springDownN    positive pushes down; 0 where left out
 * @param direction      down or up
 * @param thrustN        wanted at the stem in that direction; 0 or more
 * @returns area that works, and the smallest gauge pressure on it; 0 where the spring alone is enough
 * @throws CalcError CALC-001 or CALC-002 by the name of the input; CALC-003 if the rod is not thinner than the bore;
 *   CALC-005 if the direction is unknown
 * @source [S-06] pressure times area
 * @example pistonSupply({ boreM: 0.1524, rodDiameterM: 0.01905, sealFrictionN: 177.9289, direction: 'up', thrustN: 5000 })
 *   // { areaM2: 0.01795645, smallestSupplyPa: 288360.45 }
 */
export function pistonSupply(
  input: PistonInput & { readonly direction: 'down' | 'up'; readonly thrustN: number },
): { readonly areaM2: number; readonly smallestSupplyPa: number } {
  const { sealFrictionN, springDownN = 0, thrustN } = input;
  const { upperAreaM2, lowerAreaM2 } = pistonAreas(input);
  const direction = oneOf({ name: 'direction', value: input.direction, choices: ['down', 'up'] });
  refuseOutside({ sealFrictionN, thrustN }, ZERO_OR_MORE);
  refuseOutside({ springDownN }, ANY_NUMBER);
  const areaM2 = direction === 'down' ? upperAreaM2 : lowerAreaM2;
  const springHelpN = direction === 'down' ? springDownN : -springDownN;
  return { areaM2, smallestSupplyPa: Math.max(0, (thrustN + sealFrictionN - springHelpN) / areaM2) };
}

function pistonAreas({ boreM, rodDiameterM }: PistonInput) {
  refuseOutside({ boreM }, ABOVE_ZERO);
  refuseOutside({ rodDiameterM }, ZERO_OR_MORE);
  refuseUnlessRising({ rodDiameterM, boreM });
  const upperAreaM2 = circleAreaM2(boreM);
  return { upperAreaM2, lowerAreaM2: upperAreaM2 - circleAreaM2(rodDiameterM) };
}
