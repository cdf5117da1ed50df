import type { Place } from '../served-procedure.ts';

/** Who may be asked to do planned work: whoever may open a job. */
export const PLAN_ROLES = ['technician', 'supervisor', 'engineer'] as const;

export type PlanRole = (typeof PLAN_ROLES)[number];

/** Work that somebody means to have done: which procedure on which valve, by when, for whom. */
export interface Plan {
  /** The site's own, such as that of an order. */
  readonly number: string;
  readonly tag: string;
  readonly procedure: string;
  readonly place: Place;
  /** YYYY-MM-DD; from the day after it is late. */
  readonly dueOn: string;
  readonly role: PlanRole;
  readonly note: string;
}

export type PlanFieldName = keyof Plan;

interface PlanField {
  readonly name: PlanFieldName;
  readonly label: string;
  readonly help?: string;
}

/** What is asked of a plan, in the order of the form and of its table. */
export const PLAN_FIELDS: readonly PlanField[] = [
  { name: 'number', label: 'Number', help: 'The site’s own, for example that of an order.' },
  { name: 'tag', label: 'Valve', help: 'Its tag.' },
  { name: 'procedure', label: 'Procedure' },
  { name: 'place', label: 'Where', help: 'bench or line.' },
  { name: 'dueOn', label: 'By', help: 'Year, month, day: 2026-03-04.' },
  { name: 'role', label: 'For', help: `One of: ${PLAN_ROLES.join(', ')}.` },
  { name: 'note', label: 'Note', help: 'What whoever opens the job has to know.' },
];
