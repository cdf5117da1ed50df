/** What the owner of a lock reads that was taken off while they were away, and says that they know. */

import { z } from 'zod';
import { notFound } from '../http/errors.ts';
import { type BareCall, type Route, route } from '../http/route.ts';
import type { Person } from '../people/person.ts';
import { absenceKind } from '../points/absence-stream.ts';
import { knowRemoval } from '../points/removal-acts.ts';
import { removalWords, removalWordsSchema } from '../points/removal-words.ts';

const removalAnswer = removalWordsSchema.extend({ place: z.int() });

async function mine({ services, person }: BareCall & { readonly person: Person }) {
  const { removals } = await services.log.state(absenceKind, person.id);
  const names = new Map((await services.people.list()).map(({ id, name }) => [id, name]));
  return removals
    .filter(({ knownAt }) => knownAt === null)
    .map((removal) => ({ ...removalWords(removal, names), place: removal.place }));
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
