import { z } from 'zod';
import { fieldsToReadAgain } from '../../procedures/actions/read-again.ts';
import { fill } from '../../procedures/say.ts';
import type { ChoiceField, Field, QuantityField } from '../../procedures/vocabulary.ts';
import { ACTION_CLASSES } from '../../safety/action-classes.ts';
import { Refusal } from '../../safety/refusal.ts';
import { workByRadio } from '../../safety/sign-off.ts';
import { type Route, route } from '../http/route.ts';
import type { Catalogue } from '../jobs/catalogue.ts';
import { loadJob } from '../jobs/load.ts';
import { holdCard } from '../jobs/view/cards/hold-card.ts';
import { fieldViews } from '../jobs/view/fields.ts';
import { scaleView } from '../jobs/view/scale.ts';
import { stepViews } from '../jobs/view/steps.ts';
import { radioCode } from '../signing/radio-code.ts';
import { readOut } from '../signing/read-out.ts';

const WORKERS = ['technician', 'supervisor', 'engineer'] as const;

/** Pages beside the open card: all cards to read, a second reading of a gauge, a hold read out by radio. */
export function secondLookRoutes(catalogue: Catalogue): readonly Route[] {
  return [stepsRoute(catalogue), readAgainRoute(catalogue), radioRoute(catalogue)];
}

function stepsRoute(catalogue: Catalogue): Route {
  const wayAnswer = z.object({ way: z.string(), leads: z.string(), state: z.string() });
  const stepAnswer = z.object({
    step: z.string(),
    title: z.string(),
    state: z.string(),
    more: z.string(),
    ways: z.array(wayAnswer),
  });
  return route({
    method: 'GET',
    path: '/jobs/:id/steps',
    name: 'showSteps',
    summary:
      'Every card of the job’s own revision, ahead and back, with how each stands and which of its ways was taken; looking does nothing',
    roles: 'signed-in',
    answer: z.object({
      job: z.string(),
      revision: z.string(),
      phases: z.array(z.object({ title: z.string(), steps: z.array(stepAnswer) })),
    }),
    handle: async (call) => {
      const { services, person, params } = call;
      const { job, around } = await loadJob(params.id ?? '', { services, catalogue, person });
      const phases = stepViews(job, around.compiled);
      const { title } = around.compiled.definition;
      const told = phases.map((phase) => ({
        title: phase.title,
        steps: phase.steps.map(({ step, title: what, state, more, ways }) => ({
          step,
          title: what,
          state,
          more,
          ways: ways.map((way) => ({ ...way })),
        })),
      }));
      return {
        data: { job: job.id, revision: job.procedureRevision, phases: told },
        page: {
          title: 'All steps',
          template: 'pages/steps.njk',
          params: {
            job: { id: job.id, tag: job.tag, revision: job.procedureRevision },
            procedure: title,
            phases,
          },
        },
      };
    },
  });
}

function readAgainRoute(catalogue: Catalogue): Route {
  return route({
    method: 'GET',
    path: '/jobs/:id/lines/:place/again',
    name: 'showReadAgain',
    summary: 'What a second person reads again of a line; what the first one read is not in it',
    roles: WORKERS,
    answer: z.object({
      job: z.string(),
      about: z.number(),
      title: z.string(),
      fields: z.array(z.object({ name: z.string(), label: z.string(), gauge: z.string() })),
      nonce: z.string(),
    }),
    handle: async (call) => {
      const { services, person, params, screen } = call;
      const { job, around } = await loadJob(params.id ?? '', { services, catalogue, person });
      const about = Number(params.place);
      const { line, fields } = fieldsToReadAgain(job, { about, around });
      const step = around.compiled.definition.steps[line.step];
      const title = step === undefined ? line.step : fill(step.title, job);
      const nonce = services.nonces.issue({ job: job.id, line: about, digest: '', screen });
      const views = fieldViews(fields.map(bare), { job, again: { typed: {}, wrong: {} } });
      const people = (await services.people.list()).filter(
        (one) => !one.retired && one.role !== 'safety-officer' && one.id !== line.person,
      );
      const page = {
        job: { id: job.id, tag: job.tag, place: job.place },
        about,
        what: title,
        fields: views,
        nonce,
        people: people.map(({ id, name }) => ({ value: id, label: name, selected: id === person.id })),
      };
      return {
        data: {
          job: job.id,
          about,
          title,
          fields: views.map(({ name, label, gauge }) => ({ name, label, gauge })),
          nonce,
        },
        page: { title: 'Read again', template: 'pages/read-again.njk', params: page },
      };
    },
  });
}

/** Neither what is hoped for nor what stood there before is said to whoever reads again. */
function bare({ carried: _, optional: _optional, ...field }: QuantityField | ChoiceField): Field {
  if (field.type === 'choice') return field;
  const { wanted: _wanted, ...quantity } = field;
  return quantity;
}

function radioRoute(catalogue: Catalogue): Route {
  return route({
    method: 'GET',
    path: '/jobs/:id/radio',
    name: 'showRadio',
    summary:
      'What is read out by radio for a hold, with the code that is read back; then the form for the answer',
    roles: WORKERS,
    query: z.object({ heard: z.string().max(120).default('') }),
    answer: z.object({
      job: z.string(),
      step: z.string(),
      place: z.number(),
      shownDigest: z.string(),
      nonce: z.string(),
      code: z.string(),
      lines: z.array(z.string()),
    }),
    handle: async (call) => {
      const { services, person, params, query, screen } = call;
      const { job, around } = await loadJob(params.id ?? '', { services, catalogue, person });
      const step = around.compiled.definition.steps[job.step];
      if (step?.kind !== 'hold' || job.status !== 'open' || workByRadio(step.allows) === null)
        throw notByRadio();
      const digest = around.shownDigest;
      const isHeard = query.heard !== '';
      const nonce = isHeard
        ? query.heard
        : services.nonces.issue({ job: job.id, line: job.place, digest, screen });
      const people = (await services.people.list()).filter((one) => !one.retired && one.id !== person.id);
      const card = holdCard(step, {
        job,
        around,
        number: scaleView(job, around.compiled).at,
        again: { typed: {}, wrong: {} },
        people,
        competent: [],
        nonce,
      });
      const leftOut = step.allows.filter((action) => !(workByRadio(step.allows) ?? []).includes(action));
      const code = isHeard ? '' : radioCode({ nonce, digest });
      const lines = readOut(card, {
        job,
        leftOut: leftOut.map((action) => ACTION_CLASSES[action].name),
      });
      const data = { job: job.id, step: job.step, place: job.place, shownDigest: digest, nonce, code, lines };
      const page = {
        ...data,
        tag: job.tag,
        hold: card.hold,
        heading: card.heading,
        people: card.people,
        isHeard,
      };
      return {
        data: { ...data, lines: [...lines] },
        page: { title: 'By radio', template: 'pages/radio.njk', params: page },
      };
    },
  });
}

function notByRadio(): Refusal {
  return new Refusal({
    kind: 'not-found',
    code: 'RAD-003',
    what: 'No hold is open on this job that may be signed by radio.',
    kept: 'Nothing was written.',
    next: 'Look at the open card.',
  });
}
