import { Refusal } from '../../safety/refusal.ts';
import type { JobDraft } from '../evolve.ts';
import type { Job } from '../job.ts';
import { type Choice, FOUND, WHERE } from '../notes/words.ts';
import type { Given } from '../readings/given.ts';
import type { ActionOf, Surroundings } from './action.ts';
import { noWay } from './refusals.ts';

/** More pieces than any valve takes of one part. */
const QUANTITY_MAX = 999;
const WORDS_MAX = 400;
/** A record with more is read by nobody. Common practice, no source. */
const PHOTOS_MAX = 60;
const PART_MAX = 120;
const MARK_MAX = 60;

type Wrong = Record<string, string>;

/** Notes what was found on the valve. It touches nothing, and no card waits for it. */
export function noteFinding(job: Job, { given }: ActionOf<'note-finding'>): JobDraft {
  const { found = '', where = '' } = given;
  const words = textOf(given, 'words');
  const wrong: Wrong = {
    ...unless(isOneOf(FOUND, found), { found: 'Choose what was found.' }),
    ...unless(isOneOf(WHERE, where), { where: 'Choose where it was found.' }),
    ...tooLong({ words }, WORDS_MAX),
  };
  if (words === '' && (found === 'other' || where === 'other')) wrong.words = 'Say it in words.';
  refuse(wrong);
  return drafted(job, { kind: 'finding-noted', note: { kind: 'finding', found, where, words } });
}

/** Notes a part that was put in. */
export function notePart(job: Job, { given }: ActionOf<'note-part'>): JobDraft {
  const [description, number, batch] = ['description', 'number', 'batch'].map((name) => textOf(given, name));
  const quantity = textOf(given, 'quantity');
  const isCount = /^[1-9]\d{0,2}$/.test(quantity) && Number(quantity) <= QUANTITY_MAX;
  const texts = { description: description ?? '', number: number ?? '', batch: batch ?? '' };
  refuse({
    ...tooLong({ number: texts.number, batch: texts.batch }, MARK_MAX),
    ...tooLong({ description: texts.description }, PART_MAX),
    ...unless(texts.description !== '', { description: 'Write which part it is.' }),
    ...unless(isCount, { quantity: `Write how many, a whole number from 1 to ${QUANTITY_MAX}.` }),
  });
  return drafted(job, { kind: 'part-noted', note: { kind: 'part', ...texts, quantity: Number(quantity) } });
}

/** Notes a photo of what stands open, or of a finding or part. */
export function notePhoto(job: Job, { photo, given }: ActionOf<'note-photo'>): JobDraft {
  const words = textOf(given, 'words');
  const about = textOf(given, 'about');
  const shown = job.notes.find(({ place, note }) => String(place) === about && note.kind !== 'photo');
  refuse({
    ...tooLong({ words }, WORDS_MAX),
    ...unless(about === '' || shown?.struck === null, { about: 'Choose a finding or part that stands.' }),
  });
  if (job.notes.filter(({ note }) => note.kind === 'photo').length >= PHOTOS_MAX)
    throw noWay(`A job takes ${PHOTOS_MAX} photos, and has them.`, 'Note in words what there is to see.');
  const place = shown === undefined ? null : shown.place;
  const draft = drafted(job, {
    kind: 'photo-noted',
    note: { kind: 'photo', ...photo, words, about: place },
  });
  return { ...draft, inputs: { ...draft.inputs, blobs: [photo.blob] } };
}

/**
 * Strikes a note: it stays readable with the reason beside it, and counts no more. Once the job is closed its record may
 * have been handed on, so that whoever keeps the records does it.
 */
export function strikeNote(
  job: Job,
  { about, reason }: ActionOf<'strike-note'>,
  { person }: Surroundings,
): JobDraft {
  if (job.status === 'closed' && person.role !== 'supervisor' && person.role !== 'engineer') {
    throw new Refusal({
      kind: 'not-allowed',
      code: 'NOT-002',
      what: 'This job is closed: a supervisor or an engineer strikes its notes.',
      kept: 'Nothing was written.',
      next: 'Ask one of them to strike it, and say why.',
    });
  }
  const note = job.notes.find((one) => one.place === about);
  if (note === undefined || note.struck !== null)
    throw noWay('No note stands on that line.', 'Choose a note that stands.');
  const why = reason.trim();
  refuse({ ...unless(why !== '', { reason: 'Write why.' }), ...tooLong({ reason: why }, WORDS_MAX) });
  return {
    kind: 'note-struck',
    inputs: { step: job.step, about, reason: why },
    outcome: { name: 'struck', figures: {} },
    effects: { to: job.step },
  };
}

function drafted(
  job: Job,
  { kind, note }: { readonly kind: string; readonly note: NonNullable<JobDraft['inputs']['note']> },
): JobDraft {
  return {
    kind,
    inputs: { step: job.step, note },
    outcome: { name: 'noted', figures: {} },
    effects: { to: job.step },
  };
}

function textOf(given: Given, name: string): string {
  return (given[name] ?? '').replaceAll(/\s+/g, ' ').trim();
}

function isOneOf(choices: readonly Choice[], value: string): boolean {
  return choices.some((one) => one.value === value);
}

function unless(right: boolean, wrong: Wrong): Wrong {
  return right ? {} : wrong;
}

function tooLong(texts: Readonly<Record<string, string>>, max: number): Wrong {
  const long = Object.entries(texts).filter(([, text]) => [...text].length > max);
  return Object.fromEntries(long.map(([name]) => [name, `At most ${max} letters.`]));
}

/** @throws Refusal NOT-001 */
function refuse(wrong: Wrong): void {
  const messages = Object.values(wrong);
  if (messages.length === 0) return;
  throw new Refusal({
    kind: 'unreadable',
    code: 'NOT-001',
    what: messages.join(' '),
    kept: 'What you typed is still there.',
    next: 'Put it right and send it again.',
    fields: wrong,
  });
}
