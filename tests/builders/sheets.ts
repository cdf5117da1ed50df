/** Valve sheets for tests, each read from texts as a form gives them. */
import { readSheet } from '../../procedures/valve-sheet/read-sheet.ts';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';

/** FV-214: air opens, shuts on loss of air; 3-15 psi over 0.75 in on 100 in2, so 1600 lbf/in. */
export const FV_214: Readonly<Record<string, string>> = {
  tag: 'FV-214',
  service: 'condensate return',
  location: 'Unit 3, bay 3',
  units: 'us',
  actuatorKind: 'diaphragm',
  plugCloses: 'down',
  airMovesStem: 'up',
  airAction: 'air-to-open',
  failPosition: 'shut',
  springHeldBy: 'adjuster',
  positioner: 'none',
  bellowsSeal: 'no',
  stemPinned: 'no',
  handwheel: 'no',
  volumeTank: 'no',
  lockUp: 'no',
  actuatorMassKg: '70',
  signalLowPa: '3',
  signalHighPa: '15',
  benchSetLowPa: '3',
  benchSetHighPa: '15',
  effectiveAreaM2: '100',
  springRateNPerM: '1600',
  travelM: '0.75',
  caseRatingPa: '50',
  supplyLowPa: '18',
  supplyHighPa: '20',
  portDiameterM: '1',
  stemDiameterM: '0.5',
  ratedKv: '14',
  pressureDropRatioXt: '0.72',
  flow: 'under',
  leakageClass: 'IV',
  shutOffDropPa: '100',
  seatLoadNPerM: '30',
  seatLoadSource: 'table on the plate drawing',
  stemThread: '1/2-20',
  stemThreadEngagedMinM: '0.5',
  seatingTurns: '2',
  adjusterThread: '5/8-18',
  packingKind: 'ptfe-single',
  packingRings: '5',
  packingFrictionN: '50',
  packingFrictionSource: 'published table for a 1/2 in stem',
  errorTolerancePercent: '5',
  hysteresisTolerancePercent: '10',
  repeatabilityTolerancePercent: '2',
  benchSetTolerancePa: '0.25',
  processFluid: 'condensate',
  processInletPa: '88',
  processOutletPa: '41',
  processTemperatureC: '190',
  fluidHarm: 'scalding',
  processIsolation: 'double block and bleed',
  heatTracing: 'no',
  tripFunction: 'no',
  supplyPoint: 'IA-214-1',
  inletPoint: 'HV-214A',
  outletPoint: 'HV-214B',
  bypassPoint: 'HV-214C',
  notes: 'Supply cock behind the east column.',
};

/**
 * @example aSheet({ bellowsSeal: true }).tag // 'FV-214'
 */
export function aSheet(overrides: Partial<ValveSheet> = {}): ValveSheet {
  return { ...sheetOf(FV_214), ...overrides };
}

/** A sheet from texts; those of FV-214 stand where none are given. */
export function aSheetOf(texts: Readonly<Record<string, string>>): ValveSheet {
  return sheetOf({ ...FV_214, ...texts });
}

function sheetOf(texts: Readonly<Record<string, string>>): ValveSheet {
  const read = readSheet({ texts });
  if (!read.ok) throw new Error(`The builder's sheet is refused: ${JSON.stringify(read.faults)}`);
  return read.sheet;
}
