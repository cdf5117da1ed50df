import { z } from 'zod';
import { ourCookie } from '../http/cookies.ts';
import { optionalText } from '../http/fields.ts';
import { type Route, route } from '../http/route.ts';

const MINE: readonly string[] = ['job:', 'plan:', 'point:', 'signing'];

/**
 * What open screens listen to: `data: {"stream":"job:7","place":12}` for each commit, and a beat in between. A program,
 * and a screen that cannot listen, asks for the same as JSON: the newest line of a job, or of the log.
 */
export const liveRoute: Route = route({
  method: 'GET',
  path: '/live',
  name: 'listenLive',
  summary: 'Server-sent events: which stream was written to, and its newest place; as JSON the place alone',
  roles: 'signed-in',
  background: true,
  rawType: 'text/event-stream',
  query: z.object({ job: optionalText({ called: 'the job', max: 40 }).default('') }),
  answer: z.object({ stream: z.string(), place: z.number() }),
  handle: async (call) => {
    const { services, person, query, cookies } = call;
    const stream = query.job === '' ? '' : `job:${query.job}`;
    const place = stream === '' ? (await services.log.head()).seq : await services.log.place(stream);
    const asked = { stream, place };
    const session = ourCookie(cookies, 'yokeside-session');
    const body = services.live.open({
      person: person.id,
      wanted: (name) => (stream === '' ? MINE.some((start) => name.startsWith(start)) : name === stream),
      stillThere: async () => {
        const { person: now } = await services.people.atScreen({
          session,
          screen: undefined,
          background: true,
        });
        return now?.id === person.id;
      },
    });
    // Too many listen already: an empty answer tells this one to ask again by itself.
    if (body === null) return { data: asked, status: 204, raw: { contentType: 'text/plain', body: '' } };
    return { data: asked, raw: { contentType: 'text/event-stream', body } };
  },
});
