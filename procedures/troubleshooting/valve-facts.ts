import type { ValveSheet } from '../valve-sheet/sheet.ts';

/** Where a gauge may sit. Without a positioner the signal gauge at the valve reads the actuator. */
export const GAUGE_POINTS = {
  source: 'at the outlet of the transducer or controller',
  signal: 'on the signal at the valve',
  actuator: 'on the actuator',
  cylinderTop: 'on the top of the cylinder',
  cylinderBottom: 'on the bottom of the cylinder',
  nozzle: 'on the nozzle',
  nozzleTop: 'on the nozzle of the relay that loads the top',
  nozzleBottom: 'on the nozzle of the relay that loads the bottom',
  supply: 'on the supply',
} as const;

export type GaugePoint = keyof typeof GAUGE_POINTS;
export type CylinderEnd = 'top' | 'bottom';

/** The numbers of the sheet that a reading is held against. */
export interface ValveNumbers {
  readonly signalLowPa: number;
  readonly signalHighPa: number;
  readonly benchSetLowPa: number;
  readonly benchSetHighPa: number;
  readonly effectiveAreaM2: number;
  readonly travelM: number;
  /** Set pressure of the air set, the most that the sheet allows; null where the sheet has none. */
  readonly supplyPa: number | null;
  /** Least supply that the sheet allows; without it the set pressure is the one that counts. */
  readonly supplyLowPa?: number | null;
  /** What the packing should cost the stem each way; null where not known. */
  readonly packingFrictionN: number | null;
}

/**
 * What causes and checks are worked out from: all that the likelihoods know of a valve. No table is kept for a
 * kind of valve; each cause says what it shows as a function of these.
 */
export interface ValveFacts {
  readonly actuator: 'diaphragm' | 'piston';
  readonly spring: boolean;
  readonly positioner: 'none' | 'pneumatic' | 'electropneumatic';
  readonly relays: 'one' | 'one an end';
  /** What gives the air signal: a transducer on a current, or a pneumatic controller. */
  readonly source: 'transducer' | 'pneumatic controller';
  readonly airMovesStem: 'up' | 'down';
  readonly plugCloses: 'down' | 'up';
  /** Double-acting: the end that a rising signal loads. */
  readonly risingLoads: CylinderEnd;
  /** The end that a covered nozzle loads; usually the same, not always. */
  readonly coveredNozzleLoads: CylinderEnd;
  readonly flowTendsTo: 'open' | 'close';
  readonly balancedPlug: boolean;
  readonly bellowsSeal: boolean;
  readonly springHeldBy: 'adjuster' | 'case' | 'no spring';
  readonly lockUp: boolean;
  readonly booster: boolean;
  readonly trip: boolean;
  readonly bypassLine: boolean;
  readonly tubeM: number;
  /** A test rig or a single borrowed gauge stands behind a finding of this job. */
  readonly rigUsed: boolean;
  readonly plunger: boolean;
  readonly gaugesFitted: readonly GaugePoint[];
  readonly numbers: ValveNumbers;
}

/** What the sheet does not say and the technician sees at the valve. Left out: the usual, marked judgement. */
export interface AtTheValve {
  readonly source?: ValveFacts['source'];
  readonly coveredNozzleLoads?: CylinderEnd;
  readonly tubeM?: number;
  readonly rigUsed?: boolean;
  readonly plunger?: boolean;
  readonly gaugesFitted?: readonly GaugePoint[];
}

/** Length of signal tube where nobody has said it: judgement. */
const USUAL_TUBE_M = 10;

/**
 * The facts of one valve, from its sheet and from what is seen at it.
 * @example valveFactsOf(sheet, { tubeM: 3 }).spring // true
 */
export function valveFactsOf(sheet: ValveSheet, seen: AtTheValve = {}): ValveFacts {
  const spring = sheet.springHeldBy !== 'no spring';
  // A double-acting cylinder cannot be moved without one; the sheet may be blank.
  const positioner = !spring && sheet.positioner === 'none' ? 'pneumatic' : sheet.positioner;
  const movingEnd: CylinderEnd = sheet.airMovesStem === 'down' ? 'top' : 'bottom';
  const risingLoads = sheet.positionerRisingSignalLoads ?? movingEnd;
  return {
    actuator: sheet.actuatorKind,
    spring,
    positioner,
    relays: sheet.positionerRelays ?? 'one',
    source: seen.source ?? 'transducer',
    airMovesStem: sheet.airMovesStem,
    plugCloses: sheet.plugCloses,
    risingLoads,
    coveredNozzleLoads: seen.coveredNozzleLoads ?? risingLoads,
    flowTendsTo: sheet.flow === 'under' ? 'open' : 'close',
    balancedPlug: sheet.balanceSealDiameterM !== null,
    bellowsSeal: sheet.bellowsSeal,
    springHeldBy: sheet.springHeldBy,
    lockUp: sheet.lockUp,
    booster: sheet.volumeTank,
    trip: sheet.tripFunction,
    bypassLine: sheet.bypassPoint !== null,
    tubeM: seen.tubeM ?? USUAL_TUBE_M,
    rigUsed: seen.rigUsed ?? false,
    plunger: seen.plunger ?? true,
    gaugesFitted: seen.gaugesFitted ?? usualGauges({ spring, positioner }),
    numbers: {
      signalLowPa: sheet.signalLowPa,
      signalHighPa: sheet.signalHighPa,
      benchSetLowPa: sheet.benchSetLowPa,
      benchSetHighPa: sheet.benchSetHighPa,
      effectiveAreaM2: sheet.effectiveAreaM2,
      travelM: sheet.travelM,
      supplyPa: sheet.supplyHighPa,
      supplyLowPa: sheet.supplyLowPa,
      packingFrictionN: sheet.packingFrictionN,
    },
  };
}

/** Gauges that such a valve usually carries: judgement. */
function usualGauges(of: Pick<ValveFacts, 'spring' | 'positioner'>): readonly GaugePoint[] {
  if (of.positioner === 'none') return ['source', 'supply'];
  return of.spring
    ? ['source', 'supply', 'signal', 'actuator']
    : ['source', 'supply', 'signal', 'cylinderTop', 'cylinderBottom'];
}

export function hasPositioner(v: Pick<ValveFacts, 'positioner'>): boolean {
  return v.positioner !== 'none';
}

/** A signal travels as air: not where the transducer sits inside the positioner. */
export function hasSignalTube(v: Pick<ValveFacts, 'positioner'>): boolean {
  return v.positioner !== 'electropneumatic';
}

/** Which way the plug goes when an end of the cylinder is loaded. */
export function endOpens(v: Pick<ValveFacts, 'plugCloses'>, end: CylinderEnd): boolean {
  return (end === 'bottom') === (v.plugCloses === 'down');
}

/** Whether a rising signal opens the valve. */
export function signalOpens(v: ValveFacts): boolean {
  return v.spring ? v.airMovesStem !== v.plugCloses : endOpens(v, v.risingLoads);
}

/** The gauge that reads the air on a spring actuator. */
export function actuatorGauge(v: Pick<ValveFacts, 'positioner'>): GaugePoint {
  return hasPositioner(v) ? 'actuator' : 'signal';
}
