/** The tour for whoever is at the practice bench for the first time, and the quick guide for paper. */
import { z } from 'zod';
import { oneOf } from '../http/fields.ts';
import { type Route, route } from '../http/route.ts';
import { AT_BENCH } from '../practice/links.ts';

const TOUR_COOKIE = 'tour-left';
const YEAR_S = 365 * 24 * 3600;
/** A shared screen forgets who left the tour longest ago. */
const PEOPLE_MAX = 20;
const STOPS = ['1', '2', '3', '4', '5'] as const;

/** Whether a person left the tour at this screen: no line of any log says so, and nothing else hangs on it. */
export function hasLeftTour(cookies: Readonly<Record<string, string>>, person: string): boolean {
  return leftBy(cookies).includes(person);
}

function leftBy(cookies: Readonly<Record<string, string>>): readonly string[] {
  return (cookies[TOUR_COOKIE] ?? '').split('.').filter((id) => id !== '');
}

const showGuide = route({
  method: 'GET',
  path: '/help/guide',
  name: 'showQuickGuide',
  summary: 'The quick guide: one sheet of paper, A4 or Letter',
  roles: 'anyone',
  answer: z.object({ title: z.string() }),
  handle: () => ({
    data: { title: 'Quick guide' },
    page: { title: 'Quick guide', template: 'pages/guide.njk', params: {} },
  }),
});

const showTour = route({
  method: 'GET',
  path: `${AT_BENCH}/tour`,
  name: 'showTour',
  summary: 'The tour of the practice bench, one stop a page',
  roles: 'signed-in',
  isPractice: true,
  query: z.object({ stop: oneOf(STOPS).default('1') }),
  answer: z.object({ stop: z.int(), last: z.int() }),
  handle: ({ query }) => {
    const where = { stop: Number(query.stop), last: STOPS.length };
    return {
      data: where,
      page: { title: 'Tour', template: 'pages/tour.njk', params: where },
    };
  },
});

const leaveTour = route({
  method: 'POST',
  path: `${AT_BENCH}/tour`,
  name: 'leaveTour',
  summary: 'Leave the tour: at this screen it is not offered to this person again',
  roles: 'signed-in',
  isPractice: true,
  body: z.object({}),
  answer: z.object({ left: z.boolean() }),
  handle: ({ cookies, person }) => {
    const people = [person.id, ...leftBy(cookies.all).filter((id) => id !== person.id)].slice(0, PEOPLE_MAX);
    const kept = ['Path=/', 'HttpOnly', 'SameSite=Strict', `Max-Age=${YEAR_S}`];
    const cookie = [`${TOUR_COOKIE}=${people.join('.')}`, ...kept].join('; ');
    return { data: { left: true }, seeOther: AT_BENCH, cookies: [cookie] };
  },
});

export const tourRoutes: readonly Route[] = [showGuide, showTour, leaveTour];
