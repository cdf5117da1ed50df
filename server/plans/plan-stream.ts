import type { Json } from '../../procedures/json.ts';
import type { Plan } from '../../procedures/plans/plan.ts';
import type { StreamKind } from '../log/stream-kind.ts';

/** A plan as it stands: still to do, opened as a job, or withdrawn. */
export interface PlanState {
  readonly plan: Plan | null;
  readonly revision: number;
  readonly status: 'none' | 'planned' | 'opened' | 'withdrawn';
  /** The job that it was opened as. */
  readonly job: string | null;
  /** Why it was withdrawn. */
  readonly why: string;
}

export type SavedPlan = PlanState & { readonly plan: Plan };

/** What is still to do stands first, the earliest date before all. */
const ORDER: Readonly<Record<PlanState['status'], string>> = {
  planned: '1',
  opened: '2',
  withdrawn: '3',
  none: '4',
};

export const planKind: StreamKind<PlanState> = {
  kind: 'plan',
  initial: { plan: null, revision: 0, status: 'none', job: null, why: '' },
  evolve: (state, entry) => {
    if (entry.kind === 'plan-saved') {
      const { plan } = entry.inputs as unknown as { readonly plan: Plan };
      return { plan, revision: state.revision + 1, status: 'planned', job: null, why: '' };
    }
    if (entry.kind === 'plan-opened') {
      const { job } = entry.inputs as unknown as { readonly job: string };
      return { ...state, status: 'opened', job };
    }
    if (entry.kind !== 'plan-withdrawn') return state;
    const { why } = entry.inputs as unknown as { readonly why: string };
    return { ...state, status: 'withdrawn', why };
  },
  summarise: (state) =>
    state.plan === null
      ? null
      : { sort: `${ORDER[state.status]} ${state.plan.dueOn}`, body: { ...state } as unknown as Json },
};
