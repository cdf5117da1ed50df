import { expect, test } from 'vitest';
import { isVerb, VERBS } from '../../../procedures/lint/verbs.ts';

test('The first words of action lines are a closed list, each with the one thing that it means (HP-23)', () => {
  const meanings = Object.values(VERBS);
  expect(new Set(meanings).size).toBe(meanings.length);
  for (const [verb, meaning] of Object.entries(VERBS)) {
    expect(verb).toMatch(/^[A-Z][a-z]+$/);
    expect(meaning.split(' ').length).toBeGreaterThan(2);
  }
  expect([isVerb('Shut'), isVerb('Ensure'), isVerb('constructor')]).toEqual([true, false, false]);
});
