/** What was found on a valve and what was put in, noted at any step of a job; and striking what is not so. */
import { z } from 'zod';
import type { Action } from '../../procedures/actions/action.ts';
import type { Job } from '../../procedures/job.ts';
import type { JobNote } from '../../procedures/notes/note.ts';
import { type Choice, FOUND, WHERE } from '../../procedures/notes/words.ts';
import { type Fields, oneOf, optionalText } from '../http/fields.ts';
import { type BareCall, type PageView, type Route, route } from '../http/route.ts';
import { actOnJob, noSuchJob } from '../jobs/acts.ts';
import type { Catalogue } from '../jobs/catalogue.ts';
import { jobKind } from '../jobs/job-stream.ts';
import { sayMore, sayNote, sayStruck } from '../jobs/notes/words.ts';
import { nameOf } from '../jobs/view/words.ts';
import type { Person, Role } from '../people/person.ts';
import { shownTime } from '../shown-time.ts';
import { typedIn } from './parts.ts';

export const NOTERS = ['technician', 'supervisor', 'engineer'] as const satisfies readonly Role[];
/** Who strikes on a closed job. */
const KEEPERS: readonly string[] = ['supervisor', 'engineer'] satisfies readonly Role[];

const noteFields = z.object({
  kind: oneOf(['finding', 'part', 'strike']),
  found: optionalText({ called: 'what was found', max: 40 }).optional(),
  where: optionalText({ called: 'where', max: 40 }).optional(),
  words: optionalText({ called: 'the words', max: 400, lines: true }).optional(),
  description: optionalText({ called: 'the part', max: 120 }).optional(),
  number: optionalText({ called: 'the part number', max: 60 }).optional(),
  quantity: optionalText({ called: 'how many', max: 20 }).optional(),
  batch: optionalText({ called: 'batch or serial', max: 60 }).optional(),
  about: z
    .string()
    .regex(/^\d{1,9}$/, 'Name the line by its number.')
    .optional(),
  reason: optionalText({ called: 'why', max: 400 }).optional(),
});

type NoteFields = z.output<typeof noteFields>;

const noteAnswer = z.object({
  place: z.int().describe('Line of the job'),
  kind: z.enum(['finding', 'part', 'photo']),
  says: z.string(),
  more: z.string(),
  person: z.string(),
  at: z.string(),
  struck: z.string().describe('Blank while it stands'),
  widthPx: z.int().nullable().describe('Of a photo, which is served at /jobs/{job}/photos/{place}'),
  heightPx: z.int().nullable(),
});

export const notesAnswer = z.object({
  job: z.string(),
  tag: z.string(),
  notes: z.array(noteAnswer),
  found: z.array(z.object({ value: z.string(), label: z.string() })),
  where: z.array(z.object({ value: z.string(), label: z.string() })),
});

export function jobNoteRoutes(catalogue: Catalogue): readonly Route[] {
  return [showNotes, noteRoute(catalogue)];
}

const showNotes = route({
  method: 'GET',
  path: '/jobs/:id/notes',
  name: 'showNotes',
  summary: 'What was found and which parts were put in on a job, and what may be noted',
  roles: 'signed-in',
  answer: notesAnswer,
  handle: async (call) => await notesReply(call, {}),
});

function noteRoute(catalogue: Catalogue): Route {
  return route({
    method: 'POST',
    path: '/jobs/:id/notes',
    name: 'noteOnJob',
    summary: 'Note a finding or a part on a job, or strike a note with the reason',
    roles: NOTERS,
    body: noteFields,
    answer: notesAnswer,
    handle: async (call) => {
      const { services, requestId, person, screen } = call;
      const job = call.params.id ?? '';
      const action = actionOf(call.body);
      await actOnJob({ services, catalogue, requestId, person, screen, job, action });
      return { ...(await notesReply(call, {})), seeOther: `/jobs/${job}/notes#noted` };
    },
    refused: async (call) => {
      if (call.person === null) throw new TypeError('a refused note without a person');
      const { page } = await notesReply({ ...call, person: call.person }, call.typed);
      return { page };
    },
  });
}

/** A note stands beside the work, so that it names no card. */
function actionOf({ kind, about = '0', reason = '', ...fields }: NoteFields): Action {
  const given = Object.fromEntries(
    Object.entries(fields).filter((pair): pair is [string, string] => typeof pair[1] === 'string'),
  );
  if (kind === 'strike') return { kind: 'strike-note', place: 0, about: Number(about), reason };
  return { kind: kind === 'finding' ? 'note-finding' : 'note-part', place: 0, given };
}

const TYPED = [
  ...['kind', 'found', 'where', 'words', 'description', 'number', 'quantity', 'batch', 'about', 'reason'],
] as const;

export async function notesReply(call: BareCall & { readonly person: Person }, fields: Fields) {
  const { services, person, params } = call;
  const id = params.id ?? '';
  const job = await services.log.state(jobKind, id);
  if (job.status === 'none') throw noSuchJob(id);
  const people = await services.people.list();
  const names = new Map(people.map((one) => [one.id, one.name]));
  const notes = job.notes.map((one) => noteOf(one, names));
  const data = { job: id, tag: job.tag, notes, found: options(FOUND), where: options(WHERE) };
  return { data, page: pageOf({ job, id, notes, person }, typedIn(fields, TYPED)) };
}

function options(choices: readonly Choice[]): { value: string; label: string }[] {
  return choices.map((one) => ({ ...one }));
}

function noteOf(one: JobNote, names: ReadonlyMap<string, string>): z.output<typeof noteAnswer> {
  const { place, note, person, at } = one;
  return {
    place,
    kind: note.kind,
    says: sayNote(note),
    more: sayMore(note),
    person: nameOf(person, names),
    at: shownTime(at),
    struck: sayStruck(one),
    widthPx: note.kind === 'photo' ? note.widthPx : null,
    heightPx: note.kind === 'photo' ? note.heightPx : null,
  };
}

interface Shown {
  readonly job: Job;
  readonly id: string;
  readonly notes: readonly z.output<typeof noteAnswer>[];
  readonly person: Person;
}

function pageOf({ job, id, notes, person }: Shown, typed: Readonly<Record<string, string>>): PageView {
  const chosen = (choices: readonly Choice[], value: string | undefined) => [
    { value: '', label: 'Choose' },
    ...choices.map((one) => ({ ...one, selected: one.value === value })),
  ];
  const isNoter = NOTERS.some((role) => role === person.role);
  const params = {
    job: { id, tag: job.tag },
    notes,
    typed,
    mayNote: isNoter && job.status !== 'closed',
    mayStrike: job.status === 'closed' ? KEEPERS.includes(person.role) : isNoter,
    isClosed: job.status === 'closed',
    shows: [
      { value: '', label: 'What stands open on the card' },
      ...notes
        .filter(({ kind, struck }) => kind !== 'photo' && struck === '')
        .map(({ place, says }) => ({
          value: String(place),
          label: `Line ${place}: ${says}`,
          selected: typed.kind === 'photo' && typed.about === String(place),
        })),
    ],
    found: chosen(FOUND, typed.found),
    where: chosen(WHERE, typed.where),
  };
  return { title: `${job.tag}, job ${id}`, template: 'pages/job-notes.njk', params };
}
