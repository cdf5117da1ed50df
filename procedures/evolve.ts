import type { ConditionId } from '../safety/conditions.ts';
import type { Disposition, Envelope } from '../safety/sign-off.ts';
import {
  applyEffects,
  type Effects,
  type LapseReason,
  lapseOnly,
  situationAtOpening,
} from '../safety/situation.ts';
import { evolveSigning } from './evolve-signing.ts';
import type {
  Answer,
  Csv,
  EvidenceNote,
  Figures,
  Job,
  JobLock,
  Late,
  Reading,
  Row,
  Together,
  Words,
} from './job.ts';
import type { Json } from './json.ts';
import { type JobNote, NOTE_LINES, type Note } from './notes/note.ts';
import { NOTHING_SIGNED, type SignatureNote } from './signing.ts';
import { type LoggedSheet, wholeSheet } from './valve-sheet/later-fields.ts';

/** The parts of a stored line that a job is folded from. */
export interface JobEntry {
  readonly seq: number;
  readonly place: number;
  readonly at: string;
  readonly person: string | null;
  readonly kind: string;
  readonly inputs: Json;
  readonly outcome: Json;
  readonly effects: Json;
}

/** What an act of a job stores: what was given, what was decided, what that changed. */
export interface JobDraft {
  readonly kind: string;
  readonly inputs: JobInputs;
  readonly outcome: { readonly name: string; readonly figures: Figures };
  readonly effects: JobEffects;
}

export interface JobInputs {
  readonly step: string;
  readonly readings?: readonly Reading[];
  readonly words?: Words;
  readonly csv?: Csv;
  /** Which row of a table this is, from 0. */
  readonly row?: number | null;
  /** The place of the answer that is corrected. */
  readonly corrects?: number;
  readonly reason?: string;
  readonly late?: Late;
  readonly together?: Together;
  /** The place of the line that this one is about: a review, a radio signature, a reading that was read again. */
  readonly about?: number;
  readonly disposition?: Disposition;
  /** What was found, a part that was used, or a photo. */
  readonly note?: Note;
  /** Hashes of what stands beside the log and belongs to this line. */
  readonly blobs?: readonly string[];
  readonly signature?: SignatureNote;
  /** Exactly what the signer was shown; the digest is over this. */
  readonly shown?: Json;
}

export interface JobEffects {
  readonly to: string;
  readonly sets?: Effects;
  readonly lapses?: { readonly conditions: readonly ConditionId[]; readonly reason: LapseReason };
  readonly locks?: { readonly [C in ConditionId]?: JobLock | null };
  readonly envelope?: Envelope | null;
  readonly signed?: boolean;
  readonly shownDigest?: string;
  /** Answers at these places stand no more. */
  readonly supersedes?: readonly number[];
  readonly clearsTable?: string;
  readonly status?: Job['status'];
  readonly closedAs?: string;
  /** The job that goes on with the valve as it stands. */
  readonly goesOnAs?: string;
}

export const NO_JOB: Job = {
  id: '',
  status: 'none',
  closedAs: null,
  tag: '',
  sheet: {} as Job['sheet'],
  sheetRevision: 0,
  gear: {},
  facts: {} as Job['facts'],
  procedure: '',
  procedureRevision: '',
  definitionHash: '',
  openedAt: '',
  closedAt: null,
  openedBy: '',
  goesOnFrom: null,
  goesOnAs: null,
  step: '',
  place: 0,
  seq: 0,
  arrivedAt: '',
  answers: [],
  readings: {},
  words: {},
  figures: {},
  tables: {},
  situation: situationAtOpening(),
  evidence: {},
  locks: {},
  envelope: null,
  holds: [],
  performers: [],
  signing: NOTHING_SIGNED,
  notes: [],
};

/** Lines about other lines: they answer no card, so readings, words and figures of the job stay as they are. */
const ASIDE: readonly string[] = [
  'read-again',
  'reviewed',
  'review-sent-back',
  'radio-confirmed',
  'radio-denied',
  'handed-over',
  'locks-removed',
];

/** The state of a job is the fold of its entries as stored: nothing is worked out again. */
export function evolve(job: Job, entry: JobEntry): Job {
  const at = { place: entry.place, seq: entry.seq };
  if (entry.kind === 'job-opened') {
    const opened = entry.inputs as unknown as Partial<Job> & { readonly sheet: LoggedSheet };
    const { to, sets } = entry.effects as unknown as JobEffects;
    return {
      ...NO_JOB,
      ...opened,
      sheet: wholeSheet(opened.sheet),
      ...at,
      // What another job left standing goes on as it stood; else everything begins at its worst.
      situation: opened.situation ?? situationAtOpening(sets),
      status: 'open',
      step: to,
      openedAt: entry.at,
      arrivedAt: entry.at,
      openedBy: entry.person ?? '',
    };
  }
  const draft = entry as unknown as JobDraft & JobEntry;
  if (NOTE_LINES.includes(entry.kind))
    return { ...job, ...at, notes: withNote(job.notes, draft), ...evolveSigning(job, draft) };
  // One copy of the job a line, and of its parts only those that change: a page may want hundreds of lines folded.
  const after = effectsOf(job, draft);
  const line = ASIDE.includes(entry.kind)
    ? { answers: [...after.answers, answerOf(draft)] }
    : answered({ ...after, before: job }, draft);
  return { ...job, ...after, ...line, ...at };
}

/** A note more, or one that is struck. */
function withNote(
  notes: Job['notes'],
  { inputs, place, seq, at, ...entry }: JobDraft & JobEntry,
): Job['notes'] {
  const { note, about, step, reason = '' } = inputs;
  const line = { place, seq, at, person: entry.person ?? '' };
  if (note !== undefined) {
    const one: JobNote = { ...line, step, note, struck: null };
    return [...notes, one];
  }
  return notes.map((one) => (one.place === about ? { ...one, struck: { ...line, reason } } : one));
}

/** The job as it will be once the line that was decided is written, before the store has given it its own numbers. */
export function afterDraft(
  job: Job,
  { draft, at, person }: { readonly draft: JobDraft; readonly at: string; readonly person: string },
): Job {
  const entry = { ...draft, at, person, seq: job.seq + 1, place: job.place + 1 };
  return evolve(job, entry as unknown as JobEntry);
}

function effectsOf(job: Job, entry: JobDraft & JobEntry) {
  const { effects } = entry;
  const set = applyEffects(job.situation, effects.sets ?? {});
  const situation = effects.lapses === undefined ? set : lapseOnly(set, effects.lapses);
  const gone = new Set(effects.supersedes ?? []);
  const closed = effects.status === 'closed';
  return {
    situation,
    step: effects.to,
    arrivedAt:
      effects.to === job.step && (entry.kind === 'row-read' || ASIDE.includes(entry.kind))
        ? job.arrivedAt
        : entry.at,
    status: effects.status ?? job.status,
    closedAs: effects.closedAs ?? job.closedAs,
    goesOnAs: effects.goesOnAs ?? job.goesOnAs,
    closedAt: closed ? entry.at : job.closedAt,
    envelope: effects.envelope === undefined ? job.envelope : effects.envelope,
    locks: withLocks(job.locks, effects.locks),
    evidence: withEvidence(job, entry),
    answers:
      gone.size === 0
        ? job.answers
        : job.answers.map((one) => (gone.has(one.place) ? { ...one, superseded: true } : one)),
    tables: effects.clearsTable === undefined ? job.tables : { ...job.tables, [effects.clearsTable]: [] },
    ...evolveSigning(job, entry),
  };
}

function withLocks(locks: Job['locks'], changes: JobEffects['locks']): Job['locks'] {
  if (changes === undefined) return locks;
  const merged = { ...locks, ...changes };
  return Object.fromEntries(Object.entries(merged).filter(([, lock]) => lock !== null));
}

function withEvidence(job: Job, entry: JobDraft & JobEntry): Job['evidence'] {
  const named = Object.keys(entry.effects.sets ?? {}) as ConditionId[];
  if (named.length === 0) return job.evidence;
  const note: EvidenceNote = {
    place: entry.place,
    seq: entry.seq,
    at: entry.at,
    person: entry.person ?? '',
    step: entry.inputs.step,
    readings: entry.inputs.readings ?? [],
    words: entry.inputs.words ?? {},
  };
  return { ...job.evidence, ...Object.fromEntries(named.map((id) => [id, note])) };
}

function answerOf({ inputs, outcome, effects, ...entry }: JobDraft & JobEntry): Answer {
  return {
    place: entry.place,
    seq: entry.seq,
    at: entry.at,
    person: entry.person ?? '',
    step: inputs.step,
    act: entry.kind,
    readings: inputs.readings ?? [],
    words: inputs.words ?? {},
    row: inputs.row ?? null,
    outcome: outcome.name,
    figures: outcome.figures,
    reason: inputs.reason ?? '',
    late: inputs.late ?? null,
    together: inputs.together ?? null,
    to: effects.to,
    ...(inputs.csv === undefined ? {} : { csv: inputs.csv }),
    superseded: false,
    corrected: false,
  };
}

interface Answering {
  readonly before: Job;
  /** As the effects of the line leave them. */
  readonly answers: Job['answers'];
  readonly tables: Job['tables'];
}

function answered({ before, answers, tables }: Answering, entry: JobDraft & JobEntry) {
  const { inputs, outcome } = entry;
  const { readings = [], words = {}, corrects } = inputs;
  const corrected =
    corrects === undefined
      ? answers
      : answers.map((one) => (one.place === corrects ? { ...one, superseded: true, corrected: true } : one));
  return {
    answers: [...corrected, answerOf(entry)],
    readings: readings.length === 0 ? before.readings : withReadings(before.readings, readings),
    words: Object.keys(words).length === 0 ? before.words : { ...before.words, ...words },
    figures: { ...before.figures, [inputs.step]: outcome.figures },
    tables: withRow(tables, { inputs, place: entry.place }),
  };
}

function withReadings(before: Job['readings'], readings: readonly Reading[]): Job['readings'] {
  return { ...before, ...Object.fromEntries(readings.map((reading) => [reading.field, reading])) };
}

function withRow(
  tables: Job['tables'],
  { inputs, place }: { readonly inputs: JobInputs; readonly place: number },
): Job['tables'] {
  const signal = inputs.readings?.find((reading) => reading.field === 'signalPa');
  const travel = inputs.readings?.find((reading) => reading.field === 'travelM');
  if (inputs.row === undefined || inputs.row === null || signal === undefined || travel === undefined)
    return tables;
  const rows: Row[] = [...(tables[inputs.step] ?? [])];
  rows[inputs.row] = { place, signal, travel };
  return { ...tables, [inputs.step]: rows };
}
