import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import {
  EMPTY_HEAD,
  EMPTY_STREAM,
  fingerprintOf,
  LogDamaged,
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

  test('a fingerprint is the same for the same content, in whatever order', () => {
    expect(fingerprintOf({ a: 1, b: '9 psi' })).toBe(fingerprintOf({ b: '9 psi', a: 1 }));
    expect(fingerprintOf({ a: 1, b: '9 psi' })).not.toBe(fingerprintOf({ a: 1, b: '9 psi ' }));
  });
});
