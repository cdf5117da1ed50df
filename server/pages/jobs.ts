import { z } from 'zod';

import { rowFields } from '../../procedures/actions/answer.ts';
import { fill } from '../../procedures/say.ts';
import { GEAR_ROLES } from '../../procedures/test-gear/roles.ts';
import { Refusal } from '../../safety/refusal.ts';
import { oneOf, optionalText, text, wrongFields } from '../http/fields.ts';
import { type Call, type RefusedCall, type Route, route } from '../http/route.ts';
import { actOnJob } from '../jobs/acts.ts';
import type { Catalogue } from '../jobs/catalogue.ts';
import { loadJob } from '../jobs/load.ts';
import { openJob } from '../jobs/open-job.ts';
import { actFields, readAction } from '../jobs/read-action.ts';
import { fieldViews } from '../jobs/view/fields.ts';
import { newJobParams } from '../jobs/view/new-job.ts';
import { jobAnswer, jobPage, jobPiece } from '../jobs/view/page.ts';
import type { Person } from '../people/person.ts';

const WORKERS = ['technician', 'supervisor', 'engineer'] as const;
const gearFields = Object.fromEntries(
  Object.keys(GEAR_ROLES).map((role) => [
    role,
    optionalText({ called: 'the gear number', max: 40 }).optional(),
  ]),
);

const openFields = z.object({
  tag: text({ called: 'the valve tag', max: 60 }),
  procedure: text({ called: 'the procedure', max: 60 }),
  place: oneOf(['bench', 'line']),
  ...(gearFields as Record<string, z.ZodOptional<z.ZodString>>),
});

/** Routes of jobs: opening one, its page, its acts, correcting a line. */
export function jobRoutes(catalogue: Catalogue): readonly Route[] {
  return [
    newJobRoute(catalogue),
    openJobRoute(catalogue),
    showJobRoute(catalogue),
    actRoute(catalogue),
    correctRoute(catalogue),
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
      const params = await newJobParams({ services: call.services, catalogue }, { ...call.query, typed: {} });
      return {
        data: { tag: params.tag, offers: params.offers.map(({ where: _, ...offer }) => offer) },
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
      const { tag, procedure, place, ...gear } = call.body as z.output<typeof openFields>;
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
        { tag: tag.data, procedure: of('procedure'), place: of('place'), typed: call.typed },
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
    handle: async (call) => jobPage(call, { catalogue, again: NOTHING }),
  });
}

const NOTHING = { typed: {}, wrong: {} };

function actRoute(catalogue: Catalogue): Route {
  return route({
    method: 'POST',
    path: '/jobs/:id/acts',
    name: 'actOnJob',
    summary:
      'One act on a job: answer its card, sign or send back a hold, correct, go back, park, take up, prove again, make safe',
    roles: WORKERS,
    body: actFields,
    answer: jobAnswer,
    handle: async (call) => {
      const action = readAction(call.body);
      const signing = action.kind === 'sign' || action.kind === 'send-back';
      const person = signing ? await signer(call) : call.person;
      const job = call.params.id ?? '';
      await actOnJob({
        services: call.services,
        catalogue,
        requestId: call.requestId,
        person,
        screen: call.screen,
        job,
        action,
      });
      const reply = await jobPage(call, { catalogue, again: NOTHING });
      return { ...reply, fragment: jobPiece(reply), seeOther: `/jobs/${job}#card` };
    },
    refused: async (call) => {
      const typed = Object.fromEntries(
        Object.entries(call.typed).filter(([name, value]) => typeof value === 'string' && name !== 'pin'),
      ) as Record<string, string>;
      if (call.person === null) throw new TypeError('a refused act without a person');
      const reply = await jobPage(
        { ...call, person: call.person },
        { catalogue, again: { typed, wrong: call.refusal.fields ?? {} } },
      );
      return { ...(reply.page === undefined ? {} : { page: reply.page }), fragment: jobPiece(reply) };
    },
  });
}

/** Who signs, by name and PIN every time: a session alone signs nothing, and the session stays whose it is. */
async function signer({ services, body, screen }: Call<z.output<typeof actFields>>): Promise<Person> {
  const { signer: who = '', pin = '' } = body;
  if (who === '' || pin === '')
    throw wrongFields({ [who === '' ? 'signer' : 'pin']: 'Name and PIN sign together.' });
  return services.people.verify({ who, pin, screen });
}

function correctRoute(catalogue: Catalogue): Route {
  return route({
    method: 'GET',
    path: '/jobs/:id/lines/:place',
    name: 'showLine',
    summary: 'One line of a job, with the fields that a correction of it would give again',
    roles: WORKERS,
    answer: z.object({
      job: z.string(),
      place: z.number(),
      step: z.string(),
      fields: z.array(z.object({ name: z.string(), label: z.string(), value: z.string() })),
    }),
    handle: async (call) => {
      const { job, around } = await loadJob(call.params.id ?? '', {
        services: call.services,
        catalogue,
        person: call.person,
      });
      const line = job.answers.find((one) => String(one.place) === call.params.place && !one.superseded);
      const step = line === undefined ? undefined : around.compiled.definition.steps[line.step];
      if (line === undefined || step === undefined || (step.kind !== 'reading' && step.kind !== 'table')) {
        throw new Refusal({
          kind: 'not-found',
          code: 'JOB-005',
          what: 'That line cannot be corrected.',
          kept: 'Nothing was written.',
          next: 'Choose a reading that stands.',
        });
      }
      const then = {
        ...job,
        step: line.step,
        tables: { ...job.tables, [line.step]: (job.tables[line.step] ?? []).slice(0, line.row ?? 0) },
      };
      const typed = {
        ...line.words,
        ...Object.fromEntries(line.readings.map((reading) => [reading.field, reading.typed])),
      };
      const fields = fieldViews(step.kind === 'table' ? rowFields(step, then) : step.asks, {
        job: then,
        again: { typed, wrong: {} },
      });
      const params = {
        job: { id: job.id, tag: job.tag, place: job.place },
        line: { place: line.place, what: fill(step.title, job), step: line.step },
        fields,
        typed: {},
      };
      return {
        data: {
          job: job.id,
          place: line.place,
          step: line.step,
          fields: fields.map(({ name, label, value }) => ({ name, label, value })),
        },
        page: { title: `Correct line ${line.place}`, template: 'pages/correct.njk', params },
      };
    },
  });
}
