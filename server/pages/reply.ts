/** The line at the foot of a job: what was written is understood and shown, and counts by the ordinary act alone. */
import { z } from 'zod';
import { readReply } from '../../procedures/reply/read-reply.ts';
import type { Reply } from '../../procedures/reply/reply.ts';
import { optionalText } from '../http/fields.ts';
import { type Route, route } from '../http/route.ts';
import type { Catalogue } from '../jobs/catalogue.ts';
import { loadJob } from '../jobs/load.ts';
import { lateOf } from '../jobs/read-action.ts';
import { type Entered, enterTogether } from '../jobs/reply/enter-together.ts';
import { inReplyWords, quotingTyped } from '../jobs/reply/in-reply-words.ts';
import { replyAnswer, replyView } from '../jobs/reply/reply-view.ts';
import { jobAnswer, jobPage, jobPiece, NOTHING_TYPED } from '../jobs/view/page.ts';
import { wrongTagTyped } from '../points/wrong-tag.ts';

const WORKERS = ['technician', 'supervisor', 'engineer'] as const;
const REPLY_MAX = 400;
const TOGETHER_MAX = 40;

const place = z.string().regex(/^\d{1,9}$/, 'Say which line you had seen last.');

const replyFields = z.object({
  place: place.optional(),
  reply: optionalText({ called: 'the reply', max: REPLY_MAX, lines: true }).default(''),
});

const column = z
  .array(optionalText({ called: 'a reading', max: REPLY_MAX }))
  .max(TOGETHER_MAX)
  .default([]);

const togetherFields = z.object({
  place,
  steps: z
    .array(z.string().max(80))
    .min(2, 'Name at least two cards.')
    .max(TOGETHER_MAX, 'That is too many at once.'),
  /** Of the open card down to which of them; all of them where it is left out. */
  upTo: z.string().max(80).optional(),
  signalPa: column,
  signalPaGauge: column,
  travelM: column,
  travelMGauge: column,
  /** When each was done, in the same order, where that was earlier; blank where nobody remembers. */
  readAt: column,
  lateReason: optionalText({ called: 'the reason', max: REPLY_MAX }).default(''),
});

/** Routes of the reply line, and of several cards that are entered in one go. */
export function replyRoutes(catalogue: Catalogue): readonly Route[] {
  return [replyRoute(catalogue), togetherRoute(catalogue)];
}

function replyRoute(catalogue: Catalogue): Route {
  return route({
    method: 'POST',
    path: '/jobs/:id/reply',
    name: 'replyToJob',
    summary:
      'What a reply as people write it means for the open card, the choices where it may mean several things, or the answer to a question; nothing is counted',
    roles: WORKERS,
    body: replyFields,
    answer: replyAnswer,
    handle: async (call) => {
      const { services, person, body, screen, params } = call;
      const { job, around } = await loadJob(params.id ?? '', { services, catalogue, person });
      const isOld = body.place !== undefined && Number(body.place) !== job.place;
      const typed = body.reply;
      const read = inReplyWords(typed, { language: call.language, job, around });
      const reply = isOld ? CARD_MOVED : quotingTyped(readReply(read, { job, around }), { read, typed });
      if (reply.kind === 'unknown' && reply.wrongTag !== undefined)
        await wrongTagTyped({ services, person, screen, job: job.id }, reply.wrongTag);
      const replied = replyView(reply, { job, typed: body.reply });
      const { page, params: drawn } = await jobPage(call, { catalogue, again: NOTHING_TYPED });
      return {
        data: replied,
        fragment: {
          template: 'parts/replied.njk',
          params: { job: { id: job.id, place: job.place }, replied },
        },
        ...(page === undefined ? {} : { page: { ...page, params: { ...drawn, replied } } }),
      };
    },
  });
}

/** What was typed was meant for another card: it is never read for this one. */
const CARD_MOVED: Reply = {
  kind: 'unknown',
  what: 'Another line was written while your card was open: what you wrote was meant for that card.',
  next: 'Look at the card that is open now, then write again.',
};

function togetherRoute(catalogue: Catalogue): Route {
  return route({
    method: 'POST',
    path: '/jobs/:id/together',
    name: 'enterTogether',
    summary:
      'Several plain steps, or several rows of a table, entered in one go: each is judged and kept by itself, and says so; the first refusal stops the rest',
    roles: WORKERS,
    body: togetherFields,
    answer: jobAnswer,
    handle: async (call) => {
      const job = call.params.id ?? '';
      const all = entered(call.body);
      await enterTogether({ ...call, catalogue, job, place: Number(call.body.place), all });
      const reply = await jobPage(call, { catalogue, again: NOTHING_TYPED });
      return { ...reply, fragment: jobPiece(reply), seeOther: `/jobs/${job}#card` };
    },
    refused: async (call) => {
      if (call.person === null) throw new TypeError('a refused act without a person');
      const reply = await jobPage({ ...call, person: call.person }, { catalogue, again: NOTHING_TYPED });
      return { ...(reply.page === undefined ? {} : { page: reply.page }), fragment: jobPiece(reply) };
    },
  });
}

const READ = ['signalPa', 'signalPaGauge', 'travelM', 'travelMGauge'] as const;

function entered(body: z.output<typeof togetherFields>): readonly Entered[] {
  const last = body.upTo === undefined ? -1 : body.steps.indexOf(body.upTo);
  const steps = last < 0 ? body.steps : body.steps.slice(0, last + 1);
  return steps.map((step, row) => ({
    step,
    given: Object.fromEntries(
      READ.flatMap((name) => ((body[name][row] ?? '') === '' ? [] : [[name, body[name][row] ?? '']])),
    ),
    ...lateOf({ readAt: body.readAt[row], lateReason: body.lateReason }),
  }));
}
