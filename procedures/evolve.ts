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

/** The state of a job is the fold of its entries as stored: nothing is worked out again. The job given stays as it is. */
export function evolve(job: Job, entry: JobEntry): Job {
  return new WorkingJob(job).take(entry).job;
}

/**
 * The same for all entries of a job at once: what the fold made itself, and nobody else has seen, it changes where it stands.
 *
 * @example jobOf(entries) // as entries.reduce(evolve, NO_JOB)
 */
export function jobOf(entries: Iterable<JobEntry>): Job {
  const working = new WorkingJob(NO_JOB);
  for (const entry of entries) working.take(entry);
  return working.job;
}

type Mutable<T> = { -readonly [K in keyof T]: T[K] };

/** A job while lines are folded into it: each part is copied before its first change, and not again. */
class WorkingJob {
  #job: Mutable<Job>;
  /** Parts that were made here. */
  readonly #own = new Set<object>();

  constructor(job: Job) {
    this.#job = { ...job };
  }

  get job(): Job {
    return this.#job;
  }

  take(entry: JobEntry): this {
    if (entry.kind === 'job-opened') this.#job = opened(entry);
    else this.#takeLine(entry as unknown as JobDraft & JobEntry);
    return this;
  }

  #takeLine(entry: JobDraft & JobEntry): void {
    const job = this.#job;
    const isNote = NOTE_LINES.includes(entry.kind);
    if (isNote) job.notes = withNote(job.notes, entry);
    else this.#takeEffects(entry);
    const { holds, performers, signing } = evolveSigning(job, entry);
    job.holds = holds;
    job.performers = performers;
    job.signing = signing;
    job.place = entry.place;
    job.seq = entry.seq;
    if (isNote) return;
    if (!ASIDE.includes(entry.kind)) this.#takeAnswer(entry);
    this.#list('answers').push(answerOf(entry));
  }

  #takeEffects(entry: JobDraft & JobEntry): void {
    const { effects } = entry;
    const job = this.#job;
    const staysAt = effects.to === job.step && (entry.kind === 'row-read' || ASIDE.includes(entry.kind));
    if (!staysAt) job.arrivedAt = entry.at;
    job.step = effects.to;
    const set = applyEffects(job.situation, effects.sets ?? {});
    job.situation = effects.lapses === undefined ? set : lapseOnly(set, effects.lapses);
    job.status = effects.status ?? job.status;
    job.closedAs = effects.closedAs ?? job.closedAs;
    job.goesOnAs = effects.goesOnAs ?? job.goesOnAs;
    if (effects.status === 'closed') job.closedAt = entry.at;
    if (effects.envelope !== undefined) job.envelope = effects.envelope;
    job.locks = withLocks(job.locks, effects.locks);
    this.#takeEvidence(entry);
    this.#mark(effects.supersedes ?? [], { superseded: true });
    if (effects.clearsTable !== undefined) this.#record('tables')[effects.clearsTable] = [];
  }

  #takeEvidence({ effects, inputs, place, seq, at, person }: JobDraft & JobEntry): void {
    const named = Object.keys(effects.sets ?? {}) as ConditionId[];
    if (named.length === 0) return;
    const { step, readings = [], words = {} } = inputs;
    const note: EvidenceNote = { place, seq, at, person: person ?? '', step, readings, words };
    const evidence = this.#record('evidence');
    for (const id of named) evidence[id] = note;
  }

  #takeAnswer({ inputs, outcome, place }: JobDraft & JobEntry): void {
    const { step, readings = [], words, corrects, row } = inputs;
    if (corrects !== undefined) this.#mark([corrects], { superseded: true, corrected: true });
    if (readings.length > 0) {
      const all = this.#record('readings');
      for (const reading of readings) all[reading.field] = reading;
    }
    if (words !== undefined) Object.assign(this.#record('words'), words);
    this.#record('figures')[step] = outcome.figures;
    if (row === undefined || row === null) return;
    const signal = readings.find((reading) => reading.field === 'signalPa');
    const travel = readings.find((reading) => reading.field === 'travelM');
    if (signal === undefined || travel === undefined) return;
    const tables = this.#record('tables');
    const rows: Row[] = [...(tables[step] ?? [])];
    rows[row] = { place, signal, travel };
    tables[step] = rows;
  }

  #mark(places: readonly number[], as: Partial<Answer>): void {
    if (places.length === 0) return;
    const answers = this.#list('answers');
    for (const [at, one] of answers.entries())
      if (places.includes(one.place)) answers[at] = { ...one, ...as };
  }

  /** A part that is ours to change. */
  #record<Part extends 'readings' | 'words' | 'figures' | 'tables' | 'evidence'>(
    part: Part,
  ): Mutable<Job[Part]> {
    const before = this.#job[part];
    if (this.#own.has(before)) return before;
    const own = { ...before };
    this.#own.add(own);
    this.#job[part] = own;
    return own;
  }

  #list(part: 'answers'): Answer[] {
    const before = this.#job[part];
    // What is our own was made as a list that may be changed.
    if (this.#own.has(before)) return before as Answer[];
    const own = [...before];
    this.#own.add(own);
    this.#job[part] = own;
    return own;
  }
}

function opened(entry: JobEntry): Mutable<Job> {
  const inputs = entry.inputs as unknown as Partial<Job> & { readonly sheet: LoggedSheet };
  const { to, sets } = entry.effects as unknown as JobEffects;
  return {
    ...NO_JOB,
    ...inputs,
    sheet: wholeSheet(inputs.sheet),
    place: entry.place,
    seq: entry.seq,
    // What another job left standing goes on as it stood; else everything begins at its worst.
    situation: inputs.situation ?? situationAtOpening(sets),
    status: 'open',
    step: to,
    openedAt: entry.at,
    arrivedAt: entry.at,
    openedBy: entry.person ?? '',
  };
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

function withLocks(locks: Job['locks'], changes: JobEffects['locks']): Job['locks'] {
  if (changes === undefined) return locks;
  const merged = { ...locks, ...changes };
  return Object.fromEntries(Object.entries(merged).filter(([, lock]) => lock !== null));
}

function answerOf(entry: JobDraft & JobEntry): Answer {
  const { inputs, outcome, effects } = entry;
  const answer: Answer = {
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
    superseded: false,
    corrected: false,
  };
  return inputs.csv === undefined ? answer : { ...answer, csv: inputs.csv };
}
