import { expect, test } from 'vitest';
import { REFUSAL_STATUS, Refusal } from '../../safety/refusal.ts';

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
