import { expect, test } from 'vitest';
import { fromSi } from '../../../procedures/calculations/units.ts';
import { CYCLE_POINTS, pointField } from '../../../procedures/rules/own-stroke.ts';
import { seatTestOf } from '../../../procedures/seat-test.ts';
import { PROCEDURES } from '../../../procedures/served.ts';
import type { ServedProcedure } from '../../../procedures/served-procedure.ts';
import { measuredOf } from '../../../server/history/measured.ts';
import { judged } from '../../../server/jobs/record/results.ts';
import { jobOn, play } from '../../builders/answers.ts';
import { gearFor, gearItem } from '../../builders/gear.ts';
import { aSheet, aSheetOf } from '../../builders/sheets.ts';

function served(id: string): ServedProcedure {
  const found = PROCEDURES.find(({ definition }) => definition.id === id);
  if (found === undefined) throw new Error(`${id} is not served`);
  return found;
}

test('a seat test leaves what came through the seat, against what was allowed, once it is closed', () => {
  const sheet = aSheet();
  const { allowedM3PerS } = seatTestOf(sheet);
  // Five minutes at half of what it may leak.
  const ml = fromSi({ valueSi: 300 * 0.5 * allowedM3PerS, unit: 'ml' });
  const off = { seatTestPa: '', seatZeroPa: '0 psi', method: 'gauge' };
  const overrides = {
    pressOn: { seatTestPa: '50 psi', jointsTight: 'yes' },
    measure: { seatTestPa: '50 psi', leakBy: 'glass', leakTimeS: '300 s', leakVolumeM3: `${ml} ml` },
    ...{ letOffTight: off, letOffLeaking: off, letOffAgain: off, ventSeat: off },
  };
  const gear = { ...gearFor('bench'), seatGauge: gearItem('seatGauge') };
  const opened = () => jobOn(served('seat-leak-test'), { sheet, place: 'bench', gear });
  const leak = measuredOf(play(opened(), { overrides }).job)?.seatLeak;
  expect(leak?.leakM3PerS).toBeCloseTo(0.5 * allowedM3PerS, 9);
  expect(leak?.allowedM3PerS).toBe(allowedM3PerS);
  expect(leak?.uncertaintyM3PerS).toBeGreaterThan(0);
  expect(measuredOf(play(opened(), { overrides, to: 'leakReview' }).job)).toBeNull();
});

test('a stroke by the valve’s own signal is no point among those by test air, though its record judges it', () => {
  const texts = { positioner: 'pneumatic', positionerRisingSignalLoads: 'bottom', positionerRelays: 'one' };
  const sheet = aSheetOf({ ...texts, supplyLowPa: '18', supplyHighPa: '22' });
  const strokeFound = Object.fromEntries(
    CYCLE_POINTS.map((point) => [pointField(point, 'travel'), `${point.percent} %`]),
  );
  const { job } = play(jobOn(served('positioner-stroke'), { sheet, place: 'line' }), {
    overrides: {
      supplyRead: { supplyReadPa: '20 psi' },
      strokeFound,
      airAtHalf: { actuatorAirPa: '9 psi', airTravelM: '50 %' },
    },
  });
  expect([job.status, judged(job, 'asFound')?.errorVerdict]).toEqual(['closed', 'inside']);
  expect([measuredOf(job)?.asFound ?? null, measuredOf(job)?.asLeft ?? null]).toEqual([null, null]);
});
