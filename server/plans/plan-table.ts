/** How plans come in by tables. */
import { PLAN_TABLE, type PlanRow } from '../../procedures/plans/plan-table.ts';
import { planText } from '../../procedures/plans/read-plan.ts';
import { changed, type RowLooked, type TableKind } from '../tables/table-kind.ts';
import { valveKind } from '../valves/valve-stream.ts';
import { againstPlan, savedPlan } from './plan-acts.ts';
import { type PlanState, planKind } from './plan-stream.ts';

export const planTable: TableKind<PlanRow> = {
  form: () => PLAN_TABLE,
  /** 5,000 plans with long notes. */
  bytesMax: 4 * 1024 * 1024,
  keptAs: 'plan-table',
  codes: { cells: 'PLN-006', other: 'PLN-007' },
  kept: 'No plan was changed',
  beside: ({ plan }) => [
    { kind: planKind, id: plan.number },
    { kind: valveKind, id: plan.tag },
  ],
  look: (standing, { plan }) => {
    const state = standing.state(planKind, plan.number);
    const valve = standing.state(valveKind, plan.tag);
    const looked = { ...changeOf(state, plan), stands: [state.revision, state.status, valve.revision] };
    // What is not saved again needs no valve that would take it.
    if (looked.change === 'unchanged' || looked.change === 'opened already') return looked;
    const faults = Object.entries(againstPlan(plan, valve)).map(([name, what]) => ({ names: [name], what }));
    return { ...looked, faults };
  },
  draft: ({ plan }) => savedPlan(plan),
};

function changeOf(state: PlanState, plan: PlanRow['plan']): Pick<RowLooked, 'change' | 'says'> {
  if (state.plan === null) return { change: 'new', says: [] };
  // A table of last month must not plan again what was begun since.
  if (state.status === 'opened') return { change: 'opened already', says: [`It is job ${state.job ?? ''}.`] };
  const [was, is] = [planText(state.plan), planText(plan)];
  const says = changed((Object.keys(is) as (keyof typeof is)[]).map((name) => [name, was[name], is[name]]));
  if (state.status === 'withdrawn') return { change: 'taken back into use', says };
  return { change: says.length === 0 ? 'unchanged' : 'changed', says };
}
