import { describe, expect, it } from 'vitest';
import type { Calculation, NumberInput } from '../../../procedures/calculations/calculation-types.ts';
import { TOPICS } from '../../../procedures/calculations/calculation-types.ts';
import { ACTUATOR_CALCULATIONS } from '../../../procedures/calculations/entries/actuator.ts';
import { BOLTING_CALCULATIONS } from '../../../procedures/calculations/entries/bolting.ts';
import { CURRENT_CALCULATIONS } from '../../../procedures/calculations/entries/current.ts';
import { CYCLE_CALCULATIONS } from '../../../procedures/calculations/entries/cycle.ts';
import { ENERGY_CALCULATIONS } from '../../../procedures/calculations/entries/energy.ts';
import { FLOW_CALCULATIONS } from '../../../procedures/calculations/entries/flow.ts';
import { LEAK_CALCULATIONS } from '../../../procedures/calculations/entries/leak.ts';
import { LEAK_MEASURED_CALCULATIONS } from '../../../procedures/calculations/entries/leak-measured.ts';
import { MEASURING_CALCULATIONS } from '../../../procedures/calculations/entries/measuring.ts';
import { PNEUMATIC_CALCULATIONS } from '../../../procedures/calculations/entries/pneumatics.ts';
import { SEAT_LEAKAGE_CALCULATIONS } from '../../../procedures/calculations/entries/seat-leakage.ts';
import { SEATING_CALCULATIONS } from '../../../procedures/calculations/entries/seating.ts';
import { SIGNAL_CALCULATIONS } from '../../../procedures/calculations/entries/signal.ts';
import { STROKE_CALCULATIONS } from '../../../procedures/calculations/entries/stroke.ts';
import { CALCULATIONS, calculationOf } from '../../../procedures/calculations/registry.ts';
import { SOURCES } from '../../../procedures/calculations/sources.ts';
import { UNITS } from '../../../procedures/calculations/unit-table.ts';
import { fromSi, toSi, unitsOf } from '../../../procedures/calculations/units.ts';
import { expectRefused, notFinite, refusesOrAnswers } from './support.ts';

const LISTS = [
  SIGNAL_CALCULATIONS,
  CURRENT_CALCULATIONS,
  CYCLE_CALCULATIONS,
  STROKE_CALCULATIONS,
  ACTUATOR_CALCULATIONS,
  SEATING_CALCULATIONS,
  SEAT_LEAKAGE_CALCULATIONS,
  LEAK_MEASURED_CALCULATIONS,
  FLOW_CALCULATIONS,
  LEAK_CALCULATIONS,
  PNEUMATIC_CALCULATIONS,
  MEASURING_CALCULATIONS,
  BOLTING_CALCULATIONS,
  ENERGY_CALCULATIONS,
];

const each = CALCULATIONS.map((one) => ({ id: one.id, one }));

function without(values: Readonly<Record<string, unknown>>, name: string): Record<string, unknown> {
  return Object.fromEntries(Object.entries(values).filter(([key]) => key !== name));
}

function numbersOf(one: Calculation): readonly (readonly [string, NumberInput])[] {
  return Object.entries(one.inputs).flatMap(([name, spec]) =>
    spec.kind === 'number' ? [[name, spec] as const] : [],
  );
}

describe('the registry', () => {
  it('holds every entry of every topic, each under an id of its own', () => {
    expect(CALCULATIONS).toEqual(LISTS.flat());
    expect(new Set(CALCULATIONS.map(({ id }) => id)).size).toBe(CALCULATIONS.length);
    for (const { id } of CALCULATIONS) expect(id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
    expect([...new Set(CALCULATIONS.map(({ topic }) => topic))]).toEqual([...TOPICS]);
  });

  it('finds a calculation by its id, and refuses one that it does not have', () => {
    expect(calculationOf('seating-turns').topic).toBe('seating');
    expectRefused(() => calculationOf('fortune'), { code: 'CALC-005', name: 'id' });
  });

  it('is plain data but for its functions', () => {
    for (const { run: _, ...data } of CALCULATIONS) expect(JSON.parse(JSON.stringify(data))).toEqual(data);
  });
});

describe.each(each)('the calculation $id', ({ one }) => {
  it('says when it holds and where it comes from', () => {
    expect(one.title).not.toBe('');
    expect(one.validity).toMatch(/\.$/);
    expect(one.equation).not.toBe('');
    expect(one.answers.length).toBeGreaterThan(0);
    for (const name of one.answers) expect(Object.keys(one.outputs)).toContain(name);
    expect(new Set(one.answers).size).toBe(one.answers.length);
    for (const source of one.sources) expect(Object.keys(SOURCES)).toContain(source);
  });

  it('answers its example with every output that it names, and with numbers that are numbers', () => {
    const result = one.run(one.example);
    expect(Object.keys(result).toSorted()).toEqual(Object.keys(one.outputs).toSorted());
    expect(notFinite(result)).toEqual([]);
    expect(JSON.parse(JSON.stringify(result))).toEqual(result);
    for (const [name, spec] of Object.entries(one.outputs)) {
      const value = result[name];
      if (value === null) continue;
      const kinds = { number: 'number', word: 'string', 'yes-no': 'boolean', list: 'object', rows: 'object' };
      expect(typeof value, name).toBe(kinds[spec.kind]);
      for (const column of Object.keys(spec.columns ?? {})) {
        for (const row of value as readonly object[]) expect(Object.keys(row), name).toContain(column);
      }
    }
  });

  it('refuses by its name what is missing, unknown or of the wrong kind', () => {
    expectRefused(() => one.run({ ...one.example, luck: 7 }), { code: 'CALC-005', name: 'input' });
    for (const [name, spec] of Object.entries(one.inputs)) {
      const run = (value: unknown) => () => one.run({ ...one.example, [name]: value });
      if (spec.kind === 'number') {
        expectRefused(run('ten'), { code: 'CALC-001', name });
        if (spec.optional === undefined && spec.usual === undefined) {
          expectRefused(() => one.run(without(one.example, name)), { code: 'CALC-001', name });
        }
      }
      if (spec.kind === 'choice') expectRefused(run('neither'), { code: 'CALC-005', name });
      if (spec.kind === 'yes-no') expectRefused(run('perhaps'), { code: 'CALC-005', name });
      if (spec.kind === 'text') expectRefused(run(7), { code: 'CALC-001', name });
      if (spec.kind === 'rows') {
        expectRefused(run('none'), { code: 'CALC-004', name });
        expectRefused(run([null]), { code: 'CALC-004', name });
      }
    }
  });

  it('gives the same whichever unit its inputs are read in', () => {
    const plain = JSON.stringify(rounded(one.run(one.example)));
    const names = numbersOf(one).filter(([name]) => typeof one.example[name] === 'number');
    const most = Math.max(1, ...names.map(([, spec]) => unitsOf(spec.dimension).length));
    for (let turn = 0; turn < most; turn++) {
      const read = names.map(([name, { dimension }]) => {
        const units = unitsOf(dimension);
        const unit = units[turn % units.length]?.id ?? '1';
        expect(UNITS[unit].dimension).toBe(dimension);
        const asRead = fromSi({ valueSi: Number(one.example[name]), unit });
        return [name, toSi({ value: asRead, unit })];
      });
      const again = one.run({ ...one.example, ...Object.fromEntries(read) });
      expect(JSON.stringify(rounded(again))).toBe(plain);
    }
  });

  it('never answers with what is no number', () => {
    const numeric = numbersOf(one).filter(([name]) => typeof one.example[name] === 'number');
    if (numeric.length > 0)
      refusesOrAnswers((values: Record<string, unknown>) => one.run(values), { ...one.example });
  });
});

/** Nine digits: what is left of a number that went through another unit and back. */
function rounded(value: unknown): unknown {
  if (typeof value === 'number') return Math.abs(value) < 1e-9 ? 0 : Number(value.toPrecision(9));
  if (Array.isArray(value)) return value.map(rounded);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, rounded(inner)]));
}
