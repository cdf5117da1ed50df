/** Test gear for tests: ranges as a technician carries them, calibrated and in date on every day that tests use. */
import type { GearItem } from '../../procedures/test-gear/gear.ts';
import { GEAR_ROLES, type GearRole, rolesAt } from '../../procedures/test-gear/roles.ts';

/** 1 psi in Pa and 1 in in m, NIST SP 811. */
export const PSI_PA = 6894.757293168361;
export const INCH_M = 0.0254;

const RANGE_PSI: { readonly [R in GearRole]?: readonly [high: number, accuracyPercent: number] } = {
  signalGauge: [30, 0.25],
  checkGauge: [30, 0.25],
  regulator: [60, 2],
  supplyGauge: [60, 1],
  inletGauge: [160, 1],
  outletGauge: [160, 1],
  seatGauge: [100, 0.5],
};

const NUMBERS: Readonly<Record<GearRole, string>> = {
  signalGauge: 'G-101',
  checkGauge: 'G-102',
  travelIndicator: 'D-201',
  regulator: 'R-301',
  supplyGauge: 'G-103',
  inletGauge: 'G-104',
  outletGauge: 'G-105',
  seatGauge: 'G-106',
};

/** @example gearItem('signalGauge').number // 'G-101', 0 to 30 psi, 0.25 % of span */
export function gearItem(role: GearRole, overrides: Partial<GearItem> = {}): GearItem {
  const [highPsi, accuracyPercentOfSpan] = RANGE_PSI[role] ?? [0, 0.2];
  const dial = role === 'travelIndicator';
  return {
    number: NUMBERS[role],
    kind: GEAR_ROLES[role].kind,
    rangeLowSi: 0,
    rangeHighSi: dial ? INCH_M : highPsi * PSI_PA,
    dimension: dial ? 'length' : 'pressure',
    unit: dial ? 'in' : 'psi',
    accuracyPercentOfSpan,
    calibratedOn: '2026-01-15',
    dueOn: '2099-01-15',
    certificate: `C-${NUMBERS[role]}`,
    bleedsDown: role === 'regulator' ? true : null,
    note: '',
    ...overrides,
  };
}

/** One piece of gear for each role that a job at this place needs. */
export function gearFor(place: 'bench' | 'line'): { readonly [R in GearRole]?: GearItem } {
  return Object.fromEntries(rolesAt(place).map((role) => [role, gearItem(role)]));
}
