import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { JobRecord } from '../../../server/jobs/record/schema.ts';
import { blobHash } from '../../../server/log/blobs.ts';
import { cleanPhoto } from '../../../server/photos/photo.ts';
import { PHOTO_BYTES_MAX } from '../../../server/photos/refusals.ts';
import { openSqliteStore } from '../../../server/store/sqlite-store.ts';
import { openSiteJob, type SiteJob } from '../../builders/site-jobs.ts';
import { aFolder } from '../../folders.ts';
import { type AnApp, anApp, type Browser, ORIGIN } from '../an-app.ts';
import { type FailingStore, failingStore } from '../log/failing-store.ts';
import { fixture } from '../photos/pictures.ts';

let app: AnApp;
let store: FailingStore;
let as: Browser;
let job: SiteJob;
beforeAll(async () => {
  store = failingStore(openSqliteStore({ folder: aFolder() }));
  app = await anApp({ people: true, store });
  const technician = await app.signedIn('technician');
  const { person: supervisor } = await app.signedIn('supervisor');
  job = await openSiteJob(app, { technician: technician.person, supervisor, place: 'bench' });
  as = technician.browser;
});
afterAll(() => app.close());

let request = 0;
interface Sent {
  readonly bytes?: Uint8Array;
  readonly name?: string;
  readonly type?: string;
  readonly fields?: Readonly<Record<string, string>>;
  readonly more?: (form: FormData) => void;
  readonly by?: Browser;
}

/** A multipart form, as a browser sends it. */
async function send({ bytes, name = 'photo.jpg', type = 'image/jpeg', fields = {}, more, by = as }: Sent) {
  request += 1;
  const form = new FormData();
  for (const [field, value] of Object.entries({ requestId: `photo-${request}-xxxx`, ...fields }))
    form.set(field, value);
  if (bytes !== undefined) form.append('photo', new Blob([new Uint8Array(bytes)], { type }), name);
  more?.(form);
  const headers = { origin: ORIGIN, accept: 'text/html', cookie: by.header };
  return await app.send(`/jobs/${job.id}/photos`, { method: 'POST', headers, body: form });
}

const headers = { accept: 'application/json' };
const record = async () => {
  const answer = await app.get(`/jobs/${job.id}/record`, { as, headers });
  return ((await answer.json()) as { record: JobRecord }).record;
};

describe('A photo of a job', () => {
  test('is kept by a plain form without its metadata, once, and served to whoever may see the job (WS-44)', async () => {
    const given = { kind: 'finding', found: 'scored', where: 'plug', words: '' };
    await app.post(`/jobs/${job.id}/notes`, given, { as });
    const about = String((await job.job()).notes.at(-1)?.place);
    const bytes = fixture('camera.jpg');
    const fields = { requestId: 'the-same-photo', kind: 'photo', words: 'seat <side>', about };
    const [first, again] = [await send({ bytes, fields }), await send({ bytes, fields })];
    expect([first.status, again.status]).toEqual([303, 303]);
    const { notes } = await job.job();
    const { bytes: clean, hash } = await cleanPhoto(bytes);
    expect(notes).toHaveLength(2);
    expect(notes.at(-1)?.note).toEqual({
      ...{ kind: 'photo', blob: hash, type: 'jpeg', bytes: clean.length, widthPx: 32, heightPx: 48 },
      ...{ words: 'seat <side>', about: Number(about) },
    });

    const path = `/jobs/${job.id}/photos/${notes.at(-1)?.place}`;
    const officer = (await app.signedIn('safety-officer')).browser;
    const served = await app.get(path, { as: officer });
    expect(new Uint8Array(await served.arrayBuffer())).toEqual(new Uint8Array(clean));
    expect(Object.fromEntries(served.headers)).toMatchObject({
      'content-type': 'image/jpeg',
      'x-content-type-options': 'nosniff',
      'cache-control': 'private, max-age=86400, immutable',
      'content-security-policy': expect.stringContaining('sandbox'),
    });
    expect((await app.get(path)).status).toBe(303);
    expect((await app.get(path.replace(/\d+$/, about), { as })).status).toBe(404);
    expect((await app.get('/jobs/99/photos/1', { as })).status).toBe(404);
    expect((await send({ bytes, by: officer })).status).toBe(403);
    const page = await (await app.get(`/jobs/${job.id}/notes`, { as })).text();
    expect(page).toContain(`src="${path}"`);
    expect(page).not.toContain('<side>');
    expect(await (await app.get(`/jobs/${job.id}`, { as })).text()).toContain(`src="${path}"`);
  });

  test('stands in the record with its hash, on the page and in the document', async () => {
    const { photos, lines } = await record();
    expect(photos).toMatchObject([{ words: 'seat <side>', type: 'jpeg', widthPx: 32 }]);
    expect(lines.map(({ what }) => what)).toContain(`Photo of line ${photos[0]?.about}`);
    const page = await (await app.get(`/jobs/${job.id}/record`, { as })).text();
    expect(page).toContain(`src="/jobs/${job.id}/photos/${photos[0]?.place}"`);
    expect(page).toContain(photos[0]?.sha256);
    const pdf = await (await app.get(`/jobs/${job.id}/record.pdf`, { as })).text();
    expect(pdf).toMatch(/\/Subtype \/Image/);
  });

  test.each([
    ['no file', {}, 422],
    ['a name with a path', { name: '../../etc/passwd' }, 422],
    ['a name with a path of another system', { name: '..\\..\\photo.jpg' }, 422],
    ['a name of dots alone', { name: '..' }, 422],
    ['a name without an end', { name: 'x'.repeat(300) }, 422],
    ['a page that says it is a picture', { bytes: Buffer.from('<html><script>1</script></html>') }, 422],
    ['half a picture', { bytes: fixture('camera.jpg').subarray(0, 900) }, 422],
    [
      'a picture with an archive behind it',
      { bytes: Buffer.concat([fixture('screen.png'), Buffer.from('PK\x03\x04')]) },
      422,
    ],
    ['a file too large', { bytes: Buffer.alloc(PHOTO_BYTES_MAX + 1) }, 422],
    ['a body too large', { bytes: Buffer.alloc(PHOTO_BYTES_MAX + 80_000) }, 400],
    ['a finding that is not there', { fields: { about: '999' } }, 422],
    ['words without an end', { fields: { words: 'x'.repeat(401) } }, 422],
    ['two files', { more: (form: FormData) => form.append('photo', new Blob(['x']), 'b.jpg') }, 400],
    [
      'a file in another field',
      { more: (form: FormData) => form.append('words', new Blob(['x']), 'b') },
      400,
    ],
    ['a field that is none', { fields: { path: '/etc' } }, 400],
  ] as const)('is refused with its reason, and nothing is written: %s', async (name, sent: Sent, status) => {
    const { seq } = await store.head();
    const bytes = name === 'no file' ? {} : { bytes: fixture('camera.jpg') };
    const answer = await send({ ...bytes, ...sent });
    expect(answer.status).toBe(status);
    const text = await answer.text();
    if (status === 422) expect(text).toContain('Take a photo');
    expect(text).not.toMatch(/etc\/passwd|at Object|node_modules/);
    expect((await store.head()).seq).toBe(seq);
  });

  test('in a form that is no multipart, or one cut in the middle, is refused', async () => {
    const path = `/jobs/${job.id}/photos`;
    expect((await app.post(path, { words: 'x' }, { as })).status).toBe(422);
    const type = 'multipart/form-data; boundary=xx';
    const body = '--xx\r\nContent-Disposition: form-data; name="photo"; filename="a.jpg"\r\n\r\n\xff\xd8';
    const cut = { origin: ORIGIN, cookie: as.header, 'content-type': type };
    expect((await app.send(path, { method: 'POST', headers: cut, body })).status).toBe(400);
    const elsewhere = await app.send(`/jobs/${job.id}/notes`, { method: 'POST', headers: cut, body });
    expect(elsewhere.status).toBe(400);
  });

  test('is there with its line or not at all, where the disk fails', async () => {
    const bytes = fixture('grey.jpg');
    const { hash } = await cleanPhoto(bytes);
    store.failNext.push('before writing');
    expect((await send({ bytes })).status).toBe(503);
    expect(await store.blob(hash)).toBeUndefined();
    expect((await send({ bytes })).status).toBe(303);
    expect(blobHash((await store.blob(hash)) ?? Buffer.alloc(0))).toBe(hash);
  });

  test('in PNG is printed, in WebP it is named and stands on the page', async () => {
    for (const name of ['screen.png', 'lossy.webp', 'palette.png'])
      expect((await send({ bytes: fixture(name), name })).status, name).toBe(303);
    const { photos } = await record();
    const last = photos.at(-2);
    const webp = await app.get(`/jobs/${job.id}/photos/${last?.place}`, { as });
    expect(webp.headers.get('content-type')).toBe('image/webp');
    expect((await app.get(`/jobs/${job.id}/record.pdf?paper=letter`, { as })).status).toBe(200);
  });
});
