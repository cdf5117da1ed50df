import type { MayNotHang } from '../../safety/isolation-points.ts';
import { Refusal } from '../../safety/refusal.ts';

const KEPT = 'What you typed stands in the form; nothing was recorded.';

const HANGING: Readonly<Record<MayNotHang, { readonly what: string; readonly next: string }>> = {
  'no number': { what: 'has no lock number.', next: 'Scan or write the number of your lock.' },
  'number in use': { what: 'carries that number already.', next: 'Read the number of your own lock.' },
  'tag alone': {
    what: 'takes a lock, so a tag alone is not enough.',
    next: 'Hang a lock. Where none can be had, a supervisor writes the reason on the page of the point first.',
  },
};

/** @param field where the number was typed */
export function notHung(why: MayNotHang, { tag, field }: { readonly tag: string; readonly field: string }) {
  const { what, next } = HANGING[why];
  return new Refusal({
    kind: 'unsafe',
    code: 'PNT-004',
    what: `${tag} ${what}`,
    kept: KEPT,
    next,
    fields: { [field]: `${tag} ${what} ${next}` },
  });
}

export function notAuthorised(who: string): Refusal {
  return new Refusal({
    kind: 'not-allowed',
    code: 'PNT-005',
    what: `${who} may hang no lock here.`,
    kept: KEPT,
    next: 'A technician, supervisor or engineer who still works here hangs it.',
  });
}

/** @param field where it was typed */
export function wrongTag(tag: string, field: string): Refusal {
  const what = `That is not the label of ${tag}.`;
  const next = `Go to ${tag} and scan or read its label.`;
  return new Refusal({
    kind: 'unreadable',
    code: 'PNT-006',
    what,
    kept: KEPT,
    next,
    fields: { [field]: `${what} ${next}` },
  });
}

export function noSuchPoint(tag: string): Refusal {
  return new Refusal({
    kind: 'not-found',
    code: 'PNT-007',
    what: `Nothing is known of a point ${tag}.`,
    kept: 'Nothing was recorded.',
    next: 'Look in the list of points.',
  });
}

/** Codes of refusals that are about who is on a job. */
export type CrewCode =
  | 'CRW-001'
  | 'CRW-002'
  | 'CRW-003'
  | 'CRW-004'
  | 'CRW-005'
  | 'CRW-006'
  | 'CRW-007'
  | 'CRW-008';

export function crewRefusal(code: CrewCode, what: string, next: string): Refusal {
  return new Refusal({ kind: 'conflict', code, what, kept: KEPT, next });
}
