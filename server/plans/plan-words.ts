import type { Plan } from '../../procedures/plans/plan.ts';
import { PLAN_FIELDS } from '../../procedures/plans/plan.ts';
import { planText } from '../../procedures/plans/read-plan.ts';
import type { LogEntry } from '../store/store.ts';
import { changed } from '../tables/table-kind.ts';
import type { PlanState } from './plan-stream.ts';

/** @example standsWords(opened) // 'opened as job 12' */
export function standsWords({ status, job, why }: PlanState): string {
  if (status === 'opened') return `opened as job ${job ?? ''}`;
  return status === 'withdrawn' ? `withdrawn: ${why}` : 'to do';
}

export interface HistoryLine {
  readonly at: string;
  readonly person: string | null;
  readonly what: string;
}

/** What each line changed, the latest first. */
export function historyOf(entries: readonly LogEntry[]): readonly HistoryLine[] {
  let before: Plan | null = null;
  const lines = entries.map(({ at, person, kind, inputs }): HistoryLine => {
    if (kind !== 'plan-saved') return { at, person, what: otherWords(kind, inputs) };
    const { plan } = inputs as unknown as { readonly plan: Plan };
    const what = before === null ? 'Planned' : changes(before, plan);
    before = plan;
    return { at, person, what };
  });
  return lines.toReversed();
}

function otherWords(kind: string, inputs: LogEntry['inputs']): string {
  const { why = '', job = '' } = (inputs ?? {}) as { readonly why?: string; readonly job?: string };
  return kind === 'plan-opened' ? `Opened as job ${job}` : `Withdrawn: ${why}`;
}

function changes(before: Plan, after: Plan): string {
  const [was, is] = [planText(before), planText(after)];
  const said = changed(PLAN_FIELDS.map(({ name, label }) => [label, was[name], is[name]]));
  return said.length === 0 ? 'Planned again' : said.join(' ');
}
