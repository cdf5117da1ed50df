import type { Surroundings } from '../../../procedures/actions/action.ts';
import type { Job } from '../../../procedures/job.ts';
import { runFrom } from '../../../procedures/reply/together.ts';
import { fill } from '../../../procedures/say.ts';

/** Steps that may be entered together with the open card, with what each has to be done. */
export interface GroupView {
  readonly steps: readonly {
    readonly id: string;
    readonly heading: string;
    readonly do: readonly string[];
  }[];
}

/** Null where the open card is answered by itself. */
export function groupView(job: Job, around: Surroundings): GroupView | null {
  const run = runFrom(job, around);
  if (run.length === 0) return null;
  const { steps } = around.compiled.definition;
  return {
    steps: run.map((id) => {
      const step = steps[id];
      const lines = step !== undefined && 'do' in step ? (step.do ?? []) : [];
      return {
        id,
        heading: step === undefined ? id : fill(step.title, job),
        do: lines.map((line) => fill(line, job)),
      };
    }),
  };
}
