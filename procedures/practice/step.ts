import { AIR_J_PER_KG, jetM2, massKg, passKgPerS, pressurePa } from './air.ts';
import { type Both, type Build, ENDS, type End } from './build.ts';
import { pilotAfter, pilotBleedKgPerS, portFlow, relayJetM2 } from './positioner.ts';
import { inletAfter, sourceAskedPa, tubeFlow } from './signal-path.ts';
import { type State, volumeM3 } from './state.ts';

/** What is done to the valve while time runs. */
export interface Doing {
  /** Opening asked by the controller, per cent; a little beyond 0 and 100 for a full stroke. */
  readonly outputPercent: number;
  readonly process: 'on' | 'bypassed';
  /** A cock is shut at the actuator: nothing comes or goes there. */
  readonly blockedIn?: boolean;
  /** Air straight into the actuator from a regulator of the rig, in place of its own. */
  readonly rigPa?: number;
  /** The stem is uncoupled from plug and packing. */
  readonly uncoupled?: boolean;
  /** The flapper is held: on its nozzle, or clear of it. */
  readonly flapperHeld?: number;
}

export const STEP_S = 0.01;
const VENT_M = 0.007;
const VENT_VOLUME_M = 0.04;
/** Stiffness over damping: the air and the packing take the life out of a stem in some hundredths of a second. */
const DAMPING_S = 0.03;
/** How narrow a lock-up, a trip or a rig passes. */
const TRIP_JET_M2 = jetM2(0.006);
const RIG_JET_M2 = jetM2(0.002);

/** Lets one hundredth of a second pass. */
export function step(build: Build, state: State, doing: Doing): void {
  const dtS = STEP_S;
  feed(build, state);
  const flows = { opens: 0, shuts: 0 };
  if (build.frame.positioner === 'none') directFlow(build, { state, doing, flows });
  else positionerFlow(build, { state, doing, flows });
  leaks(build, { state, flows });
  for (const end of ENDS) state.massKg[end] = Math.max(1e-7, state.massKg[end] + flows[end] * dtS);
  moveStem(build, { state, doing });
  pressures(build, state);
  if (build.frame.positioner === 'none') state.signalPa = state.endPa[build.frame.risingEnd];
  state.timeS += dtS;
}

/** The air set gives way to what is used, softly. */
function feed(build: Build, state: State): void {
  const restPa = Math.max(0, Math.min(build.headerPa, build.supplySetPa));
  const aimPa = Math.max(0, restPa - build.supplyDroopPaSPerKg * state.usedKgPerS);
  state.supplyPa += (aimPa - state.supplyPa) * 0.05;
  state.usedKgPerS = 0;
  state.blownKgPerS = 0;
}

interface Flowing {
  readonly state: State;
  readonly doing: Doing;
  readonly flows: Both;
}

/** Straight from transducer or controller into the actuator. */
function directFlow(build: Build, { state, doing, flows }: Flowing): void {
  const end = build.frame.risingEnd;
  const askedPa = sourceAskedPa(build, { outputPercent: doing.outputPercent, supplyPa: state.supplyPa });
  const hunting = build.boosterHunts * Math.sin(6 * state.timeS);
  const spanPa = build.frame.signalHighPa - build.frame.signalLowPa;
  if (closedOff(build, doing)) {
    state.sourcePa = askedPa;
    if (doing.rigPa !== undefined) fromRig(build, { state, doing, flows });
  } else {
    const sent = { state, askedPa: askedPa + hunting * spanPa, lastKgPerS: state.tubeKgPerS };
    const { flowKgPerS, sourcePa } = tubeFlow(build, sent);
    flows[end] += flowKgPerS * (1 - 0.85 * build.boosterSlow);
    state.sourcePa = sourcePa;
    state.usedKgPerS += Math.max(0, flowKgPerS);
    state.tubeKgPerS = flowKgPerS;
  }
  const lost = passKgPerS({ areaM2: jetM2(build.tubeHoleM), fromPa: state.endPa[end], toPa: 0 });
  if (!closedOff(build, doing)) flows[end] -= lost;
  state.blownKgPerS += lost;
  tripped(build, { state, doing, flows });
}

function closedOff(build: Build, doing: Doing): boolean {
  return build.lockUpShut || doing.blockedIn === true || doing.rigPa !== undefined || build.tripVents;
}

function positionerFlow(build: Build, { state, doing, flows }: Flowing): void {
  const askedPa = sourceAskedPa(build, { outputPercent: doing.outputPercent, supplyPa: state.supplyPa });
  const inlet = inletAfter(build, { state, askedPa, dtS: STEP_S, lastKgPerS: state.tubeKgPerS });
  const electric = build.frame.positioner === 'electropneumatic';
  state.sourcePa = inlet.sourcePa;
  state.tubeKgPerS = inlet.flowKgPerS;
  if (electric) state.signalPa = askedPa;
  else if (build.tubeOpen > 0) state.signalPa = inlet.signalPa;
  else if (!build.trapsAir) state.signalPa = 0;
  state.blownKgPerS += inlet.lostKgPerS;
  pilotAfter(build, { state, dtS: STEP_S });
  if (doing.flapperHeld !== undefined)
    for (const end of ENDS) state.nozzle[end] += (held(build, { doing, end }) - state.nozzle[end]) * 0.2;
  if (doing.rigPa !== undefined) fromRig(build, { state, doing, flows });
  else if (!closedOff(build, doing)) ports(build, { state, doing, flows });
  tripped(build, { state, doing, flows });
  const bled = pilotBleedKgPerS(build, { state, fedPa: build.positionerCockOpen > 0 ? state.supplyPa : 0 });
  state.usedKgPerS += bled;
  state.blownKgPerS += bled;
}

/** Nozzle pressure with the flapper held by hand. */
function held(build: Build, { doing, end }: { readonly doing: Doing; readonly end: End }): number {
  const part = build.frame.relayAnEnd ? end : 'opens';
  const ratio = ((doing.flapperHeld ?? 1) * build.nozzle[part]) / Math.max(1e-6, build.restriction[part]);
  return build.restriction[part] <= 0 ? 0 : 1 / (1 + ratio * ratio);
}

function ports(build: Build, { state, flows }: Flowing): void {
  const fedPa = state.supplyPa * (build.positionerCockOpen > 0 ? 1 : 0);
  // Without supply nothing comes, but the relay lets out all the same.
  const jet = relayJetM2(build);
  for (const end of ENDS) {
    if (!build.frame.doubleActing && end !== build.frame.risingEnd) continue;
    const flow = portFlow(build, { state, end, fedPa, jetM2: jet });
    const hunting = build.boosterHunts * Math.sin(6 * state.timeS) * jet * 300;
    flows[end] += flow.inKgPerS + hunting * (end === build.frame.risingEnd ? 1 : -1);
    state.usedKgPerS += flow.usedKgPerS;
    state.blownKgPerS += flow.blownKgPerS;
  }
}

function fromRig(build: Build, { state, doing, flows }: Flowing): void {
  const end = build.frame.risingEnd;
  const goesDown = (doing.rigPa ?? 0) < state.endPa[end];
  if (!(build.rigStaysUp && goesDown))
    flows[end] += passKgPerS({ areaM2: RIG_JET_M2, fromPa: doing.rigPa ?? 0, toPa: state.endPa[end] });
  flows[end] -= passKgPerS({ areaM2: jetM2(build.rigHoleM), fromPa: state.endPa[end], toPa: 0 });
  if (build.frame.doubleActing)
    for (const other of ENDS)
      if (other !== end)
        flows[other] -= passKgPerS({ areaM2: RIG_JET_M2, fromPa: state.endPa[other], toPa: 0 });
}

function tripped(build: Build, { state, doing, flows }: Flowing): void {
  if (!build.tripVents || doing.rigPa !== undefined) return;
  for (const end of ENDS) {
    const vented = passKgPerS({ areaM2: TRIP_JET_M2, fromPa: state.endPa[end], toPa: 0 });
    flows[end] -= vented;
    state.blownKgPerS += vented;
  }
}

/** Through the actuator's own holes: out, across, and to the spring side. */
function leaks(build: Build, { state, flows }: { readonly state: State; readonly flows: Both }): void {
  const { frame } = build;
  for (const end of ENDS) {
    if (!frame.doubleActing && end !== frame.risingEnd) continue;
    const rod = frame.topEnd === end ? 0 : build.rodSealHoleM;
    const holesM2 =
      jetM2(build.caseHoleM) + jetM2(build.stemSealHoleM) + jetM2(rod) + jetM2(build.outTubeHoleM[end]);
    const lost = passKgPerS({ areaM2: holesM2, fromPa: state.endPa[end], toPa: 0 });
    flows[end] -= lost;
    state.blownKgPerS += lost;
  }
  const acrossM2 = jetM2(build.crossHoleM) + jetM2(build.equaliserHoleM);
  if (frame.doubleActing) {
    const across = passKgPerS({ areaM2: acrossM2, fromPa: state.endPa.opens, toPa: state.endPa.shuts });
    flows.opens -= across;
    flows.shuts += across;
    return;
  }
  const { risingEnd } = frame;
  const through = passKgPerS({
    areaM2: jetM2(build.diaphragmHoleM) + jetM2(build.crossHoleM),
    fromPa: state.endPa[risingEnd],
    toPa: state.ventSidePa,
  });
  flows[risingEnd] -= through;
  state.blownKgPerS += through;
  ventSide(build, { state, throughKgPerS: through });
}

/** The side without air breathes through its vent; plugged, what is caught there is a second spring. */
function ventSide(build: Build, of: { readonly state: State; readonly throughKgPerS: number }): void {
  if (build.ventOpen >= 1) return;
  const { frame } = build;
  const side = (at: number) =>
    frame.areaM2 * (VENT_VOLUME_M + frame.travelM * (frame.risingEnd === 'opens' ? 1 - at : at));
  const before = of.state.ventAt;
  const kept = massKg({ pressurePa: of.state.ventSidePa, volumeM3: side(before) });
  const out = passKgPerS({ areaM2: jetM2(VENT_M) * build.ventOpen, fromPa: of.state.ventSidePa, toPa: 0 });
  const now = kept + (of.throughKgPerS - out) * STEP_S;
  of.state.ventSidePa = pressurePa({ massKg: now, volumeM3: side(of.state.actuatorAt) });
  of.state.ventAt = of.state.actuatorAt;
}

/** Force on the stem, positive opens; without friction. */
export function openingN(
  build: Build,
  { state, doing }: { readonly state: State; readonly doing: Doing },
): number {
  const { frame } = build;
  const air = frame.areaM2 * (state.endPa.opens - state.endPa.shuts);
  const behind = frame.areaM2 * state.ventSidePa * (frame.risingEnd === 'opens' ? -1 : 1);
  const plug =
    doing.process === 'on' && doing.uncoupled !== true && !build.plugOff
      ? frame.plugForceN * build.dropFactor * (build.turnedRound ? -1 : 1) * (1 - 0.8 * state.stemAt)
      : 0;
  return air + behind + springN(build, state.actuatorAt) + plug;
}

function springN(build: Build, at: number): number {
  const { frame } = build;
  if (frame.doubleActing) return 0;
  const rangeN = frame.springNPerM * frame.travelM;
  const loaded = frame.risingEnd === 'opens' ? at : 1 - at;
  const left = build.springBroken ? 0.55 : 1;
  const force =
    left * (frame.preloadN + build.preloadShiftFraction * rangeN + rangeN * build.rateFactor * loaded);
  return frame.risingEnd === 'opens' ? -force : force;
}

function frictionAt(
  build: Build,
  { state, doing }: { readonly state: State; readonly doing: Doing },
): number {
  if (doing.uncoupled === true) return 0.15 * build.frame.packingN;
  const stuck = state.moving ? build.frictionN : build.breakawayN;
  if (build.bindN === 0) return stuck;
  return stuck + build.bindN * Math.exp(-(((state.stemAt - build.bindAt) / 0.1) ** 2));
}

function moveStem(build: Build, { state, doing }: { readonly state: State; readonly doing: Doing }): void {
  const force = openingN(build, { state, doing });
  const friction = frictionAt(build, { state, doing });
  const free = build.seizedAt === null || doing.uncoupled === true;
  const [low, high] = limits(build, doing);
  state.moving = free && Math.abs(force) > friction;
  if (state.moving) {
    const speed = (Math.sign(force) * (Math.abs(force) - friction)) / dampingNSPerM(build);
    const next = state.actuatorAt + (speed * STEP_S) / build.frame.travelM;
    state.actuatorAt = Math.min(high, Math.max(low, next));
  }
  const slack = doing.uncoupled === true ? 0 : build.plateSlack / 2;
  state.stemAt = Math.min(state.actuatorAt + slack, Math.max(state.actuatorAt - slack, state.stemAt));
  state.stemAt = Math.min(1, Math.max(0, state.stemAt));
  const play = build.feedbackBacklash / 2;
  const seen = state.stemAt;
  state.feedbackAt = Math.min(seen + play, Math.max(seen - play, state.feedbackAt));
}

/** How far the stem can go: stops, an object, a plug that meets its seat early. */
function limits(build: Build, doing: Doing): readonly [number, number] {
  if (doing.uncoupled === true) return [0, 1];
  const low = Math.max(build.stopLow, build.plugOff ? 0 : Math.max(build.objectAt, build.plugOffset));
  return [Math.max(0, low), Math.min(1, build.stopHigh)];
}

function dampingNSPerM(build: Build): number {
  const { frame } = build;
  const pa = (frame.doubleActing ? frame.supplyPa : frame.signalHighPa) + 101_325;
  const air = (frame.areaM2 * pa) / (frame.deadStrokeM + frame.travelM / 2);
  return DAMPING_S * (frame.springNPerM + (frame.doubleActing ? 2 : 1) * air);
}

function pressures(build: Build, state: State): void {
  for (const end of ENDS) {
    const airless = !build.frame.doubleActing && end !== build.frame.risingEnd;
    const volume = volumeM3(build.frame, { end, at: state.actuatorAt });
    state.endPa[end] = airless ? 0 : (state.massKg[end] * AIR_J_PER_KG) / volume - 101_325;
  }
}
