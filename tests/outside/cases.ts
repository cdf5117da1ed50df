import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { UnitId } from '../../procedures/calculations/unit-table.ts';
import { fromSi, toSi } from '../../procedures/calculations/units.ts';

export type Value = number | string | boolean | null | readonly Value[] | { readonly [key: string]: Value };
export type CaseRecord = Readonly<Record<string, Value>>;

interface Tolerance {
  readonly rel?: number;
  readonly abs?: number;
  readonly exact?: boolean;
}

export interface Case {
  readonly id: string;
  readonly source: string;
  readonly kind: 'published' | 'derived' | 'common-practice' | 'memory';
  readonly inputs: CaseRecord;
  readonly expected: CaseRecord;
  readonly tolerance: Tolerance;
  readonly note?: string;
}

/** What works a case out: the values under the names of `expected`, each in the unit that its name says. */
export type Handler = (given: Given) => CaseRecord;

/** Endings of names in the fixtures, longest first, and the unit that they stand for. */
const ENDINGS: readonly (readonly [string, UnitId])[] = (
  [
    ['normal_m3_per_h_0C_101.325kPa', 'Nm3/h'],
    ['normal_l_per_min_0C_101.325kPa', 'Nl/min'],
    ['normal_ml_per_min_0C_101.325kPa', 'Nml/min'],
    ['std_ml_per_min_15C_101.325kPa', 'Sml/min'],
    ['std_l_per_min_15C_101.325kPa', 'Sl/min'],
    ['ANR_ml_per_min_20C_100kPa', 'ml/min ANR'],
    ['ANR_l_per_min_20C_100kPa', 'l/min ANR'],
    ['scfh_60F_14.696psia', 'scfh'],
    ['kPa_abs', 'kPa'],
    ['Pa_abs', 'Pa'],
    ['gauge_Pa', 'Pa'],
    ['bar_abs', 'bar'],
    ['lbf_per_in_of_port_circumference', 'lbf/in'],
    ['dm3_per_s_bar', 'dm3/(s.bar)'],
    ['m3_per_s_Pa', 'm3/(s.Pa)'],
    ['lb_per_lbmol', 'lb/lbmol'],
    ['m2_per_s', 'm2/s'],
    ['kg_per_m3', 'kg/m3'],
    ['lbf_per_in', 'lbf/in'],
    ['ml_per_min', 'ml/min'],
    ['mol_per_s', 'mol/s'],
    ['N_per_mm', 'N/mm'],
    ['g_per_mol', 'g/mol'],
    ['m3_per_h', 'm3/h'],
    ['kg_per_s', 'kg/s'],
    ['l_per_h', 'l/h'],
    ['ft_lbf', 'lbf.ft'],
    ['in_lbf', 'lbf.in'],
    ['psig', 'psi'],
    ['psia', 'psi'],
    ['ksi', 'ksi'],
    ['psi', 'psi'],
    ['kPa', 'kPa'],
    ['bar', 'bar'],
    ['dm3', 'l'],
    ['in2', 'in2'],
    ['cm2', 'cm2'],
    ['mm2', 'mm2'],
    ['ft3', 'ft3'],
    ['lbf', 'lbf'],
    ['gpm', 'gpm'],
    ['Nm', 'N.m'],
    ['kN', 'kN'],
    ['Pa', 'Pa'],
    ['mA', 'mA'],
    ['mm', 'mm'],
    ['Kv', 'Kv'],
    ['Cv', 'Cv'],
    ['m3', 'm3'],
    ['in', 'in'],
    ['kg', 'kg'],
    ['lb', 'lb'],
    ['l', 'l'],
    ['m', 'm'],
    ['N', 'N'],
    ['J', 'J'],
    ['s', 's'],
    ['K', 'K'],
    ['C', 'degC'],
    ['F', 'degF'],
  ] as const
).toSorted(([a], [b]) => b.length - a.length);

function unitOf(name: string): UnitId {
  const hit = ENDINGS.find(([ending]) => name === ending || name.endsWith(`_${ending}`));
  if (hit === undefined) throw new Error(`no unit in the name ${name}`);
  return hit[1];
}

/** The inputs of one case; every one of them is either read or named as not needed. */
export class Given {
  readonly expected: CaseRecord;
  readonly #inputs: CaseRecord;
  readonly #read = new Set<string>();

  constructor(one: Case) {
    this.#inputs = one.inputs;
    this.expected = one.expected;
  }

  has(name: string): boolean {
    return Object.hasOwn(this.#inputs, name);
  }

  value(name: string): Value {
    if (!this.has(name)) throw new Error(`the case has no ${name}`);
    this.#read.add(name);
    return this.#inputs[name] ?? null;
  }

  number(name: string): number {
    const value = this.value(name);
    if (typeof value !== 'number') throw new Error(`${name} is no number`);
    return value;
  }

  text(name: string): string {
    const value = this.value(name);
    if (typeof value !== 'string') throw new Error(`${name} is no text`);
    return value;
  }

  list(name: string): readonly number[] {
    const value = this.value(name);
    if (!Array.isArray(value)) throw new Error(`${name} is no list`);
    return value as readonly number[];
  }

  /** A number in SI, by the unit at the end of its name or by the one given. */
  si(name: string, unit: UnitId = unitOf(name)): number {
    return toSi({ value: this.number(name), unit });
  }

  /** Says of inputs that they only describe the case. */
  notNeeded(...names: readonly string[]): void {
    for (const name of names) this.value(name);
  }

  unread(): readonly string[] {
    return Object.keys(this.#inputs).filter((name) => !this.#read.has(name));
  }
}

/** SI values put in the units that their names say. */
export function inNamedUnits(values: Readonly<Record<string, number>>): Record<string, number> {
  return Object.fromEntries(
    Object.entries(values).map(([name, valueSi]) => [name, fromSi({ valueSi, unit: unitOf(name) })]),
  );
}

/** Runs every case of a fixture file; a case without a handler, and a handler without a case, fail. */
export function runCases(file: string, handlers: Readonly<Record<string, Handler>>): void {
  const text = readFileSync(new URL(`./fixtures/${file}.json`, import.meta.url), 'utf8');
  const { topic, cases } = JSON.parse(text) as { topic: string; cases: readonly Case[] };
  describe(topic, () => {
    it('has a way to work out each case, and no other', () => {
      expect(Object.keys(handlers).toSorted()).toEqual(cases.map(({ id }) => id).toSorted());
    });
    it.each(cases)('$id ($kind): $source', (one) => {
      const given = new Given(one);
      const got = handlers[one.id]?.(given) ?? {};
      expect(given.unread(), 'every input is used').toEqual([]);
      expect(Object.keys(got).toSorted()).toEqual(Object.keys(one.expected).toSorted());
      for (const [name, expected] of Object.entries(one.expected)) {
        expectWithin({ name, got: got[name] ?? null, expected, tolerance: one.tolerance });
      }
    });
  });
}

/** The same handler for a run of cases. */
export function each(ids: readonly string[], handler: Handler): Record<string, Handler> {
  return Object.fromEntries(ids.map((id) => [id, handler]));
}

interface Comparison {
  readonly name: string;
  readonly got: Value;
  readonly expected: Value;
  readonly tolerance: Tolerance;
}

function expectWithin({ name, got, expected, tolerance }: Comparison): void {
  if (typeof expected === 'number') {
    expect(typeof got, name).toBe('number');
    // Decimal figures and binary numbers differ in the last bit, also where a case wants equality.
    const allowed = (tolerance.abs ?? (tolerance.rel ?? 0) * Math.abs(expected)) + 1e-12 * Math.abs(expected);
    const message = `${name}: ${got} against ${expected}`;
    expect(Math.abs(Number(got) - expected), message).toBeLessThanOrEqual(allowed);
  } else if (typeof expected === 'object' && expected !== null) {
    expect(Object.keys(got as CaseRecord), name).toEqual(Object.keys(expected));
    for (const [key, value] of Object.entries(expected)) {
      const inner = (got as CaseRecord)[key] ?? null;
      expectWithin({ name: `${name}.${key}`, got: inner, expected: value as Value, tolerance });
    }
  } else {
    expect(got, name).toBe(expected);
  }
}
