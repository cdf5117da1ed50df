import type { Surroundings } from '../actions/action.ts';
import { rowFields } from '../actions/answer.ts';
import { actionOf, lacksOf, situationNow } from '../actions/move.ts';
import { proveAgainFields, toProveAgain } from '../actions/prove-again.ts';
import { plannedPa, rowPlan } from '../cycle-verdict.ts';
import type { Job } from '../job.ts';
import { asked } from '../readings/given.ts';
import { fill } from '../say.ts';
import type { ChoiceField, Field, OpenStep, TableStep, TextField } from '../vocabulary.ts';

/** What a reply is read for: the open card, and what it wants now. */
export interface Ask {
  readonly job: Job;
  readonly around: Surroundings;
  readonly step: OpenStep | null;
  readonly kind: 'fields' | 'question' | 'done' | 'hold' | 'prove-again' | 'blocked' | 'none';
  readonly fields: readonly Field[];
}

/** The open card of a job as the reply line sees it; pure. */
export function askOf(job: Job, around: Surroundings): Ask {
  const found = around.compiled.definition.steps[job.step];
  const step = found === undefined || found.kind === 'end' || job.status !== 'open' ? null : found;
  const bare = { job, around, step };
  if (step === null) return { ...bare, kind: 'none', fields: [] };
  if (step.kind === 'hold') return { ...bare, kind: 'hold', fields: [] };
  const lacking = lacksOf(actionOf(step), { job, situation: situationNow(job, around.nowMs), around });
  if (toProveAgain(job, around).length > 0)
    return { ...bare, kind: 'prove-again', fields: shown(proveAgainFields(job, around), job) };
  if (lacking.length > 0) return { ...bare, kind: 'blocked', fields: [] };
  return { ...bare, ...wanted(step, job) };
}

function wanted(step: OpenStep, job: Job): Pick<Ask, 'kind' | 'fields'> {
  switch (step.kind) {
    case 'reading':
      return { kind: 'fields', fields: shown(step.asks, job) };
    case 'table':
      return {
        kind: 'fields',
        fields: rowPlan(step, job, job.step) === undefined ? [] : tableFields(step, job),
      };
    case 'question':
      return { kind: 'question', fields: questionFields(step, job) };
    default:
      return { kind: 'done', fields: [] };
  }
}

function shown(fields: readonly Field[], job: Job): readonly Field[] {
  return fields
    .filter((field) => asked(field, job))
    .map((field) => ({ ...field, label: fill(field.label, job) }));
}

/** A row whose signal is left blank was read at the signal asked for. */
function tableFields(step: TableStep<string>, job: Job): readonly Field[] {
  return rowFields(step, job).map((field) =>
    field.name === 'signalPa' ? { ...field, optional: true as const } : field,
  );
}

function questionFields(step: Extract<OpenStep, { kind: 'question' }>, job: Job): readonly Field[] {
  const choices = Object.entries(step.choices).map(([value, { label }]) => ({
    value,
    label: fill(label, job),
  }));
  const answer: ChoiceField = { name: 'choice', label: 'Answer', type: 'choice', choices };
  const reason: TextField = { name: 'reason', label: 'Reason', type: 'text', optional: true };
  return Object.values(step.choices).some((choice) => choice.reason) ? [answer, reason] : [answer];
}

/** How far from the asked setting a bare number may be and still be taken for the signal: a tenth of the span. */
const SETTING_SHARE = 0.1;

/** Whether a pressure can be the setting of the row that is asked; always where no table is open. */
export function isNearSetting({ step, job }: Ask, valuePa: number): boolean {
  if (step?.kind !== 'table') return true;
  const plan = rowPlan(step, job, job.step);
  if (plan === undefined) return false;
  const spanPa = job.sheet.benchSetHighPa - job.sheet.benchSetLowPa;
  return Math.abs(valuePa - plannedPa(job.sheet, plan)) <= SETTING_SHARE * spanPa;
}

/** A field stands in the card without being said: it may stay blank, or is known from before. */
export function mayStayBlank(field: Field, { job }: Ask): boolean {
  if (field.optional) return true;
  return (
    field.carried === true && (job.readings[field.name] !== undefined || job.words[field.name] !== undefined)
  );
}
