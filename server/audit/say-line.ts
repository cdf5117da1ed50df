/** A line of a job in the words of its procedure: the card, what was given in each of its fields, what came of it. */
import type { JobInputs } from '../../procedures/evolve.ts';
import type { Job, Reading } from '../../procedures/job.ts';
import { fill } from '../../procedures/say.ts';
import type { Definition, Field } from '../../procedures/vocabulary.ts';
import { asRead } from '../jobs/view/words.ts';

/** What a line is read by. Without the definition, fields and cards stand under the names that the log has for them. */
export interface LineWords {
  readonly definition: Definition | null;
  readonly job: Job;
}

/** Fields that no card lists by themselves. */
const LABELS: Readonly<Record<string, string>> = {
  method: 'shown by',
  signalPa: 'signal',
  travelM: 'travel',
};

/** @example sayStep('ventSupply', of) // 'Vent the supply' */
export function sayStep(step: string, { definition, job }: LineWords): string {
  const found = definition?.steps[step];
  return found === undefined ? step : fill(found.title, job);
}

/**
 * What was given on a card, each number with its gauge.
 * @param only fields that are wanted; without it, all
 * @example sayGiven({ step: 'ventSupply', readings: [zero] }, of) // 'Supply, after: 0 psi on G-03'
 */
export function sayGiven(
  { step, readings = [], words = {} }: Pick<JobInputs, 'step' | 'readings' | 'words'>,
  of: LineWords,
  only: (field: string) => boolean = () => true,
): string {
  const asked = new Map(fieldsOf(step, of).map((field) => [field.name, field]));
  const said = (name: string, text: string): string => {
    const label = asked.get(name)?.label ?? LABELS[name] ?? '';
    return label === '' ? text : `${fill(label, of.job)}: ${text}`;
  };
  const numbers = readings.filter(({ field }) => only(field)).map((one) => said(one.field, sayReading(one)));
  const told = Object.entries(words)
    .filter(([name]) => only(name))
    .map(([name, word]) => said(name, chosen(word, asked.get(name))));
  return [...numbers, ...told].join('; ');
}

/** @example sayReading(zero) // '0 psi on G-03' */
export function sayReading(reading: Reading): string {
  const { gauge, readBy } = reading;
  return `${asRead(reading)}${gauge === null ? '' : ` on ${gauge}`}${readBy === null ? '' : `, read by ${readBy}`}`;
}

/** What came of an answer, as its card says it. */
export function sayOutcome(
  step: string,
  { name, of }: { readonly name: string; readonly of: LineWords },
): string {
  const found = of.definition?.steps[step];
  if (found?.kind === 'question') return fill(found.choices[name]?.label ?? name, of.job);
  return name === 'more rows' ? 'read' : name;
}

function fieldsOf(step: string, { definition }: LineWords): readonly Field[] {
  const found = definition?.steps[step];
  return found?.kind === 'reading' ? found.asks : [];
}

function chosen(word: string, field: Field | undefined): string {
  if (field?.type !== 'choice') return word;
  return field.choices.find(({ value }) => value === word)?.label ?? word;
}
