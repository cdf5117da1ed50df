import { testAirLimit } from '../safety/limits.ts';
import type { Facts } from './facts.ts';
import type { GearRole } from './test-gear/roles.ts';
import type { ValveSheet } from './valve-sheet/sheet.ts';
import type { Definition } from './vocabulary.ts';

export type Place = Facts['place'];

/** A procedure as it is offered: what is done stands in its definition, for which valves stands here. */
export interface ServedProcedure {
  readonly definition: Definition;
  /** Where its sheet and its revisions stand. */
  readonly folder: 'overhaul' | 'commissioning' | 'troubleshooting';
  /** Gear that is chosen when a job opens; what only a valve in its line wants is asked only there. */
  readonly gear: readonly GearRole[];
  /** Of that gear, what this procedure wants on the bench as well. */
  readonly gearOnBench?: readonly GearRole[];
  /** Null where the valve may have it at this place, else why not, in one sentence. */
  whyNot(sheet: ValveSheet, place: Place): string | null;
}

/** Why a valve cannot be worked on in its line, where that is so. */
export function noBlockValves({ inletPoint, outletPoint }: ValveSheet, place: Place): string | null {
  return place === 'line' && (inletPoint === null || outletPoint === null)
    ? 'The line has no block valve on each side: take the valve to the bench.'
    : null;
}

/** Why a cylinder may not have what is written for a diaphragm on a spring. */
export const WRITTEN_FOR_DIAPHRAGM =
  'This is written for a diaphragm actuator: for a cylinder its maker’s manual and the site’s own way stand.';

/** The upper end of a stroke is never reached for by more air than the case may have. */
export function outOfReach(sheet: ValveSheet): string | null {
  return sheet.benchSetHighPa > testAirLimit(sheet).limitPa
    ? 'Its bench set ends above the test air that its case may have.'
    : null;
}
