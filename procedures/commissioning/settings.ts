import { testAirLimit } from '../../safety/limits.ts';
import { noBlockValves, type ServedProcedure } from '../served-procedure.ts';
import { ALL_ROLES } from '../test-gear/roles.ts';
import type { ValveSheet } from '../valve-sheet/sheet.ts';
import { benchSetJob } from './bench-set.ts';

/** Only a spring on a diaphragm has a bench set. */
function noSpringCase({ actuatorKind, springHeldBy }: ValveSheet): string | null {
  if (actuatorKind !== 'diaphragm')
    return 'A piston has no bench set: no air on one case works against a spring.';
  return springHeldBy === 'no spring' ? 'It has no spring, and so no bench set.' : null;
}

/** The upper end is never reached for by more air than the case may have. */
function outOfReach(sheet: ValveSheet): string | null {
  return sheet.benchSetHighPa > testAirLimit(sheet).limitPa
    ? 'Its bench set ends above the test air that its case may have.'
    : null;
}

/** What is set or proved by test air on a valve that is taken off its line first. */
export const SETTINGS: readonly ServedProcedure[] = [
  {
    definition: benchSetJob,
    folder: 'commissioning',
    gear: ALL_ROLES,
    whyNot: (sheet, place) => noSpringCase(sheet) ?? outOfReach(sheet) ?? noBlockValves(sheet, place),
  },
];
