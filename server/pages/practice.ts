/** The practice bench: its list, setting an exercise, the gauges beside a card, its supervisor, and what was wrong. */
import { z } from 'zod';
import type { Job } from '../../procedures/job.ts';
import { searching } from '../../procedures/practice/bench/search.ts';
import { loopTableOf, recordLoop } from '../../procedures/practice/loop-table.ts';
import { type BareCall, type Route, route } from '../http/route.ts';
import { actOnJob, noSuchJob } from '../jobs/acts.ts';
import type { Catalogue } from '../jobs/catalogue.ts';
import { jobKind } from '../jobs/job-stream.ts';
import { jobAnswer, jobPage, jobPiece, NOTHING_TYPED } from '../jobs/view/page.ts';
import { fingerprintOf } from '../log/chain.ts';
import { streamOf } from '../log/stream-kind.ts';
import { lettingOthersIn } from '../long/turns.ts';
import { noExercise, stillHidden } from '../practice/bench-refusals.ts';
import { type Exercise, exerciseKind } from '../practice/exercise-stream.ts';
import { AT_BENCH } from '../practice/links.ts';
import { mayBeTold } from '../practice/may-be-told.ts';
import { BENCH_SUPERVISOR, knowPerson } from '../practice/on-bench.ts';
import { resultAnswer, resultOf } from '../practice/result.ts';
import { valveAtFirst, valveNow } from '../practice/simulated-valves.ts';
import type { Services } from '../services.ts';
import { byOf } from './parts.ts';

const WORKERS = ['technician', 'supervisor', 'engineer'] as const;

/** What the bench has beside the routes of a job. */
export function benchRoutes(catalogue: Catalogue): readonly Route[] {
  return [gaugesRoute(catalogue), loopRoute(), signRoute(catalogue), giveUpRoute(), resultRoute()];
}

const percent = z
  .string()
  .regex(/^\d{1,3}$/, 'A whole number of per cent.')
  .refine((text) => Number(text) <= 100, 'From 0 to 100.')
  .default('60');

function gaugesRoute(catalogue: Catalogue): Route {
  return route({
    method: 'GET',
    path: `${AT_BENCH}/jobs/:id/gauges`,
    name: 'showBenchGauges',
    summary: 'The gauges of the practice bench at the open check, with the controller output somewhere else',
    roles: 'signed-in',
    isPractice: true,
    query: z.object({ output: percent, from: percent }),
    answer: jobAnswer,
    handle: async (call) => {
      const output = { outputPercent: Number(call.query.output), fromPercent: Number(call.query.from) };
      const reply = await jobPage(call, { catalogue, again: NOTHING_TYPED, output });
      return { ...reply, fragment: { template: 'parts/bench-panel.njk', params: reply.params } };
    },
  });
}

function loopRoute(): Route {
  return route({
    method: 'GET',
    path: `${AT_BENCH}/jobs/:id/loop.csv`,
    name: 'exportBenchLoop',
    summary: 'A record of the loop of the simulated valve as a table, to be read by its own card',
    roles: 'signed-in',
    rawType: 'text/csv',
    isPractice: true,
    answer: z.object({ table: z.string() }),
    handle: async (call) => {
      const { job, exercise } = await exerciseOf(call);
      const valve = valveNow(exercise, job);
      await lettingOthersIn(recordLoop(valve));
      const table = loopTableOf(valve);
      const fileName = `loop-${job.tag.replaceAll(/[^\w-]/g, '-')}.csv`;
      return { data: { table }, raw: { contentType: 'text/csv; charset=utf-8', body: table, fileName } };
    },
  });
}

function signRoute(catalogue: Catalogue): Route {
  return route({
    method: 'POST',
    path: `${AT_BENCH}/jobs/:id/sign`,
    name: 'signOnBench',
    summary:
      'Have the hold signed by the supervisor that the practice bench plays, if each energy is shown safe',
    roles: WORKERS,
    isPractice: true,
    body: z.object({
      place: z.string().regex(/^\d{1,9}$/, 'Say which line you had seen last.'),
      step: z.string().max(80),
      shownDigest: z.string().max(64),
      nonce: z.string().max(120),
    }),
    answer: jobAnswer,
    handle: async (call) => {
      const { services, requestId, screen, body } = call;
      const id = call.params.id ?? '';
      const { step, shownDigest, nonce } = body;
      const place = Number(body.place);
      const isAgain = (await services.store.answered(requestId)) !== undefined;
      if (!isAgain) services.nonces.check(nonce, { job: id, line: place, digest: shownDigest, screen });
      await knowPerson(call, BENCH_SUPERVISOR);
      const { name, role } = BENCH_SUPERVISOR;
      await actOnJob({
        services,
        catalogue,
        requestId,
        screen,
        person: BENCH_SUPERVISOR,
        job: id,
        action: { kind: 'sign', place, step, shownDigest },
        signatory: {
          signer: { id: BENCH_SUPERVISOR.id, role },
          name,
          way: 'walk-up',
          why: '',
          nonce,
          radio: null,
        },
      });
      const reply = await jobPage(call, { catalogue, again: NOTHING_TYPED });
      return { ...reply, fragment: jobPiece(reply), seeOther: `${AT_BENCH}/jobs/${id}#card` };
    },
    refused: async (call) => {
      if (call.person === null) throw new TypeError('a refused act without a person');
      const reply = await jobPage({ ...call, person: call.person }, { catalogue, again: NOTHING_TYPED });
      return { ...(reply.page === undefined ? {} : { page: reply.page }), fragment: jobPiece(reply) };
    },
  });
}

function giveUpRoute(): Route {
  return route({
    method: 'POST',
    path: `${AT_BENCH}/jobs/:id/give-up`,
    name: 'giveUpExercise',
    summary: 'Give an exercise up, and be told what was wrong',
    roles: WORKERS,
    isPractice: true,
    body: z.object({}),
    answer: z.object({ job: z.string() }),
    handle: async (call) => {
      const { job } = await exerciseOf(call);
      const stream = streamOf('exercise', job.tag);
      await call.services.log.act({
        ...byOf(call),
        fingerprint: fingerprintOf({ givesUp: job.tag }),
        streams: [stream],
        decide: (read) => ({
          entries: read.state(exerciseKind, job.tag).givenUp
            ? []
            : [{ stream, kind: 'exercise-given-up', inputs: { job: job.id }, outcome: {}, effects: {} }],
          answer: {},
        }),
      });
      return { data: { job: job.id }, seeOther: `${AT_BENCH}/jobs/${job.id}/result` };
    },
  });
}

function resultRoute(): Route {
  return route({
    method: 'GET',
    path: `${AT_BENCH}/jobs/:id/result`,
    name: 'showExerciseResult',
    summary:
      'What was wrong with the simulated valve, the checks and minutes that were used, and those of the engine',
    roles: 'signed-in',
    isPractice: true,
    answer: resultAnswer,
    handle: async (call) => {
      const { job, exercise } = await exerciseOf(call);
      if (!mayBeTold(job, exercise)) throw stillHidden();
      await lettingOthersIn(searching(valveAtFirst(exercise, job)));
      const result = resultOf(job, exercise);
      const params = { result, job: { id: job.id, tag: job.tag, status: job.status, after: exercise.after } };
      return {
        data: result,
        page: { title: `What was wrong with ${job.tag}`, template: 'pages/practice-result.njk', params },
      };
    },
  });
}

/** @throws Refusal JOB-000, PRC-004 */
async function exerciseOf({
  services,
  params,
}: Pick<BareCall, 'params'> & { readonly services: Services }): Promise<{
  readonly job: Job;
  readonly exercise: Exercise;
}> {
  const id = params.id ?? '';
  const job = await services.log.state(jobKind, id);
  if (job.status === 'none') throw noSuchJob(id);
  const exercise = await services.log.state(exerciseKind, job.tag);
  if (exercise.tag === '') throw noExercise(id);
  return { job, exercise };
}
