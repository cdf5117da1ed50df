import type { ValveFacts, ValveNumbers } from '../../../procedures/troubleshooting/valve-facts.ts';

const PSI_PA = 6894.757;

const NUMBERS: ValveNumbers = {
  signalLowPa: 3 * PSI_PA,
  signalHighPa: 15 * PSI_PA,
  benchSetLowPa: 3 * PSI_PA,
  benchSetHighPa: 15 * PSI_PA,
  effectiveAreaM2: 0.0645,
  travelM: 0.01905,
  supplyPa: 20 * PSI_PA,
  packingFrictionN: null,
};

/** A diaphragm actuator straight on a transducer: air lifts the stem, the plug closes down. */
export const BARE_DIAPHRAGM: ValveFacts = {
  actuator: 'diaphragm',
  spring: true,
  positioner: 'none',
  relays: 'one',
  source: 'transducer',
  airMovesStem: 'up',
  plugCloses: 'down',
  risingLoads: 'bottom',
  coveredNozzleLoads: 'bottom',
  flowTendsTo: 'open',
  balancedPlug: false,
  bellowsSeal: false,
  springHeldBy: 'adjuster',
  lockUp: false,
  booster: false,
  trip: false,
  bypassLine: true,
  tubeM: 10,
  rigUsed: false,
  plunger: true,
  gaugesFitted: ['source', 'supply', 'signal'],
  numbers: NUMBERS,
};

export const DIAPHRAGM_WITH_POSITIONER: ValveFacts = {
  ...BARE_DIAPHRAGM,
  positioner: 'pneumatic',
  gaugesFitted: ['source', 'supply', 'signal', 'actuator'],
};

/** With a positioner, and air presses the plug onto its seat. */
export const POSITIONER_AIR_SHUTS: ValveFacts = { ...DIAPHRAGM_WITH_POSITIONER, airMovesStem: 'down' };

/** Double-acting, one relay with two outputs. */
export const PISTON_ONE_RELAY: ValveFacts = {
  ...BARE_DIAPHRAGM,
  actuator: 'piston',
  spring: false,
  positioner: 'pneumatic',
  springHeldBy: 'no spring',
  gaugesFitted: ['source', 'supply', 'signal', 'cylinderTop', 'cylinderBottom'],
  numbers: { ...NUMBERS, supplyPa: 80 * PSI_PA },
};

/** A rising signal loads the top and shuts the valve. */
export const PISTON_SIGNAL_SHUTS: ValveFacts = {
  ...PISTON_ONE_RELAY,
  risingLoads: 'top',
  coveredNozzleLoads: 'top',
};

/** Double-acting, a relay for each end. */
export const PISTON_RELAY_AN_END: ValveFacts = { ...PISTON_ONE_RELAY, relays: 'one an end' };

export const SPRING_PISTON: ValveFacts = {
  ...DIAPHRAGM_WITH_POSITIONER,
  actuator: 'piston',
  springHeldBy: 'case',
};

export const ELECTRIC_POSITIONER: ValveFacts = {
  ...DIAPHRAGM_WITH_POSITIONER,
  positioner: 'electropneumatic',
  gaugesFitted: ['supply', 'actuator'],
};

export const AIR_TO_CLOSE: ValveFacts = { ...BARE_DIAPHRAGM, airMovesStem: 'down', springHeldBy: 'adjuster' };

export const FULLY_FITTED: ValveFacts = {
  ...DIAPHRAGM_WITH_POSITIONER,
  balancedPlug: true,
  bellowsSeal: true,
  lockUp: true,
  booster: true,
  trip: true,
  rigUsed: true,
  source: 'pneumatic controller',
};

export const VALVES: Readonly<Record<string, ValveFacts>> = {
  'a diaphragm without positioner': BARE_DIAPHRAGM,
  'a diaphragm with positioner': DIAPHRAGM_WITH_POSITIONER,
  'a piston with one relay': PISTON_ONE_RELAY,
  'a piston with a relay an end': PISTON_RELAY_AN_END,
  'a piston with a spring': SPRING_PISTON,
  'a diaphragm with an electric positioner': ELECTRIC_POSITIONER,
  'a diaphragm that air closes': AIR_TO_CLOSE,
  'a valve with everything on it': FULLY_FITTED,
};
