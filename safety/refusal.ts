/** What a refused act is answered with, by kind: the number is the HTTP status that a server gives it. */
export const REFUSAL_STATUS = {
  malformed: 400,
  'not-signed-in': 401,
  'not-allowed': 403,
  'not-found': 404,
  conflict: 409,
  unreadable: 422,
  unsafe: 422,
  throttled: 429,
} as const;

export type RefusalKind = keyof typeof REFUSAL_STATUS;

export interface RefusalText {
  readonly kind: RefusalKind;
  /** Stable code, for example `REA-011`: people look for it, and programs act on it. Each means one thing. */
  readonly code: string;
  /** What is wrong, with the value met and the value allowed, each with its unit. */
  readonly what: string;
  /** What was kept of that which the person gave. */
  readonly kept: string;
  /** What to do next. */
  readonly next: string;
  /** For a form: the message of each wrong field, by field name. */
  readonly fields?: Readonly<Record<string, string>>;
}

/**
 * An act that was not done, with the reason in a technician's words. A refusal is an ordinary answer:
 * nothing of the act was written, and the person is told what was kept and what to do.
 *
 * @example
 * throw new Refusal({ kind: 'unsafe', code: 'LIM-002', what: 'The case pressure is 22 psi; at most 20 psi is allowed.',
 *   kept: 'The reading is kept as typed.', next: 'Vent the case, then start this step again.' })
 */
export class Refusal extends Error {
  override readonly name = 'Refusal';
  readonly text: RefusalText;

  constructor(text: RefusalText) {
    super(`${text.code}: ${text.what} ${text.kept} ${text.next}`);
    this.text = text;
  }

  get status(): number {
    return REFUSAL_STATUS[this.text.kind];
  }
}
