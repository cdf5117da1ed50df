import type { FigureName } from '../quantities.ts';
import type { Field, OpenStep, Step } from '../vocabulary.ts';

/** Other words for a card of a shared phase; what it does, asks and records stays as it is. */
export interface Words {
  readonly title?: string;
  readonly how?: string;
  readonly why?: string;
  readonly do?: readonly string[];
  readonly shows?: readonly FigureName[];
  readonly criterion?: string;
  /** By field. */
  readonly labels?: Readonly<Record<string, string>>;
  /** By choice of a question. */
  readonly choices?: Readonly<Record<string, string>>;
  readonly caution?: { readonly hazard: string; readonly consequence: string; readonly avoid: string };
}

/**
 * The same steps in the words of another actuator.
 * @throws TypeError where words are given for a step, a field or a choice that there is not
 */
export function reworded<Steps extends Readonly<Record<string, Step<string>>>>(
  steps: Steps,
  words: { readonly [Id in keyof Steps]?: Words },
): Steps {
  const changed = Object.entries(words as Readonly<Record<string, Words>>).map(([id, other]) => {
    const step = steps[id];
    if (step === undefined || step.kind === 'end') throw new TypeError(`there is no card ${id}`);
    return [id, withWords(step, { id, other })] as const;
  });
  return { ...steps, ...Object.fromEntries(changed) };
}

function withWords(step: OpenStep, { id, other }: { readonly id: string; readonly other: Words }): OpenStep {
  const { labels = {}, choices = {}, caution, ...plain } = other;
  const same = { ...step, ...plain } as OpenStep;
  const warned =
    caution === undefined || step.caution === undefined
      ? same
      : ({ ...same, caution: { ...step.caution, ...caution } } as OpenStep);
  if (warned.kind === 'reading') return { ...warned, asks: relabelled(warned.asks, { id, labels }) };
  if (warned.kind !== 'question') return warned;
  for (const name of Object.keys(choices))
    if (warned.choices[name] === undefined) throw new TypeError(`${id} has no choice ${name}`);
  const named = Object.entries(warned.choices).map(([name, choice]) => [
    name,
    { ...choice, label: choices[name] ?? choice.label },
  ]);
  return { ...warned, choices: Object.fromEntries(named) };
}

function relabelled(
  asks: readonly Field[],
  { id, labels }: { readonly id: string; readonly labels: Readonly<Record<string, string>> },
): readonly Field[] {
  for (const name of Object.keys(labels))
    if (!asks.some((field) => field.name === name)) throw new TypeError(`${id} does not ask ${name}`);
  return asks.map((field) => ({ ...field, label: labels[field.name] ?? field.label }));
}
