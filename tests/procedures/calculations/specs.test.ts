import { expect, it } from 'vitest';
import {
  choice,
  numbers,
  optionalNumbers,
  results,
  told,
  usualNumbers,
} from '../../../procedures/calculations/specs.ts';

it('an input or output takes title and dimension from its name', () => {
  expect(numbers('liftM', 'turns')).toEqual({
    liftM: { kind: 'number', title: 'Lift from shut', dimension: 'length' },
    turns: { kind: 'number', title: 'Turns', dimension: 'turns' },
  });
  expect(optionalNumbers('contactPa').contactPa).toMatchObject({ optional: true, dimension: 'pressure' });
  expect(usualNumbers({ slope: 1 }).slope).toMatchObject({ usual: 1, dimension: 'ratio' });
  expect(results('netN').netN).toMatchObject({ kind: 'number', dimension: 'force' });
});

it('a choice holds its list, and a word has no dimension', () => {
  expect(choice('flow', ['under', 'over'])).toEqual({
    flow: { kind: 'choice', title: 'Flow through the port', choices: ['under', 'over'] },
  });
  expect(told('word', 'verdict')).toEqual({ verdict: { kind: 'word', title: 'Verdict', dimension: null } });
});

it('a name without a title is a mistake', () => {
  expect(() => numbers('luckM')).toThrow('no title for luckM');
});
