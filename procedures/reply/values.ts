import { Refusal } from '../../safety/refusal.ts';
import { understand } from '../readings/given.ts';
import type { Field } from '../vocabulary.ts';
import { type Ask, isNearSetting } from './ask.ts';
import type { WrongTag } from './reply.ts';

/** Why a text cannot stand in a field, in the field's own words. */
export interface Fault {
  readonly code: string;
  readonly what: string;
  readonly next: string;
  /** The label of another component: the person stands at the wrong one. */
  readonly wrongTag?: WrongTag;
}

/** Whether a text may stand in a field by itself: null, or why not. */
export function faultOf(
  field: Field,
  { text, ask }: { readonly text: string; readonly ask: Ask },
): Fault | null {
  try {
    understand([field], { given: { [field.name]: text }, job: ask.job, today: ask.around.today });
    return null;
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const { code, what, next } = error.text;
    return {
      code,
      what,
      next,
      ...(code === 'REA-010' ? { wrongTag: { field: field.name, typed: text } } : {}),
    };
  }
}

/** What a number without a unit is only taken for where it can be meant: a signal near the one that the card names. */
export function isPlausibleBare(
  field: Field,
  { text, ask }: { readonly text: string; readonly ask: Ask },
): boolean {
  if (field.name !== 'signalPa' || ask.step?.kind !== 'table') return true;
  const { readings } = understand([field], {
    given: { [field.name]: text },
    job: ask.job,
    today: ask.around.today,
  });
  return isNearSetting(ask, readings[field.name]?.valueSi ?? Number.NaN);
}

/** A text field that takes a number: the number of a lock. */
export function takesNumber(field: Field): boolean {
  return field.type === 'text' && field.mustBe === undefined && /\bnumber\b/i.test(field.label);
}
