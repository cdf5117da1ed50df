/** The line at the foot of a job: what was written is understood and shown, and counts by the ordinary act alone. */
import { z } from 'zod';
import { readReply } from '../../procedures/reply/read-reply.ts';
import type { Reply } from '../../procedures/reply/reply.ts';
import { optionalText, textsOf } from '../http/fields.ts';
import { type Route, route } from '../http/route.ts';
import type { Catalogue } from '../jobs/catalogue.ts';
import { loadJob } from '../jobs/load.ts';
import { lateOf } from '../jobs/read-action.ts';
import type { Entered } from '../jobs/reply/cards-done.ts';
import { enterTogether } from '../jobs/reply/enter-together.ts';
import { inReplyWords, quotingTyped } from '../jobs/reply/in-reply-words.ts';
import { cardField } from '../jobs/reply/refusals.ts';
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

/** Beside these each card's own fields by its name: `caseParts-springWhole`, `coverOff-done`, `coverOff-readAt`. */
const togetherFields = z
  .object({
    place,
    steps: z
      .array(z.string().max(80))
      .min(2, 'Name at least two cards.')
      .max(TOGETHER_MAX, 'That is too many at once.'),
    signalPa: column,
    signalPaGauge: column,
    travelM: column,
    travelMGauge: column,
    lateReason: optionalText({ called: 'the reason', max: REPLY_MAX }).default(''),
  })
  .catchall(optionalText({ called: 'what the card asks', max: REPLY_MAX }));

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
      const offered = call.body.steps.map((step, row) => entered(step, { body: call.body, row }));
      await enterTogether({ ...call, catalogue, job, place: Number(call.body.place), offered });
      const reply = await jobPage(call, { catalogue, again: NOTHING_TYPED });
      return { ...reply, fragment: jobPiece(reply), seeOther: `/jobs/${job}#card` };
    },
    refused: async (call) => {
      if (call.person === null) throw new TypeError('a refused act without a person');
      const together = { typed: textsOf(call.typed), wrong: call.refusal.fields ?? {} };
      const by = { ...call, person: call.person };
      const reply = await jobPage(by, { catalogue, again: NOTHING_TYPED, together });
      return { ...(reply.page === undefined ? {} : { page: reply.page }), fragment: jobPiece(reply) };
    },
  });
}

const READ = ['signalPa', 'signalPaGauge', 'travelM', 'travelMGauge'] as const;

/** Beside what a card asks: its tick, and when it was done. */
const OF_CARD = ['done', 'readAt'];

function entered(
  step: string,
  { body, row }: { readonly body: z.output<typeof togetherFields>; readonly row: number },
): Entered {
  const ofRow = READ.map((name) => [name, body[name][row] ?? '']);
  const begin = cardField(step, '');
  const ofCard = Object.entries(body as Readonly<Record<string, unknown>>).flatMap(([name, text]) =>
    name.startsWith(begin) && typeof text === 'string' ? [[name.slice(begin.length), text]] : [],
  );
  const filled: Record<string, string> = Object.fromEntries(
    [...ofRow, ...ofCard].filter(([, text]) => text !== ''),
  );
  const given = Object.fromEntries(Object.entries(filled).filter(([name]) => !OF_CARD.includes(name)));
  return {
    step,
    given,
    isDone: filled.done !== undefined || Object.keys(given).length > 0,
    ...lateOf({ readAt: filled.readAt, lateReason: body.lateReason }),
  };
}
