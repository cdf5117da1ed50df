import { rowFields } from '../../../procedures/actions/answer.ts';
import type { Job } from '../../../procedures/job.ts';
import type { Definition, Field } from '../../../procedures/vocabulary.ts';

type Texts = Readonly<Record<string, string>>;

/**
 * Whether what was typed belongs to the card that stands open now: the same step, and of a table the same row. What
 * was read for another card must never stand in this one's fields.
 */
export function isForOpenCard(typed: Texts, job: Job): boolean {
  if (typed.act === 'correct' || (typed.step !== undefined && typed.step !== job.step)) return false;
  const rows = job.tables[job.step] ?? [];
  return rows.every((row) => row.place <= Number(typed.place));
}

/** What was typed on a card that is open no more, by the labels that it had. */
export function typedElsewhere(
  typed: Texts,
  { job, definition }: { readonly job: Job; readonly definition: Definition },
): readonly { readonly label: string; readonly value: string }[] {
  if (isForOpenCard(typed, job)) return [];
  return fieldsOf(typed.step ?? '', { job, definition }).flatMap((field) => {
    const value = (typed[field.name] ?? '').trim();
    if (value === '') return [];
    const said = field.type === 'choice' ? field.choices.find((one) => one.value === value)?.label : value;
    return [{ label: field.label, value: said ?? value }];
  });
}

function fieldsOf(
  id: string,
  { job, definition }: { readonly job: Job; readonly definition: Definition },
): readonly Field[] {
  const step = definition.steps[id];
  if (step?.kind === 'reading') return step.asks;
  return step?.kind === 'table' ? rowFields(step, { ...job, step: id, tables: {} }) : [];
}
