/** What the owner of a lock reads that was taken off while they were away, and says that they know. */
import { z } from 'zod';
import { notFound } from '../http/errors.ts';
import { type BareCall, type Route, route } from '../http/route.ts';
import { clock, day, nameOf } from '../jobs/view/words.ts';
import type { Person } from '../people/person.ts';
import { absenceKind } from '../points/absence-stream.ts';
import { knowRemoval } from '../points/removal-acts.ts';

const removalAnswer = z.object({
  place: z.int(),
  at: z.string(),
  by: z.string(),
  job: z.string(),
  locks: z.string(),
  foundOut: z.string(),
  attempts: z.string(),
  toldBy: z.string(),
  reason: z.string(),
});

async function mine({ services, person }: BareCall & { readonly person: Person }) {
  const { removals } = await services.log.state(absenceKind, person.id);
  const names = new Map((await services.people.list()).map(({ id, name }) => [id, name]));
  return removals
    .filter(({ knownAt }) => knownAt === null)
    .map(({ at, by, locks, knownAt: _, ...rest }) => ({
      ...rest,
      at: `${day(at)} ${clock(at)} UTC`,
      by: nameOf(by, names),
      locks: locks.map(({ point, lock }) => `${lock} on ${point}`).join(', '),
    }));
}

const showRemovals = route({
  method: 'GET',
  path: '/removals',
  name: 'showRemovals',
  summary: 'Own locks that were taken off in the owner’s absence and not yet answered',
  roles: 'signed-in',
  answer: z.object({ removals: z.array(removalAnswer) }),
  handle: async (call) => {
    const removals = await mine(call);
    const params = { removals };
    return {
      data: { removals },
      page: { title: 'Your locks', template: 'pages/removals.njk', params },
    };
  },
});

const knowRoute = route({
  method: 'POST',
  path: '/removals/:place/known',
  name: 'knowRemoval',
  summary: 'Say that one knows of the own locks that were taken off',
  roles: 'signed-in',
  body: z.object({}),
  answer: z.object({ place: z.int() }),
  handle: async (call) => {
    const { services, requestId, person, screen, params } = call;
    if (!/^\d{1,9}$/.test(params.place ?? '')) throw notFound();
    const place = Number(params.place);
    await knowRemoval({ log: services.log, by: { requestId, person: person.id, screen } }, { place });
    return { data: { place }, seeOther: '/removals' };
  },
});

export const removalRoutes: readonly Route[] = [showRemovals, knowRoute];
