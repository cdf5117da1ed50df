/** Photos of a job: taken or chosen in a plain form, read by their structure, and served to whoever may see the job. */
import { z } from 'zod';
import type { JobNote, Photo } from '../../procedures/notes/note.ts';
import type { UploadedFile } from '../http/decode.ts';
import { notFound } from '../http/errors.ts';
import { optionalText } from '../http/fields.ts';
import { type Route, route } from '../http/route.ts';
import { actOnJob } from '../jobs/acts.ts';
import type { Catalogue } from '../jobs/catalogue.ts';
import { jobKind } from '../jobs/job-stream.ts';
import { wholeBlob } from '../log/blobs.ts';
import { streamOf } from '../log/stream-kind.ts';
import { PHOTO_TYPES } from '../photos/kind.ts';
import { cleanPhoto } from '../photos/photo.ts';
import { noPhoto, oddName, PHOTO_BYTES_MAX } from '../photos/refusals.ts';
import { NOTERS, notesAnswer, notesReply } from './job-notes.ts';

/** The texts of the form beside its photo. */
const BESIDE_BYTES = 64 * 1024;
const NAME_MAX = 255;
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is kept out
const ODD_NAME = /[\u0000-\u001f\u007f/\\]|^\.{1,2}$|\p{Surrogate}/u;

export function photoRoutes(catalogue: Catalogue): readonly Route[] {
  return [showPhoto, takeRoute(catalogue)];
}

const showPhoto = route({
  method: 'GET',
  path: '/jobs/:id/photos/:place',
  name: 'showPhoto',
  summary: 'A photo of a job, by the line that notes it',
  roles: 'signed-in',
  rawType: 'image/jpeg',
  answer: z.object({
    sha256: z.string(),
    type: z.enum(['jpeg', 'png', 'webp']),
    widthPx: z.int(),
    heightPx: z.int(),
    bytes: z.int(),
    words: z.string(),
  }),
  handle: async ({ services, params }) => {
    const id = params.id ?? '';
    const { notes } = await services.log.state(jobKind, id);
    const photo = notes.find((one): one is JobNote<Photo> => isPhotoAt(one, params.place ?? ''));
    if (photo === undefined) throw notFound();
    const { blob: sha256, kind: _, about: __, ...of } = photo.note;
    const at = { seq: photo.seq, place: photo.place, stream: streamOf('job', id) };
    const body = await wholeBlob({ ...at, hash: sha256 }, services.store);
    const raw = { contentType: PHOTO_TYPES[of.type].mime, body, immutablePicture: true as const };
    return { data: { sha256, ...of }, raw };
  },
});

function isPhotoAt({ note, place }: JobNote, wanted: string): boolean {
  return note.kind === 'photo' && String(place) === wanted;
}

function takeRoute(catalogue: Catalogue): Route {
  return route({
    method: 'POST',
    path: '/jobs/:id/photos',
    name: 'takePhoto',
    summary: 'Note a photo on a job: JPEG, PNG or WebP, kept without its metadata',
    roles: NOTERS,
    bodyBytesMax: PHOTO_BYTES_MAX + BESIDE_BYTES,
    fileField: 'photo',
    body: z.object({
      kind: z.literal('photo').optional(),
      words: optionalText({ called: 'the words', max: 400, lines: true }).default(''),
      about: optionalText({ called: 'what it shows', max: 9 }).default(''),
    }),
    answer: notesAnswer,
    handle: async (call) => {
      const { services, requestId, person, screen, file } = call;
      const { type, hash, bytes, widthPx, heightPx } = await cleanPhoto(fileOf(file));
      const { words, about } = call.body;
      const photo = { blob: hash, type, bytes: bytes.length, widthPx, heightPx };
      const job = call.params.id ?? '';
      const action = { kind: 'note-photo', place: 0, photo, given: { words, about } } as const;
      const blobs = [{ hash, bytes }];
      await actOnJob({ services, catalogue, requestId, person, screen, job, action, blobs });
      return { ...(await notesReply(call, {})), seeOther: `/jobs/${job}/notes#noted` };
    },
    refused: async (call) => {
      if (call.person === null) throw new TypeError('a refused photo without a person');
      const { page } = await notesReply({ ...call, person: call.person }, { ...call.typed, kind: 'photo' });
      return { page };
    },
  });
}

/** The name is looked at and forgotten: nothing is stored under it. @throws Refusal PHO-001, PHO-008 */
function fileOf(file: UploadedFile | null): Uint8Array {
  if (file === null || file.bytes.length === 0) throw noPhoto();
  if (file.name.length > NAME_MAX || ODD_NAME.test(file.name)) throw oddName();
  return file.bytes;
}
