import { seatingTurnsForNeed } from './calculations/seating-fit.ts';
import type { Job } from './job.ts';
import { seatLoadN } from './seating.ts';
import { springRateOf } from './valve-sheet/derived.ts';

export interface MoreTurns {
  readonly hasN: number;
  readonly neededN: number;
  readonly turns: number;
}

/**
 * Load that the seat has by the contact found, and the turns that bring it to what the sheet wants.
 * @returns null while no contact was found, or where the sheet names no load
 */
export function moreSeatTurns(job: Job): MoreTurns | null {
  const { sheet } = job;
  const contactPa = job.figures.seatContact?.contactPa;
  if (typeof contactPa !== 'number' || sheet.seatLoadNPerM === null) return null;
  const hasN = seatLoadN(job, contactPa);
  const need = seatingTurnsForNeed({
    portDiameterM: sheet.portDiameterM,
    seatLoadBeforeN: hasN,
    seatLoadNeedNPerM: sheet.seatLoadNPerM,
    springRateNPerM: springRateOf(sheet),
    threadPitchM: sheet.stemThreadPitchM,
  });
  return { hasN, neededN: need.neededN, turns: need.turnsToQuarter };
}
