import { expect, it } from 'vitest';
import { SEATING_CALCULATIONS } from '../../../../procedures/calculations/entries/seating.ts';

const obstacles = (change: Readonly<Record<string, unknown>>) => {
  const entry = SEATING_CALCULATIONS.find(({ id }) => id === 'seating-obstacles');
  return entry?.run({ ...entry.example, ...change });
};

it('a plug stem may be turned where nothing forbids it and nothing is unknown', () => {
  expect(obstacles({})).toMatchObject({ mayTurn: true, obstacles: [], unknown: [] });
});

it('what was not measured is no yes: neither is said', () => {
  expect(obstacles({ threadEngagedM: null })).toMatchObject({
    mayTurn: null,
    obstacles: [],
    unknown: ['thread left'],
  });
});

it('one thing that forbids it is enough, whatever else is unknown', () => {
  expect(obstacles({ threadEngagedM: null, bellowsSeal: true })).toMatchObject({
    mayTurn: false,
    obstacles: ['bellows seal'],
  });
});
