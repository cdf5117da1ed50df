import { z } from 'zod';

import { GEAR_ROLES } from '../../procedures/test-gear/roles.ts';
import { oneOf, optionalText, text, textsOf } from '../http/fields.ts';
import { type RefusedCall, type Route, route } from '../http/route.ts';
import { actByForm } from '../jobs/act-by-form.ts';
import type { Catalogue } from '../jobs/catalogue.ts';
import { goesOnAddress } from '../jobs/goes-on-address.ts';
import { jobKind } from '../jobs/job-stream.ts';
import { openJob } from '../jobs/open-job.ts';
import { actFields } from '../jobs/read-action.ts';
import { newJobParams } from '../jobs/view/new-job.ts';
import { jobAnswer, jobOutcome, jobPage, jobPiece, NOTHING_TYPED } from '../jobs/view/page.ts';
import { allLinesRoute } from './job-all-lines.ts';
import { linePage, lineRoute } from './job-lines.ts';

const WORKERS = ['technician', 'supervisor', 'engineer'] as const;
const gearFields: Readonly<Record<string, z.ZodOptional<z.ZodString>>> = Object.fromEntries(
  Object.keys(GEAR_ROLES).map((role) => [
    role,
    optionalText({ called: 'the gear number', max: 40 }).optional(),
  ]),
);

/** The card of the job before, where the work goes on from there with everything as it stands. */
const goesOnFields = {
  from: z.string().max(20).optional(),
  fromPlace: z
    .string()
    .regex(/^\d{1,9}$/, 'Say which line you had seen last.')
    .optional(),
  fromStep: z.string().max(80).optional(),
  fromChoice: z.string().max(80).optional(),
  fromReason: z.string().max(400, 'At most 400 letters.').optional(),
};

const planField = optionalText({ called: 'the plan', max: 40 }).optional();

const openFields = z.object({
  tag: text({ called: 'the valve tag', max: 60 }),
  procedure: text({ called: 'the procedure', max: 60 }),
  place: oneOf(['bench', 'line']),
  plan: planField,
  ...goesOnFields,
  ...gearFields,
});

/** Routes of jobs: opening one, its page, its acts, correcting a line. */
export function jobRoutes(catalogue: Catalogue): readonly Route[] {
  return [
    newJobRoute(catalogue),
    openJobRoute(catalogue),
    showJobRoute(catalogue),
    actRoute(catalogue),
    lineRoute(catalogue),
    allLinesRoute(catalogue),
  ];
}

function newJobRoute(catalogue: Catalogue): Route {
  return route({
    method: 'GET',
    path: '/jobs/new',
    name: 'showNewJob',
    summary: 'Which procedures a valve offers, why not the others, and the gear that each wants',
    roles: WORKERS,
    query: z.object({
      tag: text({ called: 'the valve tag' }),
      procedure: z.string().default(''),
      place: z.string().default(''),
      plan: planField,
      ...goesOnFields,
      ...gearFields,
    }),
    answer: z.object({
      tag: z.string(),
      offers: z.array(
        z.object({
          procedure: z.string(),
          place: z.string(),
          title: z.string(),
          revision: z.string(),
          because: z.string().nullable(),
        }),
      ),
    }),
    handle: async (call) => {
      const { tag, procedure, place, ...typed } = call.query;
      const params = await newJobParams(
        { services: call.services, catalogue },
        { person: call.person.id, tag, procedure, place, typed: withoutBlanks(typed) },
      );
      return {
        data: { tag: params.tag, offers: params.offers.map(({ where: _, folder: __, ...offer }) => offer) },
        page: { title: `Open a job on ${params.tag}`, template: 'pages/open-job.njk', params },
      };
    },
  });
}

function openJobRoute(catalogue: Catalogue): Route {
  return route({
    method: 'POST',
    path: '/jobs',
    name: 'openJob',
    summary: 'Open a job: one procedure on one valve, with the gear for it',
    roles: WORKERS,
    body: openFields,
    answer: z.object({ job: z.string() }),
    handle: async (call) => {
      const { tag, procedure, place, plan, from, fromPlace, fromStep, fromChoice, fromReason, ...gear } =
        call.body as z.output<typeof openFields>;
      const before =
        from === undefined
          ? {}
          : {
              from: {
                job: from,
                place: Number(fromPlace ?? '0'),
                step: fromStep ?? '',
                choice: fromChoice ?? '',
                reason: fromReason ?? '',
              },
            };
      const job = await openJob({
        services: call.services,
        catalogue,
        requestId: call.requestId,
        person: call.person,
        screen: call.screen,
        tag,
        procedure,
        place,
        gear: gear as Record<string, string>,
        ...(plan === undefined || plan === '' ? {} : { plan }),
        ...before,
      });
      return { data: { job }, status: 201, seeOther: `/jobs/${job}` };
    },
    refused: async (call: RefusedCall) => {
      const of = (name: string) => (typeof call.typed[name] === 'string' ? call.typed[name] : '');
      // A tag that no valve can have names no form to draw again: the refusal stands on a page of its own.
      const tag = openFields.shape.tag.safeParse(of('tag'));
      if (!tag.success) return {};
      const params = await newJobParams(
        { services: call.services, catalogue },
        {
          person: call.person?.id ?? null,
          tag: tag.data,
          procedure: of('procedure'),
          place: of('place'),
          typed: call.typed,
        },
      );
      return { page: { title: `Open a job on ${params.tag}`, template: 'pages/open-job.njk', params } };
    },
  });
}

function showJobRoute(catalogue: Catalogue): Route {
  return route({
    method: 'GET',
    path: '/jobs/:id',
    name: 'showJob',
    summary: 'A job: its lines, the open card with what it asks, the energies, the ways back',
    roles: 'signed-in',
    answer: jobAnswer,
    handle: async (call) => {
      const reply = await jobPage(call, { catalogue, again: NOTHING_TYPED });
      return { ...reply, fragment: jobPiece(reply) };
    },
  });
}

function actRoute(catalogue: Catalogue): Route {
  return route({
    method: 'POST',
    path: '/jobs/:id/acts',
    name: 'actOnJob',
    summary:
      'One act on a job: answer its card, sign or send back a hold, correct, go back, park, take up, prove again, make safe',
    roles: WORKERS,
    takesTextFiles: true,
    mayTellOutcome: true,
    body: actFields,
    answer: z.union([jobAnswer, jobOutcome]),
    handle: async (call) => {
      const job = call.params.id ?? '';
      await actByForm(call, { catalogue, job });
      if (call.wantsOutcome) {
        const { status, step, place } = await call.services.log.state(jobKind, job);
        return { data: { id: job, status, step, place }, isOutcome: true };
      }
      const reply = await jobPage(call, { catalogue, again: NOTHING_TYPED });
      return { ...reply, fragment: jobPiece(reply), seeOther: `/jobs/${job}#card` };
    },
    refused: async (call) => {
      if (call.person === null) throw new TypeError('a refused act without a person');
      const by = { ...call, person: call.person };
      const again = { typed: textsOf(call.typed), wrong: call.refusal.fields ?? {} };
      if (call.refusal.code === 'HND-001') return { seeOther: await goesOnAddress(by, { catalogue, again }) };
      const { act, corrects: place = '' } = again.typed;
      const line = act === 'correct' ? await linePage(by, { catalogue, place, again }) : null;
      if (line !== null) return { page: line };
      const reply = await jobPage(by, { catalogue, again });
      return { ...(reply.page === undefined ? {} : { page: reply.page }), fragment: jobPiece(reply) };
    },
  });
}

function withoutBlanks(
  fields: Readonly<Record<string, string | undefined>>,
): Readonly<Record<string, string>> {
  return Object.fromEntries(
    Object.entries(fields).filter((pair): pair is [string, string] => pair[1] !== undefined),
  );
}
