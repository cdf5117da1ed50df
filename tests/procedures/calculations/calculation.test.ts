import { expect, it } from 'vitest';
import { calculation } from '../../../procedures/calculations/calculation.ts';
import { numbers, results, usualNumbers } from '../../../procedures/calculations/specs.ts';
import { expectRefused } from './support.ts';

const halves = calculation({
  id: 'halves',
  title: 'Half of it',
  topic: 'units',
  inputs: { ...numbers('percent'), ...usualNumbers({ factor: 2 }) },
  outputs: results('ratio'),
  answers: ['ratio'],
  equation: 'half = all/2',
  validity: 'Always.',
  sources: [],
  example: { percent: 4 },
  run: ({ percent, factor }) => ({ ratio: percent / factor, working: 'not shown' }),
});

it('a calculation gives the outputs that it names, and no others', () => {
  expect(halves.run({ percent: 4 })).toEqual({ ratio: 2 });
  expect(halves.run({ percent: 4, factor: 4 })).toEqual({ ratio: 1 });
});

it('a calculation gives of the rows of a table the columns that it names', () => {
  const table = calculation({
    id: 'table',
    title: 'A table',
    topic: 'units',
    inputs: numbers('percent'),
    outputs: { rows: { kind: 'rows', title: 'Rows', dimension: null, columns: results('ratio') } },
    answers: ['rows'],
    equation: 'ratio = percent',
    validity: 'Always.',
    sources: [],
    example: { percent: 4 },
    run: ({ percent }) => ({ rows: [{ ratio: percent, inside: 'not shown' }] }),
  });
  expect(table.run({ percent: 4 })).toEqual({ rows: [{ ratio: 4 }] });
});

it('a calculation checks what it is given before it works', () => {
  expectRefused(() => halves.run({}), { code: 'CALC-001', name: 'percent' });
  expectRefused(() => halves.run({ percent: 4, luck: 7 }), { code: 'CALC-005', name: 'input' });
});
