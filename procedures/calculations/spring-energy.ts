import { ABOVE_ZERO, refuseOutside, refuseUnlessRising, ZERO_OR_MORE } from './checks.ts';
import { toSi } from './units.ts';

export interface SpringEnergy {
  /** Left in the spring when the air is gone. */
  readonly installedJ: number;
  readonly fullTravelJ: number;
  readonly addedByStrokeJ: number;
  readonly installedForceN: number;
  readonly fullTravelForceN: number;
}

/**
 * Energy in an actuator spring.
 *
 * Shape: rate and two deflections in, energies and forces out. E = k · x²/2 from the free length
 * Valid: linear spring. The preload stays when the air is vented: the case holds it.
 * @param springRateNPerM  above 0
 * @param installedM       pressed together at the start of the stroke; 0 or more
 * @param fullTravelM      pressed together at the end of it; above installedM
 * @returns energy installed, at full travel and added by the stroke, with the forces
 * @throws CalcError CALC-001, CALC-002 or CALC-003 by the name of the input
 * @source [S-06] Hooke
 * @example springEnergy({ springRateNPerM: 140000, installedM: 0.005, fullTravelM: 0.0431 })
 *   // { installedJ: 1.75, fullTravelJ: 130.0327, addedByStrokeJ: 128.2827, installedForceN: 700, fullTravelForceN: 6034 }
 */
export function springEnergy(input: {
  readonly springRateNPerM: number;
  readonly installedM: number;
  readonly fullTravelM: number;
}): SpringEnergy {
  const { springRateNPerM, installedM, fullTravelM } = input;
  refuseOutside({ springRateNPerM }, ABOVE_ZERO);
  refuseOutside({ installedM }, ZERO_OR_MORE);
  refuseUnlessRising({ installedM, fullTravelM });
  const installedJ = (springRateNPerM * installedM ** 2) / 2;
  const fullTravelJ = (springRateNPerM * fullTravelM ** 2) / 2;
  return {
    installedJ,
    fullTravelJ,
    addedByStrokeJ: fullTravelJ - installedJ,
    installedForceN: springRateNPerM * installedM,
    fullTravelForceN: springRateNPerM * fullTravelM,
  };
}

export type EnergyCaution = 'air stored' | 'spring loaded when vented' | 'spring loaded by the stroke';

/**
 * Stored energy in plain terms, and the cautions that follow from where it sits.
 *
 * Shape: energies in, the height of a falling weight and a list of cautions out. h = E/(m · g)
 * Valid: a picture of the size only; how fast it comes out is another matter.
 * @param airJ              energy of the air, by a named form; 0 or more
 * @param springInstalledJ  left in the spring when the air is gone; 0 or more
 * @param springStrokeJ     added to the spring by the stroke; 0 or more
 * @param weightKg          of the falling weight; above 0; 10 where left out
 * @returns energy in all, height from which the weight would bring the same, cautions in the order of the work
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-01] standard gravity; the cautions are common practice
 * @example energyInPlainTerms({ airJ: 2304, springInstalledJ: 1.75, springStrokeJ: 128.28 })
 *   // { totalJ: 2434.03, weightKg: 10, fallM: 24.8202,
 *   //   cautions: ['air stored', 'spring loaded by the stroke', 'spring loaded when vented'] }
 */
export function energyInPlainTerms(input: {
  readonly airJ: number;
  readonly springInstalledJ: number;
  readonly springStrokeJ: number;
  readonly weightKg?: number;
}): {
  readonly totalJ: number;
  readonly weightKg: number;
  readonly fallM: number;
  readonly cautions: readonly EnergyCaution[];
} {
  const { airJ, springInstalledJ, springStrokeJ, weightKg = 10 } = input;
  refuseOutside({ airJ, springInstalledJ, springStrokeJ }, ZERO_OR_MORE);
  refuseOutside({ weightKg }, ABOVE_ZERO);
  const totalJ = airJ + springInstalledJ + springStrokeJ;
  const cautions: EnergyCaution[] = [];
  if (airJ > 0) cautions.push('air stored');
  if (springStrokeJ > 0) cautions.push('spring loaded by the stroke');
  if (springInstalledJ > 0) cautions.push('spring loaded when vented');
  return { totalJ, weightKg, fallM: totalJ / toSi({ value: weightKg, unit: 'kgf' }), cautions };
}
