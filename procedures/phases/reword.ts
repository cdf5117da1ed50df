import type { Field, OpenStep, OtherWords, Step } from '../vocabulary.ts';

export type Words = OtherWords;

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

/**
 * The same steps, each with what it says where the actuator is a cylinder: for a procedure that serves diaphragm and
 * cylinder alike.
 * @throws TypeError as `reworded` does
 */
export function alsoOnCylinder<Steps extends Readonly<Record<string, Step<string>>>>(
  steps: Steps,
  words: { readonly [Id in keyof Steps]?: Words },
): Steps {
  reworded(steps, words);
  const said = Object.entries(words).map(([id, onCylinder]) => [id, { ...steps[id], onCylinder }]);
  return { ...steps, ...Object.fromEntries(said) };
}

/** One card in other words. @throws TypeError where words are given for a field or a choice that there is not */
export function withWords(
  step: OpenStep,
  { id, other }: { readonly id: string; readonly other: Words },
): OpenStep {
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
