import { expect, test } from 'vitest';
import { onlyWhere } from '../../../procedures/phases/only-where.ts';
import type { Step } from '../../../procedures/vocabulary.ts';

const card = (to: Extract<Step, { kind: 'wait' }>['next']['to'], makeSafe = 'end'): Step => ({
  kind: 'wait',
  phase: 'p',
  title: 't',
  waitS: 1,
  next: { to },
  makeSafe,
});
const end: Step = { kind: 'end', phase: 'p', title: 'e', closes: 'done' };

test('Where one fact is settled its branches are taken, others stand, and what is out of reach is left out', () => {
  const steps = {
    a: card({ by: 'place', ways: { bench: 'b', line: 'c' } }),
    b: card('end'),
    c: card({ by: 'secondFeed', ways: { fitted: 'd', none: 'end' } }, 'safe'),
    d: card('end'),
    safe: card('safe'),
    end,
  };
  const inLine = onlyWhere(steps, { fact: 'place', is: 'line', start: 'a' });
  expect(Object.keys(inLine)).toEqual(['a', 'c', 'd', 'safe', 'end']);
  expect(inLine.a).toEqual(card('c'));
  expect(inLine.c).toEqual(steps.c);
});
