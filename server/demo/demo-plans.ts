/** Planned work of the demo plant, as texts. Invented; dates follow the day on which the plant is loaded. */
import type { PlanTexts } from '../../procedures/plans/read-plan.ts';

const DAY_MS = 24 * 3600 * 1000;

/** @example demoPlans(new Date('2026-03-04'))[1].dueOn // '2026-03-04' */
export function demoPlans(now: Date): readonly PlanTexts[] {
  const dueIn = (days: number) => new Date(now.getTime() + days * DAY_MS).toISOString().slice(0, 10);
  const line = { procedure: 'stroke-check', place: 'line', role: 'technician' };
  return [
    { ...line, number: 'P-1', tag: 'FV-104', dueOn: dueIn(-3), note: 'Operator says it sticks near shut.' },
    { ...line, number: 'P-2', tag: 'FV-101', dueOn: dueIn(0), note: '' },
    { ...line, number: 'P-3', tag: 'FV-102', dueOn: dueIn(5), note: 'Yearly check.' },
    { ...line, number: 'P-4', tag: 'FV-214', dueOn: dueIn(40), note: 'Yearly check.' },
  ];
}
