/** Lines of a job, and the form that corrects one. */
import { z } from 'zod';
import { rowFields } from '../../procedures/actions/answer.ts';
import { fill } from '../../procedures/say.ts';
import { Refusal } from '../../safety/refusal.ts';
import { type BareCall, type Route, route } from '../http/route.ts';
import type { Catalogue } from '../jobs/catalogue.ts';
import { loadJob } from '../jobs/load.ts';
import { fieldViews, type Typed } from '../jobs/view/fields.ts';
import type { Person } from '../people/person.ts';

export function lineRoute(catalogue: Catalogue): Route {
  return route({
    method: 'GET',
    path: '/jobs/:id/lines/:place',
    name: 'showLine',
    summary: 'One line of a job, with the fields that a correction of it would give again',
    roles: ['technician', 'supervisor', 'engineer'],
    answer: z.object({
      job: z.string(),
      place: z.number(),
      step: z.string(),
      fields: z.array(z.object({ name: z.string(), label: z.string(), value: z.string() })),
    }),
    handle: async (call) => {
      const page = await linePage(call, { catalogue, place: call.params.place ?? '' });
      if (page === null) throw noSuchLine();
      const { job, line, fields } = page.params;
      return {
        data: {
          job: job.id,
          place: line.place,
          step: line.step,
          fields: fields.map(({ name, label, value }) => ({ name, label, value })),
        },
        page,
      };
    },
  });
}

/**
 * The page that corrects a line, filled with what stands there, or with what was typed before a refusal.
 * @returns null for what is no reading, or stands no more
 */
export async function linePage(
  call: BareCall & { readonly person: Person },
  {
    catalogue,
    place,
    again,
  }: { readonly catalogue: Catalogue; readonly place: string; readonly again?: Typed },
) {
  const { services, person, params: named } = call;
  const { job, around } = await loadJob(named.id ?? '', { services, catalogue, person });
  const line = job.answers.find((one) => String(one.place) === place && !one.superseded);
  const step = line === undefined ? undefined : around.compiled.definition.steps[line.step];
  if (line === undefined || (step?.kind !== 'reading' && step?.kind !== 'table')) return null;
  const rows = (job.tables[line.step] ?? []).slice(0, line.row ?? 0);
  const then = { ...job, step: line.step, tables: { ...job.tables, [line.step]: rows } };
  const stands = {
    ...line.words,
    ...Object.fromEntries(line.readings.map((reading) => [reading.field, reading.typed])),
  };
  const fields = fieldViews(step.kind === 'table' ? rowFields(step, then) : step.asks, {
    job: then,
    again: again ?? { typed: stands, wrong: {} },
  });
  const params = {
    job: { id: job.id, tag: job.tag, place: job.place },
    line: { place: line.place, what: fill(step.title, job), step: line.step },
    fields,
    typed: again?.typed ?? {},
  };
  return { title: `Correct line ${line.place}`, template: 'pages/correct.njk', params };
}

function noSuchLine(): Refusal {
  return new Refusal({
    kind: 'not-found',
    code: 'JOB-005',
    what: 'That line cannot be corrected.',
    kept: 'Nothing was written.',
    next: 'Choose a reading that stands.',
  });
}
