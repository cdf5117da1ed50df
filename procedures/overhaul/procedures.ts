import {
  noBlockValves,
  outOfReach,
  type ServedProcedure,
  WRITTEN_FOR_DIAPHRAGM,
} from '../served-procedure.ts';
import { ALL_ROLES, type GearRole } from '../test-gear/roles.ts';
import { bothEndsFed } from '../valve-sheet/derived.ts';
import type { ValveSheet } from '../valve-sheet/sheet.ts';
import { AIR_AND_POSITIONER } from './air-and-positioner.ts';
import { caseNuts } from './case-nuts.ts';
import { diaphragmRenewal } from './diaphragm-renewal.ts';
import { liveGlandJob } from './live-gland.ts';
import { packingRenewal } from './packing-renewal.ts';
import { seatAndPlug } from './seat-and-plug.ts';
import { springChange } from './spring-change.ts';
import { valveOverhaul } from './valve-overhaul.ts';

/** Test air, and the process and supply seen alive and at zero; no travel is read. */
const AIR_ROLES: readonly GearRole[] = [
  'signalGauge',
  'checkGauge',
  'regulator',
  'supplyGauge',
  'inletGauge',
  'outletGauge',
];

function noCase({ actuatorKind, springHeldBy }: ValveSheet): string | null {
  if (actuatorKind !== 'diaphragm') return 'A piston has no diaphragm case.';
  return springHeldBy === 'no spring' ? 'It has no spring to work against.' : null;
}

function noSpringOfACase(sheet: ValveSheet): string | null {
  return sheet.actuatorKind === 'piston' && sheet.springHeldBy !== 'no spring'
    ? 'A spring presses on its piston: it is changed by its maker’s manual alone.'
    : noCase(sheet);
}

/** What is done to the body is done with the stems parted, as a diaphragm on a spring wants it. */
function onCylinder(sheet: ValveSheet): string | null {
  return sheet.actuatorKind === 'piston' ? WRITTEN_FOR_DIAPHRAGM : noCase(sheet);
}

/** Neither is turned, and a bellows is renewed by its maker's manual with its bonnet. */
function notPacked({ bellowsSeal }: ValveSheet): string | null {
  return bellowsSeal ? 'A bellows seals its stem: it is renewed whole, by its maker’s manual.' : null;
}

/** Taking apart, renewing and putting together. */
export const OVERHAUL: readonly ServedProcedure[] = [
  {
    definition: caseNuts,
    folder: 'overhaul',
    gear: AIR_ROLES,
    whyNot: (sheet, place) => noCase(sheet) ?? noBlockValves(sheet, place),
  },
  {
    definition: liveGlandJob,
    folder: 'overhaul',
    gear: ['signalGauge'],
    whyNot(sheet, place) {
      if (place === 'bench') return 'On the bench nothing is live: renew its packing instead.';
      if (sheet.bellowsSeal)
        return 'A bellows seals its stem: a gland that leaks there means that the bellows is through.';
      if (sheet.actuatorKind === 'diaphragm') return null;
      return bothEndsFed(sheet)
        ? 'A piston has two pressures: its friction is not read off one gauge.'
        : WRITTEN_FOR_DIAPHRAGM;
    },
  },
  {
    definition: packingRenewal,
    folder: 'overhaul',
    gear: ALL_ROLES,
    whyNot: (sheet, place) =>
      onCylinder(sheet) ?? notPacked(sheet) ?? outOfReach(sheet) ?? noBlockValves(sheet, place),
  },
  {
    definition: diaphragmRenewal,
    folder: 'overhaul',
    gear: ALL_ROLES,
    whyNot: (sheet, place) => noCase(sheet) ?? outOfReach(sheet) ?? noBlockValves(sheet, place),
  },
  {
    definition: springChange,
    folder: 'overhaul',
    gear: ALL_ROLES,
    whyNot: (sheet, place) => noSpringOfACase(sheet) ?? outOfReach(sheet) ?? noBlockValves(sheet, place),
  },
  ...AIR_AND_POSITIONER,
  {
    definition: seatAndPlug,
    folder: 'overhaul',
    gear: ALL_ROLES,
    whyNot: (sheet, place) =>
      onCylinder(sheet) ?? notPacked(sheet) ?? outOfReach(sheet) ?? noBlockValves(sheet, place),
  },
  {
    definition: valveOverhaul,
    folder: 'overhaul',
    gear: ALL_ROLES,
    whyNot: (sheet, place) =>
      onCylinder(sheet) ?? notPacked(sheet) ?? outOfReach(sheet) ?? noBlockValves(sheet, place),
  },
];
