import { Refusal } from '../../safety/refusal.ts';
import { judge } from '../actions/answer.ts';
import { type Given, understand } from '../readings/given.ts';
import { type Ask, mayStayBlank } from './ask.ts';
import type { Fault } from './values.ts';

export type Judged =
  | { readonly kind: 'whole'; readonly aboveLimit: boolean }
  | { readonly kind: 'partial'; readonly missing: readonly string[] }
  | { readonly kind: 'refused'; readonly fault: Fault };

/** What the open card would say to an answer, from the very code that answers it; nothing is written. */
export function judged(given: Given, ask: Ask): Judged {
  const missing = ask.fields
    .filter((field) => (given[field.name] ?? '') === '' && !mayStayBlank(field, ask))
    .map((field) => field.label);
  const wantsReason = reasonMissing(given, ask);
  if (missing.length > 0 || wantsReason)
    return { kind: 'partial', missing: wantsReason ? [...missing, 'Reason'] : missing };
  try {
    return { kind: 'whole', aboveLimit: isAboveLimit(given, ask) };
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const { code, what, next } = error.text;
    return { kind: 'refused', fault: { code, what, next } };
  }
}

/** @throws Refusal where the card would refuse it */
function isAboveLimit(given: Given, { kind, fields, step, job, around }: Ask): boolean {
  if (kind === 'prove-again' || step === null)
    return understand(fields, { given, job, today: around.today }).aboveLimitPa !== null;
  return judge(job, { step, given, around }).understood.aboveLimitPa !== null;
}

function reasonMissing(given: Given, { step }: Ask): boolean {
  if (step?.kind !== 'question') return false;
  return step.choices[given.choice ?? '']?.reason === true && (given.reason ?? '').trim() === '';
}
