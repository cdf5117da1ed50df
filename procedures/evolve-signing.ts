import type { Envelope } from '../safety/sign-off.ts';
import type { JobDraft, JobEntry } from './evolve.ts';
import type { Job, SignedHold } from './job.ts';
import type { Signing } from './signing.ts';

type Entry = JobDraft & JobEntry;
type Signed = Pick<Job, 'holds' | 'performers' | 'signing'>;

/** Reading and refusing, watching, and signing what was reviewed are no part of the work. */
const NO_HAND_IN_IT: readonly string[] = [
  'hold-sent-back',
  'witnessed',
  'reviewed',
  'review-sent-back',
  'hold-waived',
  'radio-confirmed',
  'radio-denied',
  'locks-removed',
];

/** Taking note of work without doing it. */
const ACKNOWLEDGED: readonly string[] = [
  'parked',
  'taken-up',
  'handed-over',
  'read-again',
  'overridden',
  'note-struck',
];

/** Whoever read a gauge alone, without the first reading, inspected: that is no hand in the work, and no bar to signing. */
function isInspection({ kind, inputs }: Entry): boolean {
  return kind === 'read-again' && inputs.words?.mode === 'independent';
}

/** What one line says of signatures, and of who had a hand in the work since the last signed hold. */
export function evolveSigning(job: Job, entry: Entry): Signed {
  const { holds, performers } = job;
  const signing = noted(withNonce(job.signing, entry), { job, entry });
  const person = entry.person ?? '';
  if (entry.effects.signed) {
    return {
      holds: [...holds, signedHold(entry)],
      performers: [],
      signing: { ...signing, acknowledgers: [] },
    };
  }
  if (NO_HAND_IN_IT.includes(entry.kind) || isInspection(entry)) return { holds, performers, signing };
  if (ACKNOWLEDGED.includes(entry.kind))
    return {
      holds,
      performers,
      signing: { ...signing, acknowledgers: added(signing.acknowledgers, person) },
    };
  return { holds, performers: added(performers, person), signing };
}

function added(people: readonly string[], person: string): readonly string[] {
  return people.includes(person) ? people : [...people, person];
}

function withNonce(signing: Signing, { inputs }: Entry): Signing {
  const nonce = inputs.signature?.nonce ?? '';
  return nonce === '' ? signing : { ...signing, nonces: [...signing.nonces, nonce] };
}

function signedHold(entry: Entry): SignedHold {
  const { inputs, effects } = entry;
  const { signature } = inputs;
  return {
    step: inputs.step,
    place: entry.place,
    at: entry.at,
    person: signature?.person ?? entry.person ?? '',
    name: signature?.name ?? '',
    way: signature?.way ?? 'walk-up',
    why: signature?.why ?? '',
    envelope: effects.envelope ?? null,
    shownDigest: effects.shownDigest ?? '',
  };
}

function noted(signing: Signing, { job, entry }: { readonly job: Job; readonly entry: Entry }): Signing {
  const { inputs, place, at } = entry;
  const person = entry.person ?? '';
  const { step, about = 0 } = inputs;
  switch (entry.kind) {
    case 'hold-signed':
      return withRadio(accepted(signing, entry), entry);
    case 'hold-sent-back': {
      const { reason = '', disposition = 'again' } = inputs;
      const one = { step, place, at, person, reason, disposition, acceptedAt: null };
      return { ...signing, sentBack: [...signing.sentBack, one] };
    }
    case 'hold-waived':
      return { ...signing, passed: [...signing.passed, { step, place, how: 'waived' }] };
    case 'not-witnessed':
      return { ...signing, passed: [...signing.passed, { step, place, how: 'not witnessed' }] };
    case 'review-opened': {
      const performers = [...job.performers, ...signing.acknowledgers];
      const reviews = [
        ...notOf(step, signing),
        { step, place, at, performers, reviewedAt: null, sentBack: '' },
      ];
      return { ...signing, reviews };
    }
    case 'witnessed':
      return { ...signing, reviews: notOf(step, signing) };
    case 'reviewed':
      return { ...signing, reviews: changed(signing.reviews, { about, by: { reviewedAt: place } }) };
    case 'review-sent-back': {
      const by = { reviewedAt: place, sentBack: inputs.reason ?? '' };
      return { ...signing, reviews: changed(signing.reviews, { about, by }) };
    }
    case 'radio-confirmed':
      return { ...signing, radio: changed(signing.radio, { about, by: { stands: 'confirmed' } }) };
    case 'radio-denied':
      return { ...signing, radio: changed(signing.radio, { about, by: { stands: 'denied' } }) };
    case 'read-again': {
      const mode = inputs.words?.mode === 'independent' ? 'independent' : 'peer';
      const one = { about, place, person, mode, agrees: entry.outcome.name === 'agrees' } as const;
      return { ...signing, readAgain: [...signing.readAgain, one] };
    }
    default:
      return signing;
  }
}

/** Reviews besides those that were left open at a step: the newer record of it is what is looked at. */
function notOf(step: string, { reviews }: Signing): Signing['reviews'] {
  return reviews.filter((one) => one.step !== step || one.reviewedAt !== null);
}

function changed<Note extends { readonly place: number }>(
  notes: readonly Note[],
  { about, by }: { readonly about: number; readonly by: Partial<Note> },
): readonly Note[] {
  return notes.map((note) => (note.place === about ? { ...note, ...by } : note));
}

/** A signature accepts what was sent back at its hold before; both stay in the record. */
function accepted(signing: Signing, { inputs, place }: Entry): Signing {
  return {
    ...signing,
    sentBack: signing.sentBack.map((one) =>
      one.step === inputs.step && one.acceptedAt === null ? { ...one, acceptedAt: place } : one,
    ),
  };
}

function withRadio(signing: Signing, entry: Entry): Signing {
  const { signature } = entry.inputs;
  if (!signature?.radio) return signing;
  const envelope: Envelope | null | undefined = entry.effects.envelope;
  const note = {
    step: entry.inputs.step,
    place: entry.place,
    at: entry.at,
    person: signature.person,
    heardBy: signature.radio.heardBy,
    code: signature.radio.code,
    confirmBy: envelope?.untilMs ?? 0,
    stands: 'open' as const,
  };
  return { ...signing, radio: [...signing.radio, note] };
}
