import { z } from 'zod';
import { DISPOSITIONS, mayBeCompetent } from '../../safety/sign-off.ts';
import { text } from '../http/fields.ts';
import { type RefusedCall, type Reply, type Route, route } from '../http/route.ts';
import { actByForm } from '../jobs/act-by-form.ts';
import type { Catalogue } from '../jobs/catalogue.ts';
import { actFields } from '../jobs/read-action.ts';
import { changeCompetence } from '../signing/competent.ts';
import { type SignedInCall, type ToSign, toSign } from '../signing/to-sign.ts';
import { byOf } from './parts.ts';

const READERS = ['supervisor', 'engineer', 'safety-officer'] as const;
const SIGNERS = ['supervisor', 'engineer'] as const;

const onLine = { job: z.string(), tag: z.string(), about: z.number(), nonce: z.string() };

const toSignAnswer = z.object({
  asOf: z.string(),
  waiting: z.array(
    z.object({
      job: z.string(),
      tag: z.string(),
      hold: z.string(),
      step: z.string(),
      place: z.number(),
      waitsMinutes: z.number(),
      maySign: z.boolean(),
      shownDigest: z.string(),
      nonce: z.string(),
      departures: z.array(z.string()),
      notShown: z.array(z.string()),
    }),
  ),
  reviews: z.array(
    z.object({
      ...onLine,
      title: z.string(),
      criterion: z.string(),
      facts: z.array(z.object({ label: z.string(), value: z.string() })),
      since: z.string(),
    }),
  ),
  radio: z.array(z.object({ ...onLine, said: z.string(), mine: z.boolean(), overdue: z.boolean() })),
  competent: z.array(z.object({ person: z.string(), name: z.string(), how: z.string(), by: z.string() })),
  counts: z.array(z.object({ what: z.string(), count: z.number() })),
  year: z.string(),
});

/** What waits for a signature, who may give one where no supervisor can come, and what is seldom. */
export function signOffRoutes(catalogue: Catalogue): readonly Route[] {
  return [listRoute(catalogue), actRoute(catalogue), nameRoute(catalogue), withdrawRoute()];
}

function listRoute(catalogue: Catalogue): Route {
  return route({
    method: 'GET',
    path: '/to-sign',
    name: 'listToSign',
    summary: 'Holds that wait, with evidence and departures; signatures by radio to confirm; what was seldom',
    roles: READERS,
    menu: { text: 'To sign', order: 12 },
    answer: toSignAnswer,
    handle: (call) => page(call, { catalogue, again: null }),
  });
}

interface Again {
  /** The job whose form was refused. */
  readonly job: string;
  readonly typed: Readonly<Record<string, string>>;
  readonly wrong: Readonly<Record<string, string>>;
}

async function page(
  call: SignedInCall,
  { catalogue, again }: { readonly catalogue: Catalogue; readonly again: Again | null },
): Promise<Reply<z.input<typeof toSignAnswer>>> {
  // Before the list is read: what is written meanwhile is news to whoever looks at it.
  const { seq: head } = await call.services.log.head();
  const list = await toSign(call, catalogue);
  const people = await call.services.people.list();
  const named = list.competent.map(({ person }) => person);
  const mayBeNamed = people.filter(
    ({ id, role, retired }) => !retired && mayBeCompetent(role) && !named.includes(id),
  );
  const { role, id, name } = call.person;
  const params = {
    list,
    dispositions: Object.entries(DISPOSITIONS).map(([value, label]) => ({ value, label })),
    again: again ?? { job: '', typed: {}, wrong: {} },
    me: { id, name, role },
    mayBeNamed: mayBeNamed.map((one) => ({ value: one.id, label: `${one.name} (${one.id.toUpperCase()})` })),
    head,
  };
  return { data: answerOf(list), page: { title: 'To sign', template: 'pages/to-sign.njk', params } };
}

function answerOf(list: ToSign): z.input<typeof toSignAnswer> {
  return {
    asOf: list.asOf,
    waiting: list.waiting.map(({ row, card, place }) => ({
      job: row.job,
      tag: row.tag,
      hold: row.hold,
      step: card.step,
      place,
      waitsMinutes: row.waitsMinutes,
      maySign: row.maySign,
      shownDigest: card.shownDigest,
      nonce: card.nonce,
      departures: card.departures.map((line) => line.text),
      notShown: [...card.unshown],
    })),
    reviews: list.reviews.map(({ place: _, facts, ...one }) => ({
      ...one,
      facts: facts.map((fact) => ({ ...fact })),
    })),
    radio: list.radio.map((one) => ({ ...one })),
    competent: list.competent.map((one) => ({ ...one })),
    counts: list.counts.map((one) => ({ ...one })),
    year: list.year,
  };
}

function actRoute(catalogue: Catalogue): Route {
  return route({
    method: 'POST',
    path: '/to-sign/:id',
    name: 'signFromList',
    summary:
      'Sign, send back, waive, review, or answer for a signature by radio, from the list; by name and PIN',
    roles: SIGNERS,
    body: actFields,
    answer: z.object({ job: z.string() }),
    handle: async (call) => {
      const job = call.params.id ?? '';
      await actByForm(call, { catalogue, job });
      return { data: { job }, seeOther: '/to-sign' };
    },
    refused: async (call: RefusedCall) => {
      if (call.person === null) throw new TypeError('a refused act without a person');
      const texts = Object.entries(call.typed).filter(
        (pair): pair is [string, string] => typeof pair[1] === 'string' && pair[0] !== 'pin',
      );
      const again = {
        job: call.params.id ?? '',
        typed: Object.fromEntries(texts),
        wrong: call.refusal.fields ?? {},
      };
      const reply = await page({ ...call, person: call.person }, { catalogue, again });
      return reply.page === undefined ? {} : { page: reply.page };
    },
  });
}

const whoField = text({ called: 'who', max: 40 });

function nameRoute(catalogue: Catalogue): Route {
  return route({
    method: 'POST',
    path: '/competent',
    name: 'nameCompetent',
    summary: 'Name somebody as competent to sign a hold where no supervisor can come',
    roles: ['supervisor'],
    body: z.object({ person: whoField, how: text({ called: 'how their competence was seen', max: 200 }) }),
    answer: z.object({ person: z.string() }),
    handle: async (call) => {
      await changeCompetence({ services: call.services, by: byOf(call) }, call.body);
      return { data: { person: call.body.person }, seeOther: '/to-sign#competent' };
    },
    refused: async (call: RefusedCall) => {
      if (call.person === null) throw new TypeError('a refused act without a person');
      const again = { job: 'competent', typed: {}, wrong: call.refusal.fields ?? {} };
      const reply = await page({ ...call, person: call.person }, { catalogue, again });
      return reply.page === undefined ? {} : { page: reply.page };
    },
  });
}

function withdrawRoute(): Route {
  return route({
    method: 'POST',
    path: '/competent/withdraw',
    name: 'withdrawCompetent',
    summary: 'Take back that somebody may sign where no supervisor can come',
    roles: ['supervisor'],
    body: z.object({ person: whoField }),
    answer: z.object({ person: z.string() }),
    handle: async (call) => {
      const { person } = call.body;
      await changeCompetence({ services: call.services, by: byOf(call) }, { person, how: null });
      return { data: { person }, seeOther: '/to-sign#competent' };
    },
  });
}
