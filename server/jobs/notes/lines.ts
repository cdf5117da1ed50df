import type { Compiled } from '../../../procedures/compile.ts';
import type { Job } from '../../../procedures/job.ts';
import type { JobNote } from '../../../procedures/notes/note.ts';
import type { LineView } from '../view/lines.ts';
import { clock, short } from '../view/words.ts';
import { sayMore, sayNote, sayStruck } from './words.ts';

/** Notes, and what struck them, each as a line among those of the work. */
export function noteLines(job: Job, { definition }: Compiled): readonly LineView[] {
  return job.notes
    .flatMap((one) => {
      const of = { step: one.step, phase: definition.steps[one.step]?.phase ?? '' };
      const struck = struckLine(one);
      return [
        { ...BLANK, ...of, ...notedLine(one) },
        ...(struck === null ? [] : [{ ...BLANK, ...of, ...struck }]),
      ];
    })
    .toSorted((one, other) => one.place - other.place);
}

/** Lines of the work with those beside it, in the order in which they were written. */
export function withNotes(lines: readonly LineView[], notes: readonly LineView[]): readonly LineView[] {
  return notes.length === 0 ? lines : [...lines, ...notes].toSorted((one, other) => one.place - other.place);
}

const BLANK = {
  number: '–',
  reading: '',
  gave: [],
  correctable: false,
  readable: false,
  rows: [],
} satisfies Partial<LineView>;

type Own = Pick<LineView, 'place' | 'what' | 'verdict' | 'who' | 'when' | 'more' | 'isNote' | 'photo'>;

function notedLine(one: JobNote): Own {
  const { place, note, person, at, struck } = one;
  return {
    place,
    what: sayNote(note),
    verdict:
      struck === null ? { mark: 'record', word: WORD[note.kind] } : { mark: 'off-path', word: 'struck' },
    who: short(person),
    when: clock(at),
    more: sentences(`line ${place}`, sayMore(note), sayStruck(one)),
    isNote: true,
    photo: note.kind === 'photo' ? { widthPx: note.widthPx, heightPx: note.heightPx } : null,
  };
}

const WORD = { finding: 'found', part: 'put in', photo: 'photo' } as const;

function struckLine({ note, struck }: JobNote): Own | null {
  if (struck === null) return null;
  const { place, person, at, reason } = struck;
  return {
    place,
    what: `Struck: ${sayNote(note)}`,
    verdict: { mark: 'record', word: 'struck' },
    who: short(person),
    when: clock(at),
    more: sentences(`line ${place}`, reason),
    isNote: false,
    photo: null,
  };
}

/** The stop at the end of each is put by whoever shows them. */
function sentences(...texts: readonly string[]): string {
  return texts
    .map((text) => text.replace(/\.+$/, ''))
    .filter((text) => text !== '')
    .join('. ');
}
