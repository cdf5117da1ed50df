import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circleAreaM2, plugForce } from '../../../procedures/calculations/plug-force.ts';
import { between, expectClose, expectRefused, refusesEachNonNumber, refusesOrAnswers } from './support.ts';

const good = {
  flow: 'under' as const,
  inletPa: 700000,
  outletPa: 0,
  portDiameterM: 0.05,
  stemDiameterM: 0.0125,
};

describe('the force on a shut plug', () => {
  it('opens with the flow under it and shuts with the flow over it, by the stem less', () => {
    const under = plugForce(good);
    const over = plugForce({ ...good, flow: 'over' });
    expect([under.tendsTo, over.tendsTo]).toEqual(['open', 'close']);
    expectClose(under.openingN + over.openingN, 700000 * under.stemAreaM2);
  });

  it('at the same pressure on both sides is the stem alone, blown out', () => {
    const level = plugForce({ ...good, outletPa: 700000 });
    expectClose(level.openingN, 700000 * level.stemAreaM2);
  });

  it('is nothing without pressure', () => {
    expect(plugForce({ ...good, inletPa: 0 })).toMatchObject({ openingN: 0, tendsTo: 'neither' });
  });

  it('on a plug balanced at the port is the stem alone', () => {
    fc.assert(
      fc.property(between(0, 1e6), fc.constantFrom<'under' | 'over'>('under', 'over'), (outletPa, flow) => {
        const balanced = plugForce({ ...good, flow, outletPa, balanceSealDiameterM: 0.05 });
        const abovePa = flow === 'under' ? 700000 : outletPa;
        expectClose(balanced.openingN, abovePa * balanced.stemAreaM2);
      }),
    );
  });

  it('on a balanced plug goes with the difference between seal and port', () => {
    const stemless = { ...good, flow: 'over' as const, stemDiameterM: 0, balanceSealDiameterM: 0.055 };
    const difference = circleAreaM2(0.055) - circleAreaM2(0.05);
    expectClose(plugForce(stemless).openingN, 700000 * difference);
    expectClose(plugForce({ ...stemless, flow: 'under' }).openingN, -700000 * difference);
  });

  it('of impossible figures is refused by name', () => {
    expectRefused(() => plugForce({ ...good, stemDiameterM: 0.05 }), {
      code: 'CALC-003',
      name: 'portDiameterM',
    });
    expectRefused(() => plugForce({ ...good, balanceSealDiameterM: 0.04 }), {
      code: 'CALC-003',
      name: 'balanceSealDiameterM',
    });
    expectRefused(() => plugForce({ ...good, flow: 'beside' as 'over' }), { code: 'CALC-005', name: 'flow' });
    refusesEachNonNumber(plugForce, { ...good, balanceSealDiameterM: 0.055 });
    refusesOrAnswers(plugForce, { ...good, balanceSealDiameterM: 0.055 });
  });
});

it('the area of a circle grows with the diameter squared, and no circle is smaller than none', () => {
  expectClose(circleAreaM2(0.2) / circleAreaM2(0.1), 4);
  expectRefused(() => circleAreaM2(-1), { code: 'CALC-002', name: 'diameterM' });
});
