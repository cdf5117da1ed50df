import type { RepairId } from './repairs.ts';

/** Which procedure of the house makes a repair, by its id. */
export const REPAIR_PROCEDURES: { readonly [R in RepairId]?: string } = {
  mendWiring: 'converter-wiring',
  adjustSource: 'converter-calibration',
  tightenSignalTube: 'tubing',
  clearSignalTube: 'tubing',
  rearm: 'solenoid',
  setRegulator: 'air-set',
  cleanAir: 'air-set',
  pressPlunger: 'relay-restriction',
  serviceRelay: 'nozzle-flapper',
  changePositioner: 'positioner-bellows',
  mendLinkage: 'feedback-linkage',
  adjustPositioner: 'positioner-calibration',
  swapTubes: 'tubing',
  tightenOutputTube: 'tubing',
  tightenCase: 'case-nuts',
  changeDiaphragm: 'diaphragm-renewal',
  changeSeals: 'piston-seals',
  changeSpring: 'spring-change',
  setSpring: 'bench-set',
  drawUpGland: 'live-gland',
  repack: 'packing-renewal',
  setCoupling: 'indicator-and-coupling',
  openValve: 'seat-and-plug',
  tightenBonnet: 'seat-and-plug',
};

/** The seals of a diaphragm actuator are renewed where its case is opened anyway. */
const ON_A_DIAPHRAGM: typeof REPAIR_PROCEDURES = { changeSeals: 'valve-overhaul' };

/** @example repairProcedure('changeSeals', 'piston') // 'piston-seals' */
export function repairProcedure(id: RepairId, actuator: 'diaphragm' | 'piston'): string | undefined {
  return (actuator === 'diaphragm' ? ON_A_DIAPHRAGM[id] : undefined) ?? REPAIR_PROCEDURES[id];
}

/** Why a repair has none: the cause is named, the valve goes back, and the site's own way makes it. */
export const WITHOUT_PROCEDURE: { readonly [R in RepairId]?: string } = {
  leaveAlone: 'Nothing is repaired.',
  controllerBack: 'The control room sets its own controller; nobody works on the valve.',
  tune: 'Tuning belongs to whoever answers for the loop.',
  findDisturbance: 'The swing comes from elsewhere; nobody works on the valve.',
  mendMeasurement: 'Transmitter and impulse line are not the valve.',
  cleanSource:
    'Transducers are cleaned by their makers’ instructions; a check after it is the converter calibration.',
  openSupply: 'A cock is opened by whoever shut it, once the reason is known.',
  clearVent: 'A vent is cleared on the spot.',
  shutEqualiser: 'A cock is shut on the spot.',
  freeStop: 'Handwheel and stops are put back on the spot.',
  lineUpRight: 'The operator puts the line-up right.',
  sizing: 'The engineer decides on another size, trim or actuator.',
  putRigRight: 'Gauge and rig are changed on the spot.',
};

/**
 * Repairs that are made on the spot: nothing under pressure is opened, no tube is parted. All others have their own
 * procedure, or are planned.
 */
export const MENDED_HERE: readonly RepairId[] = [
  'controllerBack',
  'rearm',
  'openSupply',
  'setRegulator',
  'clearVent',
  'shutEqualiser',
  'freeStop',
  'lineUpRight',
  'putRigRight',
  'pressPlunger',
  'adjustSource',
  'mendLinkage',
];
