import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Body, readBody } from '../../../server/http/decode.ts';
import { form } from '../an-app.ts';

const FORM = 'application/x-www-form-urlencoded';
const JSON_TYPE = 'application/json';

function read(body: BodyInit, type = FORM, bytesMax?: number): Promise<Body> {
  const request = new Request('http://127.0.0.1/', {
    method: 'POST',
    body,
    headers: { 'content-type': type },
  });
  return readBody(request, bytesMax === undefined ? {} : { bytesMax });
}

async function codeOf(reading: Promise<unknown>): Promise<string> {
  const thrown = await reading.then(
    () => undefined,
    (error: unknown) => error,
  );
  return (thrown as { text?: { code: string } })?.text?.code ?? String(thrown);
}

describe('the body of a request', () => {
  // A lone surrogate is no text in UTF-8; everything else a person can type is in here.
  const value = fc.string({ unit: 'binary' }).filter((text) => !/\p{Surrogate}/u.test(text));
  const name = value.filter((text) => text !== '__proto__');

  test('gives the same texts from a form and from JSON, whatever they are', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.dictionary(name, fc.oneof(value, fc.array(value, { minLength: 2 }))),
        async (fields) => {
          const fromForm = await read(form(fields));
          const fromJson = await read(JSON.stringify(fields), JSON_TYPE);
          expect(fromForm.fields).toEqual(fromJson.fields);
          expect({ ...fromForm.fields }).toEqual({ ...fields });
        },
      ),
      { numRuns: 200 },
    );
  });

  test('takes a number in JSON for its text, as String writes it', async () => {
    const { fields } = await read('{"travelM":0.01905,"points":[1,2.5],"tiny":1e-7}', JSON_TYPE);
    expect({ ...fields }).toEqual({ travelM: '0.01905', points: ['1', '2.5'], tiny: '1e-7' });
  });

  test.each([
    ['nested objects', '{"a":{"b":1}}'],
    ['lists in lists', '{"a":[["b"]]}'],
    ['yes and no', '{"a":true}'],
    ['null', '{"a":null}'],
    ['a name twice', '{"a":"1","a":"2"}'],
    ['a list at the top', '["a"]'],
    ['a text at the top', '"a"'],
    ['a number too large', '{"a":1e999}'],
    ['half a surrogate pair', '{"a":"\\ud800"}'],
    ['no JSON', '{'],
    ['nothing', ''],
    ['NaN', '{"a":NaN}'],
  ])('refuses %s in JSON', async (_, body) => {
    expect(await codeOf(read(body, JSON_TYPE))).toBe('REQ-003');
  });

  test.each(['a=%', 'a=%zz', 'a=%ff', '%c3=1'])(
    'refuses the percent code of %s, which would change silently',
    async (body) => {
      expect(await codeOf(read(body))).toBe('REQ-003');
    },
  );

  test('refuses bytes that are no UTF-8', async () => {
    expect(await codeOf(read(new Uint8Array([0x61, 0x3d, 0xff])))).toBe('REQ-003');
  });

  test.each(['text/plain', 'multipart/form-data; boundary=x', 'application/xml', 'text/json'])(
    'refuses %s',
    async (type) => {
      expect(await codeOf(read('a=1', type))).toBe('REQ-002');
    },
  );

  test('takes a file as a table program writes it, UTF-16 too, and says of another coding how to save it', async () => {
    const sent = (bytes: Uint8Array<ArrayBuffer>) => {
      const form = new FormData();
      form.append('a', new Blob([bytes]), 'loop.txt');
      return readBody(new Request('http://127.0.0.1/', { method: 'POST', body: form }), {
        takesTextFiles: true,
      });
    };
    const little = Uint8Array.from(Buffer.from('\ufeffPosición\t1', 'utf16le'));
    expect((await sent(little)).fields).toEqual({ a: 'Posición\t1' });
    expect((await sent(Uint8Array.from(Buffer.from(little).swap16()))).fields).toEqual({ a: 'Posición\t1' });
    const other = await sent(Uint8Array.from(Buffer.from('Posición;1', 'latin1'))).catch((error) => error);
    expect(other).toMatchObject({
      text: { code: 'REQ-003', next: 'Save it as CSV UTF-8, and choose it again.' },
    });
  });

  test('with a file in it is read where the route takes files: the file stands in the place of what was typed', async () => {
    const form = new FormData();
    form.append('a', 'typed');
    form.append('a', new Blob(['from;the;file']), 'loop.csv');
    form.append('b', 'typed');
    form.append('b', new Blob([]), '');
    const sent = (bytesMax: number) =>
      readBody(new Request('http://127.0.0.1/', { method: 'POST', body: form }), {
        takesTextFiles: true,
        bytesMax,
      });
    expect(await sent(2000)).toEqual({
      fields: { a: 'from;the;file', b: 'typed' },
      format: 'form',
      file: null,
    });
    expect(await codeOf(sent(20))).toBe('REQ-001');
    const init = {
      method: 'POST',
      body: 'x',
      headers: { 'content-type': 'multipart/form-data; boundary=x' },
    };
    const broken = readBody(new Request('http://127.0.0.1/', init), { takesTextFiles: true });
    expect(await codeOf(broken)).toBe('REQ-003');
    form.append('c', new Blob([new Uint8Array([0xff])]), 'loop.csv');
    expect(await codeOf(sent(2000))).toBe('REQ-003');
  });

  test('is counted as it comes, whatever length was announced', async () => {
    expect((await read('a=12', FORM, 4)).fields).toEqual({ a: '12' });
    expect(await codeOf(read('a=123', FORM, 4))).toBe('REQ-001');
    const unending = new ReadableStream({
      pull: (controller) => controller.enqueue(new Uint8Array(1024)),
    });
    const init = { method: 'POST', body: unending, duplex: 'half', headers: { 'content-type': FORM } };
    expect(await codeOf(readBody(new Request('http://127.0.0.1/', init)))).toBe('REQ-001');
  });

  test('may be missing altogether', async () => {
    expect(await readBody(new Request('http://127.0.0.1/', { method: 'POST' }))).toEqual({
      fields: {},
      format: 'none',
      file: null,
    });
  });

  test('has no more fields than any form of ours', async () => {
    const many = form(Object.fromEntries(Array.from({ length: 2001 }, (_, index) => [`f${index}`, '1'])));
    expect(await codeOf(read(many))).toBe('REQ-003');
  });

  test('cannot reach what every object has', async () => {
    for (const [body, type] of [
      ['__proto__=x&constructor=y', FORM],
      ['{"__proto__":"x","constructor":"y"}', JSON_TYPE],
    ] as const) {
      const { fields } = await read(body, type);
      expect(Object.keys(fields).sort()).toEqual(['__proto__', 'constructor']);
      expect(({} as Record<string, unknown>).x).toBeUndefined();
    }
  });
});
