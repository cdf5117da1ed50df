import { describe, expect, it } from 'vitest';
import { GLAND_METHODS, glandTorque } from '../../../procedures/calculations/gland.ts';
import { SOURCES } from '../../../procedures/calculations/sources.ts';
import {
  expectClose,
  expectMonotone,
  expectRefused,
  refusesEachNonNumber,
  refusesOrAnswers,
} from './support.ts';

const good = {
  method: 'one-page-1996' as const,
  packing: 'braided',
  boreDiameterM: 0.0254,
  stemDiameterM: 0.0127,
  systemPa: 4e6,
  bolts: 2,
  boltDiameterM: 0.0095,
};

describe('the gland', () => {
  it('is loaded for the packing at low pressure and for the pressure above that', () => {
    expect(glandTorque(good).stressSetBy).toBe('packing');
    expect(glandTorque({ ...good, systemPa: 30e6 }).stressSetBy).toBe('pressure');
    expectMonotone({
      of: (systemPa) => glandTorque({ ...good, systemPa }).torquePerBoltNm,
      from: 0,
      to: 6e7,
      rises: true,
    });
  });

  it('shares its load among its bolts', () => {
    const two = glandTorque(good);
    expectClose(two.boltLoadN * 2, two.glandForceN);
    expectClose(glandTorque({ ...good, bolts: 4 }).torquePerBoltNm, two.torquePerBoltNm / 2);
  });

  it('presses on the box less the stem', () => {
    expectClose(glandTorque(good).packingAreaM2, (Math.PI / 4) * (0.0254 ** 2 - 0.0127 ** 2));
  });

  it('takes its figures from a method with a source', () => {
    for (const { source } of Object.values(GLAND_METHODS)) expect(Object.keys(SOURCES)).toContain(source);
    expectRefused(() => glandTorque({ ...good, packing: 'rope' }), { code: 'CALC-005', name: 'packing' });
    expectRefused(() => glandTorque({ ...good, packing: 'toString' }), { code: 'CALC-005', name: 'packing' });
    expectRefused(() => glandTorque({ ...good, method: 'mine' as 'one-page-1996' }), {
      code: 'CALC-005',
      name: 'method',
    });
  });

  it('with impossible figures is refused by name', () => {
    expectRefused(() => glandTorque({ ...good, stemDiameterM: 0.03 }), {
      code: 'CALC-003',
      name: 'boreDiameterM',
    });
    expectRefused(() => glandTorque({ ...good, bolts: 1.5 }), { code: 'CALC-002', name: 'bolts' });
    refusesEachNonNumber(glandTorque, good);
    refusesOrAnswers(glandTorque, good);
  });
});
