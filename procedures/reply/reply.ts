import type { Given } from '../readings/given.ts';

/** A piece of what was understood, with the label that the card has for it. */
export interface Cell {
  readonly label: string;
  readonly value: string;
}

/** Another way to say it: typed, or chosen, it is read as every reply is. */
export interface Choice {
  readonly text: string;
  readonly reply: string;
}

/** The ordinary act that a reply stands for. It counts when its own form is sent, and not before. */
export type ReplyAct =
  | { readonly act: 'answer'; readonly givens: readonly Given[] }
  | { readonly act: 'prove-again'; readonly given: Given }
  | { readonly act: 'go-back'; readonly to: string }
  | { readonly act: 'make-safe' }
  | { readonly act: 'park' };

export interface ReplyUnderstood {
  readonly kind: 'understood';
  readonly act: ReplyAct;
  /** One list a row of a table; one list for any other card. */
  readonly rows: readonly (readonly Cell[])[];
  /** The same in one line: typed again, it is understood the same. */
  readonly said: string;
  /** What whoever counts it has to know first. */
  readonly notes: readonly string[];
}

/** What was read off a label that is not the one the card names. */
export interface WrongTag {
  readonly field: string;
  readonly typed: string;
}

/** Understood as far as it goes. */
export interface ReplyPartial {
  readonly kind: 'partial';
  readonly cells: readonly Cell[];
  readonly said: string;
  /** Labels of what the card wants besides. */
  readonly missing: readonly string[];
}

export interface ReplyAmbiguous {
  readonly kind: 'ambiguous';
  readonly what: string;
  readonly choices: readonly Choice[];
}

/** A question answered, or why there is nothing to count. */
export interface ReplyTold {
  readonly kind: 'told';
  readonly heading: string;
  readonly lines: readonly string[];
  /** Where the words come from; blank where they come from this job itself. */
  readonly source: string;
  /** Id of a calculation that shows the working; blank for none. */
  readonly calculation: string;
  readonly choices: readonly Choice[];
}

export interface ReplyUnknown {
  readonly kind: 'unknown';
  readonly what: string;
  readonly next: string;
  readonly wrongTag?: WrongTag;
}

export type Reply = ReplyUnderstood | ReplyPartial | ReplyAmbiguous | ReplyTold | ReplyUnknown;

export function told(
  heading: string,
  more: Partial<Omit<ReplyTold, 'kind' | 'heading'>> & { readonly lines: readonly string[] },
): ReplyTold {
  return { kind: 'told', heading, source: '', calculation: '', choices: [], ...more };
}
