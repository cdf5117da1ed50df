import { describe, expect, test } from 'vitest';
import { PROCEDURES } from '../../../procedures/served.ts';
import { CAUSE_IDS } from '../../../procedures/troubleshooting/causes.ts';
import {
  REPAIR_PROCEDURES,
  repairProcedure,
  WITHOUT_PROCEDURE,
} from '../../../procedures/troubleshooting/repair-procedures.ts';
import { REPAIR_IDS, repairFor, repairOf } from '../../../procedures/troubleshooting/repairs.ts';

const served = PROCEDURES.map(({ definition }) => definition.id);

describe('the repair of a cause', () => {
  test('has a procedure that is served, or says why it has none, never both', () => {
    for (const cause of CAUSE_IDS) {
      const repair = repairFor(cause);
      const [own, why] = [REPAIR_PROCEDURES[repair], WITHOUT_PROCEDURE[repair]];
      expect([cause, own === undefined, why === undefined]).toEqual([
        cause,
        why !== undefined,
        own !== undefined,
      ]);
      if (own === undefined) continue;
      for (const actuator of ['diaphragm', 'piston'] as const)
        expect(served).toContain(repairProcedure(repair, actuator));
    }
  });

  test('that is made before a dearer one costs less: case nuts before the diaphragm, plunger before the relay', () => {
    const minutes = (id: 'tightenCase' | 'changeDiaphragm' | 'pressPlunger' | 'serviceRelay') =>
      repairOf(id).minutes;
    expect(minutes('tightenCase')).toBeLessThan(minutes('changeDiaphragm'));
    expect(minutes('pressPlunger')).toBeLessThan(minutes('serviceRelay'));
    expect(repairFor('caseJoint')).toBe('tightenCase');
    for (const cause of ['relayRestriction', 'restrictionTop', 'restrictionBottom'] as const)
      expect(repairFor(cause)).toBe('pressPlunger');
  });

  test('names no procedure for a repair that there is not', () => {
    const named = [...Object.keys(REPAIR_PROCEDURES), ...Object.keys(WITHOUT_PROCEDURE)];
    expect(named.sort()).toEqual([...REPAIR_IDS].sort());
  });
});
