import type { Surroundings } from '../../../procedures/actions/action.ts';
import type { Job } from '../../../procedures/job.ts';
import { askOf } from '../../../procedures/reply/ask.ts';
import { readReply } from '../../../procedures/reply/read-reply.ts';
import type { Reply } from '../../../procedures/reply/reply.ts';
import { afterRow } from '../../../procedures/reply/table-rows.ts';
import type { ValveSheet } from '../../../procedures/valve-sheet/sheet.ts';
import { around, type JobRun, openJob, playTo } from '../../builders/jobs.ts';
import { aSheet, aSheetOf } from '../../builders/sheets.ts';
import { REPLY_CARDS } from './cards.ts';

export interface AtCard {
  readonly job: Job;
  readonly around: Surroundings;
  read(text: string): Reply;
}

/** A job that stands at one of the cards for replies. */
export function atCard(step: string): AtCard {
  return atCardOf(step, aSheet());
}

/** The same on a valve whose sheet is in kPa and mm: 20 to 100 kPa over 20 mm. */
export function atCardInSi(step: string): AtCard {
  return atCardOf(step, aSheetOf(IN_SI));
}

const IN_SI = {
  units: 'si',
  signalLowPa: '20',
  signalHighPa: '100',
  benchSetLowPa: '20',
  benchSetHighPa: '100',
  effectiveAreaM2: '600',
  springRateNPerM: '240',
  travelM: '20',
  caseRatingPa: '350',
  supplyLowPa: '140',
  supplyHighPa: '150',
  portDiameterM: '25',
  stemDiameterM: '12',
  ratedKv: '10',
  shutOffDropPa: '600',
  seatLoadNPerM: '5',
  stemThread: 'M12x1.25',
  stemThreadEngagedMinM: '12',
  adjusterThread: 'M16x1.5',
  packingFrictionN: '220',
  benchSetTolerancePa: '2',
  processInletPa: '600',
  processOutletPa: '250',
};

function atCardOf(step: string, sheet: ValveSheet): AtCard {
  const run = openJob({ compiled: REPLY_CARDS, sheet });
  if (!Object.hasOwn(REPLY_CARDS.definition.steps, step)) throw new Error(`there is no card ${step}`);
  return reading(run, { ...run.job, step });
}

/** A stroke check that was played until this card stands open. */
export function inStrokeCheck(step: string): AtCard {
  const run = playTo(openJob(), step);
  return reading(run, run.job);
}

function reading(run: JobRun, job: Job): AtCard {
  const here = around({ ...run, job });
  return { job, around: here, read: (text) => readReply(text, { job, around: here }) };
}

/** The same table with so many rows read, each at the signal asked for and with no friction. */
export function atRow(card: AtCard, rows: number): AtCard {
  let { job } = card;
  for (let row = 0; row < rows; row += 1) {
    const ask = askOf(job, card.around);
    const after = afterRow({ travelM: `${25 * row} %` }, ask);
    if (after === null) throw new Error(`row ${row} is refused`);
    job = after.job;
  }
  return { ...card, job, read: (text) => readReply(text, { job, around: card.around }) };
}
