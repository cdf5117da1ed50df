import { type AnyState, CONDITIONS, type ConditionId } from '../safety/conditions.ts';
import { LOCK_BEHIND } from '../safety/interlock.ts';
import { testAirLimit } from '../safety/limits.ts';
import type { PointWork } from '../safety/sign-off.ts';
import { stateThatCounts } from '../safety/situation.ts';
import type { ReadIn } from './actions/action.ts';
import { type DepartureKind, departureOf } from './departures.ts';
import type { Answer, EvidenceNote, Job } from './job.ts';
import type { Json } from './json.ts';
import { type Finding, type JobNote, standing } from './notes/note.ts';
import { SOUND } from './notes/words.ts';
import { FIGURES } from './quantities.ts';
import { fill, sayFigure } from './say.ts';
import type { ReadAgain } from './signing.ts';
import type { Definition, HoldStep } from './vocabulary.ts';

/** One row of what a signer is shown. */
export interface HoldRow {
  readonly condition: ConditionId;
  readonly state: AnyState;
  readonly note: EvidenceNote | null;
  /** A second person's reading of the same. */
  readonly readAgain: ReadAgain | null;
}

/** What a hold rests on, in the order of the definition. The signature covers exactly this. */
export function holdEvidence(step: HoldStep<string>, job: Job): readonly HoldRow[] {
  return step.evidence
    .filter((condition) => isOnValve(condition, job))
    .map((condition) => {
      const note = job.evidence[condition] ?? null;
      const again = job.signing.readAgain.findLast((one) => one.about === note?.place);
      return {
        condition,
        state: stateThatCounts(job.situation, condition),
        note,
        readAgain: again ?? null,
      };
    });
}

/** What the valve has not is nothing to sign for: an energy then stands as absent, a lock would stand as off. */
function isOnValve(condition: ConditionId, { facts }: Pick<Job, 'facts'>): boolean {
  return condition !== 'secondSupplyLock' || facts.secondFeed !== 'none';
}

const SHOWN: readonly AnyState[] = [
  'isolated',
  'absent',
  'held',
  'contained',
  'released',
  'safe',
  'hung',
  'cleared',
  'overridden',
];

/** The job as it counts now: what has aged counts no more. */
export type Counted = Pick<Job, 'situation' | 'locks'>;

/** Names of the energies that a signer would sign over without their being shown, or without their lock. */
export function unshown(step: HoldStep<string>, counted: Counted): readonly string[] {
  const energies = step.evidence.filter((id) => CONDITIONS[id].group === 'energy');
  return energies
    .filter((id) => !SHOWN.includes(stateThatCounts(counted.situation, id)) || isUnlocked(id, counted))
    .map((id) => CONDITIONS[id].name);
}

/**
 * Whether an energy counts as isolated by a lock that this job has no more, as after a removal in its owner's absence.
 * @example isUnlocked('supplyAir', { ...job, locks: {} }) // true where the supply counts as isolated
 */
export function isUnlocked(id: ConditionId, { situation, locks }: Counted): boolean {
  const lock = LOCK_BEHIND[id];
  return lock !== undefined && situation.states[id] === 'isolated' && locks[lock] === undefined;
}

/** Rows of the energies that a second person must read again before this hold is signed, and has not. */
export function rowsToReadAgain(step: HoldStep<string>, job: Job): readonly HoldRow[] {
  return holdEvidence(step, job).filter(
    ({ condition, state, note, readAgain }) =>
      (step.readTwice ?? []).includes(condition) &&
      state !== 'absent' &&
      readAgain?.agrees !== true &&
      job.answers.some((line) => line.place === note?.place && readOn(line).length > 0),
  );
}

/** Names of the same. */
export function notReadAgain(step: HoldStep<string>, job: Job): readonly string[] {
  return rowsToReadAgain(step, job).map(({ condition }) => CONDITIONS[condition].name);
}

/**
 * Fields of a line that a second person can read again: its gauges, and the vents that were watched. What stood there
 * before it was made safe cannot be.
 * @example readOn({ ...line, readings: [inletBefore, inletAfter], words: {} }) // ['inletAfterPa']
 */
export function readOn({ readings, words }: Pick<Answer, 'readings' | 'words'>): readonly string[] {
  const gauges = readings.map(({ field }) => field).filter((name) => !name.includes('Before'));
  return [...gauges, ...Object.keys(words).filter((name) => isSeenAtVent(words[name]))];
}

function isSeenAtVent(word: string | undefined): boolean {
  return word === 'flow' || word === 'no flow';
}

/** Lines since the last signed hold that a signer has to know of. */
export function openDepartures(
  job: Job,
  definition: Definition,
): readonly { readonly answer: Answer; readonly kind: DepartureKind }[] {
  const from = job.holds.at(-1)?.place ?? 0;
  return job.answers.flatMap((answer) => {
    const kind = answer.place > from ? departureOf(answer, definition) : null;
    return kind === null ? [] : [{ answer, kind }];
  });
}

/** Who had a hand in what stands before the open point, and who alone may sign it. */
export function workBefore(job: Job, definition: Definition): PointWork {
  const step = definition.steps[job.step];
  const named = step?.kind === 'hold' ? step.named : undefined;
  return {
    performers: job.performers,
    acknowledgers: job.signing.acknowledgers,
    ...(named === undefined ? {} : { named }),
  };
}

/** What whoever looks at an open review is shown of it, as the line keeps it. */
export function shownAtReview(
  job: Job,
  { about, definition }: { readonly about: number; readonly definition: Definition },
): Json {
  const opened = job.signing.reviews.find((one) => one.place === about);
  const step = definition.steps[opened?.step ?? ''];
  if (opened === undefined || step?.kind !== 'hold') return null;
  return {
    job: job.id,
    tag: job.tag,
    procedure: job.procedure,
    revision: job.procedureRevision,
    definition: job.definitionHash,
    step: opened.step,
    about,
    newestLine: job.place,
    criterion: fill(step.criterion, job),
    shows: figuresOf(step, job).map((row) => [...row]),
  };
}

/** Numbers that a point is about, with their labels. */
export function figuresOf(step: HoldStep<string>, job: Job): readonly (readonly [string, string])[] {
  return (step.shows ?? []).map((name) => [FIGURES[name].label, sayFigure(name, job)]);
}

/** Findings since the last signed hold: whoever signs is to have read them. */
export function openFindings(job: Job): readonly JobNote<Finding>[] {
  const from = job.holds.at(-1)?.place ?? 0;
  return standing(job.notes, 'finding').filter(({ place, note }) => place > from && note.found !== SOUND);
}

/** Not there where nothing was found, so that what was signed before findings were noted keeps its digest. */
function foundSince(job: Job): { readonly findings?: readonly object[] } {
  const findings = openFindings(job).map(({ place, person, note: { found, where, words } }) => ({
    line: place,
    person,
    found,
    where,
    words,
  }));
  return findings.length === 0 ? {} : { findings };
}

/** What a signer is shown, with the words of the card where they were not English: what the signature is over. */
export function shownToSigner(
  job: Job,
  { definition, readIn }: { readonly definition: Definition; readonly readIn: ReadIn | undefined },
): Json {
  const shown = shownAtHold(job, definition);
  if (readIn === undefined || shown === null) return shown;
  return {
    ...(shown as Readonly<Record<string, Json>>),
    read: { language: readIn.language, lines: [...readIn.lines] },
  };
}

/**
 * Exactly what a signer is shown at the open hold, as data: the digest that a signature covers is over this, and the
 * signed line keeps it. It names job, step, definition and the newest line, so that it fits nowhere else.
 */
export function shownAtHold(job: Job, definition: Definition): Json {
  const step = definition.steps[job.step];
  if (step?.kind !== 'hold') return null;
  const shown = {
    job: job.id,
    tag: job.tag,
    procedure: job.procedure,
    revision: job.procedureRevision,
    definition: job.definitionHash,
    sheetRevision: job.sheetRevision,
    step: job.step,
    newestLine: job.place,
    point: step.point,
    criterion: step.criterion,
    evidence: holdEvidence(step, job),
    ...(step.shows === undefined ? {} : { shows: figuresOf(step, job) }),
    allows: step.allows,
    testAirPaMax: testAirLimit(job.sheet).limitPa,
    locks: Object.values(job.locks),
    departures: openDepartures(job, definition).map(({ answer, kind }) => ({
      kind,
      line: answer.place,
      person: answer.person,
      reason: answer.reason || (answer.words.reason ?? ''),
    })),
    sentBack: job.signing.sentBack.filter((one) => one.step === job.step),
    ...foundSince(job),
  };
  return JSON.parse(JSON.stringify(shown)) as Json;
}
