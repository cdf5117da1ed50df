import { z } from 'zod';
import type { JobDraft } from '../../procedures/evolve.ts';
import type { Job } from '../../procedures/job.ts';
import type { Json } from '../../procedures/json.ts';
import type { EntryDraft } from '../log/act.ts';
import type { StreamKind } from '../log/stream-kind.ts';

/** What of the signing of a site is counted, because it is meant to be seldom. */
export const COUNTED = {
  radio: 'signed by radio',
  second: 'signed by a second person',
  waived: 'waived',
  notWitnessed: 'passed without its witness',
  overridden: 'judged otherwise than the figures do',
  sentBack: 'sent back',
  denied: 'signed by radio and denied',
} as const;
export type Counted = keyof typeof COUNTED;

const competent = z.object({ person: z.string(), how: z.string(), by: z.string(), at: z.string() });
const radio = z.object({
  job: z.string(),
  tag: z.string(),
  place: z.int(),
  person: z.string(),
  heardBy: z.string(),
  at: z.string(),
  confirmByMs: z.number(),
});

/** The signing of the whole site: who may sign where no supervisor can come, what was said by radio, what was seldom. */
export interface SiteSigning {
  readonly competent: readonly z.infer<typeof competent>[];
  /** Signatures by radio that nobody has confirmed yet. */
  readonly radio: readonly z.infer<typeof radio>[];
  /** By year, how often. */
  readonly counts: Readonly<Record<string, Readonly<Partial<Record<Counted, number>>>>>;
}

const line = z.object({ job: z.string(), place: z.int() });

export const signingKind: StreamKind<SiteSigning> = {
  kind: 'signing',
  initial: { competent: [], radio: [], counts: {} },
  evolve: (state, { kind, inputs, at, person }) => {
    switch (kind) {
      case 'competence-named': {
        const named = competent.pick({ person: true, how: true }).parse(inputs);
        const others = state.competent.filter((one) => one.person !== named.person);
        return { ...state, competent: [...others, { ...named, by: person ?? '', at }] };
      }
      case 'competence-withdrawn': {
        const { person: who } = competent.pick({ person: true }).parse(inputs);
        return { ...state, competent: state.competent.filter((one) => one.person !== who) };
      }
      case 'radio-signed':
        return { ...state, radio: [...state.radio, radio.parse({ ...(inputs as object), at })] };
      case 'radio-answered': {
        const about = line.parse(inputs);
        const stays = (one: z.infer<typeof radio>) => one.job !== about.job || one.place !== about.place;
        return { ...state, radio: state.radio.filter(stays) };
      }
      case 'counted':
        return { ...state, counts: counted(state.counts, { inputs, at }) };
      default:
        return state;
    }
  },
  summarise: () => null,
};

function counted(
  counts: SiteSigning['counts'],
  { inputs, at }: { readonly inputs: Json; readonly at: string },
): SiteSigning['counts'] {
  const { what } = z.object({ what: z.enum(Object.keys(COUNTED) as [Counted, ...Counted[]]) }).parse(inputs);
  const year = at.slice(0, 4);
  const before = counts[year] ?? {};
  return { ...counts, [year]: { ...before, [what]: (before[what] ?? 0) + 1 } };
}

export const SIGNING_STREAM = 'signing';

const SELDOM: Readonly<Record<string, Counted>> = {
  'hold-waived': 'waived',
  'not-witnessed': 'notWitnessed',
  overridden: 'overridden',
  'hold-sent-back': 'sentBack',
  'review-sent-back': 'sentBack',
  'radio-denied': 'denied',
};

/** What a line of a job means for the signing of the site, in the same commit. */
export function signingEntries(job: Job, draft: JobDraft): readonly EntryDraft[] {
  const { signature, about = 0 } = draft.inputs;
  const entry = (kind: string, inputs: Json): EntryDraft => ({
    stream: SIGNING_STREAM,
    kind,
    inputs,
    outcome: {},
    effects: {},
  });
  const count = (what: Counted) => entry('counted', { what, job: job.id, place: job.place + 1 });
  const seldom = SELDOM[draft.kind];
  const byRadio = signature?.radio ?? null;
  return [
    ...(seldom === undefined ? [] : [count(seldom)]),
    ...(draft.kind === 'hold-signed' && signature?.way === 'second person' ? [count('second')] : []),
    ...(draft.kind === 'hold-signed' && signature !== undefined && byRadio !== null
      ? [
          count('radio'),
          entry('radio-signed', {
            job: job.id,
            tag: job.tag,
            place: job.place + 1,
            person: signature.person,
            heardBy: byRadio.heardBy,
            confirmByMs: draft.effects.envelope?.untilMs ?? 0,
          }),
        ]
      : []),
    ...(draft.kind === 'radio-confirmed' || draft.kind === 'radio-denied'
      ? [entry('radio-answered', { job: job.id, place: about })]
      : []),
  ];
}
