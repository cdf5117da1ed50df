import { expect, test } from 'vitest';
import { REFUSAL_STATUS, Refusal } from '../../safety/refusal.ts';
import { everyFile } from '../tidy/tree.ts';

test('A refusal says what is wrong, what was kept and what to do, with the status of its kind', () => {
  const refusal = new Refusal({
    kind: 'unsafe',
    code: 'LIM-002',
    what: 'The case pressure is 22 psi; at most 20 psi is allowed.',
    kept: 'The reading is kept as typed.',
    next: 'Vent the case, then start this step again.',
  });
  expect(refusal).toBeInstanceOf(Error);
  expect(refusal.name).toBe('Refusal');
  expect(refusal.message).toBe(
    'LIM-002: The case pressure is 22 psi; at most 20 psi is allowed. The reading is kept as typed. Vent the case, then start this step again.',
  );
  expect(refusal.status).toBe(422);
});

test('Every kind of refusal is an answer to the person who asked, never a fault of the server', () => {
  for (const status of Object.values(REFUSAL_STATUS)) {
    expect(status).toBeGreaterThanOrEqual(400);
    expect(status).toBeLessThan(500);
  }
});

/** One meaning that is told in two places: more than one number, and what cannot be read. */
const TOLD_TWICE = ['NUM-007', 'REQ-003'];

function codesIn(text: string): readonly string[] {
  return Array.from(text.matchAll(/\bcode: '([A-Z]{3}-\d{3})',\s+what:/g), ([, code = '']) => code);
}

test('A code means one thing, since people look for it and programs act on it', () => {
  const codes = everyFile()
    .filter(({ path }) => /^(safety|procedures|server)\/.*\.ts$/.test(path))
    .flatMap(({ text }) => codesIn(text.replaceAll(/^\s*\*.*$/gm, '')));
  expect(codes.length).toBeGreaterThan(100);
  const twice = codes.filter((code, at) => codes.indexOf(code) !== at);
  expect([...new Set(twice)].filter((code) => !TOLD_TWICE.includes(code))).toEqual([]);
  expect(codesIn("{ code: 'ABC-001',\n what: 'no' }, { code: 'ABC-001', name: 'x' }")).toEqual(['ABC-001']);
});
