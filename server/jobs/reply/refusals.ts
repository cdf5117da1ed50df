import { Refusal } from '../../../safety/refusal.ts';

export function notTogether(): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'RPL-010',
    what: 'These cards are not entered together: one of them is read, signed or warned about by itself.',
    kept: 'Nothing was counted.',
    next: 'Answer the open card.',
  });
}

/** Says what was kept of several that were entered in one go, before the one that was refused. */
export function afterKept(
  refusal: Refusal,
  { kept, of }: { readonly kept: number; readonly of: number },
): Refusal {
  if (kept === 0) return refusal;
  const lines = kept === 1 ? 'The first is kept' : `The first ${kept} are kept`;
  return new Refusal({
    ...refusal.text,
    kept: `${lines} of ${of}, each a line of its own; the rest was not counted.`,
  });
}

/** How a field of one card of several is named in their form. @example cardField('caseParts', 'plateSound') // 'caseParts-plateSound' */
export function cardField(step: string, field: string): string {
  return `${step}-${field}`;
}

/** The reason why lines are late is one for all of them. */
const OF_ALL = 'lateReason';

/** The same refusal, its fields named as they stand in the form of several cards. */
export function forCard(refusal: Refusal, step: string): Refusal {
  const fields = Object.entries(refusal.text.fields ?? {}).map(([name, said]) => [
    name === OF_ALL ? name : cardField(step, name),
    said,
  ]);
  return new Refusal({ ...refusal.text, fields: Object.fromEntries(fields) });
}
