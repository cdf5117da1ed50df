import { PROCEDURES } from '../served.ts';
import type { Place } from '../served-procedure.ts';
import { isDate } from '../test-gear/read-gear.ts';
import { PLAN_FIELDS, PLAN_ROLES, type Plan, type PlanFieldName, type PlanRole } from './plan.ts';

export type PlanTexts = Readonly<Record<string, string>>;

export type PlanRead =
  | { readonly ok: true; readonly plan: Plan }
  | { readonly ok: false; readonly faults: Readonly<Record<string, string>> };

const NAME = /^[\p{L}\p{N}](?:[\p{L}\p{N}._ -]{0,38}[\p{L}\p{N}])?$/u;
const NOTE_MAX = 200;

/**
 * A plan from texts, every wrong field named. Whether there is such a valve, and whether it may have the procedure, is
 * asked of the site.
 *
 * @example readPlan({ number: 'P-1', tag: 'FV-214', procedure: 'stroke-check', place: 'line', dueOn: '2026-03-04', role: 'technician' })
 */
export function readPlan(texts: PlanTexts): PlanRead {
  const faults: Record<string, string> = {};
  const plan: Plan = {
    number: name(texts, { field: 'number', faults, what: 'the number of the plan' }),
    tag: name(texts, { field: 'tag', faults, what: 'the tag of the valve' }),
    procedure: procedureOf(texts, faults),
    place: oneOf(texts, {
      field: 'place',
      faults,
      of: ['bench', 'line'] as const satisfies readonly Place[],
    }),
    dueOn: dueOn(texts, faults),
    role: oneOf<PlanRole>(texts, { field: 'role', faults, of: PLAN_ROLES }),
    note: note(texts, faults),
  };
  for (const given of Object.keys(texts))
    if (!PLAN_FIELDS.some((field) => field.name === given))
      faults[given] = `“${given}” is no field of a plan. Leave it out.`;
  return Object.keys(faults).length === 0 ? { ok: true, plan } : { ok: false, faults };
}

type Faults = Record<string, string>;

const typed = (texts: PlanTexts, field: PlanFieldName): string => (texts[field] ?? '').trim();

function name(
  texts: PlanTexts,
  {
    field,
    faults,
    what,
  }: { readonly field: 'number' | 'tag'; readonly faults: Faults; readonly what: string },
): string {
  const written = typed(texts, field).normalize('NFC').toUpperCase();
  if (!NAME.test(written)) faults[field] = `Write ${what}: letters, digits, - . _, 40 at most.`;
  return written;
}

/** By its name, or by its title as people read it. */
function procedureOf(texts: PlanTexts, faults: Faults): string {
  const written = typed(texts, 'procedure').toLowerCase();
  const found = PROCEDURES.find(
    ({ definition: { id, title } }) => id === written || title.toLowerCase() === written,
  );
  if (found !== undefined) return found.definition.id;
  const known = PROCEDURES.map(({ definition }) => definition.id).join(', ');
  faults.procedure = `${written === '' ? 'The procedure is missing' : `“${written}” is no procedure`}. There are: ${known}.`;
  return '';
}

function oneOf<Choice extends string>(
  texts: PlanTexts,
  {
    field,
    faults,
    of,
  }: {
    readonly field: PlanFieldName;
    readonly faults: Faults;
    readonly of: readonly [Choice, ...Choice[]] | readonly Choice[];
  },
): Choice {
  const written = typed(texts, field).toLowerCase();
  const found = of.find((choice) => choice === written);
  if (found === undefined) faults[field] = `Write one of: ${of.join(', ')}.`;
  // Where it was not found, the fault keeps the plan from being used.
  return found ?? (of[0] as Choice);
}

function dueOn(texts: PlanTexts, faults: Faults): string {
  const written = typed(texts, 'dueOn');
  if (!isDate(written))
    faults.dueOn = `${written === '' ? 'The date is missing' : `“${written}” is no date`}. Write year, month, day: 2026-03-04.`;
  return written;
}

function note(texts: PlanTexts, faults: Faults): string {
  const written = typed(texts, 'note').normalize('NFC');
  if (/[\p{Cc}\p{Cs}]/u.test(written) || [...written].length > NOTE_MAX)
    faults.note = `Write at most ${NOTE_MAX} plain characters.`;
  return written;
}

/** @example planText(plan).dueOn // '2026-03-04' */
export function planText(plan: Plan): Readonly<Record<PlanFieldName, string>> {
  return { ...plan };
}
