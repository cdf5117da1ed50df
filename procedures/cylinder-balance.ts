import { pistonThrust } from './calculations/piston.ts';
import { circleAreaM2 } from './calculations/plug-force.ts';
import type { Job, Reading } from './job.ts';

/** What the two sides of a cylinder should show with the plug off its seat and no flow in the body. */
export interface CylinderExpected {
  /** What packing and body pressure may ask of the stem, either way, before anybody need wonder. */
  readonly restAllowedN: number;
  /** The least that drives it towards the loaded side: packing against it, body pressure with it. */
  readonly movingLeastN: number;
  readonly pistonAreaM2: number;
}

/**
 * The load that a stem carries away from its seat: packing, and on a valve in its line the pressure shut in between the
 * block valves, which pushes on the stem alone since it stands on both sides of the plug. Seals of the piston are on no
 * sheet and are not counted.
 */
export function cylinderExpected({ sheet, facts }: Pick<Job, 'sheet' | 'facts'>): CylinderExpected {
  const bodyN = facts.place === 'line' ? sheet.processInletPa * circleAreaM2(sheet.stemDiameterM) : 0;
  const packingN = sheet.packingFrictionN ?? 0;
  return {
    restAllowedN: packingN + bodyN,
    movingLeastN: packingN - bodyN,
    pistonAreaM2: sheet.effectiveAreaM2,
  };
}

/**
 * Thrust of both sides together, positive downwards, with its uncertainty from the gauges. The rod is taken as thick as
 * the stem: the sheet has no other. A spring is counted at half travel.
 */
export function cylinderThrust(
  { sheet }: Pick<Job, 'sheet'>,
  { top, bottom }: { readonly top: Reading; readonly bottom: Reading },
): { readonly downN: number; readonly uncertaintyN: number } {
  const springMidN = (sheet.effectiveAreaM2 * (sheet.benchSetLowPa + sheet.benchSetHighPa)) / 2;
  const { downBeforeFrictionN, upperAreaM2, lowerAreaM2 } = pistonThrust({
    boreM: Math.sqrt((4 * sheet.effectiveAreaM2) / Math.PI),
    rodDiameterM: sheet.stemDiameterM,
    upperPa: Math.max(0, top.valueSi),
    lowerPa: Math.max(0, bottom.valueSi),
    sealFrictionN: 0,
    springDownN:
      sheet.springHeldBy === 'no spring' ? 0 : sheet.airMovesStem === 'up' ? springMidN : -springMidN,
  });
  return {
    downN: downBeforeFrictionN,
    uncertaintyN: Math.hypot(
      upperAreaM2 * (top.uncertaintySi ?? 0),
      lowerAreaM2 * (bottom.uncertaintySi ?? 0),
    ),
  };
}
