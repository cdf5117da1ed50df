/**
 * Answers any card of any procedure from its fields: the first choice, a plausible number from the sheet, what the
 * stroke script says where it knows the card. What a test means to be otherwise it overrides by step.
 */

import { compile } from '../../procedures/compile.ts';
import type { JobDraft } from '../../procedures/evolve.ts';
import { standsSo } from '../../procedures/facts.ts';
import { rowsToReadAgain } from '../../procedures/hold.ts';
import type { Job } from '../../procedures/job.ts';
import { FIGURES } from '../../procedures/quantities.ts';
import type { ServedProcedure } from '../../procedures/served-procedure.ts';
import type { Definition, Field, HoldStep, QuantityField, Step } from '../../procedures/vocabulary.ts';
import { gearFor, gearItem } from './gear.ts';
import { act, answer, type JobRun, type Opened, OTHER_TECHNICIAN, openJob, sign } from './jobs.ts';
import { strokeScript, type Texts, textsAt } from './stroke-script.ts';

/** By step: the texts, or one set for each time that the card is met; the last stands for all later times. */
export type Overrides = Readonly<Record<string, Texts | readonly Texts[]>>;

export interface Play {
  readonly overrides?: Overrides;
  /** Where to stop; else at the end of the job. */
  readonly to?: string;
}

const ACTS_MAX = 250;

/** A job on a procedure that is not the stroke check. @example jobOn(served, { place: 'bench' }) */
export function jobOn(
  { definition, gearOnBench = [] }: Pick<ServedProcedure, 'definition' | 'gearOnBench'>,
  opened: Opened = {},
): JobRun {
  const gear = gearFor(opened.place ?? 'line');
  const more = Object.fromEntries(gearOnBench.map((role) => [role, gearItem(role)]));
  return openJob({ compiled: compiledOf(definition), gear: { ...more, ...gear }, ...opened });
}

const compiledBefore = new Map<Definition, ReturnType<typeof compile>>();

/** Compiled once for all tests of a file. */
function compiledOf(definition: Definition): ReturnType<typeof compile> {
  const compiled = compiledBefore.get(definition) ?? compile(definition);
  compiledBefore.set(definition, compiled);
  return compiled;
}

/** Plays a job on, card by card, each answered from its fields. */
export function play(run: JobRun, { overrides = {}, to }: Play = {}): JobRun {
  for (let acts = 0; run.job.status !== 'closed' && run.job.step !== to; acts += 1) {
    if (acts > ACTS_MAX) throw new Error(`${acts} cards answered, and the job stands at ${run.job.step}`);
    playOne(run, overrides);
  }
  if (to !== undefined && run.job.step !== to)
    throw new Error(`the job closed and never came to ${to}: ${pathOf(run.job).join(' ')}`);
  return run;
}

/** Answers the open card; a hold is signed, a wait is waited for. */
export function playOne(run: JobRun, overrides: Overrides = {}): JobDraft {
  const step = run.compiled.definition.steps[run.job.step];
  if (step === undefined || step.kind === 'end') throw new Error(`no card stands open at ${run.job.step}`);
  if (step.kind === 'hold') return readTwice(run, step) ?? sign(run);
  if (step.kind === 'wait') run.nowMs += step.waitS * 1000;
  return answer(run, answersFor(run.job, { step, overrides }));
}

/** What a hold wants read by a second person is read so first, as the first one found it; null where nothing is left. */
function readTwice(run: JobRun, step: HoldStep<string>): JobDraft | null {
  const about = rowsToReadAgain(step, run.job)[0]?.note?.place;
  const line = run.job.answers.find(({ place }) => place === about);
  if (line === undefined) return null;
  const typed = line.readings.map((reading) => [reading.field, reading.typed] as const);
  const given = { ...line.words, ...Object.fromEntries(typed) };
  return act(run, { kind: 'read-again', about: line.place, mode: 'independent', given }, OTHER_TECHNICIAN);
}

/** The steps that were answered, in order. */
export function pathOf(job: Job): readonly string[] {
  return job.answers.map(({ step }) => step);
}

/** Outcomes of a step, one for each time that it was answered. */
export function outcomesOf(job: Job, step: string): readonly string[] {
  return job.answers.filter((one) => one.step === step).map(({ outcome }) => outcome);
}

/** What would be typed on a card. */
export function answersFor(
  job: Job,
  { step, overrides = {} }: { readonly step: Step; readonly overrides?: Overrides },
): Texts {
  const meant = overrides[job.step];
  const times = outcomesOf(job, job.step).length;
  const given = isList(meant) ? (meant[times] ?? meant.at(-1) ?? {}) : (meant ?? {});
  return { ...plain(job, step), ...known(job, step), ...given };
}

function isList(texts: Texts | readonly Texts[] | undefined): texts is readonly Texts[] {
  return Array.isArray(texts);
}

/** What the stroke script says of this card, as far as the card asks it. */
function known(job: Job, step: Step): Texts {
  const row = (job.tables[job.step] ?? []).length;
  const texts = textsAt(strokeScript(job.sheet), { step: job.step, row });
  const asked = step.kind === 'reading' ? new Set(step.asks.map(({ name }) => name)) : null;
  const choice = texts.choice;
  if (step.kind === 'question' && (choice === undefined || step.choices[choice] === undefined)) return {};
  return asked === null
    ? texts
    : Object.fromEntries(Object.entries(texts).filter(([name]) => asked.has(name)));
}

function plain(job: Job, step: Step): Texts {
  if (step.kind === 'question') {
    const [name, first] = Object.entries(step.choices)[0] ?? ['', undefined];
    return { choice: name, ...(first?.reason ? { reason: 'agreed with the shift supervisor' } : {}) };
  }
  if (step.kind !== 'reading') return {};
  const fields = step.asks.filter((field) => standsSo(field.when, job.facts));
  return Object.fromEntries(fields.map((field) => [field.name, textFor(job, field)]));
}

function textFor(job: Job, field: Field): string {
  if (field.type === 'choice') return field.choices[0]?.value ?? '';
  if (field.type === 'csv') return '';
  if (field.type === 'text')
    return field.mustBe === undefined ? 'as said' : String(FIGURES[field.mustBe].of(job) ?? '');
  const value = valueFor(job, field);
  if (/At(?:A|Pa)$/.test(field.name)) return SIGNAL_MIDDLE[field.dimension] ?? '';
  return field.optional && field.wanted === undefined && field.gauge === undefined
    ? ''
    : `${value} ${UNIT_OF[field.dimension] ?? ''}`.trim();
}

/** A signal that is read where the stem stirs: one without any dead band. */
const SIGNAL_MIDDLE: { readonly [D in QuantityField['dimension']]?: string } = {
  pressure: '9 psi',
  current: '12 mA',
};

/** Units of SI that every field of the dimension takes. */
const UNIT_OF: { readonly [D in QuantityField['dimension']]?: string } = {
  pressure: 'Pa',
  length: 'm',
  travel: '%',
  torque: 'N.m',
  force: 'N',
  temperature: 'K',
  forcePerLength: 'N/m',
  percent: '%',
  turns: '',
};

/** A reading at which nothing is called for: what is wanted, zero where a zero is shown, else the middle. */
function valueFor(job: Job, { name, dimension, wanted, onCase }: QuantityField): number {
  const { sheet } = job;
  const figure = wanted === undefined ? null : FIGURES[wanted].of(job);
  if (typeof figure === 'number') return figure;
  if (typeof figure === 'string' && Number.isFinite(Number(figure))) return Number(figure);
  switch (dimension) {
    case 'pressure':
      return /(?:After|Zero)Pa$/.test(name) && !onCase ? 0 : (sheet.benchSetLowPa + sheet.benchSetHighPa) / 2;
    case 'travel':
      return 50;
    case 'length':
      return 0.01;
    case 'temperature':
      return 293.15;
    default:
      return 1;
  }
}
