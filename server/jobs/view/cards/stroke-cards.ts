import { rowFields } from '../../../../procedures/actions/answer.ts';
import { otherOutcomes } from '../../../../procedures/actions/override.ts';
import { cycleFigures, plannedPa, rowPlan } from '../../../../procedures/cycle-verdict.ts';
import { workBefore } from '../../../../procedures/hold.ts';
import { say } from '../../../../procedures/say.ts';
import type { JudgementStep, TableStep } from '../../../../procedures/vocabulary.ts';
import { mayNotSign } from '../../../../safety/sign-off.ts';
import { fieldViews } from '../fields.ts';
import { type StrokeView, strokeView } from '../stroke.ts';
import { bareCard, type CardInput, type CardView } from './card.ts';
import { judged } from './judged.ts';

export interface TableCard extends CardView {
  readonly row: {
    readonly number: number;
    readonly of: number;
    readonly signal: string;
    readonly direction: 'up' | 'down';
  };
  readonly stroke: StrokeView | null;
}

/** The row that is asked for stands as the instruction; the table and the curve grow below it. */
export function tableCard(step: TableStep<string>, input: CardInput): TableCard {
  const { job } = input;
  const plan = rowPlan(step, job, job.step) ?? { percent: 0, direction: 'up' as const, cycle: 1 };
  const signal = say({ valueSi: plannedPa(job.sheet, plan), dimension: 'pressure', units: job.sheet.units });
  const number = (job.tables[job.step] ?? []).length + 1;
  const card = bareCard(step, input);
  const fields = fieldViews(rowFields(step, job), input).map((field) =>
    field.name === 'signalPa'
      ? { ...field, optional: true, help: `gauge ${field.gauge}; blank: ${signal} was set` }
      : field,
  );
  const full = step.rows.length > 5;
  return {
    ...card,
    heading: `Set ${signal} ${plan.direction === 'up' ? 'going up' : 'coming down'}. Read the travel.`,
    how: `${card.how} Reading ${number} of ${step.rows.length}.`,
    fields,
    row: { number, of: step.rows.length, signal, direction: plan.direction },
    stroke: full
      ? strokeView(job, { step: job.step, title: card.heading === '' ? 'Stroke' : titleOf(step) })
      : null,
  };
}

function titleOf(step: TableStep<string>): string {
  return step.phase === 'asFound' ? 'Stroke, as found' : 'Stroke, as left';
}

export interface JudgementCard extends CardView {
  readonly outcome: string;
  /** What a supervisor may judge otherwise, and who may. */
  readonly overrides: readonly { readonly value: string; readonly label: string }[];
  readonly judges: readonly { readonly value: string; readonly label: string }[];
  readonly findings: readonly object[];
  readonly stroke: StrokeView | null;
}

const SAID: Readonly<Record<string, string>> = {
  inside: 'Inside the limits of the sheet, with the gauge counted in.',
  outside: 'Outside the limits of the sheet.',
  'too close': 'Too close for this gauge: a finer one may tell.',
  'does not repeat':
    'It does not repeat: nothing else can be trusted. Tight packing is the first thing to look at.',
  'as the sheet': 'It is that of the sheet, with the gauge counted in.',
  shifted: 'It has shifted.',
  'not known': 'The stroke does not tell it: no travel was passed both ways.',
  enough: 'Enough.',
  'too little': 'Too little.',
  'must not be turned': 'Too little, and this stem is never turned.',
  'not on the sheet': 'The sheet does not say what this seat wants.',
  'not enough readings': 'Too few readings to judge.',
};

export function judgementCard(step: JudgementStep<string>, input: CardInput): JudgementCard {
  const { job } = input;
  const params = step.judge.with ?? {};
  const { outcome, findings } = judged(step, input);
  const figures = cycleFigures(job, { cycle: params.cycle ?? '', strokes: params.strokes ?? '' });
  return {
    ...bareCard(step, input),
    how:
      figures === null ? `${bareCard(step, input).how} ${SAID[outcome] ?? ''}`.trim() : (SAID[outcome] ?? ''),
    outcome,
    ...whoMayOverride(step, { outcome, input }),
    findings,
    stroke:
      figures === null
        ? null
        : strokeView(job, {
            step: params.cycle ?? '',
            title: step.phase === 'asFound' ? 'Stroke, as found' : 'Stroke, as left',
          }),
    act: 'Go on',
  };
}

function whoMayOverride(
  step: JudgementStep<string>,
  { outcome, input }: { readonly outcome: string; readonly input: CardInput },
): Pick<JudgementCard, 'overrides' | 'judges'> {
  const { job, around, people } = input;
  const work = workBefore(job, around.compiled.definition);
  const judges = people.filter((person) => mayNotSign(person, work) === null);
  const others = otherOutcomes(step, outcome);
  return {
    overrides: judges.length === 0 ? [] : others.map((value) => ({ value, label: value })),
    judges: judges.map(({ id, name }) => ({ value: id, label: name })),
  };
}
