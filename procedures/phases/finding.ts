import type { Choice, QuestionStep } from '../vocabulary.ts';

/** What follows where a card was answered no: how it is put right, and where it leads while it is not. */
export function finding<const Id extends string>(
  step: Omit<QuestionStep<Id>, 'kind' | 'how'> & { readonly how: string },
): QuestionStep<Id> {
  return { kind: 'question', ...step };
}

/** The plainest finding: put right and looked at again, or stopped there. */
export function putRight<const Id extends string>(step: {
  readonly phase: string;
  readonly title: string;
  readonly how: string;
  readonly again: readonly [label: string, to: Id];
  readonly stop: readonly [label: string, to: Id];
  /** Other ways between the two. */
  readonly also?: Readonly<Record<string, Choice<Id>>>;
  readonly makeSafe: Id;
}): QuestionStep<Id> {
  const { phase, title, how, again, stop, also = {}, makeSafe } = step;
  const one = ([label, to]: readonly [string, Id]): Choice<Id> => ({ label, to });
  return finding({
    phase,
    title,
    how,
    choices: { again: one(again), ...also, stop: one(stop) },
    makeSafe,
  });
}
