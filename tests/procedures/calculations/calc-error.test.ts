import { describe, expect, it } from 'vitest';
import { CALC_ERRORS, CalcError } from '../../../procedures/calculations/calc-error.ts';

describe('an impossible input', () => {
  it('is refused with its code, name, value, range and unit', () => {
    const error = new CalcError({ code: 'CALC-002', name: 'travelM', value: 0, range: 'above 0', unit: 'm' });
    expect(error.message).toBe('CALC-002: travelM is 0 m; allowed: above 0 m.');
    expect(error.code).toBe('CALC-002');
    expect(error.detail).toEqual({
      code: 'CALC-002',
      name: 'travelM',
      value: 0,
      range: 'above 0',
      unit: 'm',
    });
    expect(error).toBeInstanceOf(Error);
  });

  it('that is missing is called missing, and a plain number has no unit', () => {
    const error = new CalcError({
      code: 'CALC-001',
      name: 'turns',
      value: null,
      range: 'at least 0',
      unit: '',
    });
    expect(error.message).toBe('CALC-001: turns is missing; allowed: at least 0.');
  });

  it('has a code of a closed list, each with its meaning', () => {
    expect(Object.keys(CALC_ERRORS)).toEqual([
      'CALC-001',
      'CALC-002',
      'CALC-003',
      'CALC-004',
      'CALC-005',
      'CALC-006',
    ]);
  });
});
