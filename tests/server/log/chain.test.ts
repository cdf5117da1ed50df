import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { canonical } from '../../../server/log/canonical.ts';
import {
  EMPTY_HEAD,
  EMPTY_STREAM,
  fingerprintOf,
  type Link,
  LogDamaged,
  linkOf,
  NO_HASH,
  seal,
  sha256,
  type UnsealedEntry,
  unseal,
} from '../../../server/log/chain.ts';
import type { SealedEntry, StoredLine } from '../../../server/store/store.ts';

const unsealed: UnsealedEntry = {
  stream: 'job:1',
  at: '2024-01-15T08:00:00.000Z',
  person: 't1',
  screen: 'bench 1',
  kind: 'reading-taken',
  inputs: { typed: '9 psi', pressurePa: 62052.8 },
  outcome: { within: true },
  effects: null,
  codeVersion: 'test',
  requestId: 'r1',
};

function lineOf({ entry, bytes }: SealedEntry): StoredLine {
  const { seq, stream, place, hash } = entry;
  return { seq, stream, place, hash, bytes };
}

const ANY_LINES = process.env.YOKESIDE_LONG === undefined ? 2000 : 20_000;

const ofChain = ({ seq, stream, place, previousHash, previousInStream, hash }: Link): Link => ({
  seq,
  stream,
  place,
  previousHash,
  previousInStream,
  hash,
});

/** What it gives, or what it says is wrong. */
function said<T>(read: () => T): T | string {
  try {
    return read();
  } catch (error) {
    if (error instanceof LogDamaged) return error.message;
    throw error;
  }
}

describe('the chain', () => {
  const first = seal(unsealed, { head: EMPTY_HEAD, streamHead: EMPTY_STREAM });

  test('SHA-256 of "abc" is the one that FIPS 180-4 gives as example', () => {
    expect(sha256('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  });

  test('the first entry has the bytes written out here, and their hash (SA-37)', () => {
    expect(first.bytes).toBe(
      `{"at":"2024-01-15T08:00:00.000Z","codeVersion":"test","effects":null,` +
        `"inputs":{"pressurePa":62052.8,"typed":"9 psi"},"kind":"reading-taken","outcome":{"within":true},` +
        `"person":"t1","place":1,"previousHash":"${NO_HASH}","previousInStream":"${NO_HASH}",` +
        `"requestId":"r1","screen":"bench 1","seq":1,"stream":"job:1"}`,
    );
    expect(first.entry.hash).toBe(createHash('sha256').update(Buffer.from(first.bytes)).digest('hex'));
  });

  test('the next entry holds the hash of the one before in the site and of the one before in its stream', () => {
    const next = seal(unsealed, {
      head: { seq: 41, hash: 'a'.repeat(64) },
      streamHead: { place: 7, hash: 'b'.repeat(64) },
    });
    expect(next.entry).toMatchObject({
      seq: 42,
      place: 8,
      previousHash: 'a'.repeat(64),
      previousInStream: 'b'.repeat(64),
    });
  });

  test('the entry is what a reader of its bytes gets, also where -0 was given', () => {
    const sealed = seal(
      { ...unsealed, inputs: { travelM: -0 } },
      { head: EMPTY_HEAD, streamHead: EMPTY_STREAM },
    );
    expect(unseal(lineOf(sealed))).toStrictEqual(sealed.entry);
    expect(sealed.entry.inputs).toStrictEqual({ travelM: 0 });
  });

  test('what JSON cannot carry is not sealed', () => {
    const wrong = { ...unsealed, outcome: { frictionN: Number.NaN } };
    expect(() => seal(wrong, { head: EMPTY_HEAD, streamHead: EMPTY_STREAM })).toThrow(
      'NaN at ["outcome"]["frictionN"]',
    );
  });

  const rehashed = (bytes: string): StoredLine => ({ ...lineOf(first), bytes, hash: sha256(bytes) });

  test.each<[string, StoredLine, string]>([
    [
      'a byte was changed',
      { ...lineOf(first), bytes: first.bytes.replace('62052', '62053') },
      'does not give its hash',
    ],
    ['its hash was changed', { ...lineOf(first), hash: NO_HASH }, 'does not give its hash'],
    ['the number beside it was changed', { ...lineOf(first), seq: 2 }, 'says seq 1'],
    ['it was put into another stream', { ...lineOf(first), stream: 'job:2' }, 'says stream job:1'],
    ['its place was changed', { ...lineOf(first), place: 3 }, 'says place 1'],
    ['it is no JSON', rehashed('{"at":'), 'not JSON'],
    ['it has a name twice', rehashed(first.bytes.replace('{', '{"at":"",')), 'given twice'],
    ['it has white space', rehashed(first.bytes.replace('{', '{ ')), 'not in canonical form'],
    ['it is no entry', rehashed('{"seq":1}'), 'has no stream'],
    ['it is null', rehashed('null'), 'has no seq'],
  ])('a line is not believed if %s (SA-37)', (_name, line, what) => {
    expect(() => unseal(line)).toThrow(LogDamaged);
    expect(() => unseal(line)).toThrow(what);
  });

  test('whatever is changed in a line, its hash made to fit or not, the quick look says the same as the whole reading', () => {
    const { entry, bytes } = seal(unsealed, { head: { seq: 41, hash: NO_HASH }, streamHead: EMPTY_STREAM });
    const { hash: _, ...content } = entry;
    const field = fc.constantFrom(...Object.keys(content), 'another');
    const odd = fc.oneof(
      fc.constantFrom(42, 1, '1', 'job:1', 'job:2', '42', 'a"b', 'job:\u00e9'),
      fc.jsonValue(),
    );
    const changedField = fc
      .tuple(field, odd)
      .map(([name, value]) => canonical(JSON.parse(JSON.stringify({ ...content, [name]: value }))));
    const lacking = field.map((name) =>
      canonical(Object.fromEntries(Object.entries(content).filter(([one]) => one !== name))),
    );
    const changedLetter = fc
      .tuple(fc.nat(bytes.length), fc.nat(2), fc.constantFrom('', ...'{}[],:" \\0129-.e\u00e9'))
      .map(([at, less, letter]) => bytes.slice(0, at) + letter + bytes.slice(at + less));
    const text = fc.oneof(fc.constant(bytes), changedField, lacking, changedLetter);
    const beside = fc.record({
      seq: fc.constantFrom(42, 42, 42, 41),
      stream: fc.constantFrom('job:1', 'job:1', 'job:1', 'job:2', 'job:\u00e9', 'a"b', '1', ''),
      place: fc.constantFrom(1, 1, 1, 2, 42),
      isResealed: fc.constantFrom(true, true, true, false),
    });
    let good = 0;
    fc.assert(
      fc.property(text, beside, (changed, { isResealed, ...columns }) => {
        const line = { ...columns, bytes: changed, hash: isResealed ? sha256(changed) : entry.hash };
        const linked = (read: (line: StoredLine) => Link) => said(() => ofChain(read(line)));
        const whole = linked(unseal);
        expect(linked(linkOf)).toEqual(whole);
        if (typeof whole !== 'string') good += 1;
      }),
      { numRuns: ANY_LINES },
    );
    expect(good).toBeGreaterThan(ANY_LINES / 100);
  });

  test('a fingerprint is the same for the same content, in whatever order', () => {
    expect(fingerprintOf({ a: 1, b: '9 psi' })).toBe(fingerprintOf({ b: '9 psi', a: 1 }));
    expect(fingerprintOf({ a: 1, b: '9 psi' })).not.toBe(fingerprintOf({ a: 1, b: '9 psi ' }));
  });
});
