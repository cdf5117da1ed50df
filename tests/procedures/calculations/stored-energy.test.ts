import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ENERGY_FORMS,
  type EnergyForm,
  gasEnergyJ,
  pressureTestDistance,
  pressureTestEnergy,
  type TntForm,
} from '../../../procedures/calculations/stored-energy.ts';
import { between, expectMonotone, expectRefused, refusesEachNonNumber, refusesOrAnswers } from './support.ts';

const air = {
  form: 'isentropic' as EnergyForm,
  volumeM3: 0.005,
  pressurePaAbs: 5e5,
  atmospherePaAbs: 1e5,
  heatRatio: 1.4,
};

describe('the energy of air under pressure', () => {
  it.each(ENERGY_FORMS)('by the %s form is nothing at atmosphere and grows with the pressure', (form) => {
    expect(gasEnergyJ({ ...air, form, pressurePaAbs: 1e5 })).toBe(0);
    expectMonotone({
      of: (pressurePaAbs) => gasEnergyJ({ ...air, form, pressurePaAbs }),
      from: 1e5,
      to: 2e6,
      rises: true,
    });
  });

  it('differs between the forms by up to two and a half: the form is always named', () => {
    fc.assert(
      fc.property(between(1.5e5, 2e6), (pressurePaAbs) => {
        const of = (form: EnergyForm) => gasEnergyJ({ ...air, form, pressurePaAbs });
        expect(of('isothermal availability')).toBeLessThan(of('isothermal'));
        expect(of('isentropic')).toBeLessThan(of('constant volume'));
      }),
    );
    expect(
      gasEnergyJ({ ...air, form: 'constant volume' }) /
        gasEnergyJ({ ...air, form: 'isothermal availability' }),
    ).toBeCloseTo(2.47, 2);
  });

  it('with impossible figures is refused by name', () => {
    expectRefused(() => gasEnergyJ({ ...air, pressurePaAbs: 9e4 }), {
      code: 'CALC-002',
      name: 'pressurePaAbs',
    });
    expectRefused(() => gasEnergyJ({ ...air, form: 'adiabatic' as EnergyForm }), {
      code: 'CALC-005',
      name: 'form',
    });
    refusesEachNonNumber(gasEnergyJ, air);
    refusesOrAnswers(gasEnergyJ, air);
  });
});

describe('the rule for pressure tests', () => {
  const test = { volumeM3: 0.01, testPa: 6e5, atmospherePaAbs: 101000, form: 'SI' as TntForm };

  it('is the isentropic form with a rounded exponent', () => {
    const isentropic = gasEnergyJ({ ...air, volumeM3: 0.01, pressurePaAbs: 701000, atmospherePaAbs: 101000 });
    expect(pressureTestEnergy(test).energyJ / isentropic).toBeCloseTo(1, 2);
  });

  it('puts 4 % less explosive beside it in US units: each form as printed', () => {
    const us = pressureTestEnergy({ ...test, form: 'US' });
    const si = pressureTestEnergy(test);
    expect(us.energyJ).toBe(si.energyJ);
    expect(us.tntKg / si.tntKg).toBeCloseTo(0.959, 3);
  });

  it('asks for 30 m at least, 60 m above 135.5 MJ, and by the later edition 26 % more than the formula', () => {
    const at = (energyJ: number) => pressureTestDistance({ energyJ, edition: '2008' });
    expect([at(0).requiredM, at(135.5e6).floorM, at(135.6e6).floorM, at(272e6).floorM]).toEqual([
      30, 30, 60, 0,
    ]);
    const later = pressureTestDistance({ energyJ: 1e9, edition: 'later' });
    expect(later.byFormulaM / at(1e9).byFormulaM).toBeCloseTo(1.26, 2);
    expect(later.requiredM).toBe(later.byFormulaM);
  });

  it('with impossible figures is refused by name', () => {
    expectRefused(() => pressureTestEnergy({ ...test, testPa: -1 }), { code: 'CALC-002', name: 'testPa' });
    expectRefused(() => pressureTestDistance({ energyJ: 1, edition: '1999' as '2008' }), {
      code: 'CALC-005',
      name: 'edition',
    });
    refusesEachNonNumber(pressureTestEnergy, test);
    refusesOrAnswers(pressureTestEnergy, test);
    refusesOrAnswers(pressureTestDistance, { energyJ: 5e5, edition: '2008' as const });
  });
});
