import type { Compiled } from '../../../procedures/compile.ts';
import type { Job } from '../../../procedures/job.ts';
import { passedBefore, straightWay } from '../../../procedures/straight-way.ts';

export interface ScaleView {
  readonly at: number;
  readonly of: number;
  readonly ticks: readonly {
    readonly state: 'done' | 'current' | 'next';
    readonly phase?: string;
    readonly hold?: string;
  }[];
}

/** Ticks for the steps of the straight way; a step off it stands at the last tick that was passed, here or in the job before. */
export function scaleView(job: Job, { definition }: Compiled): ScaleView {
  const steps = straightWay(definition, job.facts);
  const began = job.answers[0]?.step ?? job.step;
  const before = passedBefore(definition, { step: began, facts: job.facts });
  const passed = Math.max(before, ...job.answers.map((answer) => steps.indexOf(answer.step)));
  const found = steps.indexOf(job.step);
  const at = job.status === 'closed' ? steps.length : found >= 0 ? found : passed;
  let phase = '';
  let holds = 0;
  const ticks = steps.map((id, index) => {
    const step = definition.steps[id];
    const title = definition.phases.find((one) => one.id === step?.phase)?.title ?? '';
    const first = title !== phase;
    phase = title;
    if (step?.kind === 'hold') holds += 1;
    const state: ScaleView['ticks'][number]['state'] =
      index < at ? 'done' : index === at ? 'current' : 'next';
    return {
      state,
      ...(first ? { phase: title } : {}),
      ...(step?.kind === 'hold' ? { hold: `H${holds}` } : {}),
    };
  });
  return { at: Math.min(at + 1, steps.length), of: steps.length, ticks };
}

/** Which hold of how many a hold step is. */
export function holdNumber(
  job: Job,
  definition: Compiled['definition'],
  step: string,
): { readonly hold: number; readonly of: number } {
  const steps = straightWay(definition, job.facts);
  const holds = steps.filter((id) => definition.steps[id]?.kind === 'hold');
  return { hold: holds.indexOf(step) + 1, of: holds.length };
}
