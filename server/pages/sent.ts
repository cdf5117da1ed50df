import { z } from 'zod';
import { type Route, route } from '../http/route.ts';

/**
 * Whether an act was kept whose answer never came, because the server or the network went away in between: asked by the
 * number that the act carried. Only whoever sent it is told.
 */
export const sentRoute: Route = route({
  method: 'GET',
  path: '/sent/:requestId',
  name: 'showSent',
  summary: 'Whether an act was kept, asked by the request id that it carried; for whoever sent it',
  roles: 'signed-in',
  background: true,
  answer: z.object({ kept: z.boolean() }),
  handle: async ({ services, person, params }) => {
    const answered = await services.store.answered(params.requestId ?? '');
    return { data: { kept: answered !== undefined && answered.person === person.id } };
  },
});
