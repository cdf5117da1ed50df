import type { RepairId } from './repairs.ts';

/**
 * Which procedure of the house makes a repair, by its id; a repair that is not named has none yet: the cause is named,
 * the valve goes back, and the repair is planned by the site's own way.
 */
export const REPAIR_PROCEDURES: { readonly [R in RepairId]?: string } = {
  tightenCase: 'case-nuts',
  drawUpGland: 'live-gland',
  repack: 'packing-renewal',
  setCoupling: 'stroke-check',
  setSpring: 'stroke-check',
  adjustPositioner: 'positioner-stroke',
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
