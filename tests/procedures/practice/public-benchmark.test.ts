import { expect, test } from 'vitest';
import { FAULTS } from '../../../procedures/practice/faults.ts';
import {
  BENCHMARK_FAULTS,
  BENCHMARK_OUT_OF_REACH,
  type BenchmarkFault,
} from '../../../procedures/practice/public-benchmark.ts';
import { CAUSE_IDS } from '../../../procedures/troubleshooting/causes.ts';
import { repairFor } from '../../../procedures/troubleshooting/repairs.ts';

const all: readonly (readonly [string, BenchmarkFault])[] = Object.entries(BENCHMARK_FAULTS);

test('all nineteen faults of the public benchmark are there, in its four groups', () => {
  expect(all.map(([id]) => id)).toEqual(Array.from({ length: 19 }, (_, at) => `f${at + 1}`));
  // Groups as the benchmark lists them: 1 to 7 valve, 8 to 11 actuator, 12 to 15 positioner, 16 to 19 outside.
  const groups = all.map(([, { group }]) => group);
  expect(groups.indexOf('actuator')).toBe(7);
  expect(groups.indexOf('positioner')).toBe(11);
  expect(groups.indexOf('outside')).toBe(15);
});

test.each(all)(
  '%s of the public benchmark has a cause that can be found, simulated and repaired',
  (_, fault) => {
    expect(fault.causes.length).toBeGreaterThan(0);
    for (const cause of fault.causes) {
      expect(CAUSE_IDS).toContain(cause);
      expect(FAULTS[cause]).toBeDefined();
      expect(repairFor(cause)).toBeTruthy();
    }
  },
);

test('what no cause does of a fault of the public benchmark is said, in a sentence', () => {
  for (const [id, reason] of Object.entries(BENCHMARK_OUT_OF_REACH)) {
    expect(BENCHMARK_FAULTS).toHaveProperty(id);
    expect(reason).toMatch(/^[A-Z].{30,}\.$/);
  }
});
