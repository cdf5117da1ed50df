import { describe, expect, it } from 'vitest';
import { pistonSupply, pistonThrust } from '../../../procedures/calculations/piston.ts';
import {
  expectClose,
  expectMonotone,
  expectRefused,
  refusesEachNonNumber,
  refusesOrAnswers,
} from './support.ts';

const cylinder = { boreM: 0.15, rodDiameterM: 0.02, sealFrictionN: 150, springDownN: 0 };
const thrust = { ...cylinder, upperPa: 500000, lowerPa: 100000 };

describe('a double-acting piston', () => {
  it('pushes down with the upper air, and less hard up, by the rod', () => {
    const down = pistonThrust({ ...thrust, lowerPa: 0, sealFrictionN: 0 });
    const up = pistonThrust({ ...thrust, upperPa: 0, lowerPa: 500000, sealFrictionN: 0 });
    expect(down.downN).toBeGreaterThan(0);
    expect(up.downN).toBeLessThan(0);
    expect(Math.abs(up.downN)).toBeLessThan(down.downN);
  });

  it('is held by its seals where the thrust is less than their friction', () => {
    expect(pistonThrust({ ...thrust, upperPa: 1000, lowerPa: 1000 }).downN).toBe(0);
  });

  it('has friction against its motion, either way', () => {
    const up = pistonThrust({ ...thrust, upperPa: 0, lowerPa: 500000 });
    expectClose(up.downN, up.downBeforeFrictionN + 150);
  });

  it('is helped or hindered by a spring', () => {
    expectClose(pistonThrust({ ...thrust, springDownN: 500 }).downN - pistonThrust(thrust).downN, 500);
  });

  it('gets the thrust that its smallest supply was worked out for', () => {
    for (const springDownN of [-300, 0, 300]) {
      const down = pistonSupply({ ...cylinder, springDownN, direction: 'down', thrustN: 4000 });
      expectClose(
        pistonThrust({ ...cylinder, springDownN, upperPa: down.smallestSupplyPa, lowerPa: 0 }).downN,
        4000,
      );
      const up = pistonSupply({ ...cylinder, springDownN, direction: 'up', thrustN: 4000 });
      expectClose(
        pistonThrust({ ...cylinder, springDownN, upperPa: 0, lowerPa: up.smallestSupplyPa }).downN,
        -4000,
      );
    }
  });

  it('needs no air where the spring is enough', () => {
    expect(
      pistonSupply({ ...cylinder, springDownN: 5000, direction: 'down', thrustN: 1000 }).smallestSupplyPa,
    ).toBe(0);
  });

  it('pushes harder with more air', () => {
    expectMonotone({
      of: (upperPa) => pistonThrust({ ...thrust, upperPa }).downN,
      from: 0,
      to: 1e6,
      rises: true,
    });
  });

  it('of impossible figures is refused by name', () => {
    expectRefused(() => pistonThrust({ ...thrust, rodDiameterM: 0.2 }), { code: 'CALC-003', name: 'boreM' });
    expectRefused(() => pistonSupply({ ...cylinder, direction: 'left' as 'up', thrustN: 1 }), {
      code: 'CALC-005',
      name: 'direction',
    });
    refusesEachNonNumber(pistonThrust, thrust);
    refusesOrAnswers(pistonThrust, thrust);
    refusesOrAnswers(pistonSupply, { ...cylinder, direction: 'up' as const, thrustN: 4000 });
  });
});
