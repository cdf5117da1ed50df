import type { Surroundings } from '../../../procedures/actions/action.ts';
import type { Job } from '../../../procedures/job.ts';
import { runFrom } from '../../../procedures/reply/together.ts';
import { fill } from '../../../procedures/say.ts';
import type { InstructionStep, ReadingStep } from '../../../procedures/vocabulary.ts';
import { type FieldView, fieldViews, type Typed } from '../view/fields.ts';
import { cardField } from './refusals.ts';

/** Cards that may be entered together with the open card, with what each has to be done and what it asks. */
export interface GroupView {
  readonly steps: readonly GroupCard[];
  /** Why they are written later than they were done. */
  readonly lateReason: {
    readonly value: string;
    readonly error: string;
    /** A refusal leads to the field by its name: that of these cards once they were refused, else that of the open card. */
    readonly id: string;
    readonly ownId: string;
  };
  /** Something was typed here and refused. */
  readonly isAgain: boolean;
}

export interface GroupCard {
  readonly id: string;
  readonly heading: string;
  readonly how: string;
  readonly do: readonly string[];
  /** A card that asks nothing has a tick in their place. */
  readonly fields: readonly FieldView[];
  readonly tick: string;
  readonly isTicked: boolean;
  readonly at: { readonly name: string; readonly value: string; readonly error: string };
}

/** Null where the open card is answered by itself. */
export function groupView(
  job: Job,
  { around, again }: { readonly around: Surroundings; readonly again: Typed },
): GroupView | null {
  const run = runFrom(job, around);
  if (run.length === 0) return null;
  const { steps } = around.compiled.definition;
  const { typed, wrong } = again;
  const isAgain = Object.keys(typed).length > 0;
  return {
    steps: run.flatMap((id) => {
      const step = steps[id];
      return step?.kind === 'instruction' || step?.kind === 'reading'
        ? [groupCard(id, { step, job, again })]
        : [];
    }),
    lateReason: {
      value: typed.lateReason ?? '',
      error: wrong.lateReason ?? '',
      ...(isAgain ? { id: 'lateReason', ownId: 'own-why' } : { id: 'together-why', ownId: 'lateReason' }),
    },
    isAgain,
  };
}

function groupCard(
  id: string,
  {
    step,
    job,
    again,
  }: {
    readonly step: InstructionStep<string> | ReadingStep<string>;
    readonly job: Job;
    readonly again: Typed;
  },
): GroupCard {
  const { typed, wrong } = ofCard(id, again);
  const { title, do: lines = [], how = '' } = step;
  const fields = step.kind === 'reading' ? fieldViews(step.asks, { job, again: { typed, wrong } }) : [];
  return {
    id,
    heading: fill(title, job),
    how: fill(how, job),
    do: lines.map((line) => fill(line, job)),
    fields: fields.map((field) => ({ ...field, name: cardField(id, field.name) })),
    tick: cardField(id, 'done'),
    isTicked: typed.done !== undefined,
    at: { name: cardField(id, 'readAt'), value: typed.readAt ?? '', error: wrong.readAt ?? '' },
  };
}

/** What was typed for one card of several, by the names that its own card has. */
function ofCard(id: string, { typed, wrong }: Typed): Typed {
  const own = (all: Readonly<Record<string, string>>) =>
    Object.fromEntries(
      Object.entries(all).flatMap(([name, text]) =>
        name.startsWith(cardField(id, '')) ? [[name.slice(cardField(id, '').length), text]] : [],
      ),
    );
  return { typed: own(typed), wrong: own(wrong) };
}
