import { describe, expect, test } from 'vitest';
import { StreamKinds, splitStream, streamOf } from '../../../server/log/stream-kind.ts';
import { register, site } from './register.ts';

describe('the name of a stream', () => {
  test.each([
    ['job', '137', 'job:137'],
    ['valve', 'FV-214', 'valve:FV-214'],
    ['procedure', 'sha256:00ff', 'procedure:sha256:00ff'],
    ['site', '', 'site'],
  ])('of the %s "%s" is "%s", and gives both back', (kind, id, stream) => {
    expect(streamOf(kind, id)).toBe(stream);
    expect(splitStream(stream)).toEqual({ kind, id });
  });

  test.each([
    ['job', 'a\u0000b'],
    ['job', 'line\nbreak'],
    ['job', '\ud800'],
    ['job', 'x'.repeat(201)],
    ['Job', '1'],
    ['', '1'],
    ['a:b', '1'],
  ])('is never made of the kind %j and the id %j', (kind, id) => {
    expect(() => streamOf(kind, id)).toThrow(TypeError);
  });
});

describe('the registered kinds', () => {
  test('each have a name of their own', () => {
    expect(() => new StreamKinds([register, site, { ...register }])).toThrow(
      'Two kinds of stream are called "register"',
    );
  });

  test('are found by the name of a stream', () => {
    const kinds = new StreamKinds([register, site]);
    expect(kinds.of('register:a')).toBe(register);
    expect(kinds.of('site')).toBe(site);
    expect(() => kinds.of('job:1')).toThrow('No kind of stream is registered for "job:1"');
  });
});
