import type { Job } from './job.ts';
import type { Definition } from './vocabulary.ts';

/**
 * The procedures that answers of a job named as the next ones, by id: each once, in the order of the answers that stand.
 * Where a fault was looked for, the one that makes the repair named last, unless it went on as that already.
 *
 * @param job         the job, open or closed
 * @param definition  what it was opened on: only that says what its answers meant
 */
export function comesNext(
  { answers, closedAs }: Pick<Job, 'answers'> & { readonly closedAs?: Job['closedAs'] },
  { steps }: Pick<Definition, 'steps'>,
): readonly string[] {
  const repair = answers.findLast((answer) => !answer.superseded && namesRepair(steps[answer.step]));
  const named = answers.flatMap((answer) => {
    const { step: id, outcome, superseded } = answer;
    const step = steps[id];
    if (answer === repair)
      return typeof answer.figures.procedure === 'string' && closedAs !== 'handed over'
        ? [answer.figures.procedure]
        : [];
    const choice = superseded || step?.kind !== 'question' ? undefined : step.choices[outcome];
    return choice?.comesNext === undefined ? [] : [choice.comesNext];
  });
  return [...new Set(named)];
}

const NAMING: readonly string[] = ['causeNamed', 'causeNamedOnBypass', 'causeNamedIsolated'];

/** The card of finding a fault on which the repair is named; its line holds the procedure that makes it. */
function namesRepair(step: Definition['steps'][string] | undefined): boolean {
  return step?.kind === 'reading' && NAMING.includes(step.judge.rule);
}
