import { z } from 'zod';
import { textIn } from '../../../views/language/speak.ts';
import type { BareCall, Reply, View } from '../../http/route.ts';
import type { Person } from '../../people/person.ts';
import type { BenchAsked, BenchPanel } from '../../practice/bench-side.ts';
import { signingKind } from '../../signing/signing-stream.ts';
import type { Catalogue } from '../catalogue.ts';
import { askAfter } from '../earlier-search.ts';
import { type LeftBehind, leftBehind } from '../left-behind.ts';
import { loadJob } from '../load.ts';
import { groupView } from '../reply/group-view.ts';
import { type HoldCard, isHoldCard } from './cards/hold-card.ts';
import type { Typed } from './fields.ts';
import { type JobView, jobView } from './job-view.ts';
import { linesInSight } from './lines-in-sight.ts';
import { isForOpenCard, typedElsewhere } from './typed.ts';

const fieldAnswer = z.object({
  name: z.string(),
  label: z.string(),
  type: z.enum(['quantity', 'choice', 'text', 'csv']),
  unit: z.string(),
  gauge: z.string(),
  optional: z.boolean(),
  help: z.string(),
  options: z.array(z.object({ value: z.string(), label: z.string() })),
});

/** A line as it stands folded. */
export const lineAnswer = z.object({
  place: z.number(),
  what: z.string(),
  reading: z.string(),
  verdict: z.string(),
  who: z.string(),
  when: z.string(),
});

/** What a client other than a browser is told of a job: enough to do it to the end. */
export const jobAnswer = z.object({
  id: z.string(),
  tag: z.string(),
  procedure: z.string(),
  revision: z.string(),
  status: z.enum(['none', 'open', 'parked', 'closed']),
  closedAs: z.string().nullable(),
  step: z.string(),
  place: z.number(),
  card: z
    .object({
      kind: z.string(),
      step: z.string(),
      heading: z.string(),
      how: z.string(),
      why: z.string(),
      signal: z
        .object({ word: z.string(), hazard: z.string(), consequence: z.string(), avoid: z.string() })
        .nullable(),
      do: z.array(z.string()),
      shows: z.array(z.object({ label: z.string(), value: z.string() })),
      fields: z.array(fieldAnswer),
      choices: z.array(z.object({ value: z.string(), label: z.string(), reason: z.boolean() })),
      shownDigest: z.string().nullable(),
      /** One-time number of this page, sent with what is signed on it. */
      nonce: z.string(),
      signers: z.array(z.object({ value: z.string(), label: z.string() })),
    })
    .nullable(),
  /** Procedures that the answers of a closed job named as the next ones, and why this valve may not have them. */
  comesNext: z.array(z.object({ procedure: z.string(), title: z.string(), because: z.string() })),
  /** A closed job that made what a search had named: which search, and what to ask the operator after. */
  askAfter: z.object({ job: z.string(), complaint: z.string(), href: z.string() }).nullable(),
  /** What the last person at this valve left for the next. */
  left: z.array(z.object({ label: z.string(), value: z.string() })),
  points: z.array(z.object({ step: z.string(), title: z.string(), state: z.string(), more: z.string() })),
  /** On the practice bench, what the simulated valve shows at this card; null for real work. */
  bench: z
    .object({
      lines: z.array(z.string()),
      rows: z.array(z.object({ name: z.string(), label: z.string(), text: z.string(), entry: z.string() })),
      mayBeTold: z.boolean(),
    })
    .nullable(),
  /** Plain steps from the open card on that may be entered in one go. */
  together: z.array(z.string()),
  proveAgain: z.array(fieldAnswer),
  blocked: z.array(z.string()),
  back: z.array(z.object({ value: z.string(), label: z.string() })),
  energies: z.array(
    z.object({
      letter: z.string(),
      name: z.string(),
      state: z.string(),
      is: z.string().nullable(),
      lock: z.string().nullable(),
    }),
  ),
  lines: z.array(lineAnswer),
});

/** What a program is told that asked for the outcome of its act alone: how the job stands now. */
export const jobOutcome = jobAnswer.pick({ id: true, status: true, step: true, place: true });

type JobAnswer = z.input<typeof jobAnswer>;

function benchAnswer(bench: BenchPanel | null): JobAnswer['bench'] {
  if (bench === null) return null;
  const { lines, rows, result } = bench;
  return { lines: [...lines], rows: rows.map(({ hasGauge: _, ...row }) => row), mayBeTold: result !== '' };
}

function answerOf(view: JobView, left: LeftBehind): Omit<JobAnswer, 'together' | 'bench' | 'askAfter'> {
  const { card } = view;
  const hold = isHoldCard(card) ? card : null;
  return {
    id: view.id,
    tag: view.tag,
    procedure: view.procedure,
    revision: view.revision,
    status: view.status,
    closedAs: view.closedAs,
    step: view.step,
    place: view.place,
    card:
      card === null
        ? null
        : {
            kind: card.kind,
            step: card.step,
            heading: card.heading,
            how: card.how,
            why: card.why,
            signal: card.signal,
            do: [...card.do],
            shows: [...card.shows],
            fields: card.fields.map(fieldOf),
            choices: [...card.choices],
            shownDigest: hold?.shownDigest ?? null,
            nonce: view.nonce,
            signers: (hold?.people ?? []).map(({ value, label }) => ({ value, label })),
          },
    comesNext: view.comesNext.map(({ procedure, title, because }) => ({ procedure, title, because })),
    left: [...left.rows],
    points: view.points.map((point) => ({ ...point })),
    proveAgain: (view.lapsed?.fields ?? []).map(fieldOf),
    blocked: [...view.blocked],
    back: [...view.back],
    energies: view.energies.map(({ letter, name, state, is, lock }) => ({ letter, name, state, is, lock })),
    lines: view.lines.flatMap((group) => group.lines.map(toldLine)),
  };
}

/** A line for a program. */
export function toldLine({
  place,
  what,
  reading,
  verdict,
  who,
  when,
}: JobView['lines'][number]['lines'][number]): z.input<typeof lineAnswer> {
  return { place, what, reading, verdict: verdict.word, who, when };
}

function fieldOf(field: NonNullable<JobView['card']>['fields'][number]): z.input<typeof fieldAnswer> {
  const { name, label, type, unit, gauge, optional, help, options } = field;
  return {
    name,
    label,
    type,
    unit,
    gauge,
    optional,
    help,
    options: options.map(({ value, label: text }) => ({ value, label: text })),
  };
}

export const NOTHING_TYPED: Typed = { typed: {}, wrong: {} };

export type JobReply = Reply<JobAnswer> & { readonly params: object };

/** The page of a job and the same as JSON, from one view. */
export async function jobPage(
  call: BareCall & { readonly person: Person },
  {
    catalogue,
    again,
    together = NOTHING_TYPED,
    output,
  }: {
    readonly catalogue: Catalogue;
    readonly again: Typed;
    /** What was typed for several cards that are entered in one go. */
    readonly together?: Typed;
    readonly output?: BenchAsked['output'];
  },
): Promise<JobReply> {
  const { services, person } = call;
  const { job, around } = await loadJob(call.params.id ?? '', {
    services,
    catalogue,
    person,
    language: call.language,
  });
  const people = (await services.people.list()).filter((one) => !one.retired);
  const { definition } = around.compiled;
  const shown = isForOpenCard(again.typed, job) ? again : NOTHING_TYPED;
  const { competent } = await services.log.state(signingKind);
  const nonce = services.nonces.issue({
    job: job.id,
    line: job.place,
    digest: around.shownDigest,
    screen: call.screen,
  });
  const view = jobView({
    job,
    around,
    again: shown,
    people,
    competent: competent.map(({ person: id }) => id),
    nonce,
  });
  const left = await leftBehind(job.tag, services);
  const after = services.bench === null ? await askAfter(job, services) : null;
  const group = groupView(job, { around, again: together });
  const bench = services.bench === null ? null : await services.bench.beside({ job, around, output });
  // What only a template wants costs as much as all else: a program that is answered in JSON does not wait for it.
  const params = call.wantsPage
    ? {
        job: forTemplate(view, { again: shown, say: textIn(call.language) }),
        left,
        after,
        unsent: typedElsewhere(again.typed, { job, definition }),
        typed: shown.typed,
        group,
        bench,
      }
    : {};
  return {
    data: {
      ...answerOf(view, left),
      askAfter: after,
      bench: benchAnswer(bench),
      together: (group?.steps ?? []).map(({ id }) => id),
    },
    params,
    page: { title: `${job.tag}, job ${job.id}`, template: 'pages/job.njk', params },
  };
}

export function jobPiece({ params }: JobReply): View {
  return { template: 'parts/job-piece.njk', params };
}

/** What only the template wants: rows and options as its components take them. */
function forTemplate(
  view: JobView,
  { again, say }: { readonly again: Typed; readonly say: (text: string) => string },
): object {
  const { card } = view;
  const ticks = view.scale.ticks.map((tick) => (tick.phase ? { ...tick, phase: say(tick.phase) } : tick));
  return {
    ...view,
    // What has to fit into its place is said before it is drawn.
    scale: { ...view.scale, ticks },
    drawing: () => view.drawing(say),
    strip: view.energies.map(({ letter, name, state, is }) => ({ letter, name, state, value: is ?? '' })),
    footNote: {
      heading: 'Answer the card above.',
      text: 'What you type is kept in this browser until it is counted.',
    },
    lines: linesInSight(view.lines, view),
    card:
      card === null
        ? null
        : {
            stroke: null,
            findings: [],
            leftS: 0,
            unshown: [],
            people: [],
            overrides: [],
            judges: [],
            ...card,
            ...extras(card, again),
          },
  };
}

function extras(card: NonNullable<JobView['card']>, { typed }: Typed): object {
  return {
    hasTable: card.fields.some(({ isTable }) => isTable),
    options: card.choices.map(({ value, label }) => ({ value, label, checked: typed.choice === value })),
    wantsReason: card.choices.some((choice) => choice.reason),
    waits: isHoldCard(card) ? waitsText(card) : '',
  };
}

/** Why the signature below cannot be given now, in one sentence each. */
function waitsText({ unshown, waitsFor, people }: HoldCard): string {
  return [
    ...(unshown.length > 0
      ? [`Not shown safe: ${unshown.join(', ')}. It goes back, or is shown again.`]
      : []),
    ...(waitsFor === '' ? [] : [waitsFor]),
    ...(people.length === 0
      ? ['No supervisor of this site may sign: one who had no hand in this work is wanted.']
      : []),
  ].join(' ');
}
