import type { JobNote, Note } from '../../../procedures/notes/note.ts';
import { sayFound } from '../../../procedures/notes/words.ts';
import { shownTime } from '../../shown-time.ts';
import { sayStruck } from '../notes/words.ts';
import { nameOf } from '../view/words.ts';
import type { OfJob } from './holds.ts';
import type { JobRecord } from './schema.ts';

/** What was found on the valve; what was struck since is there too, and says so. */
export function findingsOf(of: OfJob): JobRecord['findings'] {
  return of.job.notes.flatMap((one) => {
    const { note } = one;
    if (note.kind !== 'finding') return [];
    return [{ ...notedBy(one, of), found: sayFound(note), words: note.words }];
  });
}

/** What was put in. */
export function usedPartsOf(of: OfJob): JobRecord['parts'] {
  return of.job.notes.flatMap((one) => {
    const { note } = one;
    if (note.kind !== 'part') return [];
    const { description: part, number, quantity, batch } = note;
    return [{ ...notedBy(one, of), part, number, quantity, batch }];
  });
}

export function photosOf(of: OfJob): JobRecord['photos'] {
  return of.job.notes.flatMap((one) => {
    const { note } = one;
    if (note.kind !== 'photo') return [];
    const { kind: _, blob: sha256, ...photo } = note;
    return [{ ...notedBy(one, of), ...photo, sha256 }];
  });
}

function notedBy(one: JobNote<Note>, { names }: OfJob) {
  return {
    place: one.place,
    at: shownTime(one.at),
    person: nameOf(one.person, names),
    struck: sayStruck(one),
  };
}
