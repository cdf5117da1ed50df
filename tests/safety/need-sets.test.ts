import { expect, test } from 'vitest';
import { AIR_OFF, HELD, P_TO_OPEN, TEST_AIR_ONLY } from '../../safety/need-sets.ts';

test('Air off means every feed, every volume that keeps air, and the case', () => {
  expect(Object.keys(AIR_OFF).sort()).toEqual(
    ['lockUpAir', 'oppositeAir', 'secondSupply', 'signalAir', 'supplyAir', 'trappedAir'].sort(),
  );
});

test('Air that is held is test air, connected, and nothing else', () => {
  expect(HELD).toMatchObject({ ...TEST_AIR_ONLY, signalAir: ['held'], testAir: ['connected'] });
});

test('A line that is opened wants a shut-off that is good enough', () => {
  expect(P_TO_OPEN.isolationGrade).toEqual(['enough', 'absent']);
});
