import type { Action, ActionKind, Signatory, Surroundings } from '../../procedures/actions/action.ts';
import { advance } from '../../procedures/advance.ts';
import type { Compiled } from '../../procedures/compile.ts';
import type { Job } from '../../procedures/job.ts';
import type { Json } from '../../procedures/json.ts';
import { newestLine } from '../../procedures/notes/note.ts';
import type { ConditionId } from '../../safety/conditions.ts';
import { Refusal } from '../../safety/refusal.ts';
import type { EntryDraft, Read } from '../log/act.ts';
import { fingerprintOf } from '../log/chain.ts';
import { streamOf } from '../log/stream-kind.ts';
import type { Person } from '../people/person.ts';
import { personKind } from '../people/person-stream.ts';
import { pointEntries } from '../points/job-points.ts';
import { recordWrongTag } from '../points/wrong-tag.ts';
import type { Services } from '../services.ts';
import { usedNonce } from '../signing/nonces.ts';
import { SIGNING_STREAM, signingEntries, signingKind } from '../signing/signing-stream.ts';
import { SITE_STREAM } from '../site-stream.ts';
import type { StoredBlob } from '../store/store.ts';
import type { Catalogue } from './catalogue.ts';
import { jobKind } from './job-stream.ts';
import { pointKind } from './point-stream.ts';
import { readInBy, shownDigest } from './shown.ts';
import { newestAct } from './view/newest-act.ts';
import { clock, nameOf } from './view/words.ts';

export interface JobCall {
  readonly services: Services;
  readonly catalogue: Catalogue;
  readonly requestId: string;
  readonly person: Person;
  readonly screen: string;
  readonly job: string;
  readonly action: Action;
  /** Who signs, where it is not the person at the screen for themselves. */
  readonly signatory?: Signatory;
  /** What is kept beside the log with this act. */
  readonly blobs?: readonly StoredBlob[];
}

/** Which acts look at or change the signing of the whole site. No act can be left out. */
const IS_SIGNING: Readonly<Record<ActionKind, boolean>> = {
  sign: true,
  'send-back': true,
  waive: true,
  'go-on': true,
  override: true,
  review: true,
  'review-back': true,
  'read-again': true,
  'confirm-radio': true,
  'deny-radio': true,
  answer: false,
  'make-safe': false,
  'go-back': false,
  correct: false,
  park: false,
  'take-up': false,
  'prove-again': false,
  'hand-over': false,
  'remove-locks': false,
  'note-finding': false,
  'note-part': false,
  'note-photo': false,
  'strike-note': false,
};

/** Tags of the site's points that a job of this valve relies on, by the lock that stands for each. */
export function pointTags(job: Job): readonly (readonly [ConditionId, string])[] {
  const { supplyPoint, secondSupplyPoint, inletPoint, outletPoint } = job.sheet;
  if (job.facts.place === 'bench') return [];
  const all: readonly (readonly [ConditionId, string | null])[] = [
    ['supplyLock', supplyPoint],
    ['secondSupplyLock', secondSupplyPoint],
    ['inletLock', inletPoint],
    ['outletLock', outletPoint],
  ];
  return all.flatMap(([lock, tag]) => (tag ? [[lock, tag] as const] : []));
}

/**
 * One act of a person on a job: decided, stored with what it does to the site's isolation points and to the
 * valve, and only then answered.
 *
 * @throws Refusal JOB-000 for a job that is not there, and whatever `advance` refuses
 */
export async function actOnJob(call: JobCall): Promise<void> {
  const { services, catalogue, job: id, action } = call;
  const before = await services.log.state(jobKind, id);
  if (before.status === 'none') throw noSuchJob(id);
  const compiled = await catalogue.of(before, services.log);
  const tags = pointTags(before);
  try {
    await services.log.act({
      requestId: call.requestId,
      fingerprint: fingerprintOf({ job: id, action: action as unknown as Json }),
      person: call.person.id,
      screen: call.screen,
      streams: actStreams(call, { tag: before.tag, tags }),
      decide: (read) => decideAct(call, { read, compiled, tags }),
    });
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    if (TRIES.includes(error.text.code)) await recordTry(call, error);
    if (error.text.code === 'REA-010') await recordWrongTag(call, error);
    throw error.text.code === 'JOB-002' ? await answeredBy(error, call) : error;
  }
}

/** Refusals of somebody who may not, or of a page that was used: the site's log keeps the try. */
const TRIES: readonly string[] = [
  'HLD-001',
  'HLD-002',
  'HLD-003',
  'HLD-004',
  'HLD-006',
  'HLD-007',
  'HLD-011',
  'HLD-014',
  'RAD-001',
  'RAD-002',
];

/** Whoever acts, signs, hangs a lock or takes the job on: what they may is asked of the log at this very moment. */
function peopleStreams({ person, signatory, action }: JobCall): readonly string[] {
  const incoming = action.kind === 'hand-over' ? [action.incoming] : [];
  const ids = [person.id, signatory?.signer.id ?? person.id, ...incoming];
  return [...new Set(ids)].map((id) => streamOf('person', id));
}

/** Who signs, with role and competence as the log has them at this very moment. */
function signatoryNow(call: JobCall, read: Read): { readonly signatory?: Signatory } {
  const { signatory, action } = call;
  if (!IS_SIGNING[action.kind]) return {};
  const given = signatory ?? {
    signer: { id: call.person.id, role: call.person.role },
    name: call.person.name,
    way: 'own screen' as const,
    why: '',
    nonce: '',
    radio: null,
  };
  const { role, name, retired } = read.state(personKind, given.signer.id);
  const competent = read.state(signingKind).competent.some((one) => one.person === given.signer.id);
  const signer = { id: given.signer.id, role: retired || role === null ? 'nobody' : role, competent };
  return { signatory: { ...given, name: name || given.name, signer } };
}

/** Acts that answer a card; any other is told by what it was. */
const ANSWERS: readonly string[] = ['step-answered', 'row-read', 'hold-signed', 'hold-sent-back'];

/** The same refusal with the name of whoever was quicker, and what they did; the page shows what was typed. */
async function answeredBy(refusal: Refusal, { services, job: id, action }: JobCall): Promise<Refusal> {
  const job = await services.log.state(jobKind, id);
  const last = newestLine(job);
  if (last === undefined) return refusal;
  const person = await services.people.find(last.person);
  const name = nameOf(last.person, new Map(person === undefined ? [] : [[person.id, person.name]]));
  const hasTyped = 'given' in action && Object.values(action.given).some((text) => text !== '');
  const answered = job.answers.at(-1);
  const isAnswer = answered?.at === last.at && ANSWERS.includes(answered.act);
  const sameStep = 'step' in action && answered?.step === action.step && isAnswer;
  const did = sameStep
    ? `This step was answered by ${name}`
    : `Another line of this job was written by ${name}`;
  const isOther = answered?.at === last.at && !isAnswer;
  return new Refusal({
    ...refusal.text,
    what: isOther
      ? `${newestAct(job, person === undefined ? [] : [person])} Your card was open then.`
      : `${did} at ${clock(last.at)} UTC, while your card was open.`,
    kept: hasTyped
      ? 'Nothing of yours was written; what you typed is still here.'
      : 'Nothing of yours was written.',
  });
}

/** Every stream that `decideAct` reads or writes for this act. */
export function actStreams(
  call: JobCall,
  { tag, tags }: { readonly tag: string; readonly tags: ReturnType<typeof pointTags> },
): readonly string[] {
  return [
    streamOf('job', call.job),
    streamOf('crew', call.job),
    streamOf('valve', tag),
    ...new Set(tags.map(([, point]) => streamOf('point', point))),
    ...peopleStreams(call),
    ...(IS_SIGNING[call.action.kind] ? [SIGNING_STREAM] : []),
  ];
}

interface Deciding {
  readonly read: Read;
  readonly compiled: Compiled;
  readonly tags: readonly (readonly [ConditionId, string])[];
  /** The job that the same act opens, to go on with the valve as it stands. */
  readonly goesOnAs?: string;
}

/** Decides an act on the state of the log, inside its batch. */
export function decideAct(call: JobCall, deciding: Deciding) {
  const { entries } = decidedOn(call, deciding);
  return { entries, answer: { job: call.job }, ...(call.blobs === undefined ? {} : { blobs: call.blobs }) };
}

/** The same with what led to its entries. */
export function decidedOn(call: JobCall, { read, compiled, tags, goesOnAs }: Deciding) {
  const job = read.state(jobKind, call.job);
  const points = Object.fromEntries(
    tags.map(([lock, tag]) => [lock, { ...read.state(pointKind, tag), tag }]),
  );
  const { definition } = compiled;
  const readIn =
    call.action.kind === 'sign' ? readInBy(call.action.shownDigest, { job, definition }) : undefined;
  const around: Surroundings = {
    compiled,
    nowMs: Date.parse(read.now),
    today: read.now.slice(0, 10),
    person: { id: call.person.id, role: call.person.role },
    points,
    shownDigest: shownDigest(job, { ...compiled, readIn }),
    ...(readIn === undefined ? {} : { readIn }),
    ...(goesOnAs === undefined ? {} : { goesOnAs }),
    ...signatoryNow(call, read),
  };
  const nonce = around.signatory?.nonce ?? '';
  if (nonce !== '' && job.signing.nonces.includes(nonce)) throw usedNonce();
  const draft = advance(job, call.action, around);
  const entries: EntryDraft[] = [
    {
      stream: streamOf('job', call.job),
      ...(draft as unknown as Pick<EntryDraft, 'kind' | 'inputs' | 'outcome' | 'effects'>),
    },
    ...pointEntries(job, { read, draft, points, person: call.person.id }),
    ...(draft.effects.status === 'closed' ? [valveLeft(job)] : []),
    ...(IS_SIGNING[call.action.kind] ? signingEntries(job, draft) : []),
  ];
  return { job, draft, points, entries };
}

function valveLeft(job: Job): EntryDraft {
  return {
    stream: streamOf('valve', job.tag),
    kind: 'job-left',
    inputs: { job: job.id },
    outcome: {},
    effects: {},
  };
}

/** A hold that somebody tried and may not pass is worth a line of its own. */
async function recordTry(call: JobCall, refusal: Refusal): Promise<void> {
  const by = call.signatory?.signer.id ?? call.person.id;
  const inputs = { job: call.job, act: call.action.kind, code: refusal.text.code, by };
  await call.services.log.act({
    requestId: null,
    fingerprint: fingerprintOf(inputs),
    person: call.person.id,
    screen: call.screen,
    streams: [SITE_STREAM],
    decide: () => ({
      entries: [{ stream: SITE_STREAM, kind: 'hold-refused', inputs, outcome: {}, effects: {} }],
      answer: {},
    }),
  });
}

export function noSuchJob(id: string): Refusal {
  return new Refusal({
    kind: 'not-found',
    code: 'JOB-000',
    what: `There is no job ${id}.`,
    kept: 'Nothing was written.',
    next: 'Choose a job on the shift list.',
  });
}
