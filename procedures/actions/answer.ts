import { Refusal } from '../../safety/refusal.ts';
import { fromSi, preferredUnit } from '../calculations/units.ts';
import { plannedPa, rowPlan } from '../cycle-verdict.ts';
import type { JobDraft } from '../evolve.ts';
import type { Figures, Job, Late } from '../job.ts';
import { readLate } from '../late.ts';
import { asksOf } from '../readings/asks-of.ts';
import { type Given, type Understood, understand } from '../readings/given.ts';
import { RULES } from '../rules/registry.ts';
import type { Field, OpenStep, TableStep, WaitStep } from '../vocabulary.ts';
import type { ActionOf, Surroundings } from './action.ts';
import { checkMayAct, checkMayEnter, move, openStepOf } from './move.ts';
import { noWay } from './refusals.ts';
import { checkMayClose } from './signer.ts';

/** Answers the open card: what was given is read, judged once, and the outcome takes the machine on. */
export function answer(job: Job, action: ActionOf<'answer'>, around: Surroundings): JobDraft {
  const step = openStepOf(job, around);
  checkMayAct(job, around);
  const late = action.late === undefined ? null : readLate(action.late, around);
  const { understood, outcome, figures, row } = judge(job, { step, given: action.given, around, late });
  const effects = move(job, {
    event: { type: 'ANSWER', outcome },
    words: { ...job.words, ...understood.words },
    around,
  });
  checkMayEnter(job, { effects, around });
  checkMayClose(job, effects);
  return {
    kind: step.kind === 'table' ? 'row-read' : 'step-answered',
    inputs: {
      step: job.step,
      readings: Object.values(understood.readings),
      words: understood.words,
      ...(understood.csv === undefined ? {} : { csv: understood.csv }),
      row,
      ...(late === null ? {} : { late }),
      ...(action.together === undefined ? {} : { together: action.together }),
    },
    outcome: { name: outcome, figures },
    effects: { ...effects, ...restarts(job, { step, to: effects.to, around }) },
  };
}

export interface JudgedAnswer {
  readonly understood: Understood;
  readonly outcome: string;
  readonly figures: Figures;
  readonly row: number | null;
}

/** What an answer would mean, without writing anything: used by the answer and by a correction alike. */
export function judge(
  job: Job,
  {
    step,
    given,
    around,
    late = null,
  }: {
    readonly step: OpenStep;
    readonly given: Given;
    readonly around: Surroundings;
    readonly late?: Late | null;
  },
): JudgedAnswer {
  const bare = { understood: { readings: {}, words: {}, aboveLimitPa: null }, figures: {}, row: null };
  switch (step.kind) {
    case 'instruction':
      return { ...bare, outcome: 'done' };
    case 'question':
      return { ...bare, ...choose(step.choices, given) };
    case 'wait':
      return { ...bare, outcome: waited(job, { step, around, late }) };
    case 'judgement':
      return {
        ...bare,
        ...RULES[step.judge.rule].judge({
          job,
          readings: {},
          words: job.words,
          step: job.step,
          params: step.judge.with ?? {},
        }),
      };
    case 'hold':
      throw noWay(
        'A hold is signed or sent back, not answered.',
        'Ask somebody who did none of this work to sign.',
      );
    default: {
      const table = step.kind === 'table';
      const fields = table ? rowFields(step, job) : step.asks;
      const understood = understand(fields, {
        given: table ? withSignal(job, { step, given }) : given,
        job,
        today: around.today,
      });
      const row = table ? (job.tables[job.step] ?? []).length : null;
      if (understood.aboveLimitPa !== null)
        return {
          understood,
          outcome: 'above limit',
          figures: { highestPa: understood.aboveLimitPa },
          row: null,
        };
      // Only now: too much air is never kept waiting for a number that was left out.
      if (!table) understand(asksOf(step, given), { given, job, today: around.today });
      if (table) checkSetting(job, { step, understood });
      const params = { ...(step.judge.with ?? {}), ...(table ? { rows: String(step.rows.length) } : {}) };
      const { outcome, figures } = RULES[step.judge.rule].judge({
        job,
        readings: understood.readings,
        words: understood.words,
        ...(understood.csv === undefined ? {} : { csv: understood.csv }),
        step: job.step,
        params,
      });
      return { understood, outcome, figures, row };
    }
  }
}

/** What a row of a table asks: the signal as set, and the travel that it gives. */
export function rowFields(step: TableStep<string>, job: Job): readonly Field[] {
  if (rowPlan(step, job, job.step) === undefined)
    throw noWay('Every row of this table has been read.', 'Go on to the next card.');
  return [
    {
      name: 'signalPa',
      label: 'Signal',
      type: 'quantity',
      dimension: 'pressure',
      gauge: 'signalGauge',
      onCase: true,
    },
    { name: 'travelM', label: 'Travel', type: 'quantity', dimension: 'travel', gauge: 'travelIndicator' },
  ];
}

/** How far from the asked setting a reading may be taken: a tenth of the span. */
const SETTING_SHARE = 0.1;

function checkSetting(
  job: Job,
  { step, understood }: { readonly step: TableStep<string>; readonly understood: Understood },
): void {
  const plan = rowPlan(step, job, job.step);
  const signal = understood.readings.signalPa;
  if (plan === undefined || signal === undefined) return;
  const wantedPa = plannedPa(job.sheet, plan);
  const spanPa = job.sheet.benchSetHighPa - job.sheet.benchSetLowPa;
  if (Math.abs(signal.valueSi - wantedPa) <= SETTING_SHARE * spanPa) return;
  const next = 'Set the signal that the card names, or write the one on the gauge if it is near.';
  const what = `${signal.typed} is not the setting of this row.`;
  throw new Refusal({
    kind: 'unreadable',
    code: 'REA-011',
    what,
    kept: 'What you typed is still there.',
    next,
    fields: { signalPa: `${what} ${next}` },
  });
}

/** A row whose signal is left blank was read at the signal asked for, said in the unit of the gauge. */
function withSignal(
  job: Job,
  { step, given }: { readonly step: TableStep<string>; readonly given: Given },
): Given {
  const plan = rowPlan(step, job, job.step);
  if (plan === undefined || (given.signalPa ?? '').trim() !== '') return given;
  const unit = preferredUnit('pressure', job.sheet.units);
  const asked = fromSi({ valueSi: plannedPa(job.sheet, plan), unit });
  return { ...given, signalPa: `${Number(asked.toFixed(3))} ${unit}` };
}

function choose(
  choices: Readonly<Record<string, { readonly label: string; readonly reason?: true }>>,
  given: Given,
): Pick<JudgedAnswer, 'outcome' | 'understood' | 'figures' | 'row'> {
  const said = given.choice ?? '';
  const chosen = choices[said];
  const fail = (code: string, field: string, what: string, next: string) =>
    new Refusal({
      kind: 'unreadable',
      code,
      what,
      kept: 'Nothing was counted.',
      next,
      fields: { [field]: `${what} ${next}` },
    });
  if (chosen === undefined) {
    throw fail(
      'REA-012',
      'choice',
      said === '' ? 'Nothing is chosen.' : `"${said}" is not an answer here.`,
      `Choose: ${Object.values(choices)
        .map((one) => one.label)
        .join('; ')}.`,
    );
  }
  const reason = (given.reason ?? '').trim();
  if (chosen.reason && reason === '')
    throw fail('REA-013', 'reason', 'This answer departs from the sheet and wants its reason.', 'Write why.');
  const words: Record<string, string> = reason === '' ? {} : { reason };
  return { outcome: said, understood: { readings: {}, words, aboveLimitPa: null }, figures: {}, row: null };
}

/** Seconds that are left of a wait; it may have begun at an earlier card, and the work since then has filled it. */
export function waitLeftS(
  job: Job,
  { waitS, since }: Pick<WaitStep<string>, 'waitS' | 'since'>,
  { nowMs }: Pick<Surroundings, 'nowMs'>,
): number {
  const before = job.answers.findLast((one) => one.step === since && !one.superseded);
  const began = Date.parse(since === undefined ? job.arrivedAt : (before?.at ?? job.arrivedAt));
  return leftS(waitS, nowMs - began);
}

function leftS(waitS: number, passedMs: number): number {
  return Math.max(0, Math.ceil(waitS - passedMs / 1000));
}

/** A wait that was kept with a paper form: between what its writer says of its beginning and of its end. */
function waitLeftOnPaperS(job: Job, { waitS, since }: WaitStep<string>, late: Late): number {
  const standing = job.answers.filter((one) => !one.superseded);
  const before = since === undefined ? standing.at(-1) : standing.findLast((one) => one.step === since);
  const began = Date.parse(before?.late?.claimedAt ?? before?.at ?? job.arrivedAt);
  return leftS(waitS, Date.parse(late.claimedAt) - began);
}

function waited(
  job: Job,
  {
    step,
    around,
    late,
  }: { readonly step: WaitStep<string>; readonly around: Surroundings; readonly late: Late | null },
): string {
  const left = late === null ? waitLeftS(job, step, around) : waitLeftOnPaperS(job, step, late);
  const toWait =
    left === 1 ? 'The wait is not over: 1 s is left.' : `The wait is not over: ${left} s are left.`;
  if (left > 0) throw noWay(toWait, 'Wait, then go on.');
  return 'waited';
}

/** Coming to a table afresh begins it afresh; its earlier rows stay in the log. */
export function restarts(
  job: Job,
  { step, to, around }: { readonly step: OpenStep; readonly to: string; readonly around: Surroundings },
): { readonly clearsTable?: string } {
  const target = around.compiled.definition.steps[to];
  return target?.kind === 'table' && to !== job.step && step !== target ? { clearsTable: to } : {};
}
