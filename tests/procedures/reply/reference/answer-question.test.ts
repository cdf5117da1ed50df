import { describe, expect, test } from 'vitest';
import { CALCULATIONS } from '../../../../procedures/calculations/registry.ts';
import { SOURCES } from '../../../../procedures/calculations/sources.ts';
import { isQuestion } from '../../../../procedures/reply/reference/answer-question.ts';
import { termsIn } from '../../../../procedures/reply/reference/find-term.ts';
import { PRACTICE } from '../../../../procedures/reply/reference/term.ts';
import { TERMS } from '../../../../procedures/reply/reference/terms.ts';
import { atCard, inStrokeCheck } from '../at-card.ts';

describe('The built-in reference', () => {
  test('names a source for each term, or says that it is common practice', () => {
    for (const { id, source } of TERMS)
      expect(source === PRACTICE || Object.hasOwn(SOURCES, source), id).toBe(true);
  });

  test('links only to calculations that there are', () => {
    const ids = CALCULATIONS.map(({ id }) => id);
    for (const { id, calculation } of TERMS) if (calculation !== '') expect(ids, id).toContain(calculation);
  });

  test('calls no two terms by one name', () => {
    const names = TERMS.flatMap(({ words }) => words);
    expect(names.filter((name, at) => names.indexOf(name) !== at)).toEqual([]);
  });

  test.each(TERMS.map(({ id, words }) => [id, words] as const))(
    'finds %s by each of its names',
    (id, words) => {
      for (const word of words)
        expect(
          termsIn(`what is ${word}?`, TERMS).map((term) => term.id),
          word,
        ).toContain(id);
    },
  );

  test.each(TERMS.map(({ id, words: [name = ''] }) => [id, name]))(
    'tells of %s with no number missing',
    (_, name) => {
      const reply = atCard('plain').read(`what is ${name}?`);
      expect(reply.kind).toBe('told');
      expect(JSON.stringify(reply)).not.toMatch(/undefined|NaN|null|\{\w/);
    },
  );
});

test('an answer works the numbers of this valve in', () => {
  const card = atCard('plain');
  // FV-214: 3 to 15 psi over 0.75 in; two turns of a 1/2-20 stem on 100 in2 are 1.6 psi.
  expect(card.read('what is bench set?')).toMatchObject({
    heading: 'Bench set',
    lines: [expect.any(String), expect.stringMatching(/FV-214: bench set, low 3.00 psi.*high 15.00 psi/)],
    calculation: 'bench-set',
  });
  expect(JSON.stringify(card.read('how many turns?'))).toMatch(/2 turns.*1.60 psi/);
});

test('what it does not know, it says it does not know', () => {
  for (const text of ['what is love?', 'who won?', 'how is the weather?', 'why not?', '?', 'what?'])
    expect(JSON.stringify(atCard('plain').read(text)), text).toContain('does not know');
});

test('a question stays a question where a reading is asked', () => {
  expect(atCard('cycle').read('9 psi 50 %?').kind).toBe('told');
  expect(['what is it', 'Why?', '9?', 'explain friction'].map(isQuestion)).toEqual([true, true, true, true]);
  expect(['9 psi', 'it moved', 'somewhat', 'whatever fits'].map(isQuestion)).toEqual([
    false,
    false,
    false,
    false,
  ]);
});

test('where the job stands and what is left are answered from the job itself', () => {
  const card = inStrokeCheck('rigBleed');
  expect(JSON.stringify(card.read('where am I?'))).toMatch(/step \d+ of \d+.*\d+ lines/);
  expect(JSON.stringify(card.read('what is left?'))).toMatch(/\d+ steps are left after.*holds/);
  expect(JSON.stringify(card.read('why?'))).toContain('does not bleed');
});
