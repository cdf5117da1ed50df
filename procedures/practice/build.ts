import { plugForce } from '../calculations/plug-force.ts';
import { springRateOf } from '../valve-sheet/derived.ts';
import type { ValveSheet } from '../valve-sheet/sheet.ts';
import { between, oneFrom, type Random } from './random.ts';

/** An end of the actuator by what its air does; a spring actuator has one of them. */
export const ENDS = ['opens', 'shuts'] as const;
export type End = (typeof ENDS)[number];
export type Both = { opens: number; shuts: number };

/** What is so for one valve whatever is wrong with it. Pressures are gauge. */
export interface Frame {
  readonly doubleActing: boolean;
  /** Spring actuators: the end with air. Double-acting: the end that a rising signal loads. */
  readonly risingEnd: End;
  /** Double-acting: the end at the top of the cylinder. */
  readonly topEnd: End;
  readonly positioner: ValveSheet['positioner'];
  readonly relayAnEnd: boolean;
  /** With one relay: the end that a covered nozzle loads. */
  readonly coveredEnd: End;
  readonly electricSource: boolean;
  readonly signalLowPa: number;
  readonly signalHighPa: number;
  readonly areaM2: number;
  readonly travelM: number;
  readonly springNPerM: number;
  /** Spring force where the air begins to move it. */
  readonly preloadN: number;
  readonly deadStrokeM: number;
  readonly supplyPa: number;
  readonly packingN: number;
  /** Of the process on the shut plug; positive opens. */
  readonly plugForceN: number;
  readonly seatLoadN: number;
  readonly portAreaM2: number;
  readonly equalPercentage: boolean;
  readonly sheet: ValveSheet;
}

/** Everything about a valve that a fault can change. A sound one is `soundBuild`. */
export interface Build {
  readonly frame: Frame;
  // The air set
  headerPa: number;
  supplySetPa: number;
  supplyDroopPaSPerKg: number;
  positionerCockOpen: number;
  gaugeBeforeCock: boolean;
  wetFraction: number;
  bowl: 'dry' | 'wet' | 'dirt';
  // From the terminals to the valve
  currentFactor: number;
  sourceOffset: number;
  sourceFactor: number;
  sourceRestriction: number;
  sourceNozzle: number;
  sourceDroopPaSPerKg: number;
  sourceMostKgPerS: number;
  tubeM: number;
  tubeHoleM: number;
  tubeOpen: number;
  trapsAir: boolean;
  // Accessories
  lockUpShut: boolean;
  tripVents: boolean;
  boosterHunts: number;
  boosterSlow: number;
  // The positioner; openings of restriction and nozzle are shares of the clean area
  gain: number;
  pilotLagS: number;
  restriction: Both;
  nozzle: Both;
  relayStuckAt: { opens: number | null; shuts: number | null };
  relayLeakM: number;
  bellowsHoleM: number;
  feedback: number;
  feedbackBacklash: number;
  zeroOff: number;
  spanFactor: number;
  flapperAskew: number;
  rangeSpringOff: boolean;
  electricStuckAt: number | null;
  tubesCrossed: boolean;
  outTubeHoleM: Both;
  outTubeOpen: number;
  // The actuator
  rateFactor: number;
  preloadShiftFraction: number;
  springBroken: boolean;
  diaphragmHoleM: number;
  caseHoleM: number;
  stemSealHoleM: number;
  rodSealHoleM: number;
  crossHoleM: number;
  equaliserHoleM: number;
  equaliserLooksOpen: boolean;
  boreScored: boolean;
  ventOpen: number;
  plateSlack: number;
  stopLow: number;
  stopHigh: number;
  stopSeen: boolean;
  // Stem and packing; forces by the mover
  frictionN: number;
  /** What of it the cylinder bore adds: it stays with the piston when the stems are parted. */
  boreFrictionN: number;
  breakawayN: number;
  bindN: number;
  bindAt: number;
  seizedAt: number | null;
  couplingSlip: number;
  plugOff: boolean;
  plugOffset: number;
  stemScored: boolean;
  glandTight: boolean;
  // Trim, body, line
  seatLeakFraction: number;
  seatLoadFactor: number;
  objectAt: number;
  kvFactor: number;
  pitted: boolean;
  fouled: boolean;
  galled: boolean;
  balanceLeakFraction: number;
  wrongTrim: number;
  turnedRound: boolean;
  outsideGland: number;
  outsideBonnet: number;
  outsideBellows: number;
  bypassKv: number;
  lineLoss: number;
  dropFactor: number;
  demand: number;
  fluidFactor: number;
  fluidGas: boolean;
  // The loop
  mode: 'automatic' | 'held';
  loopWrongWay: boolean;
  loopGain: number;
  disturbance: number;
  measureOff: number;
  inputBad: boolean;
  // The test gear
  gaugeOff: Partial<Record<string, number>>;
  rigHoleM: number;
  rigStaysUp: boolean;
  /** When the fault came: all at once during the last hours, or long before. */
  cameAtOnce: boolean;
}

const PISTON_DEAD_M = 0.02;
const DIAPHRAGM_DEAD_M = 0.035;
/** Set pressure where the sheet has none: 20 psi over a spring, 80 psi for a cylinder. Judgement. */
const USUAL_SUPPLY_PA = { spring: 138e3, cylinder: 552e3 };
/** Share of the thrust at the signal span that packing costs where the sheet does not say. Judgement. */
const USUAL_FRICTION = 0.025;

/** What the sheet says, in the words of the simulation. */
export function frameOf(sheet: ValveSheet, seen: { readonly coveredNozzleLoadsOther?: boolean } = {}): Frame {
  const doubleActing = sheet.springHeldBy === 'no spring';
  const airOpens = sheet.airMovesStem !== sheet.plugCloses;
  const topEnd: End = sheet.plugCloses === 'down' ? 'shuts' : 'opens';
  const bottomEnd: End = topEnd === 'opens' ? 'shuts' : 'opens';
  const named = sheet.positionerRisingSignalLoads;
  const movingEnd: End = airOpens ? 'opens' : 'shuts';
  const risingEnd = !doubleActing || named === null ? movingEnd : named === 'top' ? topEnd : bottomEnd;
  const other: End = risingEnd === 'opens' ? 'shuts' : 'opens';
  const positioner = doubleActing && sheet.positioner === 'none' ? 'pneumatic' : sheet.positioner;
  const spanPa = sheet.benchSetHighPa - sheet.benchSetLowPa;
  return {
    doubleActing,
    risingEnd,
    topEnd,
    positioner,
    relayAnEnd: doubleActing && sheet.positionerRelays === 'one an end',
    coveredEnd: seen.coveredNozzleLoadsOther === true ? other : risingEnd,
    electricSource: true,
    signalLowPa: sheet.signalLowPa,
    signalHighPa: sheet.signalHighPa,
    areaM2: sheet.effectiveAreaM2,
    travelM: sheet.travelM,
    springNPerM: doubleActing ? 0 : springRateOf(sheet),
    preloadN: doubleActing ? 0 : sheet.benchSetLowPa * sheet.effectiveAreaM2,
    deadStrokeM: sheet.actuatorKind === 'piston' ? PISTON_DEAD_M : DIAPHRAGM_DEAD_M,
    supplyPa: sheet.supplyHighPa ?? (doubleActing ? USUAL_SUPPLY_PA.cylinder : USUAL_SUPPLY_PA.spring),
    packingN: sheet.packingFrictionN ?? USUAL_FRICTION * spanPa * sheet.effectiveAreaM2,
    plugForceN: plugForce({
      flow: sheet.flow,
      inletPa: sheet.processInletPa,
      outletPa: sheet.processOutletPa,
      portDiameterM: sheet.portDiameterM,
      stemDiameterM: sheet.stemDiameterM,
      balanceSealDiameterM: sheet.balanceSealDiameterM,
    }).openingN,
    seatLoadN: (sheet.seatLoadNPerM ?? 0) * Math.PI * sheet.portDiameterM,
    portAreaM2: (Math.PI / 4) * sheet.portDiameterM ** 2,
    equalPercentage: true,
    sheet,
  };
}

/** A sound valve, as two of one sheet differ: packing, source and gauges each a little their own way. */
export function soundBuild(frame: Frame, random: Random): Build {
  return { frame, ...soundAir(frame, random), ...soundPositioner(frame), ...soundValve(frame, random) };
}

function soundAir(frame: Frame, random: Random) {
  return {
    // A header stands well above what its regulators are set to.
    headerPa: Math.max(690e3, 1.6 * frame.supplyPa),
    supplySetPa: frame.supplyPa * between(random, [0.98, 1.02]),
    // A regulator of the trade gives way by a few per cent at the flow of a stroke. Judgement.
    supplyDroopPaSPerKg: (0.05 * frame.supplyPa) / 2e-3,
    positionerCockOpen: 1,
    gaugeBeforeCock: random() < 0.65,
    wetFraction: 0,
    bowl: 'dry' as const,
    currentFactor: between(random, [0.998, 1.002]),
    sourceOffset: between(random, [-0.006, 0.006]),
    sourceFactor: between(random, [0.995, 1.005]),
    sourceRestriction: 1,
    sourceNozzle: 1,
    // Half a kPa for each cubic metre an hour, or a pilot without booster, eight times as soft. Judgement.
    sourceDroopPaSPerKg: oneFrom(random, [1.5e6, 1.2e7]),
    sourceMostKgPerS: between(random, [6e-4, 1.6e-3]),
    tubeM: 10,
    tubeHoleM: 0,
    tubeOpen: 1,
    trapsAir: false,
    lockUpShut: false,
    tripVents: false,
    boosterHunts: 0,
    boosterSlow: 0,
  };
}

function soundPositioner(frame: Frame) {
  return {
    gain: frame.doubleActing ? 3 : 4,
    pilotLagS: 0.06,
    restriction: { opens: 1, shuts: 1 },
    nozzle: { opens: 1, shuts: 1 },
    relayStuckAt: { opens: null, shuts: null },
    relayLeakM: 0,
    bellowsHoleM: 0,
    feedback: 1,
    feedbackBacklash: 0,
    zeroOff: 0,
    spanFactor: 1,
    flapperAskew: 0,
    rangeSpringOff: false,
    electricStuckAt: null,
    tubesCrossed: false,
    outTubeHoleM: { opens: 0, shuts: 0 },
    outTubeOpen: 1,
  };
}

function soundValve(frame: Frame, random: Random) {
  const frictionN = frame.packingN * between(random, [0.6, 1]);
  return {
    rateFactor: 1,
    preloadShiftFraction: between(random, [-0.01, 0.01]),
    springBroken: false,
    diaphragmHoleM: 0,
    caseHoleM: 0,
    stemSealHoleM: 0,
    rodSealHoleM: 0,
    crossHoleM: 0,
    equaliserHoleM: 0,
    equaliserLooksOpen: false,
    boreScored: false,
    ventOpen: 1,
    plateSlack: 0,
    stopLow: 0,
    stopHigh: 1,
    stopSeen: false,
    frictionN,
    boreFrictionN: 0,
    breakawayN: frictionN * 1.1,
    bindN: 0,
    bindAt: 0.5,
    seizedAt: null,
    couplingSlip: 0,
    plugOff: false,
    plugOffset: 0,
    stemScored: false,
    glandTight: false,
    ...soundProcess(),
    gaugeOff: {},
    rigHoleM: 0,
    rigStaysUp: false,
    cameAtOnce: false,
  };
}

function soundProcess() {
  return {
    seatLeakFraction: 0,
    seatLoadFactor: 1,
    objectAt: 0,
    kvFactor: 1,
    pitted: false,
    fouled: false,
    galled: false,
    balanceLeakFraction: 0,
    wrongTrim: 1,
    turnedRound: false,
    outsideGland: 0,
    outsideBonnet: 0,
    outsideBellows: 0,
    bypassKv: 0,
    lineLoss: 0,
    dropFactor: 1,
    demand: 0.2,
    fluidFactor: 1,
    fluidGas: false,
    mode: 'automatic' as const,
    loopWrongWay: false,
    loopGain: 1,
    disturbance: 0,
    measureOff: 0,
    inputBad: false,
  };
}

/** Whether a rising signal opens this valve. */
export function signalOpens(frame: Frame): boolean {
  return frame.risingEnd === 'opens';
}

export function otherEnd(end: End): End {
  return end === 'opens' ? 'shuts' : 'opens';
}
