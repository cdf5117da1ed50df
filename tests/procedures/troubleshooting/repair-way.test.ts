import { expect, test } from 'vitest';
import { goesOnFrom, repairWay } from '../../../procedures/troubleshooting/repair-way.ts';
import { REPAIR_IDS } from '../../../procedures/troubleshooting/repairs.ts';
import { GOES_ON_AS } from '../../../procedures/troubleshooting/steps/goes-on.ts';
import { DEMO_VALVES } from '../../../server/demo/demo-valves.ts';
import { aSheet, sheetOf } from '../../builders/sheets.ts';

const PISTON = DEMO_VALVES.map(sheetOf).find(({ actuatorKind }) => actuatorKind === 'piston') ?? aSheet();

test('a repair goes on from where the valve stands, once it is isolated, or after it was given back', () => {
  const from = (id: (typeof REPAIR_IDS)[number], hub: 'in service' | 'bypassed' | 'isolated') =>
    goesOnFrom(id, { hub, way: repairWay(id, { sheet: { ...aSheet(), electricalV: 24 }, place: 'line' }) });
  expect(from('tightenOutputTube', 'in service')).toBe('given back');
  expect(from('tightenOutputTube', 'bypassed')).toBe('here');
  expect(from('adjustSource', 'bypassed')).toBe('here');
  expect(from('setCoupling', 'bypassed')).toBe('here');
  expect(from('setCoupling', 'isolated')).toBe('given back');
  expect(from('changeDiaphragm', 'bypassed')).toBe('isolated');
  expect(from('changeDiaphragm', 'isolated')).toBe('here');
  expect(from('tune', 'bypassed')).toBe('given back');
});

test('packing and seat of a cylinder are not led to a job that this valve may not have, and it is said why', () => {
  for (const repair of ['repack', 'openValve'] as const) {
    const way = repairWay(repair, { sheet: PISTON, place: 'line' });
    expect(way.because, repair).toContain('maker');
    expect(goesOnFrom(repair, { hub: 'isolated', way })).toBe('given back');
  }
});

test('on every valve of the plant a repair that goes on goes on as a procedure that the valve may have', () => {
  for (const sheet of DEMO_VALVES.map(sheetOf))
    for (const id of REPAIR_IDS) {
      const way = repairWay(id, { sheet, place: 'line' });
      for (const hub of ['bypassed', 'isolated'] as const)
        if (goesOnFrom(id, { hub, way }) === 'here') {
          expect(way.because).toBe('');
          expect([...GOES_ON_AS[hub]]).toContain(way.procedure);
        }
    }
});
