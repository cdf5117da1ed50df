import { describe, expect, it } from 'vitest';
import {
  packingFriction,
  packingFrictionByStress,
} from '../../../procedures/calculations/packing-friction.ts';
import type { Packing } from '../../../procedures/calculations/packing-tables.ts';
import { convert } from '../../../procedures/calculations/units.ts';
import { expectClose, expectRefused, refusal, refusesEachNonNumber, refusesOrAnswers } from './support.ts';

const half = { table: 'reference-manual' as const, stemDiameterM: 0.0127 };

describe('tabled packing friction', () => {
  it('comes with the figure as printed and where it stands', () => {
    const found = packingFriction({ ...half, packing: 'ptfe-double' });
    expect(found).toMatchObject({ printedLbf: 75, source: 'S-14' });
    expectClose(found.frictionN, convert({ value: 75, from: 'lbf', to: 'N' }));
  });

  it('takes a stem measured in millimetres', () => {
    expect(packingFriction({ ...half, stemDiameterM: 0.0095, packing: 'ptfe-single' }).printedLbf).toBe(38);
  });

  it('is not guessed between the rows, for another packing, or for a class that is not there', () => {
    expect(
      refusal(() => packingFriction({ ...half, stemDiameterM: 0.011, packing: 'ptfe-single' })).range,
    ).toContain('0.375 in');
    expectRefused(() => packingFriction({ ...half, packing: 'rope' as Packing }), {
      code: 'CALC-005',
      name: 'packing',
    });
    expectRefused(() => packingFriction({ ...half, packing: 'graphite' }), {
      code: 'CALC-005',
      name: 'pressureClass',
    });
    expectRefused(
      () => packingFriction({ ...half, table: 'mine' as 'reference-manual', packing: 'graphite' }),
      {
        code: 'CALC-005',
        name: 'table',
      },
    );
    const thin = {
      ...half,
      stemDiameterM: 0.0079,
      packing: 'graphite' as const,
      pressureClass: '150' as const,
    };
    expect(refusal(() => packingFriction(thin)).range).toContain('no graphite');
  });

  it('of a stem without size is refused', () => {
    expectRefused(() => packingFriction({ ...half, stemDiameterM: 0, packing: 'ptfe-single' }), {
      code: 'CALC-002',
      name: 'stemDiameterM',
    });
  });
});

describe('packing friction by stress', () => {
  const good = {
    stemDiameterM: 0.0127,
    packingHeightM: 0.03,
    packingStressPa: 1e7,
    frictionFactor: 0.1,
    radialToAxialRatio: 0.5,
  };

  it('goes with each of its figures', () => {
    for (const name of Object.keys(good) as (keyof typeof good)[]) {
      expectClose(
        packingFrictionByStress({ ...good, [name]: good[name] * 2 }),
        2 * packingFrictionByStress(good),
      );
    }
  });

  it('of impossible figures is refused by name', () => {
    expectRefused(() => packingFrictionByStress({ ...good, frictionFactor: 1.1 }), {
      code: 'CALC-002',
      name: 'frictionFactor',
    });
    refusesEachNonNumber(packingFrictionByStress, good);
    refusesOrAnswers(packingFrictionByStress, good);
  });
});
