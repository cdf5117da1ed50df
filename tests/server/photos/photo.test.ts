import { deflateSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { Refusal } from '../../../safety/refusal.ts';
import { cleanPhoto } from '../../../server/photos/photo.ts';
import { isTurnedPng } from '../../../server/photos/png.ts';
import { PHOTO_BYTES_MAX, PHOTO_PIXELS_MAX } from '../../../server/photos/refusals.ts';
import { fixture, joined, png, pngChunk, withSize } from './pictures.ts';

const TRUE_PICTURES = {
  'camera.jpg': { type: 'jpeg', widthPx: 32, heightPx: 48 },
  'progressive.jpg': { type: 'jpeg', widthPx: 64, heightPx: 48 },
  'grey.jpg': { type: 'jpeg', widthPx: 40, heightPx: 24 },
  'screen.png': { type: 'png', widthPx: 17, heightPx: 31 },
  'palette.png': { type: 'png', widthPx: 31, heightPx: 17 },
  'lossy.webp': { type: 'webp', widthPx: 32, heightPx: 48 },
  'lossless.webp': { type: 'webp', widthPx: 20, heightPx: 12 },
  'seethrough.webp': { type: 'webp', widthPx: 40, heightPx: 30 },
  'plain.webp': { type: 'webp', widthPx: 24, heightPx: 16 },
} as const;
const NAMES = Object.keys(TRUE_PICTURES) as (keyof typeof TRUE_PICTURES)[];

async function codeOf(bytes: Uint8Array): Promise<string> {
  try {
    await cleanPhoto(bytes);
    return 'taken';
  } catch (error) {
    if (error instanceof Refusal) return error.text.code;
    throw error;
  }
}

describe('A photo', () => {
  test.each(NAMES)('is known by its content, with its size as it is seen: %s', async (name) => {
    expect(await cleanPhoto(fixture(name))).toMatchObject(TRUE_PICTURES[name]);
  });

  test.each(NAMES)(
    'loses everything that is not the picture, and nothing more when it comes again: %s',
    async (name) => {
      const given = fixture(name);
      const clean = await cleanPhoto(given);
      const text = Buffer.from(clean.bytes).toString('latin1');
      expect(text).not.toMatch(/SECRET|GPS|2031|8BIM|xmp|ICC_PROFILE|acsp/i);
      expect(await cleanPhoto(clean.bytes)).toEqual(clean);
    },
  );

  test('carries in its fixtures what has to be lost', () => {
    const marks = ['SECRET-CAMERA', 'SECRET-XMP', 'SECRET-IPTC', 'SECRET-COMMENT', 'ICC_PROFILE', '2031'];
    const camera = fixture('camera.jpg').toString('latin1');
    for (const mark of marks) expect(camera).toContain(mark);
    for (const mark of ['SECRET-TEXT', 'SECRET-XMP'])
      expect(fixture('screen.png').toString('latin1')).toContain(mark);
    expect(fixture('lossy.webp').toString('latin1')).toContain('SECRET-XMP');
  });

  test.each(['camera.jpg', 'screen.png', 'lossy.webp'] as const)(
    'keeps which way is up: %s',
    async (name) => {
      const bytes = Buffer.from((await cleanPhoto(fixture(name))).bytes);
      const at = bytes.indexOf(Buffer.from('MM\0*\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01\0\x06', 'latin1'));
      expect(at).toBeGreaterThan(0);
      expect(isTurnedPng(bytes)).toBe(name === 'screen.png');
    },
  );

  test('is refused wherever it is cut off', async () => {
    for (const name of NAMES) {
      const whole = fixture(name);
      for (
        let length = 0;
        length < whole.length;
        length += length < 64 || length > whole.length - 64 ? 1 : 5
      ) {
        const code = await codeOf(whole.subarray(0, length));
        expect([name, length, code], `${name} cut at ${length}`).toEqual([
          name,
          length,
          expect.stringMatching(/^PHO-00[2567]$/),
        ]);
      }
    }
  });

  test('with one byte changed is refused, or is a picture that comes through again as it is', async () => {
    for (const name of NAMES) {
      const whole = fixture(name);
      for (let at = 0; at < whole.length; at += 7) {
        const changed = Buffer.from(whole);
        changed[at] = (changed[at] ?? 0) ^ 0x55;
        const clean = await cleanPhoto(changed).catch((error: unknown) => {
          if (error instanceof Refusal) return null;
          throw error;
        });
        if (clean !== null) expect(await codeOf(clean.bytes), `${name} changed at ${at}`).toBe('taken');
      }
    }
  });
});

describe('What is no photo', () => {
  test.each([
    ['a page', '<html><script>alert(1)</script></html>'],
    ['a drawing with a script', '<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"/>'],
    [
      'a moving picture of another kind',
      'GIF89a\x01\0\x01\0\x80\0\0\0\0\0\xff\xff\xff!\xf9\x04\x01\0\0\0\0,',
    ],
    ['a document', '%PDF-1.7\n1 0 obj\n<<>>\nendobj'],
    ['an archive', 'PK\x03\x04\x14\0\0\0\0\0\0\0\0\0\0\0\0\0'],
    ['a program', 'MZ\x90\0\x03\0\0\0\x04\0\0\0\xff\xff\0\0'],
    ['nothing much', '\xff\xd8\xff'],
    ['another RIFF', 'RIFF\x24\0\0\0WAVEfmt \x10\0\0\0'],
  ])('is refused, whatever its name: %s', async (_, text) => {
    expect(await codeOf(Buffer.from(text, 'latin1'))).toBe('PHO-002');
  });

  test('is refused where only its first bytes are those of a picture', async () => {
    const heads = [
      joined('\xff\xd8\xff\xe0', 'x'.repeat(64)),
      joined(png({ widthPx: 1, heightPx: 1 }).subarray(0, 8), 'x'.repeat(64)),
      joined('RIFF\x40\0\0\0WEBP', 'x'.repeat(60)),
    ];
    for (const head of heads) expect(await codeOf(head)).toMatch(/^PHO-00[57]$/);
    expect(await codeOf(fixture('moving.webp'))).toBe('PHO-006');
  });

  test('is refused behind a picture, but for what cameras put there, and that is cut off', async () => {
    const archive = 'PK\x03\x04 an archive';
    for (const name of ['camera.jpg', 'screen.png', 'lossy.webp', 'plain.webp'])
      expect(await codeOf(joined(fixture(name), archive)), name).toBe('PHO-007');
    const camera = fixture('camera.jpg');
    const { hash } = await cleanPhoto(camera);
    for (const behind of [fixture('grey.jpg'), 'SEFH notes of its own SEFT', '\0\0\0\0'])
      expect((await cleanPhoto(joined(camera, behind))).hash).toBe(hash);
    const page = pngChunk('tEXt', Buffer.from('Comment\0<script>alert(1)</script>'));
    const clean = await cleanPhoto(png({ widthPx: 2, heightPx: 2, before: [page] }));
    expect(Buffer.from(clean.bytes).toString('latin1')).not.toContain('script');
  });

  test('is refused among the rows of a PNG, as a kind of part unknown, or with a wrong sum', async () => {
    const rows = Buffer.alloc(3 * 2);
    const good = png({ widthPx: 2, heightPx: 2, rows });
    expect(await codeOf(good)).toBe('taken');
    expect(await codeOf(png({ widthPx: 2, heightPx: 2, packed: joined(deflateSync(rows), 'hidden') }))).toBe(
      'PHO-005',
    );
    expect(await codeOf(png({ widthPx: 2, heightPx: 2, before: [pngChunk('EVIL', Buffer.of(1))] }))).toBe(
      'PHO-005',
    );
    expect(await codeOf(png({ widthPx: 2, heightPx: 2, rows: Buffer.from([9, 0, 0, 0, 0, 0]) }))).toBe(
      'PHO-005',
    );
    const wrong = Buffer.from(good);
    wrong[wrong.length - 1] = (wrong.at(-1) ?? 0) ^ 1;
    expect(await codeOf(wrong)).toBe('PHO-005');
  });
});

describe('A picture that unpacks to far more than it is', () => {
  test('is refused by the size that it says, before anything is unpacked', async () => {
    const huge = { widthPx: 16_000, heightPx: 16_000 };
    expect(await codeOf(png({ ...huge, packed: Buffer.of(1) }))).toBe('PHO-004');
    expect(await codeOf(withSize(fixture('camera.jpg'), huge))).toBe('PHO-004');
    expect(await codeOf(png({ widthPx: 20_000, heightPx: 1, packed: Buffer.of(1) }))).toBe('PHO-004');
    const webp = Buffer.from(fixture('lossless.webp'));
    const at = webp.indexOf('VP8L') + 9;
    webp.writeUInt32LE(((webp.readUInt32LE(at) & 0xf0000000) | 0x0fffffff) >>> 0, at);
    expect(await codeOf(webp)).toBe('PHO-004');
    expect(16_000 * 16_000).toBeGreaterThan(PHOTO_PIXELS_MAX);
  });

  test('is refused where its rows are more, or fewer, than it says', async () => {
    expect(await codeOf(png({ widthPx: 10, heightPx: 10, rows: Buffer.alloc(4_000_000) }))).toBe('PHO-005');
    expect(await codeOf(png({ widthPx: 10, heightPx: 10, rows: Buffer.alloc(109) }))).toBe('PHO-005');
    expect(await codeOf(png({ widthPx: 10, heightPx: 10, packed: Buffer.alloc(20) }))).toBe('PHO-005');
  });

  test('is refused where a few bytes would fill a JPEG of many megapixels', async () => {
    expect(await codeOf(withSize(fixture('camera.jpg'), { widthPx: 7000, heightPx: 7000 }))).toBe('PHO-005');
  });

  test('is refused by its bytes alone', async () => {
    expect(await codeOf(joined(fixture('camera.jpg'), Buffer.alloc(PHOTO_BYTES_MAX)))).toBe('PHO-003');
  });

  test('interlaced rows are counted pass by pass', async () => {
    // 5 by 5, one byte a pixel: passes of 1x1, 1x1, 2x1, 1x2, 3x1, 2x3 and 5x2, each row with its filter byte.
    const rows = Buffer.alloc(2 + 2 + 3 + 2 * 2 + 4 + 3 * 3 + 2 * 6);
    const of = { widthPx: 5, heightPx: 5, interlaced: true };
    expect(await codeOf(png({ ...of, rows }))).toBe('taken');
    expect(await codeOf(png({ ...of, rows: Buffer.concat([rows, Buffer.of(0)]) }))).toBe('PHO-005');
    expect(await codeOf(png({ ...of, rows: rows.subarray(1) }))).toBe('PHO-005');
  });
});
