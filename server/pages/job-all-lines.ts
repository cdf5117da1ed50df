/** The lines of a job by phase: all of them, or one of them with what stands behind it. */
import { z } from 'zod';
import { type Route, route } from '../http/route.ts';
import type { Catalogue } from '../jobs/catalogue.ts';
import { loadJob } from '../jobs/load.ts';
import { lineGroups } from '../jobs/view/job-view.ts';
import { wholeLine } from '../jobs/view/lines-in-sight.ts';
import { lineAnswer, toldLine } from '../jobs/view/page.ts';

const placeOfLine = z
  .string()
  .regex(/^\d{1,9}$/, 'Say which line, by its number.')
  .optional();

export function allLinesRoute(catalogue: Catalogue): Route {
  return route({
    method: 'GET',
    path: '/jobs/:id/lines',
    name: 'showLines',
    summary:
      'The lines of a job by phase, oldest first, with all that stands behind them; or only one of them by its number in the job',
    roles: 'signed-in',
    query: z.object({ line: placeOfLine }),
    answer: z.object({
      job: z.string(),
      phases: z.array(z.object({ title: z.string(), lines: z.array(lineAnswer) })),
    }),
    handle: async (call) => {
      const { services, person, params: named, query } = call;
      const { job, around } = await loadJob(named.id ?? '', { services, catalogue, person });
      const phases = lineGroups(job, around).flatMap(({ phase, lines }) => {
        const chosen = lines.filter(({ place }) => query.line === undefined || place === Number(query.line));
        return chosen.length === 0 ? [] : [{ phase, lines: chosen.map((line) => wholeLine(line, job)) }];
      });
      const params = { job: { id: job.id, tag: job.tag, procedureId: job.procedure }, phases };
      return {
        data: {
          job: job.id,
          phases: phases.map(({ phase, lines }) => ({
            title: phase,
            lines: lines.map(toldLine),
          })),
        },
        fragment: { template: 'parts/opened-line.njk', params },
        page: { title: `Lines of job ${job.id}`, template: 'pages/lines.njk', params },
      };
    },
  });
}
