/**
 * A whole stroke check as data: what a person types on each card, read off a valve whose friction makes the way
 * up and the way down differ. The same texts may be posted as a form or as JSON, or typed into a browser.
 */
import { FULL_CYCLE, MID_STROKES } from '../../procedures/cycle-verdict.ts';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import type { RowPlan } from '../../procedures/vocabulary.ts';
import { INCH_M, PSI_PA } from './gear.ts';
import { aSheetOf } from './sheets.ts';

export type Texts = Readonly<Record<string, string>>;

export interface Geometry {
  readonly plugCloses: 'down' | 'up';
  readonly airMovesStem: 'down' | 'up';
}

/** Every way in which plug and air can work together. */
export const GEOMETRIES: readonly Geometry[] = [
  { plugCloses: 'down', airMovesStem: 'up' },
  { plugCloses: 'down', airMovesStem: 'down' },
  { plugCloses: 'up', airMovesStem: 'up' },
  { plugCloses: 'up', airMovesStem: 'down' },
];

/** FV-214 built the other way round: texts of its sheet that follow from how plug and air work together. */
export function textsFor({ plugCloses, airMovesStem }: Geometry): Texts {
  const closes = plugCloses === airMovesStem;
  return {
    plugCloses,
    airMovesStem,
    airAction: closes ? 'air-to-close' : 'air-to-open',
    failPosition: closes ? 'open' : 'shut',
  };
}

export function sheetFor(geometry: Geometry, texts: Texts = {}): ValveSheet {
  return aSheetOf({ ...textsFor(geometry), ...texts });
}

/** Friction of packing and stem, as signal: 0.3 psi on 100 in2 is 30 lbf each way. */
export const FRICTION_PSI = 0.3;

/** Holds of the script, which somebody else signs. */
export const SIGNED_STEPS: readonly string[] = ['holdWork', 'signBench', 'signReturn'];

/** Waits of the script, with how long they take, in seconds. */
export const WAITED_STEPS: Readonly<Record<string, number>> = { rigShutIn: 20 };

/** Signal at which this valve, with its friction, stands at a lift: percent of the travel from the seat. */
function liftPercent(sheet: ValveSheet, { psi, up }: { readonly psi: number; readonly up: boolean }): number {
  const felt = psi + (up ? -FRICTION_PSI : FRICTION_PSI);
  const low = sheet.benchSetLowPa / PSI_PA;
  const span = (sheet.benchSetHighPa - sheet.benchSetLowPa) / PSI_PA;
  const percent = (100 * (felt - low)) / span;
  return sheet.airAction === 'air-to-open' ? percent : 100 - percent;
}

/** How far two turns shift the contact, as signal: spring rate times turns times pitch over area. */
function shiftPsi(sheet: ValveSheet): number {
  const springRateNPerM = sheet.springRateNPerM ?? 0;
  const shiftPa =
    (springRateNPerM * (sheet.seatingTurns ?? 0) * sheet.stemThreadPitchM) / sheet.effectiveAreaM2;
  return shiftPa / PSI_PA;
}

/** Contact without friction, in psi: the shut end of the bench set, moved by the turns where the plug was set. */
export function contactPsi(sheet: ValveSheet, when: 'as found' | 'as left'): number {
  const moved = when === 'as left' ? shiftPsi(sheet) : 0;
  return sheet.airAction === 'air-to-open'
    ? sheet.benchSetLowPa / PSI_PA + moved
    : sheet.benchSetHighPa / PSI_PA - moved;
}

function row(sheet: ValveSheet, plan: RowPlan, when: 'as found' | 'as left'): Texts {
  const low = sheet.benchSetLowPa / PSI_PA;
  const psi = low + ((sheet.benchSetHighPa - sheet.benchSetLowPa) / PSI_PA) * (plan.percent / 100);
  const seated =
    when === 'as left' ? (100 * shiftPsi(sheet) * PSI_PA) / (sheet.benchSetHighPa - sheet.benchSetLowPa) : 0;
  const lift = Math.min(100, Math.max(seated, liftPercent(sheet, { psi, up: plan.direction === 'up' })));
  return { signalPa: `${psi} psi`, travelM: `${lift.toFixed(1)} %` };
}

function contact(sheet: ValveSheet, when: 'as found' | 'as left'): Texts {
  const middle = contactPsi(sheet, when);
  // Rising air leaves the seat late where it opens, and touches it late where it closes.
  const rising = (middle + FRICTION_PSI).toFixed(2);
  const falling = (middle - FRICTION_PSI).toFixed(2);
  const opens = sheet.airAction === 'air-to-open';
  return {
    moves: 'yes',
    contactLeavesPa: `${opens ? rising : falling} psi`,
    contactTouchesPa: `${opens ? falling : rising} psi`,
  };
}

function held(sheet: ValveSheet, psi: number): Texts {
  const lift = Math.min(100, liftPercent(sheet, { psi, up: true }));
  const travelIn = ((lift / 100) * sheet.travelM) / INCH_M;
  return { heldPa: `${psi} psi`, heldAgainPa: `${psi} psi`, heldTravelM: `${travelIn.toFixed(3)} in` };
}

const BY_GAUGE = { method: 'gauge' } as const;

/**
 * What is given on every card that is answered on the way from opening to `done`, by step id; a table has one
 * set of texts for each of its rows. Holds are signed and waits are waited for: their texts are empty.
 *
 * @example strokeScript(aSheet()).holdForPlug // { heldPa: '9 psi', heldAgainPa: '9 psi', heldTravelM: '0.356 in' }
 */
export function strokeScript(sheet: ValveSheet): Readonly<Record<string, Texts | readonly Texts[]>> {
  const middlePsi = (sheet.benchSetLowPa + sheet.benchSetHighPa) / 2 / PSI_PA;
  const openPsi = (sheet.airAction === 'air-to-open' ? sheet.benchSetHighPa : sheet.benchSetLowPa) / PSI_PA;
  const rows = (plans: readonly RowPlan[], when: 'as found' | 'as left') =>
    plans.map((plan) => row(sheet, plan, when));
  return {
    ...GETTING_READY,
    ...ISOLATING,
    ...tagsOf(sheet),
    contactFound: contact(sheet, 'as found'),
    asFoundCycle: rows(FULL_CYCLE, 'as found'),
    asFoundStrokes: rows(MID_STROKES, 'as found'),
    chooseWork: { choice: 'setPlug' },
    threadLook: { choice: 'enough' },
    holdForPlug: held(sheet, middlePsi),
    turnStem: { turnsMade: String(sheet.seatingTurns), lockNuts: 'yes' },
    contactLeft: contact(sheet, 'as left'),
    holdOpen: held(sheet, openPsi),
    asLeftCycle: rows(FULL_CYCLE, 'as left'),
    asLeftStrokes: rows(MID_STROKES, 'as left'),
    ...GIVING_BACK,
  };
}

/** The tags that are read off the labels of this valve's isolation points, over those of FV-214. */
function tagsOf({
  supplyPoint,
  inletPoint,
  outletPoint,
  bypassPoint,
}: ValveSheet): Readonly<Record<string, Texts>> {
  const { openBypass, shutInlet, shutOutlet, shutSupply } = { ...GETTING_READY, ...ISOLATING };
  return {
    openBypass: { ...openBypass, bypassTag: bypassPoint ?? '' },
    shutInlet: { ...shutInlet, inletTag: inletPoint ?? '' },
    shutOutlet: { ...shutOutlet, outletTag: outletPoint ?? '' },
    shutSupply: { ...shutSupply, supplyTag: supplyPoint },
  };
}

const GETTING_READY: Readonly<Record<string, Texts>> = {
  rigGauges: { rigGaugePa: '9.00 psi', rigCheckPa: '9.05 psi' },
  rigHold: { rigStartPa: '9.00', rigEndPa: '8.98' },
  rigBleed: { bleeds: 'yes' },
  consent: { operator: 'board operator', consentGiven: 'yes' },
  openBypass: { bypassTag: 'HV-214C', processHeld: 'yes' },
  noBypass: { plantState: 'unit stands', mayStop: 'yes' },
  benchRecord: { noProcess: 'yes', noLines: 'yes', portOpen: 'yes', clampedDown: 'yes' },
};

const ISOLATING: Readonly<Record<string, Texts>> = {
  shutInlet: { inletBeforePa: '88 psi', inletTag: 'HV-214A', inletLockNumber: '41' },
  shutOutlet: { outletBeforePa: '41 psi', outletTag: 'HV-214B', outletLockNumber: '42' },
  drainInlet: { inletAfterPa: '0', ...BY_GAUGE },
  drainOutlet: { outletAfterPa: '0', ...BY_GAUGE },
  shutSupply: {
    supplyBeforePa: '19 psi',
    signalBeforePa: '7.5 psi',
    supplyTag: 'IA-214-1',
    supplyLockNumber: '43',
  },
  ventSupply: { supplyAfterPa: '0', ...BY_GAUGE },
  otherEnergies: {
    trappedAir: 'absent',
    temperature: 'safe',
    bodyTemperatureK: '38 C',
    weight: 'absent',
    residue: 'cleared',
    electrical: 'absent',
    safetyFunction: 'absent',
    othersHow: 'cooled over night, drained',
  },
  breakSignalLine: { signalAfterPa: '0', ...BY_GAUGE, lineCapped: 'yes' },
  springLook: { caseTight: 'yes', exposedThreadM: '0.9 in', adjusterHeightM: '1.2 in' },
};

const GIVING_BACK: Readonly<Record<string, Texts>> = {
  airOff: { lastAirPa: '9 psi', airZeroPa: '0', ...BY_GAUGE },
  finalCheck: { nutsTight: 'yes', indicatorRight: 'yes', caseStillTight: 'yes', toolsOut: 'yes' },
  nextPerson: { exposedThreadLeftM: '0.8 in', nextNotes: 'Stem two turns longer.' },
  backCheck: { choice: 'off' },
  zeroBeforeBack: { testAirOff: 'yes', flowFirst: 'no flow', flowAgain: 'no flow', method: 'vent' },
  reconnect: { lineBack: 'yes', caseStillTight: 'yes' },
  supplyBack: { supplyBackPa: '19 psi', jointsTight: 'yes' },
  tellPeople: { toldWho: 'board operator', peopleClear: 'yes' },
  openBlocks: { drainsShut: 'yes', blocksOpen: 'yes' },
  shutBypass: { bypassShut: 'yes' },
  loopBack: { takenBackBy: 'board operator', takenBack: 'yes' },
};

/**
 * The texts for the open card; empty for a card that asks nothing.
 * @param row how many rows of this table have been read
 */
export function textsAt(
  script: Readonly<Record<string, Texts | readonly Texts[]>>,
  { step, row: at }: { readonly step: string; readonly row: number },
): Texts {
  const texts = script[step] ?? {};
  return isRows(texts) ? (texts[at] ?? {}) : texts;
}

function isRows(texts: Texts | readonly Texts[]): texts is readonly Texts[] {
  return Array.isArray(texts);
}
