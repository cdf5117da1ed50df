/** What was wrong with a simulated valve, what the apprentice did to find it, and what the engine would have done. */
import { z } from 'zod';
import type { Job } from '../../procedures/job.ts';
import { wordOf } from '../../procedures/practice/bench/complaint.ts';
import { SEVERITIES } from '../../procedures/practice/bench/draw.ts';
import { searchByEngine, type Told, truthOf } from '../../procedures/practice/bench/search.ts';
import { type Done, doneIn, namedIn } from '../../procedures/practice/bench/told.ts';
import type { SimulatedValve } from '../../procedures/practice/simulated.ts';
import { causeOf } from '../../procedures/troubleshooting/causes.ts';
import { checkOf } from '../../procedures/troubleshooting/checks.ts';
import { repairFor, repairOf } from '../../procedures/troubleshooting/repairs.ts';
import { GAUGE_POINTS } from '../../procedures/troubleshooting/valve-facts.ts';
import { sayChance } from '../jobs/view/cards/fault-words.ts';
import type { Exercise } from './exercise-stream.ts';
import { valveAtFirst } from './simulated-valves.ts';
import { verdictOf } from './verdict.ts';

const step = z.object({ what: z.string(), told: z.string(), minutes: z.number(), chance: z.string() });

export const resultAnswer = z.object({
  tag: z.string(),
  truth: z.array(z.string()),
  named: z.string().nullable(),
  rightly: z.boolean(),
  verdict: z.string(),
  minutes: z.number(),
  checks: z.number(),
  engineMinutes: z.number(),
  engineChecks: z.number(),
  engineNamed: z.string(),
  engineRightly: z.boolean(),
  /** What it would have named cures all that was wrong. */
  engineWhole: z.boolean(),
  steps: z.array(step),
  engineSteps: z.array(step),
});

export type Result = z.output<typeof resultAnswer>;

export function resultOf(job: Job, exercise: Exercise): Result {
  const valve = valveAtFirst(exercise, job);
  const truth = truthOf(valve);
  const done = doneIn(job, truth);
  const named = namedIn(job, truth);
  const engine = searchByEngine(valve);
  const looked = done.filter(({ kind }) => kind !== 'mend');
  return {
    tag: job.tag,
    truth: sayTruth(valve),
    named: named === null ? null : repairOf(named.repair).words,
    ...verdictOf(job, truth),
    minutes: sum(looked),
    checks: done.filter(({ kind, found }) => kind === 'check' && found !== 'skip').length,
    engineMinutes: Math.round(engine.minutes),
    engineChecks: engine.told.length,
    engineNamed: repairOf(engine.repair).words,
    engineRightly: truth.some((cause) => repairFor(cause) === engine.repair),
    engineWhole: truth.every((cause) => repairFor(cause) === engine.repair),
    steps: done.map(stepOf),
    engineSteps: engine.told.map(engineStep),
  };
}

function sum(all: readonly Done[]): number {
  return Math.round(all.reduce((total, { minutes }) => total + minutes, 0));
}

function sayTruth({ faults }: SimulatedValve): readonly string[] & string[] {
  if (faults.length === 0) return ['Nothing was wrong with this valve'];
  return faults.map(({ cause, severity }) => `${causeOf(cause).words} (${sayBad(severity)})`);
}

function sayBad(severity: number): string {
  if (severity < (SEVERITIES.slight + SEVERITIES.plain) / 2) return 'slight';
  return severity < (SEVERITIES.plain + SEVERITIES.bad) / 2 ? 'plain' : 'bad';
}

function stepOf({ kind, check, repair, point, found, minutes, ...told }: Done): z.output<typeof step> {
  const chance = told.isAfterCure ? 'it was mended by then' : sayChange(told);
  const rest = { minutes: Math.round(minutes), chance };
  if (kind === 'first line') return { ...rest, what: 'What the operator said', told: '' };
  if (kind === 'gauge')
    return { ...rest, what: `Gauge fitted ${point === null ? '' : GAUGE_POINTS[point]}`, told: '' };
  if (kind === 'mend')
    return { ...rest, what: `Mended: ${repair === null ? '' : repairOf(repair).words}`, told: '' };
  if (check === null) throw new Error('a check without its name');
  return { ...rest, what: checkOf(check).title, told: sayFound(check, found) };
}

function engineStep({ check, item, minutes, ...chances }: Told): z.output<typeof step> {
  const found = item.kind === 'answer' ? foundOf(check, item) : item.kind;
  return {
    what: checkOf(check).title,
    told: sayFound(check, found),
    minutes: Math.round(minutes),
    chance: sayChange(chances),
  };
}

function foundOf(
  check: Told['check'],
  item: { readonly outcome?: string; readonly value?: number; readonly readSigma?: number },
): string {
  if (item.outcome !== undefined) return item.outcome;
  return wordOf(check, { value: item.value ?? 0, readSigma: item.readSigma ?? 0 });
}

const NO_ANSWER: Readonly<Record<string, string>> = {
  'cannot tell': 'Could not be told',
  skip: 'Skipped',
};

function sayFound(check: Told['check'], found: string): string {
  return NO_ANSWER[found] ?? checkOf(check).outcomes[found] ?? found;
}

/** How much a check moved the odds of the truth, and where they stand then. */
function sayChange({
  beforeFraction,
  afterFraction,
}: Pick<Told, 'beforeFraction' | 'afterFraction'>): string {
  const times = odds(afterFraction) / odds(beforeFraction);
  const now = sayChance(afterFraction);
  if (times > 1 / LITTLE && times < LITTLE) return `told little: ${now}`;
  const factor = sayFactor(times > 1 ? times : 1 / times);
  return times > 1 ? `likelier, ${factor}: now ${now}` : `less likely, ${factor}: now ${now}`;
}

/** A shift of the odds by less than a fifth tells little: judgement, as on the card of a hub. */
const LITTLE = 1.2;

function odds(fraction: number): number {
  const within = Math.min(1 - 1e-6, Math.max(1e-6, fraction));
  return within / (1 - within);
}

function sayFactor(times: number): string {
  if (times >= 100) return 'a hundred times and more';
  return times < 1.75 ? 'by half' : `about ${Math.round(times)} times`;
}
