import type { Job } from '../job.ts';

/** Something seen on the valve: from the list of the trade, and in words. */
export interface Finding {
  readonly kind: 'finding';
  readonly found: string;
  readonly where: string;
  readonly words: string;
}

/** A part that was put in. */
export interface UsedPart {
  readonly kind: 'part';
  readonly description: string;
  /** Of the maker or the store; blank where nobody knows it. */
  readonly number: string;
  /** Pieces, a whole number. */
  readonly quantity: number;
  /** Batch or serial number, where the part has one. */
  readonly batch: string;
}

/** A picture of the valve. Its bytes stand beside the log, under the hash that the entry carries. */
export interface Photo {
  readonly kind: 'photo';
  /** SHA-256 of its bytes. */
  readonly blob: string;
  readonly type: 'jpeg' | 'png' | 'webp';
  readonly bytes: number;
  /** As it is seen, which way is up counted in. */
  readonly widthPx: number;
  readonly heightPx: number;
  readonly words: string;
  /** Line of the finding or part that it shows; null for one of the card that stood open. */
  readonly about: number | null;
}

export type Note = Finding | UsedPart | Photo;

/** A note that was struck: it stays readable, and counts no more. */
export interface Struck {
  readonly place: number;
  readonly seq: number;
  readonly at: string;
  readonly person: string;
  readonly reason: string;
}

/** A note as the log holds it: beside the work, so that no card and no rule rests on it. */
export interface JobNote<N extends Note = Note> {
  readonly place: number;
  readonly seq: number;
  readonly at: string;
  readonly person: string;
  /** The card that stood open. */
  readonly step: string;
  readonly note: N;
  readonly struck: Struck | null;
}

/** Lines that note something, or strike it. */
export const NOTE_LINES: readonly string[] = ['finding-noted', 'part-noted', 'photo-noted', 'note-struck'];

/** Notes of one kind that stand. */
export function standing<K extends Note['kind']>(
  notes: readonly JobNote[],
  kind: K,
): readonly JobNote<Extract<Note, { readonly kind: K }>>[] {
  return notes.filter(
    (one): one is JobNote<Extract<Note, { readonly kind: K }>> =>
      one.note.kind === kind && one.struck === null,
  );
}

/** The newest line of the work itself. A note that came since changes no card, so an answer to that card still counts. */
export function workedPlace({ place, notes }: Pick<Job, 'place' | 'notes'>): number {
  const beside = new Set(
    notes.flatMap((one) => [one.place, ...(one.struck === null ? [] : [one.struck.place])]),
  );
  let worked = place;
  while (beside.has(worked)) worked -= 1;
  return worked;
}

/** Whose line is the newest, when it was written, and of the work by which act; beside the work it has none. */
export function newestLine({
  answers,
  notes,
}: Pick<Job, 'answers' | 'notes'>):
  | { readonly person: string; readonly at: string; readonly act?: string }
  | undefined {
  const struck = notes.flatMap((one) => (one.struck === null ? [] : [one.struck]));
  return [answers.at(-1), notes.at(-1), ...struck]
    .filter((line) => line !== undefined)
    .toSorted((one, other) => one.place - other.place)
    .at(-1);
}
