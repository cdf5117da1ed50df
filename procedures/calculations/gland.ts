import { boltTorqueNm } from './bolting.ts';
import { ABOVE_ZERO, oneOf, refuseOutside, refuseUnlessRising, ZERO_OR_MORE } from './checks.ts';
import { circleAreaM2 } from './plug-force.ts';
import type { SourceId } from './sources.ts';
import { toSi } from './units.ts';

export interface GlandMethod {
  readonly title: string;
  readonly source: SourceId;
  readonly nutFactor: number;
  /** Stress is at least this many times the system pressure. */
  readonly pressureFactor: number;
  /** Least axial stress by packing, as printed in psi: it belongs to that maker's sets. */
  readonly leastStressPsi: Readonly<Record<string, number>>;
}

/** Gland methods by maker. The stress that a packing wants belongs to its maker: the valve sheet chooses. */
export const GLAND_METHODS = {
  'one-page-1996': {
    title: 'One-page gland torque method of a packing maker, 1996',
    source: 'S-32',
    nutFactor: 0.2,
    pressureFactor: 1.5,
    leastStressPsi: { 'die-formed graphite set': 3800, braided: 5500 },
  },
} as const satisfies Readonly<Record<string, GlandMethod>>;

export type GlandMethodId = keyof typeof GLAND_METHODS;

export interface GlandInput {
  readonly method: GlandMethodId;
  readonly packing: string;
  readonly boreDiameterM: number;
  readonly stemDiameterM: number;
  readonly systemPa: number;
  readonly bolts: number;
  readonly boltDiameterM: number;
}

export interface GlandTorque {
  readonly packingAreaM2: number;
  readonly packingStressPa: number;
  /** What set the stress: the packing's own least stress, or the pressure. */
  readonly stressSetBy: 'packing' | 'pressure';
  readonly glandForceN: number;
  readonly boltLoadN: number;
  readonly torquePerBoltNm: number;
}

/**
 * Gland force and nut torque for a packing set.
 *
 * Shape: method, packing, box, pressure and bolts in, force and torque for each bolt out.
 *   F = π/4 · (bore² − stem²) · stress; T = K · F · bolt diameter/bolts
 * Valid: the method's own packing sets; a maker's torque for the packing at hand outranks it.
 * @param method         id of the method
 * @param packing        as the method names it
 * @param boreDiameterM  stuffing box; above the stem
 * @param stemDiameterM  above 0
 * @param systemPa       gauge; 0 or more
 * @param bolts          from 1 to 16, whole
 * @param boltDiameterM  above 0
 * @returns packing area, stress and what set it, gland force, load and torque of one bolt
 * @throws CalcError CALC-001, CALC-002 or CALC-003 by the name of the input; CALC-005 if method or packing is unknown
 * @source [S-32] formula read; its figures belong to that maker
 * @example glandTorque({ method: 'one-page-1996', packing: 'braided', boreDiameterM: 0.0254, stemDiameterM: 0.0127,
 *   systemPa: 4136854.4, bolts: 2, boltDiameterM: 0.009525 }).torquePerBoltNm // 13.72667
 */
export function glandTorque(input: GlandInput): GlandTorque {
  const { boreDiameterM, stemDiameterM, systemPa, bolts, boltDiameterM } = input;
  const ids = Object.keys(GLAND_METHODS) as GlandMethodId[];
  const method: GlandMethod = GLAND_METHODS[oneOf({ name: 'method', value: input.method, choices: ids })];
  const packing = oneOf({
    name: 'packing',
    value: input.packing,
    choices: Object.keys(method.leastStressPsi),
  });
  refuseOutside({ stemDiameterM, boltDiameterM }, ABOVE_ZERO);
  refuseOutside({ systemPa }, ZERO_OR_MORE);
  refuseOutside({ bolts }, { atLeast: 1, atMost: 16, whole: true });
  refuseUnlessRising({ stemDiameterM, boreDiameterM });
  const leastPa = toSi({ value: method.leastStressPsi[packing] ?? 0, unit: 'psi' });
  const byPressurePa = method.pressureFactor * systemPa;
  const packingStressPa = Math.max(leastPa, byPressurePa);
  const packingAreaM2 = circleAreaM2(boreDiameterM) - circleAreaM2(stemDiameterM);
  const glandForceN = packingAreaM2 * packingStressPa;
  const boltLoadN = glandForceN / bolts;
  return {
    packingAreaM2,
    packingStressPa,
    stressSetBy: byPressurePa > leastPa ? 'pressure' : 'packing',
    glandForceN,
    boltLoadN,
    torquePerBoltNm: boltTorqueNm({ nutFactor: method.nutFactor, boltDiameterM, boltLoadN }),
  };
}
