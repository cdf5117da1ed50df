import { z } from 'zod';
import { situationNow } from '../../../procedures/actions/move.ts';
import type { Compiled } from '../../../procedures/compile.ts';
import { unshown, workBefore } from '../../../procedures/hold.ts';
import type { Answer, Job } from '../../../procedures/job.ts';
import { fill } from '../../../procedures/say.ts';
import type { HoldStep } from '../../../procedures/vocabulary.ts';
import { CONDITIONS } from '../../../safety/conditions.ts';
import { mayNotSign } from '../../../safety/sign-off.ts';
import { ENERGY_STATES, stateWord } from '../../../views/pictures/marks.ts';
import { departuresOf } from './departures.ts';
import { drawnOn, energyView } from './energies.ts';
import { holdNumber } from './scale.ts';
import { clock, day, type Names, nameOf, percent } from './words.ts';

/** Who looks at the list, and when. */
export interface Looking {
  readonly person: { readonly id: string; readonly role: string };
  readonly nowMs: number;
  readonly names: Names;
}

export interface OpenJob {
  readonly job: Job;
  readonly compiled: Compiled;
}

export const markSchema = z.object({ letter: z.string(), state: z.enum(ENERGY_STATES), word: z.string() });

const common = {
  job: z.string(),
  href: z.string(),
  tag: z.string(),
  place: z.string(),
  energies: z.array(markSchema),
  shown: z.string(),
};

export const waitingSchema = z.object({
  ...common,
  waitsMinutes: z.int(),
  hold: z.string(),
  asked: z.string(),
  departure: z.string(),
  maySign: z.boolean(),
  because: z.object({ strong: z.string(), text: z.string() }).nullable(),
});

export const sentBackSchema = z.object({
  ...common,
  sentBackAt: z.string(),
  hold: z.string(),
  wrote: z.string(),
  stands: z.string(),
});

export type Waiting = z.infer<typeof waitingSchema>;
export type SentBack = z.infer<typeof sentBackSchema>;

/** Lines that bring no job to a hold: they stand beside the work. */
const BESIDE_THE_WORK: readonly string[] = [
  'locks-removed',
  'handed-over',
  'read-again',
  'reviewed',
  'review-sent-back',
  'radio-confirmed',
  'radio-denied',
];

/** A job whose open card is a hold, as its signer finds it; null for any other. */
export function waitingRow({ job, compiled }: OpenJob, looking: Looking): Waiting | null {
  const step = compiled.definition.steps[job.step];
  if (step?.kind !== 'hold' || job.status !== 'open') return null;
  const because = whyNot(job, { compiled, looking });
  const asked = job.answers.findLast((one) => !BESIDE_THE_WORK.includes(one.act));
  return {
    ...commonOf(job, { step, looking }),
    waitsMinutes: Math.max(0, Math.floor((looking.nowMs - Date.parse(job.arrivedAt)) / 60_000)),
    hold: holdWords({ job, compiled }, job.step),
    asked: [
      `Asked by ${nameOf(asked?.person ?? job.openedBy, looking.names)} at ${clock(job.arrivedAt)}${since(job.arrivedAt, looking)}.`,
      asLeft(job),
    ]
      .filter((text) => text !== '')
      .join(' '),
    departure: departureWords(job, { step, compiled, looking }),
    maySign: because === null,
    because,
  };
}

/** A hold that went back and has not been asked for again. */
export function sentBackRow({ job, compiled }: OpenJob, looking: Looking): SentBack | null {
  const atHold = compiled.definition.steps[job.step]?.kind === 'hold';
  const last = lastAtHold(job);
  const step = compiled.definition.steps[last?.step ?? ''];
  if (atHold || last?.act !== 'hold-sent-back' || step?.kind !== 'hold') return null;
  const now = compiled.definition.steps[job.step];
  return {
    ...commonOf(job, { step, looking }),
    sentBackAt: `${clock(last.at)}${since(last.at, looking)}`,
    hold: holdWords({ job, compiled }, last.step),
    wrote: `${last.person === looking.person.id ? 'You' : nameOf(last.person, looking.names)} wrote: ${last.reason}`,
    stands: now === undefined ? '' : fill(now.title, job),
  };
}

function lastAtHold(job: Job): Answer | undefined {
  return job.answers.findLast((one) => one.act === 'hold-signed' || one.act === 'hold-sent-back');
}

function commonOf(
  job: Job,
  { step, looking }: { readonly step: HoldStep<string>; readonly looking: Looking },
) {
  return {
    job: job.id,
    href: `/jobs/${job.id}`,
    tag: job.tag,
    place: `${job.sheet.location}, ${job.sheet.service}`,
    energies: energyMarks(job, looking.nowMs),
    shown: shownWords(job, { step, nowMs: looking.nowMs }),
  };
}

export function energyMarks(job: Job, nowMs: number): z.infer<typeof markSchema>[] {
  return drawnOn(job)
    .map((condition) => energyView(condition, { job, nowMs }))
    .filter((view) => view.state !== 'absent')
    .map(({ letter, state, name }) => ({
      letter,
      state,
      word: `${name}: ${stateWord(state).toLowerCase()}`,
    }));
}

function shownWords(
  job: Job,
  { step, nowMs }: { readonly step: HoldStep<string>; readonly nowMs: number },
): string {
  const situation = situationNow(job, nowMs);
  const energies = step.evidence.filter((id) => CONDITIONS[id].group === 'energy');
  const absent = energies.filter((id) => situation.states[id] === 'absent').length;
  const asked = energies.length - absent;
  if (step.evidence.length === 0) return '';
  const missing = unshown(step, { ...job, situation }).length;
  const bypass =
    job.evidence.bypass !== undefined && step.evidence.includes('bypass') ? ', bypass recorded' : '';
  return `${asked - missing} of ${asked} shown${bypass}${absent > 0 ? `, ${absent} absent` : ''}. ${oldest(job, { step, nowMs })}`;
}

function oldest(
  job: Job,
  { step, nowMs }: { readonly step: HoldStep<string>; readonly nowMs: number },
): string {
  const read = step.evidence.flatMap((id) => {
    const note = job.evidence[id];
    return note === undefined || note.readings.length === 0 ? [] : [Date.parse(note.at)];
  });
  return read.length === 0
    ? 'No reading under it.'
    : `Oldest reading ${Math.max(0, Math.floor((nowMs - Math.min(...read)) / 60_000))} minutes.`;
}

function whyNot(
  job: Job,
  { compiled, looking }: { readonly compiled: Compiled; readonly looking: Looking },
): Waiting['because'] {
  const { person } = looking;
  const because = mayNotSign(person, workBefore(job, compiled.definition));
  if (because === null) return null;
  if (because === 'role' || because === 'not competent')
    return { strong: 'A supervisor signs this.', text: 'You may read it.' };
  if (because === 'not named')
    return { strong: 'The people whom it names sign this.', text: 'You may read it.' };
  if (because === 'acknowledged it')
    return { strong: 'You acknowledged part of this work.', text: 'Somebody else signs.' };
  const locks = Object.values(job.locks).filter((lock) => lock.owner === person.id);
  const hung = `You hung lock ${locks.map((lock) => lock.lock).join(', ')} on this job.`;
  const strong = locks.length > 0 ? hung : 'You did or recorded part of this work.';
  return { strong, text: 'Somebody else signs.' };
}

function holdWords({ job, compiled }: OpenJob, id: string): string {
  const step = compiled.definition.steps[id];
  const { hold } = holdNumber(job, compiled.definition, id);
  const title = step === undefined ? id : fill(step.title, job);
  return `Hold${hold > 0 ? ` ${hold}` : ''}: ${title.slice(0, 1).toLowerCase()}${title.slice(1)}`;
}

function asLeft({ figures, sheet }: Job): string {
  const worst = figures.asLeftVerdict?.errorWorstPercent;
  if (typeof worst !== 'number') return '';
  return `As left: ${percent(Math.abs(worst))} % off at most, limit ${sheet.errorTolerancePercent}.`;
}

function departureWords(
  job: Job,
  {
    step,
    compiled,
    looking,
  }: { readonly step: HoldStep<string>; readonly compiled: Compiled; readonly looking: Looking },
): string {
  const missing = unshown(step, { ...job, situation: situationNow(job, looking.nowMs) });
  const departures = departuresOf(job, compiled);
  const last = departures.at(-1);
  const counted = departures.length === 1 ? 'One departure' : `${departures.length} departures, the last`;
  return [
    ...(missing.length > 0 ? [`Not shown safe: ${missing.join(', ')}.`] : []),
    ...(last === undefined ? [] : [`${counted}: ${last.what}. ${last.reason}`]),
  ].join(' ');
}

/** The day too, where it is not today. */
function since(at: string, { nowMs }: Looking): string {
  return day(at) === new Date(nowMs).toISOString().slice(0, 10) ? '' : ` on ${day(at)}`;
}
