import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CalcError } from '../../../procedures/calculations/calc-error.ts';
import { kvFor } from '../../../procedures/calculations/capacity-search.ts';
import { between, expectClose, expectRefused } from './support.ts';

describe('the search for a coefficient', () => {
  it('finds it for any rising flow', () => {
    fc.assert(
      fc.property(between(-6, 6), (exponent) => {
        const kv = 10 ** exponent;
        expectClose(kvFor({ flowOf: (x) => 7 * x ** 0.8, wanted: 7 * kv ** 0.8, name: 'flow' }), kv);
      }),
    );
  });

  it('stays below what the pipes allow', () => {
    const flowOf = (kv: number) => {
      if (kv > 10)
        throw new CalcError({ code: 'CALC-006', name: 'kv', value: kv, range: 'smaller', unit: '' });
      return kv;
    };
    expectClose(kvFor({ flowOf, wanted: 9, name: 'flow' }), 9);
    expectRefused(() => kvFor({ flowOf, wanted: 11, name: 'flow' }), { code: 'CALC-006', name: 'flow' });
  });

  it('refuses a flow that no coefficient passes, and hands on any other refusal', () => {
    expectRefused(() => kvFor({ flowOf: (kv) => kv / (1 + kv), wanted: 2, name: 'flowM3PerS' }), {
      code: 'CALC-006',
      name: 'flowM3PerS',
    });
    const other = () => {
      throw new CalcError({ code: 'CALC-002', name: 'inletPaAbs', value: 0, range: 'above 0', unit: 'Pa' });
    };
    expect(() => kvFor({ flowOf: other, wanted: 1, name: 'flow' })).toThrow('inletPaAbs');
  });
});
