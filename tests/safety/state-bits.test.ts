import { expect, test } from 'vitest';
import { CONDITION_IDS, CONDITIONS } from '../../safety/conditions.ts';
import { addStates, clearStates, statesAmong, WORDS } from '../../safety/state-bits.ts';

test('[SAF-03] Every state of every condition has a bit of its own, wherever its words begin', () => {
  const words = new Int32Array(3 * WORDS);
  const here = { words, at: WORDS };
  for (const condition of CONDITION_IDS)
    for (const state of CONDITIONS[condition].states) {
      addStates(here, { condition, states: [state] });
      const met = CONDITION_IDS.flatMap((id) => statesAmong(here, id));
      expect(met).toEqual([state]);
      clearStates(here, condition);
      expect([...words].every((word) => word === 0)).toBe(true);
    }
});

test('A state that the condition does not have adds nothing', () => {
  const words = new Int32Array(WORDS);
  addStates({ words, at: 0 }, { condition: 'supplyLock', states: ['isolated'] });
  expect([...words].every((word) => word === 0)).toBe(true);
});
