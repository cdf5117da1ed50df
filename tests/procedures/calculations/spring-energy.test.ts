import { describe, expect, it } from 'vitest';
import { energyInPlainTerms, springEnergy } from '../../../procedures/calculations/spring-energy.ts';
import {
  expectClose,
  expectMonotone,
  expectRefused,
  refusesEachNonNumber,
  refusesOrAnswers,
} from './support.ts';

const spring = { springRateNPerM: 140000, installedM: 0.005, fullTravelM: 0.0431 };

describe('the energy of a spring', () => {
  it('stays in the preload when the air is gone', () => {
    expect(springEnergy(spring).installedJ).toBeGreaterThan(0);
    expect(springEnergy({ ...spring, installedM: 0 }).installedJ).toBe(0);
  });

  it('grows with the square of the deflection', () => {
    const free = { ...spring, installedM: 0 };
    expectClose(
      springEnergy({ ...free, fullTravelM: 0.0862 }).fullTravelJ,
      4 * springEnergy(free).fullTravelJ,
    );
    expectMonotone({
      of: (fullTravelM) => springEnergy({ ...spring, fullTravelM }).addedByStrokeJ,
      from: 0.006,
      to: 0.1,
      rises: true,
    });
  });

  it('with impossible figures is refused by name', () => {
    expectRefused(() => springEnergy({ ...spring, fullTravelM: 0.004 }), {
      code: 'CALC-003',
      name: 'fullTravelM',
    });
    refusesEachNonNumber(springEnergy, spring);
    refusesOrAnswers(springEnergy, spring);
  });
});

describe('stored energy in plain terms', () => {
  const parts = { airJ: 900, springInstalledJ: 20, springStrokeJ: 60.665 };

  it('is the fall of a weight: 980.665 J is 10 kg from ten metres', () => {
    expect(energyInPlainTerms(parts).fallM).toBeCloseTo(10, 9);
    expect(energyInPlainTerms({ ...parts, weightKg: 20 }).fallM).toBeCloseTo(5, 9);
  });

  it('warns of what is there, and of nothing else', () => {
    expect(energyInPlainTerms(parts).cautions).toEqual([
      'air stored',
      'spring loaded by the stroke',
      'spring loaded when vented',
    ]);
    expect(energyInPlainTerms({ airJ: 0, springInstalledJ: 20, springStrokeJ: 0 }).cautions).toEqual([
      'spring loaded when vented',
    ]);
    expect(energyInPlainTerms({ airJ: 0, springInstalledJ: 0, springStrokeJ: 0 }).cautions).toEqual([]);
  });

  it('with impossible figures is refused by name', () => {
    expectRefused(() => energyInPlainTerms({ ...parts, airJ: -1 }), { code: 'CALC-002', name: 'airJ' });
    refusesEachNonNumber(energyInPlainTerms, parts);
    refusesOrAnswers(energyInPlainTerms, { ...parts, weightKg: 10 });
  });
});
