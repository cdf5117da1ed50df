import { CalcError } from './calc-error.ts';

/** Below the smallest and above the largest coefficient of a valve. */
const SMALLEST_KV = 1e-9;
const LARGEST_KV = 1e9;

/** Halvings of the logarithmic interval: far below the last digit of the answer. */
const STEPS = 200;

/**
 * The flow coefficient that passes a wanted flow.
 *
 * Shape: the flow as a function of the coefficient in, the coefficient out. Halves the interval until nothing changes.
 * Valid: the flow rises with the coefficient. Reducers bound it: a flow that they alone do not pass has no answer.
 * @param flowOf   flow that a coefficient passes, in the unit of wanted; may refuse a coefficient that is too large
 * @param wanted   above 0
 * @param name     of the input that a refusal names
 * @returns flow coefficient Kv
 * @throws CalcError CALC-006 if no coefficient passes the flow
 * @source [S-18] solved to convergence, not stopped at 1 %
 * @example kvFor({ flowOf: (kv) => 3 * kv, wanted: 12, name: 'flowM3PerS' }) // 4
 */
export function kvFor(input: {
  readonly flowOf: (kv: number) => number;
  readonly wanted: number;
  readonly name: string;
}): number {
  const { wanted, name } = input;
  const enough = (kv: number) => {
    try {
      return input.flowOf(kv) >= wanted;
    } catch (error) {
      // Beyond the largest coefficient that these pipes allow the equations have no root.
      if (error instanceof CalcError && error.code === 'CALC-006' && error.detail.name === 'kv') return true;
      throw error;
    }
  };
  let [low, high] = [Math.log(SMALLEST_KV), Math.log(LARGEST_KV)];
  for (let step = 0; step < STEPS; step++) {
    const middle = (low + high) / 2;
    if (enough(Math.exp(middle))) high = middle;
    else low = middle;
  }
  const kv = Math.exp(low);
  if (!(Math.abs(input.flowOf(kv) / wanted - 1) < 1e-9)) {
    throw new CalcError({
      code: 'CALC-006',
      name,
      value: wanted,
      range: 'a flow that these pipes pass at this drop',
      unit: '',
    });
  }
  return kv;
}
