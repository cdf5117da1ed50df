import type { Contradiction } from '../../procedures/valve-sheet/contradictions/rule.ts';
import { Refusal } from '../../safety/refusal.ts';

const STANDS_IN_FORM = 'What you typed stands in the form; nothing was recorded.';

export function noSuchValve(tag: string): Refusal {
  return new Refusal({
    kind: 'not-found',
    code: 'VAL-001',
    what: `There is no valve ${tag}.`,
    kept: 'Nothing was recorded.',
    next: 'Look in the list of valves.',
  });
}

export function tagInUse(tag: string, { retired }: { readonly retired: boolean }): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'VAL-002',
    what: `There is a valve ${tag} already${retired ? ', retired' : ''}.`,
    kept: STANDS_IN_FORM,
    next: 'Change that sheet, or give this valve its own tag.',
    fields: { tag: 'This tag is in use.' },
  });
}

export function savedMeanwhile(tag: string): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'VAL-003',
    what: `Somebody else saved the sheet of ${tag} since this form was loaded.`,
    kept: STANDS_IN_FORM,
    next: 'Read on the valve’s page what they changed, put yours right and save again.',
  });
}

export function retiredAlready(tag: string): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'VAL-004',
    what: `${tag} is retired already.`,
    kept: 'Nothing was recorded.',
    next: 'Save its sheet anew to take it back into use.',
  });
}

export function jobIsOpen(tag: string, job: string): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'VAL-005',
    what: `Job ${job} is open on ${tag}.`,
    kept: 'Nothing was recorded.',
    next: 'Close the job first, then retire the valve.',
  });
}

/** Kept out because somebody could be hurt by it, or nothing can be worked out from it. */
export function contradictsItself(stopping: readonly Contradiction[]): Refusal {
  const fields: Record<string, string> = {};
  for (const { fields: names, what } of stopping) for (const name of names) fields[name] ??= what;
  const [first] = stopping;
  return new Refusal({
    kind: 'unsafe',
    code: first?.code ?? 'VAL-101',
    what: stopping.map(({ what }) => what).join(' '),
    kept: STANDS_IN_FORM,
    next: 'Read the plate and the parts again, and put the fields right that are named.',
    fields,
  });
}
