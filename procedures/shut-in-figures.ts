import { format, preferredUnit } from './calculations/units.ts';
import type { Figure } from './figure.ts';
import type { Job } from './job.ts';
import { judgedFigure } from './positioner-figures.ts';
import type { ValveSheet } from './valve-sheet/sheet.ts';

/** What a diaphragm actuator may lose, shut in: 2.5 kPa in 5 min (GB/T 4213, from memory). */
const LOSS_PA = 2500;
const LOSS_IN_S = 300;

/** How long it stands before it is read: as long as its limit is stated for. */
export const SHUT_IN_S = LOSS_IN_S;

/** The limit for a longer look grows with its time; null for a cylinder, which has none here. */
export function shutInLimitPa(
  { actuatorKind }: Pick<ValveSheet, 'actuatorKind'>,
  elapsedS: number,
): number | null {
  return actuatorKind === 'piston' ? null : (LOSS_PA * elapsedS) / LOSS_IN_S;
}

/** What the whole stroke sweeps; what lies beyond it is on no sheet, so that a leak worked out with it is the least. */
export function shutInVolumeM3({ effectiveAreaM2, travelM }: ValveSheet): number {
  return effectiveAreaM2 * travelM;
}

function allowed({ sheet }: Job): string {
  const valueSi = shutInLimitPa(sheet, LOSS_IN_S);
  return valueSi === null
    ? 'no more than the gauge can tell: a cylinder has no limit here'
    : `${format({ valueSi, unit: preferredUnit('pressure', sheet.units) })} in five minutes, from memory of a published rule`;
}

function fell(name: string): Figure['of'] {
  return (job) => judgedFigure(job, name) ?? 'not read';
}

/** An actuator that is shut in: what it may lose, and what it lost. */
export const SHUT_IN_FIGURES = {
  shutInAllowed: { label: 'it may lose', dimension: 'text', of: allowed },
  shutInFell: { label: 'lost by leak', dimension: 'pressure', of: fell('fallByLeakPa') },
  shutInWarmth: { label: 'moved by temperature', dimension: 'pressure', of: fell('fallByTemperaturePa') },
  shutInUncertainty: {
    label: 'gauge and thermometer cannot tell less than',
    dimension: 'pressure',
    of: fell('fallUncertaintyPa'),
  },
} as const satisfies Record<string, Figure>;
