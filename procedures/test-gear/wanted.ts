import { testAirLimit } from '../../safety/limits.ts';
import { noSeatTest, seatTestOf } from '../seat-test.ts';
import type { ValveSheet } from '../valve-sheet/sheet.ts';
import type { Wanted } from './fit.ts';
import { GEAR_ROLES, type GearRole } from './roles.ts';

/**
 * What a piece of gear will have to show in a job on this valve. Where air is put on the case, the gauge must still
 * show the most that the case may be given: a needle at its stop tells nobody that it is too much.
 *
 * @returns gauge pressures in Pa, travel in m, from zero, since a zero is read on each
 * @example wantedOf('signalGauge', sheet).highSi // 137895.15, 20 psi for a signal of 3 to 15 psi
 */
export function wantedOf(role: GearRole, sheet: ValveSheet): Wanted {
  return { kind: GEAR_ROLES[role].kind, lowSi: 0, ...REACH[role](sheet) };
}

const REACH: Readonly<Record<GearRole, (sheet: ValveSheet) => Omit<Wanted, 'kind' | 'lowSi'>>> = {
  signalGauge: (sheet) => ({
    highSi: testAirPa(sheet),
    toleranceSi: share(sheet) * (sheet.benchSetHighPa - sheet.benchSetLowPa),
  }),
  checkGauge: (sheet) => ({ highSi: sheet.benchSetHighPa }),
  travelIndicator: (sheet) => ({ highSi: sheet.travelM, toleranceSi: share(sheet) * sheet.travelM }),
  regulator: (sheet) => ({ highSi: sheet.benchSetHighPa }),
  supplyGauge: (sheet) => ({ highSi: sheet.supplyHighPa ?? sheet.signalHighPa }),
  inletGauge: (sheet) => ({ highSi: sheet.processInletPa }),
  outletGauge: (sheet) => ({ highSi: sheet.processOutletPa }),
  seatGauge: (sheet) => ({ highSi: noSeatTest(sheet) === null ? seatTestOf(sheet).mostPa : 0 }),
};

function testAirPa(sheet: ValveSheet): number {
  return Math.max(testAirLimit(sheet).limitPa, sheet.benchSetHighPa);
}

function share({ errorTolerancePercent }: ValveSheet): number {
  return errorTolerancePercent / 100;
}
