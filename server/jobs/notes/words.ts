import type { JobNote, Note } from '../../../procedures/notes/note.ts';
import { sayFound } from '../../../procedures/notes/words.ts';

/** @example sayNote({ kind: 'finding', found: 'worn', where: 'seat', words: '' }) // 'Found: seat ring: worn' */
export function sayNote(note: Note): string {
  if (note.kind === 'photo') return note.about === null ? 'Photo' : `Photo of line ${note.about}`;
  if (note.kind === 'part') return `Put in: ${note.description}, ${sayQuantity(note)}`;
  const found = sayFound(note);
  return `Found on ${found.slice(0, 1).toLowerCase()}${found.slice(1)}`;
}

/** @example sayQuantity({ quantity: 5 }) // '5 off' */
function sayQuantity({ quantity }: { readonly quantity: number }): string {
  return `${quantity} off`;
}

/** Number and batch of a part, or the words of a finding; blank where neither was written. */
export function sayMore(note: Note): string {
  if (note.kind !== 'part') return note.words;
  return [
    ...(note.number === '' ? [] : [`number ${note.number}`]),
    ...(note.batch === '' ? [] : [`batch or serial ${note.batch}`]),
  ].join(', ');
}

/** Why a note counts no more; blank while it stands. */
export function sayStruck({ struck }: Pick<JobNote, 'struck'>): string {
  return struck === null ? '' : `struck on line ${struck.place}: ${struck.reason}`;
}
