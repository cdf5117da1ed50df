/** What follows from a valve sheet without any reading. */
import { type TestAirLimit, testAirLimit } from '../../safety/limits.ts';
import { benchSet } from '../calculations/bench-set.ts';
import type { AirAction } from '../calculations/signal-travel.ts';
import type { ValveSheet } from './sheet.ts';

/**
 * Whether more air opens or closes the valve.
 * @example airActionOf({ plugCloses: 'down', airMovesStem: 'up' }) // 'air-to-open'
 */
export function airActionOf({
  plugCloses,
  airMovesStem,
}: Pick<ValveSheet, 'plugCloses' | 'airMovesStem'>): AirAction {
  return plugCloses === airMovesStem ? 'air-to-close' : 'air-to-open';
}

/**
 * Where the spring drives the valve on loss of air.
 * @example failPositionOf({ airAction: 'air-to-open', springHeldBy: 'adjuster' }) // 'shut'
 */
export function failPositionOf({
  airAction,
  springHeldBy,
}: Pick<ValveSheet, 'airAction' | 'springHeldBy'>): ValveSheet['failPosition'] {
  if (springHeldBy === 'no spring') return 'stays';
  return airAction === 'air-to-open' ? 'shut' : 'open';
}

/**
 * Whether air is on both sides of the piston: a spring takes the place of the one side, unless each end has its relay.
 * @example bothEndsFed({ actuatorKind: 'piston', springHeldBy: 'case', positionerRelays: 'one' }) // false
 */
export function bothEndsFed({
  actuatorKind,
  springHeldBy,
  positionerRelays,
}: Pick<ValveSheet, 'actuatorKind' | 'springHeldBy' | 'positionerRelays'>): boolean {
  return actuatorKind === 'piston' && (springHeldBy === 'no spring' || positionerRelays === 'one an end');
}

/** @example stemMayTurn({ bellowsSeal: true, stemPinned: false }) // false */
export function stemMayTurn({
  bellowsSeal,
  stemPinned,
}: Pick<ValveSheet, 'bellowsSeal' | 'stemPinned'>): boolean {
  return !bellowsSeal && !stemPinned;
}

/**
 * As written, or worked out from bench set, travel and area. A valve without a spring has none to ask for.
 * @returns N/m
 * @throws CalcError for a bench set or travel that contradicts itself
 * @example springRateOf({ springRateNPerM: 175127, ... }) // 175127
 */
export function springRateOf(sheet: ValveSheet): number {
  return sheet.springRateNPerM ?? benchSet(sheet).springRateNPerM;
}

export interface SheetFigures {
  /** As written, or worked out from bench set, travel and area; null without a spring. */
  readonly springRateNPerM: number | null;
  readonly springRateFrom: 'sheet' | 'bench set' | 'no spring';
  /** Spring force where the stroke begins; null without a spring. */
  readonly preloadN: number | null;
  readonly testAir: TestAirLimit;
  readonly stemMayTurn: boolean;
}

/**
 * The figures that a valve's page shows beside its sheet.
 * @throws CalcError for a bench set or travel that contradicts itself: such a sheet is not saved
 * @example figuresOf(sheet).testAir.limitPa // 137895.15, 20 psi for 3 to 15 psi
 */
export function figuresOf(sheet: ValveSheet): SheetFigures {
  const spring = sheet.springHeldBy === 'no spring' ? null : benchSet(sheet);
  return {
    springRateNPerM: spring === null ? null : springRateOf(sheet),
    springRateFrom: spring === null ? 'no spring' : sheet.springRateNPerM === null ? 'bench set' : 'sheet',
    preloadN: spring?.preloadN ?? null,
    testAir: testAirLimit(sheet),
    stemMayTurn: stemMayTurn(sheet),
  };
}
