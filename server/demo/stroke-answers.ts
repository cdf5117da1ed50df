/**
 * What somebody types on each card of a stroke check of a demo valve: readings off a simulated valve whose packing
 * has friction and whose spring has shifted, and the short answers between them. Invented, like the valve.
 */
import { FULL_CYCLE, MID_STROKES } from '../../procedures/cycle-verdict.ts';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import type { RowPlan } from '../../procedures/vocabulary.ts';

/** 1 psi in Pa and 1 in in m, NIST SP 811. */
const PSI_PA = 6894.757293168361;
const INCH_M = 0.0254;

export type Texts = Readonly<Record<string, string>>;

/** How a demo valve is found, and what is done about it. */
export interface Found {
  /** Friction each way, as signal. */
  readonly frictionPsi: number;
  /** How far its spring has shifted the stroke, as signal; above 0 it opens or closes late. */
  readonly shiftPsi: number;
  readonly work: 'setPlug' | 'leave';
  /** An earlier job turned its plug by the seating turns of its sheet. */
  readonly isTurned?: true;
  readonly note: string;
}

type When = 'as found' | 'as left';

const BY_GAUGE = { method: 'gauge' } as const;

class SimulatedValve {
  readonly #sheet: ValveSheet;
  readonly #found: Found;
  readonly lowPsi: number;
  readonly spanPsi: number;

  constructor(sheet: ValveSheet, found: Found) {
    this.#sheet = sheet;
    this.#found = found;
    this.lowPsi = sheet.benchSetLowPa / PSI_PA;
    this.spanPsi = (sheet.benchSetHighPa - sheet.benchSetLowPa) / PSI_PA;
  }

  get opens(): boolean {
    return this.#sheet.airAction === 'air-to-open';
  }

  row(plan: RowPlan, when: When): Texts {
    const psi = this.lowPsi + this.spanPsi * (plan.percent / 100);
    const shutPercent = (100 * this.#turnedPsi(when)) / this.spanPsi;
    const lift = Math.min(100, Math.max(shutPercent, this.#liftPercent(psi, plan.direction)));
    return { signalPa: `${psi} psi`, travelM: `${lift.toFixed(1)} %` };
  }

  /** Rising air leaves the seat late where it opens, and touches it late where it closes. */
  contact(when: When): Texts {
    const { shiftPsi, frictionPsi } = this.#found;
    const turnedPsi = this.#turnedPsi(when);
    const shutPsi = this.opens ? this.lowPsi + turnedPsi : this.lowPsi + this.spanPsi - turnedPsi;
    const rising = (shutPsi + shiftPsi + frictionPsi).toFixed(2);
    const falling = (shutPsi + shiftPsi - frictionPsi).toFixed(2);
    return {
      moves: 'yes',
      contactLeavesPa: `${this.opens ? rising : falling} psi`,
      contactTouchesPa: `${this.opens ? falling : rising} psi`,
    };
  }

  held(psi: number): Texts {
    const lift = Math.max(0, Math.min(100, this.#liftPercent(psi, 'up')));
    const travelIn = ((lift / 100) * this.#sheet.travelM) / INCH_M;
    return { heldPa: `${psi} psi`, heldAgainPa: `${psi} psi`, heldTravelM: `${travelIn.toFixed(3)} in` };
  }

  /** From the seat. */
  #liftPercent(psi: number, direction: RowPlan['direction']): number {
    const { shiftPsi, frictionPsi } = this.#found;
    const feltPsi = psi - shiftPsi + (direction === 'up' ? -frictionPsi : frictionPsi);
    const percent = (100 * (feltPsi - this.lowPsi)) / this.spanPsi;
    return this.opens ? percent : 100 - percent;
  }

  /** How far the turns of the plug move the contact: spring rate times turns times pitch over area. */
  #turnedPsi(when: When): number {
    if (when === 'as found' && this.#found.isTurned !== true) return 0;
    const { springRateNPerM, seatingTurns, stemThreadPitchM, effectiveAreaM2 } = this.#sheet;
    const turnedM = (seatingTurns ?? 0) * stemThreadPitchM;
    return ((springRateNPerM ?? 0) * turnedM) / effectiveAreaM2 / PSI_PA;
  }
}

/**
 * The texts of every card by step id; a table has one set for each of its rows. A card that asks nothing has none.
 *
 * @example strokeAnswers(sheet, { frictionPsi: 0.3, shiftPsi: 0, work: 'leave', note: '' }).chooseWork // { choice: 'leave' }
 */
export function strokeAnswers(
  sheet: ValveSheet,
  found: Found,
): Readonly<Record<string, Texts | readonly Texts[]>> {
  const valve = new SimulatedValve(sheet, found);
  const rows = (plans: readonly RowPlan[], when: When) => plans.map((plan) => valve.row(plan, when));
  return {
    ...GETTING_READY,
    openBypass: {
      bypassTag: sheet.bypassPoint ?? '',
      processBefore: '42 %',
      processNow: '42 %',
      bypassPosition: '3 turns',
      processHeld: 'yes',
    },
    ...isolating(sheet),
    connectAir: { peopleClear: 'yes' },
    connectAgain: { peopleClear: 'yes' },
    contactFound: valve.contact('as found'),
    asFoundCycle: rows(FULL_CYCLE, 'as found'),
    asFoundStrokes: rows(MID_STROKES, 'as found'),
    chooseWork: { choice: found.work },
    chooseWorkOutside: { choice: found.work, reason: 'The next shutdown has its overhaul.' },
    threadLook: { choice: 'enough' },
    holdForPlug: valve.held(valve.lowPsi + valve.spanPsi / 2),
    turnStem: { turnsMade: String(sheet.seatingTurns), lockNuts: 'yes' },
    contactLeft: valve.contact('as left'),
    holdOpen: valve.held(valve.opens ? valve.lowPsi + valve.spanPsi : valve.lowPsi),
    asLeftCycle: rows(FULL_CYCLE, 'as left'),
    asLeftStrokes: rows(MID_STROKES, 'as left'),
    ...GIVING_BACK,
    nextPerson: { exposedThreadLeftM: found.work === 'setPlug' ? '0.8 in' : '0.9 in', nextNotes: found.note },
  };
}

const GETTING_READY: Readonly<Record<string, Texts>> = {
  rigGauges: { rigGaugePa: '9.00 psi', rigCheckPa: '9.05 psi' },
  rigHold: { rigStartPa: '9.00', rigEndPa: '8.98' },
  rigBleed: { bleeds: 'yes' },
  knowEnergies: { energiesFound: 'all as on the plate', energiesKnown: 'yes' },
  consent: { operator: 'board operator', watchedBy: 'board operator', consentGiven: 'yes' },
  loopManual: { loopOutput: '48 %', loopTagged: 'yes', commandsBlocked: 'yes' },
  noBypass: { plantState: 'line out', plantSaid: 'unit stands', plantAgreedWith: 'shift supervisor' },
};

function isolating(sheet: ValveSheet): Readonly<Record<string, Texts>> {
  const psi = (pressurePa: number) => `${(pressurePa / PSI_PA).toFixed(0)} psi`;
  const locks = { inletLockNumber: '41', outletLockNumber: '42', supplyLockNumber: '43' };
  const { inletLockNumber, outletLockNumber, supplyLockNumber } = locks;
  return {
    shutInlet: {
      inletBeforePa: psi(sheet.processInletPa),
      inletTag: sheet.inletPoint ?? '',
      inletLockNumber,
    },
    shutOutlet: {
      outletBeforePa: psi(sheet.processOutletPa),
      outletTag: sheet.outletPoint ?? '',
      outletLockNumber,
    },
    drainInlet: { inletAfterPa: '0', ...BY_GAUGE, inletDrained: 'yes' },
    drainOutlet: { outletAfterPa: '0', ...BY_GAUGE, outletDrained: 'yes' },
    drainsAgain: { inletAgainPa: '0', outletAgainPa: '0' },
    shutSupply: {
      supplyBeforePa: '19 psi',
      signalBeforePa: '7.5 psi',
      supplyTag: sheet.supplyPoint,
      supplyLockNumber,
    },
    ventSupply: { supplyAfterPa: '0', ...BY_GAUGE },
    shutSecond: {
      secondBeforePa: '19 psi',
      secondTag: sheet.secondSupplyPoint ?? '',
      secondSupplyLockNumber: '44',
    },
    ventSecond: { secondAfterPa: '0', ...BY_GAUGE },
    noSecondFeed: { oneFeed: 'yes' },
    keptAir: {
      trappedAir: sheet.volumeTank ? 'isolated' : 'absent',
      lockUpAir: sheet.lockUp ? 'isolated' : 'absent',
      oppositeAir: 'absent',
    },
    otherEnergies: {
      temperature: 'safe',
      bodyTemperatureK: '38 C',
      weight: 'absent',
      residue: 'cleared',
      residueHow: 'cooled over night, drained, rinsed',
      electrical: sheet.electricalV === null ? 'absent' : 'isolated',
      electricalHow:
        sheet.electricalV === null ? '' : 'breaker off and locked, tried dead by the electrician',
      safetyFunction: sheet.tripFunction ? 'overridden' : 'absent',
      safetyFunctionHow: sheet.tripFunction ? 'override 27' : '',
    },
    breakSignalLine: { signalAfterPa: '0', ...BY_GAUGE, lineCapped: 'yes' },
    springLook: { caseTight: 'yes', exposedThreadM: '0.9 in', adjusterHeightM: '1.2 in' },
  };
}

const GIVING_BACK: Readonly<Record<string, Texts>> = {
  airOff: { lastAirPa: '9 psi', airZeroPa: '0', ...BY_GAUGE },
  finalCheck: { nutsTight: 'yes', indicatorRight: 'yes', caseStillTight: 'yes', toolsOut: 'yes' },
  backCheck: { choice: 'off' },
  zeroBeforeBack: { testAirOff: 'yes', flowFirst: 'no flow', flowAgain: 'no flow', method: 'vent' },
  reconnect: { lineBack: 'yes', caseStillTight: 'yes', toolsOut: 'yes' },
  supplyBack: { supplyBackPa: '19 psi', airToldWho: 'board operator', jointsTight: 'yes' },
  secondBack: { secondBackPa: '19 psi', jointsTight: 'yes' },
  unlockBlocks: { drainsShut: 'yes', locksOff: 'yes' },
  tellPeople: { toldWho: 'board operator', peopleClear: 'yes' },
  openBlocks: { blocksOpen: 'yes' },
  shutBypass: { bypassShut: 'yes' },
  loopBack: { takenBackBy: 'board operator', takenBack: 'yes' },
};

/**
 * The texts for the open card; empty for a card that asks nothing.
 * @param row how many rows of this table have been read
 */
export function textsAt(
  answers: Readonly<Record<string, Texts | readonly Texts[]>>,
  { step, row }: { readonly step: string; readonly row: number },
): Texts {
  const texts = answers[step] ?? {};
  return isRows(texts) ? (texts[row] ?? {}) : texts;
}

function isRows(texts: Texts | readonly Texts[]): texts is readonly Texts[] {
  return Array.isArray(texts);
}
