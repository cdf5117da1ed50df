/** What waits, what is open, and what is locked on the site now. */
import { PLAN_ROLES } from '../../procedures/plans/plan.ts';
import { type Route, route } from '../http/route.ts';
import type { Catalogue } from '../jobs/catalogue.ts';
import { type ShiftList, shiftList, shiftListSchema } from '../jobs/shift-list.ts';

export function shiftListRoutes(catalogue: Catalogue): readonly Route[] {
  return [
    route({
      method: 'GET',
      path: '/shift',
      name: 'showShiftList',
      summary:
        'What waits for a signature and why this person may not give it, what is planned for today, open jobs, locks and bypasses',
      roles: 'signed-in',
      menu: { text: 'Shift list', order: 10 },
      answer: shiftListSchema,
      handle: async ({ services, person, now }) => {
        const people = await services.people.list();
        const names = new Map(people.map(({ id, name }) => [id, name]));
        const list = await shiftList({ services, catalogue }, { person, names, nowMs: now.getTime() });
        const mayOpen = PLAN_ROLES.some((role) => role === person.role);
        const params = { list, mayOpen, notes: notesOf(list) };
        return { data: list, page: { title: 'Shift list', template: 'pages/shift-list.njk', params } };
      },
    }),
  ];
}

/** What stands at the right of each sheet's title. */
function notesOf(list: ShiftList) {
  const { waiting, open, sentBack, locked, closed, more } = list;
  const late = list.planned.filter(({ daysLate }) => daysLate > 0).length;
  const mine = waiting.filter((row) => row.maySign).length;
  const others = waiting.length - mine;
  const bypasses = locked.filter((row) => row.lock === 'bypass').length;
  const locks = locked.length - bypasses;
  return {
    waiting: `${mine}${others > 0 ? `, and ${others} that you may not sign` : ''}`,
    planned: `${counted(list.plannedDue, 'plan', 'plans')}, ${late} late; ${list.plannedSoon} within the next 7 days`,
    open: `${open.length}${more ? ', and more than are listed' : ''}`,
    sentBack: `${sentBack.length}, with the technician`,
    locked: `${counted(locks, 'lock', 'locks')}, ${counted(bypasses, 'bypass', 'bypasses')} open`,
    closed: `${closed.length}, newest first`,
  };
}

function counted(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`;
}
