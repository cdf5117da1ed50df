import { describe, expect, it } from 'vitest';
import {
  GAS_CONSTANT_J_PER_MOL_K,
  GAS_STATES,
  molPerM3,
} from '../../../procedures/calculations/gas-states.ts';
import { convert } from '../../../procedures/calculations/units.ts';
import { expectClose } from './support.ts';

describe('a gas volume', () => {
  it('holds the amount that the gas law says: 22.414 l a mole at the normal state', () => {
    expectClose(1000 / molPerM3(GAS_STATES.normal), 22.41396954, 1e-8);
    expectClose(molPerM3({ temperatureK: 300, pressurePaAbs: GAS_CONSTANT_J_PER_MOL_K * 300 }), 1);
  });

  it('is counted at a named state: 1 normal litre is 1.05491 standard and 1.08744 ANR litres', () => {
    expectClose(convert({ value: 1, from: 'Nl/min', to: 'Sl/min' }), 1.05491, 1e-5);
    expectClose(convert({ value: 1, from: 'Nl/min', to: 'l/min ANR' }), 1.08744, 1e-5);
  });

  it('at 60 °F and 14.696 psi is all but the standard one', () => {
    expect(GAS_STATES.scf.temperatureK).toBeCloseTo(288.7056, 4);
    expect(GAS_STATES.scf.pressurePaAbs).toBeCloseTo(101325.353, 2);
  });
});
