import type { Dimension, UnitId } from '../calculations/unit-table.ts';

/** Each kind of test gear with what its scale measures. */
export const GEAR_KINDS = {
  'pressure gauge': 'pressure',
  'dial indicator': 'length',
  regulator: 'pressure',
  'flow meter': 'flowVolume',
  thermometer: 'temperature',
} as const satisfies Readonly<Record<string, Dimension>>;

export type GearKind = keyof typeof GEAR_KINDS;

/** One piece of test gear, by the number on its label. Ranges in SI of its dimension. */
export interface GearItem {
  readonly number: string;
  readonly kind: GearKind;
  readonly rangeLowSi: number;
  readonly rangeHighSi: number;
  readonly dimension: (typeof GEAR_KINDS)[GearKind];
  /** What its scale is marked in. */
  readonly unit: UnitId;
  /** A regulator is not read: 0. */
  readonly accuracyPercentOfSpan: number;
  /** Dates as YYYY-MM-DD. A regulator's are those of its last and next check. */
  readonly calibratedOn: string;
  readonly dueOn: string;
  readonly certificate: string;
  /**
   * Regulators: whether it lets air out when it is turned down. One that does not keeps the pressure up on the way
   * down, which looks like hysteresis of the valve. Null for other gear.
   */
  readonly bleedsDown: boolean | null;
  readonly note: string;
}

/** @example spanSi({ rangeLowSi: 0, rangeHighSi: 206842.72 }) // 206842.72 */
export function spanSi({ rangeLowSi, rangeHighSi }: Pick<GearItem, 'rangeLowSi' | 'rangeHighSi'>): number {
  return rangeHighSi - rangeLowSi;
}

/**
 * The largest error that its accuracy allows, in SI: percent of span, never of reading.
 * @example permittedErrorSi(gauge) // 517.1 Pa, 0.075 psi, for 0 to 30 psi at 0.25 %
 */
export function permittedErrorSi(
  item: Pick<GearItem, 'rangeLowSi' | 'rangeHighSi' | 'accuracyPercentOfSpan'>,
): number {
  return (item.accuracyPercentOfSpan / 100) * spanSi(item);
}
