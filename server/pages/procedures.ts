/** The procedures that are served: a list, each as the sheet that people review, and as a form for paper. */
import { z } from 'zod';
import { printedSteps } from '../../procedures/sheet-print.ts';
import { revisionOf, sayTried } from '../../procedures/vocabulary.ts';
import { Refusal } from '../../safety/refusal.ts';
import { oneOf, text } from '../http/fields.ts';
import { type Route, route } from '../http/route.ts';
import type { Catalogue, Served } from '../jobs/catalogue.ts';
import { chartsOf } from '../procedures/chart-of.ts';
import { named } from '../procedures/named.ts';
import { paperForm } from '../procedures/paper-form.ts';
import { noSuchValve } from '../valves/valve-refusals.ts';
import { valveKind } from '../valves/valve-stream.ts';

const FOR = {
  overhaul: 'overhaul',
  commissioning: 'setting and checking',
  troubleshooting: 'finding a fault',
} as const;

const stepAnswer = z.object({
  number: z.number(),
  id: z.string(),
  title: z.string(),
  lines: z.array(z.string()),
});

export function procedureRoutes(catalogue: Catalogue): readonly Route[] {
  return [listRoute(catalogue), sheetRoute(catalogue), formRoute(catalogue)];
}

function listRoute(catalogue: Catalogue): Route {
  return route({
    method: 'GET',
    path: '/procedures',
    name: 'listProcedures',
    summary: 'The procedures that jobs are opened on, with their revisions',
    roles: 'signed-in',
    menu: { text: 'Procedures', order: 45 },
    answer: z.object({
      procedures: z.array(
        z.object({
          id: z.string(),
          title: z.string(),
          for: z.string(),
          revision: z.string(),
          hash: z.string(),
        }),
      ),
    }),
    handle: () => {
      const procedures = catalogue.all().map((served) => ({
        ...headOf(served),
        steps: Object.keys(served.procedure.definition.steps).length,
        holds: Object.values(served.procedure.definition.steps).filter(({ kind }) => kind === 'hold').length,
      }));
      return {
        data: { procedures: procedures.map(({ steps: _, holds: __, ...head }) => head) },
        page: { title: 'Procedures', template: 'pages/procedures.njk', params: { procedures } },
      };
    },
  });
}

function sheetRoute(catalogue: Catalogue): Route {
  return route({
    method: 'GET',
    path: '/procedures/:id',
    name: 'showProcedure',
    summary: 'One procedure as the sheet that people review: every step, its ways, what each records',
    roles: 'signed-in',
    answer: z.object({
      id: z.string(),
      title: z.string(),
      for: z.string(),
      revision: z.string(),
      hash: z.string(),
      steps: z.array(stepAnswer),
    }),
    handle: ({ params }) => {
      const served = found(catalogue, params.id);
      const { definition } = served.compiled;
      const steps = printedSteps(definition).map((step) => ({
        ...step,
        title: named(step.title),
        lines: step.lines.map(named),
      }));
      const charts = chartsOf(definition, named);
      return {
        data: {
          ...headOf(served),
          steps: steps.map(({ number, id, title, lines }) => ({ number, id, title, lines: [...lines] })),
        },
        page: {
          title: 'Procedure',
          template: 'pages/procedure.njk',
          params: {
            head: headOf(served),
            control: definition.energyControl,
            revisions: definition.revisions.toReversed(),
            tried: sayTried(definition),
            phases: definition.phases.map(({ id, title }) => ({
              title,
              chart: charts.find((one) => one.title === title)?.chart ?? null,
              steps: steps.filter(({ phase }) => phase === id),
            })),
          },
        },
      };
    },
  });
}

function formRoute(catalogue: Catalogue): Route {
  return route({
    method: 'GET',
    path: '/procedures/:id/form',
    name: 'showPaperForm',
    summary: 'One procedure for one valve as a form to fill by hand, with the numbers of the valve',
    roles: 'signed-in',
    query: z.object({
      tag: text({ called: 'the valve tag', max: 60 }),
      place: oneOf(['bench', 'line']),
    }),
    answer: z.object({
      title: z.string(),
      revision: z.string(),
      tag: z.string(),
      because: z.string().nullable(),
    }),
    handle: async ({ params, query, services }) => {
      const served = found(catalogue, params.id);
      const { sheet } = await services.log.state(valveKind, query.tag);
      if (sheet === null) throw noSuchValve(query.tag);
      const place = query.place === 'bench' ? 'bench' : 'line';
      const form = paperForm(served.compiled, { sheet, place });
      const { title, revision, tag } = form;
      const because = served.procedure.whyNot(sheet, place);
      const where = place === 'bench' ? 'on the bench' : 'in the line';
      return {
        data: { title, revision, tag, because },
        page: {
          title: `Form for ${tag}`,
          template: 'pages/paper-form.njk',
          params: { form, because, where },
        },
      };
    },
  });
}

function headOf({ hash, procedure }: Served) {
  const { definition } = procedure;
  return {
    id: definition.id,
    title: definition.title,
    for: FOR[procedure.folder],
    revision: revisionOf(definition),
    hash,
  };
}

/** @throws Refusal PCD-001 */
function found(catalogue: Catalogue, id = ''): Served {
  const served = catalogue.current(id);
  if (served !== undefined) return served;
  throw new Refusal({
    kind: 'not-found',
    code: 'PCD-001',
    what: `There is no procedure "${id}".`,
    kept: 'Nothing was changed.',
    next: 'Choose one of the list of procedures.',
  });
}
