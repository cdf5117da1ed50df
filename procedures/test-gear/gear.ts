/** One piece of test gear, by the number on its label. Ranges in SI of its dimension. */
export interface GearItem {
  readonly number: string;
  readonly kind: 'pressure gauge' | 'dial indicator' | 'regulator' | 'flow meter' | 'other';
  readonly rangeLowSi: number;
  readonly rangeHighSi: number;
  readonly dimension: 'pressure' | 'length' | 'other';
  readonly accuracyPercentOfSpan: number;
  readonly calibratedOn: string;
  readonly dueOn: string;
  readonly certificate: string;
  readonly note: string;
}
