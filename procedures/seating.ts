import { seatingTurnsForNeed } from './calculations/seating-fit.ts';
import { seatingTurns, stemTurn } from './calculations/seating-turns.ts';
import type { Job } from './job.ts';
import { springRateOf } from './valve-sheet/derived.ts';
import type { ValveSheet } from './valve-sheet/sheet.ts';

/** Two turns after contact, where neither the sheet nor a seat load says otherwise (common practice, no source). */
const USUAL_SEATING_TURNS = 2;

/** How well turns are counted: a quarter turn (common practice, no source). */
const COUNTED_TO_TURNS = 0.25;

export interface TurnsWanted {
  readonly turns: number;
  readonly because: 'sheet' | 'seat load' | 'common practice';
}

/** How many turns this valve wants after contact, and by whose word. */
export function turnsWanted(job: Job): TurnsWanted {
  const { sheet } = job;
  if (sheet.seatingTurns !== null) return { turns: sheet.seatingTurns, because: 'sheet' };
  if (sheet.seatLoadNPerM === null) return { turns: USUAL_SEATING_TURNS, because: 'common practice' };
  const need = seatingTurnsForNeed({
    portDiameterM: sheet.portDiameterM,
    seatLoadBeforeN: Math.max(0, seatLoadN(job, contactBeforePa(job))),
    seatLoadNeedNPerM: sheet.seatLoadNPerM,
    springRateNPerM: springRateOf(sheet),
    threadPitchM: sheet.stemThreadPitchM,
  });
  return { turns: need.turnsToQuarter, because: 'seat load' };
}

/** @example turnDirection(sheet) // 'out, so that the stem gets longer' for a plug that closes moving down */
export function turnDirection(sheet: ValveSheet): string {
  return stemTurn(sheet).screwPlugStem === 'in'
    ? 'in, so that the stem gets shorter'
    : 'out, so that the stem gets longer';
}

export interface SeatingFigures {
  readonly [name: string]: number | string | null;
  readonly turns: number;
  readonly plugShiftM: number;
  readonly signalShiftPa: number;
  readonly expectedContactPa: number;
  readonly allowedPa: number;
  readonly seatLoadN: number;
  readonly seatLoadNeedN: number | null;
  readonly liftLeftM: number;
}

/**
 * What the turns made, or wanted, do to contact, seat load and lift of this valve.
 * @param contactAfterPa the contact found again; left out, the expected one is used
 */
export function seatingFigures(
  job: Job,
  { contactAfterPa }: { readonly contactAfterPa?: number } = {},
): SeatingFigures {
  const { sheet } = job;
  const turns = turnsMade(job) ?? turnsWanted(job).turns;
  const turned = seatingTurns({
    ...sheet,
    springRateNPerM: springRateOf(sheet),
    threadPitchM: sheet.stemThreadPitchM,
    turns,
  });
  const sign = sheet.airAction === 'air-to-open' ? 1 : -1;
  const expectedContactPa = contactBeforePa(job) + sign * turned.signalShiftPa;
  const contactPa = contactAfterPa ?? expectedContactPa;
  const perTurnPa = turns === 0 ? 0 : turned.signalShiftPa / turns;
  const gaugePa = job.readings.contactLeavesPa?.uncertaintySi ?? 0;
  return {
    turns,
    plugShiftM: turned.plugShiftM,
    signalShiftPa: turned.signalShiftPa,
    expectedContactPa,
    allowedPa: COUNTED_TO_TURNS * perTurnPa + Math.SQRT2 * gaugePa,
    seatLoadN: seatLoadN(job, contactPa),
    seatLoadNeedN: sheet.seatLoadNPerM === null ? null : sheet.seatLoadNPerM * Math.PI * sheet.portDiameterM,
    liftLeftM: liftFrom(sheet, contactPa),
  };
}

/** All turns made since the contact was found; null where none was made yet. */
function turnsMade({ answers }: Job): number | null {
  const found = answers.findLast((one) => one.step === 'contactFound' && one.act !== 'corrected');
  const made = answers
    .filter((one) => !one.superseded && one.place > (found?.place ?? 0))
    .flatMap((one) => one.readings.filter((reading) => reading.field === 'turnsMade'));
  return made.length === 0 ? null : made.reduce((turns, reading) => turns + reading.valueSi, 0);
}

/** Contact as found, or where the bench set puts it while nothing has been found. */
function contactBeforePa({ figures, sheet }: Job): number {
  const found = figures.contactFound?.contactPa;
  if (typeof found === 'number') return found;
  return sheet.airAction === 'air-to-open' ? sheet.benchSetLowPa : sheet.benchSetHighPa;
}

/** Load on the seat with the signal at the end that shuts the valve, no flow; negative where it does not shut. */
export function seatLoadN({ sheet }: Job, contactPa: number): number {
  const headPa =
    sheet.airAction === 'air-to-open' ? contactPa - sheet.signalLowPa : sheet.signalHighPa - contactPa;
  return sheet.effectiveAreaM2 * headPa;
}

function liftFrom(sheet: ValveSheet, contactPa: number): number {
  const spanPa =
    sheet.airAction === 'air-to-open' ? sheet.benchSetHighPa - contactPa : contactPa - sheet.benchSetLowPa;
  return (spanPa * sheet.effectiveAreaM2) / springRateOf(sheet);
}
