import { expect, test } from 'vitest';
import { calculationOf } from '../../../procedures/calculations/registry.ts';
import { cautionsOf } from '../../../server/calculations/cautions.ts';

const energy = calculationOf('energy-in-plain-terms');
const cautions = (energies: Readonly<Record<string, number>>) =>
  cautionsOf(energy, energy.run({ airJ: 0, springInstalledJ: 0, springStrokeJ: 0, ...energies }));

test('every energy that is there has its caution in whole sentences, and one that is not has none', () => {
  expect(cautions({})).toEqual([]);
  expect(cautions({ airJ: 1 }).map(({ word }) => word)).toEqual(['warning']);
  expect(cautions({ springInstalledJ: 1 })).toMatchObject([
    { word: 'danger', hazard: expect.stringContaining('stays loaded when the air is gone') },
  ]);
  const all = cautions({ airJ: 1, springInstalledJ: 1, springStrokeJ: 1 });
  expect(all).toHaveLength(3);
  for (const { hazard, consequence, avoid } of all)
    for (const text of [hazard, consequence, avoid]) expect(text).toMatch(/\.$/);
});

test('a result without cautions has none', () => {
  const bench = calculationOf('bench-set');
  expect(cautionsOf(bench, bench.run(bench.example))).toEqual([]);
});

test.each([
  'seating-turns',
  'seating-turns-wanted',
  'seating-obstacles',
  'adjuster-turns',
  'adjuster-turns-wanted',
  'gland-torque',
])('what %s invites to do has its caution above it', (id) => {
  const calculation = calculationOf(id);
  expect(cautionsOf(calculation, calculation.run(calculation.example))).toMatchObject([{ word: 'warning' }]);
});
