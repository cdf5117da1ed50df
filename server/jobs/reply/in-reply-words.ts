import type { Surroundings } from '../../../procedures/actions/action.ts';
import type { Job } from '../../../procedures/job.ts';
import { askOf } from '../../../procedures/reply/ask.ts';
import type { Reply } from '../../../procedures/reply/reply.ts';
import { fromSpanish, type SaidLabel } from '../../../procedures/reply/spanish/from-spanish.ts';
import type { Language } from '../../../views/language/language.ts';
import { textIn } from '../../../views/language/speak.ts';

interface Read {
  readonly language: Language;
  readonly job: Job;
  readonly around: Surroundings;
}

/** What was typed, in the words that the reply line reads; the card's own labels as its reader sees them. */
export function inReplyWords(typed: string, { language, job, around }: Read): string {
  if (language === 'en') return typed;
  const { fields } = askOf(job, around);
  const say = textIn(language);
  const texts = fields.flatMap((field) => [
    field.label,
    ...(field.type === 'choice' ? field.choices.map(({ label }) => label) : []),
  ]);
  const labels = texts.map((label): SaidLabel => ({ shown: say(label), label }));
  return fromSpanish(typed, { fields, labels: labels.filter(({ shown, label }) => shown !== label) });
}

/** A reply that quotes words which nobody typed quotes what was typed instead. */
export function quotingTyped(
  reply: Reply,
  { read, typed }: { readonly read: string; readonly typed: string },
): Reply {
  if (!('what' in reply) || read === typed) return reply;
  const own = `“${typed.trim()}”`;
  const isTyped = (met: string) => typed.toLowerCase().includes(met.toLowerCase());
  const what = reply.what.replace(/“([^”]*)”/, (quoted, met: string) => (isTyped(met) ? quoted : own));
  return { ...reply, what };
}
