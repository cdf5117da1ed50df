/** What can be wrong with the inputs of a calculation, by code; a test provokes each. */
export const CALC_ERRORS = {
  'CALC-001': 'a number is missing or is no number',
  'CALC-002': 'a number lies outside its range',
  'CALC-003': 'two inputs contradict each other',
  'CALC-004': 'there are too few points, or they do not fit together',
  'CALC-005': 'the choice is not in the list',
  'CALC-006': 'the equation has no valid answer for these inputs',
} as const;

export type CalcErrorCode = keyof typeof CALC_ERRORS;

export interface CalcErrorDetail {
  readonly code: CalcErrorCode;
  /** The input as it is spelled in code, form field and JSON, for example `effectiveAreaM2`. */
  readonly name: string;
  readonly value: number | string | null;
  /** What is allowed, in words: `above 0`, `from 0 to 100`, `one of II, III, IV`. */
  readonly range: string;
  /** Printed unit of value and range; empty where there is none. */
  readonly unit: string;
}

/**
 * An impossible input, refused by name. The one error that calculations throw.
 *
 * @example
 * throw new CalcError({ code: 'CALC-002', name: 'effectiveAreaM2', value: 0, range: 'above 0', unit: 'm²' })
 */
export class CalcError extends Error {
  override readonly name = 'CalcError';
  readonly detail: CalcErrorDetail;

  constructor(detail: CalcErrorDetail) {
    const unit = detail.unit === '' ? '' : ` ${detail.unit}`;
    const value = detail.value === null ? 'missing' : `${detail.value}${unit}`;
    super(`${detail.code}: ${detail.name} is ${value}; allowed: ${detail.range}${unit}.`);
    this.detail = detail;
  }

  get code(): CalcErrorCode {
    return this.detail.code;
  }
}
