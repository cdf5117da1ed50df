import type { Surroundings } from '../../../../procedures/actions/action.ts';
import { capital } from '../../../../procedures/capital.ts';
import type { Job } from '../../../../procedures/job.ts';
import { FIGURES } from '../../../../procedures/quantities.ts';
import { fill, sayFigure } from '../../../../procedures/say.ts';
import type { OpenStep } from '../../../../procedures/vocabulary.ts';
import { whyOf } from '../../../../procedures/why.ts';
import type { FieldView, Typed } from '../fields.ts';
import { pictureOf } from './picture.ts';

/** What every card is built from. */
export interface CardInput {
  readonly job: Job;
  readonly around: Surroundings;
  /** The number that stands in the margin. */
  readonly number: number;
  readonly again: Typed;
  readonly people: readonly { readonly id: string; readonly name: string; readonly role: string }[];
  /** Who is named as competent to sign where no supervisor can come. */
  readonly competent: readonly string[];
  /** One-time number of the page, for what is signed on it. */
  readonly nonce: string;
}

export interface CardView {
  readonly kind: string;
  readonly step: string;
  readonly number: number;
  readonly heading: string;
  readonly how: string;
  readonly why: string;
  readonly signal: {
    readonly word: string;
    readonly hazard: string;
    readonly consequence: string;
    readonly avoid: string;
  } | null;
  readonly do: readonly string[];
  /** A drawing of our own with its text alternative in it; blank where the card has none. */
  readonly picture: string;
  readonly shows: readonly { readonly label: string; readonly value: string }[];
  readonly fields: readonly FieldView[];
  readonly choices: readonly { readonly value: string; readonly label: string; readonly reason: boolean }[];
  /** Words of the one main act. */
  readonly act: string;
}

/** What all kinds of card share. */
export function bareCard(step: OpenStep, { job, around, number }: CardInput): CardView {
  const { caution } = step;
  return {
    kind: step.kind,
    step: job.step,
    number,
    heading: capital(fill(step.title, job)),
    how: capital(fill(step.how ?? '', job)),
    why: whyOf(step, { job, definition: around.compiled.definition }),
    signal:
      caution === undefined
        ? null
        : {
            word: caution.word,
            hazard: fill(caution.hazard, job),
            consequence: fill(caution.consequence, job),
            avoid: fill(caution.avoid, job),
          },
    do: 'do' in step ? (step.do ?? []).map((line) => fill(line, job)) : [],
    picture: pictureOf(step, job),
    shows: (step.shows ?? []).map((name) => ({ label: FIGURES[name].label, value: sayFigure(name, job) })),
    fields: [],
    choices: [],
    act: 'Count it',
  };
}
