import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  boltCircle,
  boltTorqueNm,
  crossPattern,
  nutFactor,
  type PassScheme,
  PCC1_TORQUES,
  pcc1Torque,
  torquePasses,
} from '../../../procedures/calculations/bolting.ts';
import { convert } from '../../../procedures/calculations/units.ts';
import { between, expectClose, expectRefused, refusesEachNonNumber, refusesOrAnswers } from './support.ts';

describe('the torque of a bolt', () => {
  const good = { nutFactor: 0.2, boltDiameterM: 0.016, boltLoadN: 50000 };

  it('and the nut factor that it stands for are each other’s inverse', () => {
    fc.assert(
      fc.property(
        between(0.05, 0.5),
        between(0.006, 0.05),
        between(100, 1e5),
        (factor, boltDiameterM, boltLoadN) => {
          const torqueNm = boltTorqueNm({ nutFactor: factor, boltDiameterM, boltLoadN });
          expectClose(nutFactor({ torqueNm, boltDiameterM, boltLoadN }), factor);
        },
      ),
    );
  });

  it('with impossible figures is refused by name', () => {
    expectRefused(() => boltTorqueNm({ ...good, nutFactor: 1.1 }), { code: 'CALC-002', name: 'nutFactor' });
    refusesEachNonNumber(boltTorqueNm, good);
    refusesOrAnswers(boltTorqueNm, good);
    const load = { torqueNm: 160, boltDiameterM: 0.016, boltLoadN: 50000 };
    refusesEachNonNumber(nutFactor, load);
    refusesOrAnswers(nutFactor, load);
  });

  it('is looked up for flange bolts, in both states of the surface', () => {
    for (const row of PCC1_TORQUES) {
      const boltDiameterM = convert({ value: row.boltIn, from: 'in', to: 'm' });
      const found = pcc1Torque({ boltDiameterM });
      expectClose(convert({ value: found.nonCoatedNm, from: 'N.m', to: 'lbf.ft' }), row.nonCoatedFtLbf);
      expect(found.coatedNm).toBeLessThan(found.nonCoatedNm);
    }
    expectRefused(() => pcc1Torque({ boltDiameterM: 0.02 }), { code: 'CALC-005', name: 'boltDiameterM' });
  });
});

describe('the passes of a joint', () => {
  it('begin by hand, rise crosswise to the whole torque, and end with a round of checking', () => {
    const passes = torquePasses({ finalTorqueNm: 200, scheme: 'PCC-1' });
    expect(passes.map(({ pattern }) => pattern)).toEqual([
      'by hand',
      'crosswise',
      'crosswise',
      'crosswise',
      'around',
    ]);
    expect(passes.map(({ lowNm }) => lowNm)).toEqual([0, 40, 100, 200, 200]);
    expect(passes.map(({ highNm }) => highNm)).toEqual([0, 60, 140, 200, 200]);
  });

  it('with impossible figures are refused by name', () => {
    expectRefused(() => torquePasses({ finalTorqueNm: 0, scheme: 'PCC-1' }), {
      code: 'CALC-002',
      name: 'finalTorqueNm',
    });
    expectRefused(() => torquePasses({ finalTorqueNm: 1, scheme: 'one go' as PassScheme }), {
      code: 'CALC-005',
      name: 'scheme',
    });
  });
});

describe('the cross pattern', () => {
  // Four, eight and twelve: common practice, as several shops print it; sixteen to twenty-four: from memory.
  it.each([
    [4, [1, 3, 2, 4]],
    [6, [1, 4, 3, 6, 2, 5]],
    [8, [1, 5, 3, 7, 2, 6, 4, 8]],
    [12, [1, 7, 4, 10, 2, 8, 5, 11, 3, 9, 6, 12]],
    [16, [1, 9, 5, 13, 3, 11, 7, 15, 2, 10, 6, 14, 4, 12, 8, 16]],
    [20, [1, 11, 6, 16, 3, 13, 8, 18, 5, 15, 10, 20, 2, 12, 7, 17, 4, 14, 9, 19]],
    [24, [1, 13, 7, 19, 4, 16, 10, 22, 2, 14, 8, 20, 5, 17, 11, 23, 3, 15, 9, 21, 6, 18, 12, 24]],
  ])('is the usual one for %i bolts', (bolts, order) => {
    expect(crossPattern({ bolts })).toEqual(order);
  });

  it('follows each pair by the one square to it, wherever the count divides by four', () => {
    for (let quarter = 1; quarter <= 24; quarter++) {
      const order = crossPattern({ bolts: 4 * quarter });
      for (let at = 0; at < order.length; at += 4) expect(order[at + 2]).toBe((order[at] ?? 0) + quarter);
    }
  });

  it('tightens every bolt once, each with its opposite next', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 48 }), (half) => {
        const order = crossPattern({ bolts: 2 * half });
        expect(order.toSorted((a, b) => a - b)).toEqual(Array.from({ length: 2 * half }, (_, at) => at + 1));
        for (let at = 0; at < order.length; at += 2) expect(order[at + 1]).toBe((order[at] ?? 0) + half);
      }),
    );
  });

  it('is not made for an odd count, for two bolts or for part of one', () => {
    for (const bolts of [3, 5, 2, 0, 98, 4.5]) {
      expectRefused(() => crossPattern({ bolts }), { code: 'CALC-002', name: 'bolts' });
    }
  });

  it('is drawn clockwise from the top, each bolt with its rank', () => {
    const circle = boltCircle({ bolts: 8, circleDiameterM: 0.2 });
    expect(circle[0]).toMatchObject({ bolt: 1, upM: 0.1, rank: 1 });
    expect(circle[2]?.rightM).toBeCloseTo(0.1, 12);
    expect(circle.map(({ rank }) => rank).toSorted((a, b) => a - b)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    expectRefused(() => boltCircle({ bolts: 8, circleDiameterM: 0 }), {
      code: 'CALC-002',
      name: 'circleDiameterM',
    });
  });
});
