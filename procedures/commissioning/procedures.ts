import { noBlockValves, outOfReach, type Place, type ServedProcedure } from '../served-procedure.ts';
import { ALL_ROLES, type GearRole } from '../test-gear/roles.ts';
import type { ValveSheet } from '../valve-sheet/sheet.ts';
import { airSupply } from './air-supply.ts';
import { converterCalibration } from './converter-calibration.ts';
import { failAction } from './fail-action.ts';
import { firstCommissioning } from './first-commissioning.ts';
import { loopCheck } from './loop-check.ts';
import { positionerCalibration } from './positioner-calibration.ts';
import { positionerStroke } from './positioner-stroke.ts';
import { soapTests } from './soap-tests.ts';
import { strokeCheck } from './stroke-check.ts';

/** Supply, travel and the air on the actuator; no process gauge, since nothing is isolated. */
const OWN_AIR_ROLES: readonly GearRole[] = ['signalGauge', 'supplyGauge', 'travelIndicator'];

function onlyInLine(sheet: ValveSheet, place: Place): string | null {
  return place === 'bench'
    ? 'A loop has its operator and its controller: it is checked in the line.'
    : noBlockValves(sheet, place);
}

function noOwnSignal({ positioner, electricalV, actuatorKind }: ValveSheet): string | null {
  if (positioner !== 'none' || electricalV !== null) return null;
  return actuatorKind === 'diaphragm'
    ? 'It has neither positioner nor converter: its stroke is checked by test air on the case.'
    : 'It has neither positioner nor converter: a cylinder is moved by its tubes alone, by the site’s own way.';
}

/** A positioner that takes the current itself is calibrated as one. */
function noConverter(sheet: ValveSheet, place: Place): string | null {
  if (sheet.electricalV === null)
    return 'Nothing electric is on its sheet. Where a converter gives its signal, its voltage goes on the sheet first.';
  return sheet.positioner === 'electropneumatic'
    ? 'Its positioner takes the current itself: it is calibrated as a positioner.'
    : noBlockValves(sheet, place);
}

/** Setting, checking and giving back. */
export const COMMISSIONING: readonly ServedProcedure[] = [
  {
    definition: strokeCheck,
    folder: 'commissioning',
    gear: ALL_ROLES,
    whyNot(sheet, place) {
      if (sheet.actuatorKind !== 'diaphragm') return 'A piston is not stroked by air on a spring case.';
      if (sheet.springHeldBy === 'no spring') return 'It has no spring to stroke against.';
      if (sheet.positioner !== 'none')
        return 'It has a positioner: its stroke is checked with the positioner in the loop.';
      return outOfReach(sheet) ?? noBlockValves(sheet, place);
    },
  },
  {
    definition: positionerStroke,
    folder: 'commissioning',
    gear: OWN_AIR_ROLES,
    gearOnBench: ['supplyGauge'],
    whyNot: (sheet, place) => noOwnSignal(sheet) ?? noBlockValves(sheet, place),
  },
  {
    definition: positionerCalibration,
    folder: 'commissioning',
    gear: OWN_AIR_ROLES,
    gearOnBench: ['supplyGauge'],
    whyNot: (sheet, place) =>
      sheet.positioner === 'none' ? 'It has no positioner.' : noBlockValves(sheet, place),
  },
  {
    definition: failAction,
    folder: 'commissioning',
    gear: ['supplyGauge'],
    gearOnBench: ['supplyGauge'],
    whyNot: noBlockValves,
  },
  {
    definition: converterCalibration,
    folder: 'commissioning',
    gear: ['signalGauge', 'supplyGauge'],
    gearOnBench: ['supplyGauge'],
    whyNot: noConverter,
  },
  {
    definition: soapTests,
    folder: 'commissioning',
    gear: ['signalGauge', 'supplyGauge'],
    gearOnBench: ['supplyGauge'],
    whyNot: noBlockValves,
  },
  {
    definition: loopCheck,
    folder: 'commissioning',
    gear: ['travelIndicator'],
    whyNot: onlyInLine,
  },
  {
    definition: airSupply,
    folder: 'commissioning',
    gear: ['supplyGauge'],
    whyNot: (_, place) => (place === 'bench' ? 'Its supply is in the line.' : null),
  },
  {
    definition: firstCommissioning,
    folder: 'commissioning',
    gear: [],
    whyNot: (_, place) => (place === 'bench' ? 'It is looked over where it is going to work.' : null),
  },
];
