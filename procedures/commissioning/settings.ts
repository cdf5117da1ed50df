import { noSeatTest } from '../seat-test.ts';
import {
  noBlockValves,
  outOfReach,
  type Place,
  type ServedProcedure,
  WRITTEN_FOR_DIAPHRAGM,
} from '../served-procedure.ts';
import { ALL_ROLES, type GearRole } from '../test-gear/roles.ts';
import type { ValveSheet } from '../valve-sheet/sheet.ts';
import { benchSetJob } from './bench-set.ts';
import { seatLeakTest } from './seat-leak-test.ts';

/** Only a spring on a diaphragm has a bench set. */
function noSpringCase({ actuatorKind, springHeldBy }: ValveSheet): string | null {
  if (actuatorKind !== 'diaphragm')
    return springHeldBy === 'no spring'
      ? 'A piston has no bench set: no air on one case works against a spring.'
      : 'A spring presses on its piston: it is set by its maker’s manual alone.';
  return springHeldBy === 'no spring' ? 'It has no spring, and so no bench set.' : null;
}

/** No travel is read; a gauge of its own for the pressure on the seat. */
const SEAT_ROLES: readonly GearRole[] = [
  ...ALL_ROLES.filter((role) => role !== 'travelIndicator'),
  'seatGauge',
];

function noSeat(sheet: ValveSheet, place: Place): string | null {
  if (sheet.actuatorKind === 'piston' && sheet.springHeldBy !== 'no spring') return WRITTEN_FOR_DIAPHRAGM;
  if (sheet.actuatorKind !== 'diaphragm' || sheet.springHeldBy === 'no spring')
    return 'A cylinder is held shut by its own air: its seat is tested on the rig of the shop.';
  if (sheet.leakageClass === 'V' && place === 'line')
    return 'Class V is tested with water at its shut-off drop: take it to the bench.';
  return noSeatTest(sheet) ?? noBlockValves(sheet, place);
}

/** What is set or proved by test air on a valve that is taken off its line first. */
export const SETTINGS: readonly ServedProcedure[] = [
  {
    definition: benchSetJob,
    folder: 'commissioning',
    gear: ALL_ROLES,
    whyNot: (sheet, place) => noSpringCase(sheet) ?? outOfReach(sheet) ?? noBlockValves(sheet, place),
  },
  {
    definition: seatLeakTest,
    folder: 'commissioning',
    gear: SEAT_ROLES,
    whyNot: noSeat,
  },
];
