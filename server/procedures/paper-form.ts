import { type Compiled, proofUnder } from '../../procedures/compile.ts';
import { NO_JOB } from '../../procedures/evolve.ts';
import { type Facts, factsOf } from '../../procedures/facts.ts';
import { forValve } from '../../procedures/for-valve.ts';
import type { Job } from '../../procedures/job.ts';
import { numbered } from '../../procedures/sheet-print.ts';
import { straightWay } from '../../procedures/straight-way.ts';
import { asFitted } from '../../procedures/troubleshooting/as-fitted.ts';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import { type PaperStep, paperStep } from './paper-step.ts';

export interface PaperForm {
  readonly title: string;
  readonly revision: string;
  readonly tag: string;
  readonly phases: readonly { readonly title: string; readonly steps: readonly PaperStep[] }[];
}

interface Asked {
  readonly sheet: ValveSheet;
  readonly place: Facts['place'];
}

/** A procedure for one valve as a form to fill by hand, with the valve's own numbers printed in. Nothing is recorded by it. */
export function paperForm(compiled: Compiled, { sheet, place }: Asked): PaperForm {
  const facts = factsOf(sheet, place);
  const definition = asFitted(forValve(compiled.definition, facts), sheet);
  const job: Job = { ...NO_JOB, tag: sheet.tag, sheet, facts, procedure: definition.id };
  // Numbers are those of the printed sheet, which has every step of every valve.
  const numbers = numbered(compiled.definition);
  const reach = proofUnder(compiled, facts)?.reach;
  const of = { job, numbers, straight: straightWay(definition, facts) };
  return {
    title: definition.title,
    revision: definition.revisions.at(-1)?.letter ?? '',
    tag: sheet.tag,
    phases: definition.phases.flatMap(({ id, title }) => {
      const steps = [...numbers.keys()].flatMap((step): PaperStep[] => {
        const card = definition.steps[step];
        if (card === undefined || card.kind === 'end' || card.phase !== id || reach?.has(step) !== true)
          return [];
        return [paperStep(card, { ...of, id: step })];
      });
      return steps.length === 0 ? [] : [{ title, steps }];
    }),
  };
}
