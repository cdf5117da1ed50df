import type { Job } from './job.ts';
import type { Definition } from './vocabulary.ts';

/**
 * The procedures that answers of a job named as the next ones, by id: each once, in the order of the answers that stand.
 *
 * @param job         the job, open or closed
 * @param definition  what it was opened on: only that says what its answers meant
 */
export function comesNext(
  { answers }: Pick<Job, 'answers'>,
  { steps }: Pick<Definition, 'steps'>,
): readonly string[] {
  const named = answers.flatMap(({ step: id, outcome, superseded }) => {
    const step = steps[id];
    const choice = superseded || step?.kind !== 'question' ? undefined : step.choices[outcome];
    return choice?.comesNext === undefined ? [] : [choice.comesNext];
  });
  return [...new Set(named)];
}
