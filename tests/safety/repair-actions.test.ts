import { describe, expect, test } from 'vitest';
import { needsOf } from '../../safety/action-classes.ts';
import { REPAIR_ACTIONS } from '../../safety/repair-actions.ts';

const NO_AIR = {
  supplyAir: ['isolated', 'absent'],
  secondSupply: ['isolated', 'absent'],
  trappedAir: ['isolated', 'absent'],
  lockUpAir: ['isolated', 'absent'],
  oppositeAir: ['isolated', 'absent'],
  signalAir: ['isolated', 'absent'],
};

describe('[SAF-03] Rows of table D for repairs before the actuator', () => {
  test('open relay, filter, tube, coil or cylinder only with every feed off and no air anywhere', () => {
    for (const action of [
      'workOnAirParts',
      'pressInstrument',
      'workOnDeadWires',
      'tightenConnector',
      'workInCylinder',
      'closeCylinder',
    ] as const)
      expect(needsOf(action), action).toMatchObject(NO_AIR);
  });

  test('touch a positioner with air on only with consent, the process set up, and nobody in the yoke', () => {
    for (const action of ['workAtLivePositioner', 'setAirSet', 'readLoopCurrent'] as const)
      expect(needsOf(action), action).toMatchObject({
        consent: ['given'],
        clear: ['clear'],
        bypass: ['open', 'absent'],
        loop: ['manual', 'absent'],
      });
  });

  test('cite the law of electrical work wherever a wire is touched', () => {
    for (const action of ['workOnDeadWires', 'readLoopCurrent', 'switchBackOn'] as const)
      expect(REPAIR_ACTIONS[action].electricalRule).toContain('29 CFR 1910 subpart S');
    expect(needsOf('workOnDeadWires').electrical).toEqual(['isolated', 'absent']);
  });

  test('want everybody looked for again after hands were at it', () => {
    for (const action of ['workOnAirParts', 'workOnDeadWires', 'tightenConnector'] as const)
      expect(REPAIR_ACTIONS[action].leaves.clear).toBe('not looked at');
  });

  test('open a cylinder further with a signature, and never hold its closing up for one', () => {
    expect(needsOf('workInCylinder').workSignOff).toEqual(['given']);
    expect(Object.keys(needsOf('closeCylinder'))).not.toContain('workSignOff');
  });
});
