import { noBlockValves, type ServedProcedure } from '../served-procedure.ts';
import type { GearRole } from '../test-gear/roles.ts';
import type { ValveSheet } from '../valve-sheet/sheet.ts';
import { caseNuts } from './case-nuts.ts';

/** Test air, and the process and supply seen alive and at zero; no travel is read. */
const AIR_ROLES: readonly GearRole[] = [
  'signalGauge',
  'checkGauge',
  'regulator',
  'supplyGauge',
  'inletGauge',
  'outletGauge',
];

function notDiaphragm({ actuatorKind, springHeldBy }: ValveSheet): string | null {
  if (actuatorKind !== 'diaphragm') return 'A piston has no diaphragm case.';
  return springHeldBy === 'no spring' ? 'It has no spring to work against.' : null;
}

/** Taking apart, renewing and putting together. */
export const OVERHAUL: readonly ServedProcedure[] = [
  {
    definition: caseNuts,
    folder: 'overhaul',
    gear: AIR_ROLES,
    whyNot: (sheet, place) => notDiaphragm(sheet) ?? noBlockValves(sheet, place),
  },
];
