import fc from 'fast-check';
import { expect } from 'vitest';
import {
  CalcError,
  type CalcErrorCode,
  type CalcErrorDetail,
} from '../../../procedures/calculations/calc-error.ts';

/** What a call was refused with; a call that goes through fails the test. */
export function refusal(call: () => unknown): CalcErrorDetail {
  try {
    call();
  } catch (error) {
    if (error instanceof CalcError) return error.detail;
    throw error;
  }
  throw new Error('the call was not refused');
}

export function expectRefused(
  call: () => unknown,
  wanted: { readonly code: CalcErrorCode; readonly name: string },
): void {
  const { code, name } = refusal(call);
  expect({ code, name }).toEqual(wanted);
}

type Input = Readonly<Record<string, unknown>>;

function numbersOf(input: Input): readonly string[] {
  return Object.keys(input).filter((key) => typeof input[key] === 'number');
}

function withValue<T extends Input>(input: T, name: string, value: unknown): T {
  return { ...input, [name]: value };
}

/**
 * Every number of the input that is no number is refused under its own name.
 *
 * @param of     the calculation
 * @param good   an input that it accepts, all numbers at the top level
 * @param except numbers that this branch does not look at
 */
export function refusesEachNonNumber<T extends Input>(
  of: (input: T) => unknown,
  good: T,
  except: readonly string[] = [],
): void {
  const names = numbersOf(good).filter((name) => !except.includes(name));
  expect(names.length).toBeGreaterThan(0);
  for (const name of names) {
    for (const bad of [Number.NaN, Number.POSITIVE_INFINITY, 'ten']) {
      expectRefused(() => of(withValue(good, name, bad)), { code: 'CALC-001', name });
    }
  }
}

/** Values around a good one, at the edges, and far off. */
function around(good: number): fc.Arbitrary<number> {
  return fc.oneof(
    fc.double({ min: 0, max: 3, noNaN: true }).map((factor) => good * factor),
    fc.double({ min: -1e16, max: 1e16, noNaN: true }),
    fc.double({ min: -20, max: 16, noNaN: true }).map((exponent) => 10 ** exponent),
    fc.constant(good),
    fc.constantFrom(0, -0, 1, -1, 100, 1e-15, 1e15, 1e-300, 1e300, -good),
  );
}

/**
 * Whatever numbers it is given, a calculation refuses by name or answers with numbers: never with NaN or infinity.
 *
 * @param of     the calculation
 * @param good   an input that it accepts; its numbers are changed, some or all at a time
 */
export function refusesOrAnswers<T extends Input>(of: (input: T) => unknown, good: T): void {
  const names = numbersOf(good);
  const changed = fc.tuple(
    fc.record(Object.fromEntries(names.map((name) => [name, around(Number(good[name]))]))),
    fc.subarray([...names], { minLength: 1 }),
  );
  let answered = 0;
  fc.assert(
    fc.property(changed, ([values, chosen]) => {
      const input = chosen.reduce((soFar, name) => withValue(soFar, name, values[name]), good);
      const result = answerOf(() => of(input));
      if (result === REFUSED) return;
      answered++;
      expect(notFinite(result)).toEqual([]);
    }),
    { numRuns: 300 },
  );
  expect(answered, 'some inputs are accepted').toBeGreaterThan(0);
}

const REFUSED = Symbol('refused');

function answerOf(call: () => unknown): unknown {
  try {
    return call();
  } catch (error) {
    if (error instanceof CalcError) return REFUSED;
    throw error;
  }
}

/** Paths of the numbers in a result that are none. */
export function notFinite(value: unknown, path = 'result'): readonly string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} is ${value}`];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => notFinite(inner, `${path}.${key}`));
}

/** Equal but for the rounding of binary numbers. */
export function expectClose(got: number, wanted: number, relative = 1e-9): void {
  expect(Math.abs(got - wanted)).toBeLessThanOrEqual(
    relative * Math.max(Math.abs(got), Math.abs(wanted)) + 1e-12,
  );
}

/** A number that is no edge case. */
export function between(min: number, max: number): fc.Arbitrary<number> {
  return fc.double({ min, max, noNaN: true });
}

/** A quantity never falls (or never rises) as an input grows. */
export function expectMonotone(input: {
  readonly of: (x: number) => number;
  readonly from: number;
  readonly to: number;
  readonly rises: boolean;
}): void {
  const { of, from, to, rises } = input;
  fc.assert(
    fc.property(between(from, to), between(from, to), (a, b) => {
      const [low, high] = a <= b ? [of(a), of(b)] : [of(b), of(a)];
      const slack = 1e-9 * Math.max(Math.abs(low), Math.abs(high)) + 1e-12;
      expect(rises ? high - low : low - high).toBeGreaterThanOrEqual(-slack);
    }),
    { numRuns: 100 },
  );
}
