/** What a judgement rests on, for its own card and for the question that follows it. */
import { cycleFigures } from '../../../../procedures/cycle-verdict.ts';
import { RULES } from '../../../../procedures/rules/registry.ts';
import { say } from '../../../../procedures/say.ts';
import type { Definition, JudgementStep } from '../../../../procedures/vocabulary.ts';
import { findings, springFinding } from '../stroke.ts';
import type { CardInput } from './card.ts';

/** The outcome of a judgement, and its figures as cells with what they are held against. */
export function judged(
  step: JudgementStep<string>,
  { job, around }: Pick<CardInput, 'job' | 'around'>,
): { readonly outcome: string; readonly findings: readonly object[] } {
  const params = step.judge.with ?? {};
  const { outcome, figures } = RULES[step.judge.rule].judge({
    job,
    readings: {},
    words: job.words,
    step: job.step,
    params,
  });
  const cycle = cycleFigures(job, cycleOf(step, around.compiled.definition));
  if (params.verdict !== undefined)
    return { outcome, findings: cycle === null ? [] : [springFinding(job, cycle)] };
  if (cycle !== null) return { outcome, findings: findings(job, cycle) };
  const { seatLoadN, seatLoadNeedN } = figures;
  const force = (valueSi: number) => say({ valueSi, dimension: 'force', units: job.sheet.units });
  return {
    outcome,
    findings:
      typeof seatLoadN === 'number' && typeof seatLoadNeedN === 'number'
        ? [{ label: 'load on the seat', value: force(seatLoadN), text: `wanted: ${force(seatLoadNeedN)}` }]
        : [],
  };
}

/** The table that is judged: its own, or that of the verdict on which it rests. */
function cycleOf(
  { judge }: JudgementStep<string>,
  { steps }: Definition,
): { readonly cycle: string; readonly strokes: string } {
  const verdict = steps[judge.with?.verdict ?? ''];
  const { cycle = '', strokes = '' } =
    (verdict?.kind === 'judgement' ? verdict.judge.with : judge.with) ?? {};
  return { cycle, strokes };
}
