/** Work that goes on: how far it is, stopping it, and where its result shows. */
import { z } from 'zod';
import { problemOf } from '../http/errors.ts';
import { type BareCall, type PageView, type Reply, type Route, route } from '../http/route.ts';
import { type LongWork, wasStopped } from '../long/long-work.ts';

/** No longer than this does a page wait; then it shows how far the work is. */
const PAGE_WAITS_MS = 800;

const answer = z.object({
  id: z.string(),
  title: z.string(),
  state: z.enum(['going', 'done', 'stopped', 'failed']),
  doing: z.string(),
  done: z.int(),
  of: z.int(),
  seconds: z.int(),
  shows: z.string().describe('Where its result stands once it is done'),
});

function dataOf({ id, title, outcome, step, beganAtMs, shows }: LongWork): z.input<typeof answer> {
  const seconds = Math.round((performance.now() - beganAtMs) / 1000);
  return { id, title, state: outcome.state, ...step, seconds, shows };
}

function pageOf(work: LongWork): PageView {
  const { outcome, isWriting, back } = work;
  const data = dataOf(work);
  const problem = outcome.state === 'failed' ? problemOf(outcome.error, work.id) : null;
  const params = {
    ...data,
    href: pathOfWork(work.id),
    percent: Math.floor((100 * data.done) / Math.max(1, data.of)),
    isWriting,
    back,
    problem: problem === null ? null : { what: problem.what, kept: problem.kept, next: problem.next },
  };
  return { title: work.title, template: 'pages/long-work.njk', params };
}

export const pathOfWork = (id: string): string => `/long-work/${encodeURIComponent(id)}`;

function replyOf(work: LongWork): Reply<z.input<typeof answer>> {
  const data = dataOf(work);
  if (work.outcome.state === 'done') return { data, seeOther: work.shows };
  return { data, page: pageOf(work) };
}

const showWork = route({
  method: 'GET',
  path: '/long-work/:id',
  name: 'showLongWork',
  summary: 'How far a long work is that this person began; done, a page goes on to its result',
  roles: 'signed-in',
  background: true,
  answer,
  handle: (call) => replyOf(call.services.long.at(call.params.id ?? '', call.person.id)),
});

const stopWork = route({
  method: 'POST',
  path: '/long-work/:id/stop',
  name: 'stopLongWork',
  summary: 'Stop a long work; what was stopped has changed nothing',
  roles: 'signed-in',
  body: z.object({}),
  answer,
  handle: async (call) => {
    const { id } = call.services.long.stop(call.params.id ?? '', call.person.id);
    const work =
      (await call.services.long.wait(id, PAGE_WAITS_MS)) ?? call.services.long.at(id, call.person.id);
    return { data: dataOf(work), seeOther: pathOfWork(id) };
  },
});

/**
 * Waits for a work as long as whoever asks may wait.
 * @returns its result, or null where a page has to show how far it is
 * @throws whatever the work threw; LNG-003 to a program whose work was stopped
 */
export async function resultOf<Result>(call: BareCall, id: string): Promise<Result | null> {
  const forMs = call.wantsPage ? PAGE_WAITS_MS : Number.POSITIVE_INFINITY;
  const work = await call.services.long.wait(id, forMs);
  if (work === undefined || work.outcome.state === 'going') return null;
  if (work.outcome.state === 'failed') throw work.outcome.error;
  if (work.outcome.state === 'done') {
    // Whoever begins a work knows what it ends with.
    return work.outcome.result as Result;
  }
  if (!call.wantsPage) throw wasStopped();
  return null;
}

export const longWorkRoutes: readonly Route[] = [showWork, stopWork];
