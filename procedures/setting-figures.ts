import { shutEnd } from './calculations/force-balance.ts';
import { plugForce } from './calculations/plug-force.ts';
import { format, preferredUnit } from './calculations/units.ts';
import type { Figure } from './figure.ts';
import type { Job } from './job.ts';
import type { ValveSheet } from './valve-sheet/sheet.ts';

/** Air that the case has at most in service: the signal itself, or what a positioner passes on of its supply. */
function airInServicePa({ positioner, signalHighPa, supplyLowPa }: ValveSheet): number {
  return positioner === 'none' ? signalHighPa : (supplyLowPa ?? signalHighPa);
}

/**
 * The shut end in its line at the shut-off drop: where the plug meets or leaves its seat, and how hard it is held. The
 * outlet is taken as vented, which is the worst for a plug that the flow pushes.
 */
export function shutEndInLine(sheet: ValveSheet) {
  const { flow, shutOffDropPa: inletPa, portDiameterM, stemDiameterM, balanceSealDiameterM } = sheet;
  const { openingN } = plugForce({
    flow,
    inletPa,
    outletPa: 0,
    portDiameterM,
    stemDiameterM,
    balanceSealDiameterM,
  });
  return shutEnd({
    ...sheet,
    plugForceOpeningN: openingN,
    frictionN: sheet.packingFrictionN ?? 0,
    supplyPa: airInServicePa(sheet),
  });
}

function inLine(job: Job): string {
  const { sheet } = job;
  const { contactPa, firstLiftPa } = shutEndInLine(sheet);
  const at = say(job, { valueSi: contactPa ?? firstLiftPa ?? 0, dimension: 'pressure' });
  return contactPa === null ? `lifts off its seat at ${at}` : `meets its seat at ${at}`;
}

function seatHeld(job: Job): string {
  const { seatLoadN, heldShut } = shutEndInLine(job.sheet);
  const load = say(job, { valueSi: Math.abs(seatLoadN), dimension: 'force' });
  return heldShut ? `held on it with ${load}` : `not held shut: ${load} are missing`;
}

function frictionCounted({ sheet }: Job): string {
  return sheet.packingFrictionN === null
    ? 'without friction: the sheet has none'
    : `friction of the packing counted in, ${sheet.packingFrictionSource ?? 'by the sheet'}`;
}

function say(
  { sheet }: Job,
  { valueSi, dimension }: { readonly valueSi: number; readonly dimension: 'pressure' | 'force' },
): string {
  return format({ valueSi, unit: preferredUnit(dimension, sheet.units) });
}

const text = (label: string, of: Figure['of']): Figure => ({ label, dimension: 'text', of });

/** Numbers of bench set, positioner, seat and joints, which texts name by placeholder. */
export const SETTING_FIGURES = {
  flowOverPlug: text('flow', ({ sheet }) => `${sheet.flow} the plug`),
  shutOffDrop: { label: 'drop when shut', dimension: 'pressure', of: ({ sheet }) => sheet.shutOffDropPa },
  shutEndInLine: text('in its line the plug', inLine),
  seatHeldInLine: text('and is', seatHeld),
  frictionCounted: text('friction', frictionCounted),
  benchSetTolerance: {
    label: 'each end may be off by',
    dimension: 'pressure',
    of: ({ sheet }) => sheet.benchSetTolerancePa,
  },
} as const satisfies Record<string, Figure>;
