import { ABOVE_ZERO, ANY_NUMBER, oneOf, refuseOutside, refuseUnlessRising, ZERO_OR_MORE } from './checks.ts';

/** `under`: the flow tends to open; `over`: it tends to close. */
export type Flow = 'under' | 'over';

export interface PlugForceInput {
  readonly flow: Flow;
  readonly inletPa: number;
  readonly outletPa: number;
  readonly portDiameterM: number;
  readonly stemDiameterM: number;
  /** Balanced plug: diameter of its balance seal. Blank: unbalanced. */
  readonly balanceSealDiameterM?: number | null;
}

export interface PlugForce {
  readonly portAreaM2: number;
  readonly stemAreaM2: number;
  /** Area of the balance seal; null for an unbalanced plug. */
  readonly balanceAreaM2: number | null;
  /** Force of the process on the shut plug; positive pushes it off its seat. */
  readonly openingN: number;
  readonly tendsTo: 'open' | 'close' | 'neither';
}

/**
 * Force of the process on the shut plug.
 *
 * Shape: pressures and diameters in, areas and one signed force out. Unbalanced: p(port side) · port − p(stem side) ·
 *   (port − stem). Balanced: what lies above the plug has the pressure of the port side and acts on balance − stem,
 *   the other side acts on balance − port.
 * Valid: single port, port area and not valve size, stem through the bonnet to ambient on the side away from the port.
 * @param flow                  under: the inlet is on the port side; over: the outlet is
 * @param inletPa               gauge; any number
 * @param outletPa              gauge; any number
 * @param portDiameterM         above 0
 * @param stemDiameterM         0 or more, below the port
 * @param balanceSealDiameterM  not below the port; blank: unbalanced plug
 * @returns areas, force with sign, and which way it pushes
 * @throws CalcError CALC-001 or CALC-002 by the name of the input; CALC-003 if the stem is not thinner than the port,
 *   or the balance seal is narrower; CALC-005 if the flow is unknown
 * @source [S-06] static balance of the plug
 * @example plugForce({ flow: 'over', inletPa: 689475.73, outletPa: 0, portDiameterM: 0.0508, stemDiameterM: 0.0127 }).openingN // -1310.11
 */
export function plugForce(input: PlugForceInput): PlugForce {
  const { inletPa, outletPa, portDiameterM, stemDiameterM, balanceSealDiameterM = null } = input;
  const flow = oneOf<Flow>({ name: 'flow', value: input.flow, choices: ['under', 'over'] });
  refuseOutside({ inletPa, outletPa }, ANY_NUMBER);
  refuseOutside({ portDiameterM }, ABOVE_ZERO);
  refuseOutside({ stemDiameterM }, ZERO_OR_MORE);
  refuseUnlessRising({ stemDiameterM, portDiameterM });
  const portAreaM2 = circleAreaM2(portDiameterM);
  const stemAreaM2 = circleAreaM2(stemDiameterM);
  const balanceAreaM2 =
    balanceSealDiameterM === null ? null : balanceArea({ portDiameterM, balanceSealDiameterM });
  const portSidePa = flow === 'under' ? inletPa : outletPa;
  const farSidePa = flow === 'under' ? outletPa : inletPa;
  const openingN =
    balanceAreaM2 === null
      ? portSidePa * portAreaM2 - farSidePa * (portAreaM2 - stemAreaM2)
      : portSidePa * (portAreaM2 - balanceAreaM2 + stemAreaM2) + farSidePa * (balanceAreaM2 - portAreaM2);
  const tendsTo = openingN === 0 ? 'neither' : openingN > 0 ? 'open' : 'close';
  return { portAreaM2, stemAreaM2, balanceAreaM2, openingN, tendsTo };
}

/**
 * Area of a circle.
 *
 * Shape: a diameter in, an area out. A = π/4 · d²
 * @param diameterM  0 or more
 * @returns area in m²
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source none: geometry
 * @example circleAreaM2(0.3048) // 0.07296588
 */
export function circleAreaM2(diameterM: number): number {
  refuseOutside({ diameterM }, ZERO_OR_MORE);
  return (Math.PI / 4) * diameterM ** 2;
}

function balanceArea(of: { readonly portDiameterM: number; readonly balanceSealDiameterM: number }): number {
  const { portDiameterM, balanceSealDiameterM } = of;
  if (portDiameterM !== balanceSealDiameterM) refuseUnlessRising({ portDiameterM, balanceSealDiameterM });
  return circleAreaM2(balanceSealDiameterM);
}
