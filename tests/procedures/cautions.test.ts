import { expect, test } from 'vitest';
import { PROCEDURES } from '../../procedures/served.ts';
import type { SignalWord } from '../../procedures/vocabulary.ts';

const CAUTIONS = PROCEDURES.flatMap(({ definition }) =>
  Object.entries(definition.steps).flatMap(([name, step]) =>
    'caution' in step && step.caution !== undefined
      ? [{ where: `${definition.id}, ${name}`, caution: step.caution }]
      : [],
  ),
);
const WORDS: readonly SignalWord[] = ['danger', 'warning', 'caution', 'notice'];

test('every caution says the hazard, what it does and how it is avoided, in three sentences that differ (UI-35)', () => {
  const empty = CAUTIONS.filter(({ caution: { hazard, consequence, avoid } }) => {
    const said = [hazard, consequence, avoid].map((text) => text.trim());
    return said.some((text) => !/^[A-Z0-9].*[.!]$/s.test(text)) || new Set(said).size < 3;
  });
  expect(empty.map(({ where }) => where)).toEqual([]);
  expect(CAUTIONS.length).toBeGreaterThan(100);
});

test('a caution has one of the four signal words and no other (UI-34)', () => {
  expect(CAUTIONS.filter(({ caution }) => !WORDS.includes(caution.word)).map(({ where }) => where)).toEqual(
    [],
  );
});
