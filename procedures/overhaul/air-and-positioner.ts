import { noBlockValves, type Place, type ServedProcedure } from '../served-procedure.ts';
import { ALL_ROLES, type GearRole } from '../test-gear/roles.ts';
import type { ValveSheet } from '../valve-sheet/sheet.ts';
import { airSet } from './air-set.ts';
import { converterWiring } from './converter-wiring.ts';
import { feedbackLinkage } from './feedback-linkage.ts';
import { indicatorAndCoupling } from './indicator-and-coupling.ts';
import { nozzleFlapper } from './nozzle-flapper.ts';
import { pistonSeals } from './piston-seals.ts';
import { positionerBellows } from './positioner-bellows.ts';
import { relayRestriction } from './relay-restriction.ts';
import { solenoid } from './solenoid.ts';
import { tubing } from './tubing.ts';

/** Supply, the output or signal in question, and travel. */
const OWN_AIR_ROLES: readonly GearRole[] = ['signalGauge', 'supplyGauge', 'travelIndicator'];

function onlyInLine(sheet: ValveSheet, place: Place): string | null {
  return place === 'bench'
    ? 'On the bench it has no air of its own: what is repaired there is proved in its line.'
    : noBlockValves(sheet, place);
}

function notPneumatic({ positioner }: ValveSheet): string | null {
  if (positioner === 'none') return 'It has no positioner.';
  return positioner === 'electropneumatic'
    ? 'Its positioner is electropneumatic: nozzle and relay stand behind an electric cover and are renewed by its maker’s manual.'
    : null;
}

/** Repairs of what stands before the actuator. */
export const AIR_AND_POSITIONER: readonly ServedProcedure[] = [
  {
    definition: relayRestriction,
    folder: 'overhaul',
    gear: OWN_AIR_ROLES,
    whyNot: (sheet, place) => notPneumatic(sheet) ?? onlyInLine(sheet, place),
  },
  {
    definition: positionerBellows,
    folder: 'overhaul',
    gear: OWN_AIR_ROLES,
    whyNot: (sheet, place) => notPneumatic(sheet) ?? onlyInLine(sheet, place),
  },
  {
    definition: nozzleFlapper,
    folder: 'overhaul',
    gear: OWN_AIR_ROLES,
    whyNot: (sheet, place) => notPneumatic(sheet) ?? onlyInLine(sheet, place),
  },
  {
    definition: feedbackLinkage,
    folder: 'overhaul',
    gear: OWN_AIR_ROLES,
    whyNot: (sheet, place) =>
      sheet.positioner === 'none' ? 'It has no positioner.' : onlyInLine(sheet, place),
  },
  {
    definition: pistonSeals,
    folder: 'overhaul',
    gear: ALL_ROLES,
    whyNot(sheet, place) {
      if (sheet.actuatorKind !== 'piston') return 'It has a diaphragm, not a cylinder.';
      if (sheet.springHeldBy !== 'no spring')
        return 'A spring presses on its piston: such a cylinder is opened by its maker’s manual alone.';
      return noBlockValves(sheet, place);
    },
  },
  { definition: airSet, folder: 'overhaul', gear: OWN_AIR_ROLES, whyNot: onlyInLine },
  { definition: tubing, folder: 'overhaul', gear: OWN_AIR_ROLES, whyNot: onlyInLine },
  {
    definition: solenoid,
    folder: 'overhaul',
    gear: OWN_AIR_ROLES,
    whyNot: (sheet, place) =>
      sheet.electricalV === null
        ? 'Nothing electric is on its sheet: it has no solenoid.'
        : onlyInLine(sheet, place),
  },
  {
    definition: converterWiring,
    folder: 'overhaul',
    gear: OWN_AIR_ROLES,
    whyNot: (sheet, place) =>
      sheet.electricalV === null
        ? 'Nothing electric is on its sheet: no wire goes to it.'
        : onlyInLine(sheet, place),
  },
  { definition: indicatorAndCoupling, folder: 'overhaul', gear: OWN_AIR_ROLES, whyNot: onlyInLine },
];
