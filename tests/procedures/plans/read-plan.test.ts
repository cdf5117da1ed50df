import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { PLAN_ROLES, type Plan } from '../../../procedures/plans/plan.ts';
import { PLAN_TABLE, readPlansCsv, writePlansCsv } from '../../../procedures/plans/plan-table.ts';
import { planText, readPlan } from '../../../procedures/plans/read-plan.ts';
import { PROCEDURES } from '../../../procedures/served.ts';
import { readJson } from '../../../procedures/tables/read-table.ts';

const TEXTS = {
  number: 'ord-7',
  tag: 'fv-214',
  procedure: 'Stroke-check',
  place: 'line',
  dueOn: '2026-03-04',
  role: 'technician',
  note: '',
};

const faultsOf = (texts: Readonly<Record<string, string>>) => {
  const read = readPlan({ ...TEXTS, ...texts });
  return read.ok ? {} : read.faults;
};

describe('a plan', () => {
  test('is read from texts as people write them, the procedure by its title too', () => {
    const title = PROCEDURES.find(({ definition }) => definition.id === 'stroke-check')?.definition.title;
    for (const procedure of ['stroke-check', title ?? ''])
      expect(readPlan({ ...TEXTS, procedure })).toEqual({
        ok: true,
        plan: { ...TEXTS, number: 'ORD-7', tag: 'FV-214', procedure: 'stroke-check' },
      });
  });

  test.each([
    ['number', '', 'Write the number of the plan'],
    ['tag', '../etc', 'Write the tag of the valve'],
    ['procedure', 'paint it', '“paint it” is no procedure. There are: stroke-check'],
    ['place', 'shed', 'Write one of: bench, line.'],
    ['dueOn', '2026-02-30', '“2026-02-30” is no date'],
    ['dueOn', '', 'The date is missing'],
    ['role', 'safety-officer', 'Write one of: technician, supervisor, engineer.'],
    ['note', 'x'.repeat(201), 'at most 200'],
    ['colour', 'red', 'is no field of a plan'],
  ])('%s “%s” is refused by name', (field, text, said) => {
    const faults = faultsOf({ [field]: text });
    expect(Object.keys(faults)).toEqual([field]);
    expect(faults[field]).toContain(said);
  });
});

const name = fc.stringMatching(/^[A-Z][A-Z0-9._-]{0,10}[A-Z0-9]$/);
const anyPlan: fc.Arbitrary<Plan> = fc.record({
  number: name,
  tag: name,
  procedure: fc.constantFrom(...PROCEDURES.map(({ definition }) => definition.id)),
  place: fc.constantFrom('bench' as const, 'line' as const),
  dueOn: fc
    .date({ min: new Date('2000-01-01'), max: new Date('2099-12-31'), noInvalidDate: true })
    .map((date) => date.toISOString().slice(0, 10)),
  role: fc.constantFrom(...PLAN_ROLES),
  note: fc
    .string({ unit: 'grapheme', maxLength: 30 })
    .map((text) => text.trim().normalize('NFC'))
    .filter((text) => !/[\p{Cc}\p{Cs}\ufeff]/u.test(text)),
});
const anyPlans = fc.uniqueArray(anyPlan, { minLength: 1, maxLength: 6, selector: ({ number }) => number });

describe('plans as a table', () => {
  test('and as JSON come back as the very same, whatever stands in them', () => {
    fc.assert(
      fc.property(anyPlans, (plans) => {
        const csv = readPlansCsv(writePlansCsv(plans));
        expect([csv.faults, csv.rows.map(({ plan }) => plan)]).toEqual([[], plans]);
        const json = readJson(PLAN_TABLE, JSON.parse(JSON.stringify({ plans: plans.map(planText) })));
        expect([json.faults, json.rows.map(({ plan }) => plan)]).toEqual([[], plans]);
      }),
    );
  });

  test('name every wrong cell by row and column, and nothing is half taken', () => {
    const head = 'number;tag;procedure;place;dueOn;role';
    const row = (number: string, dueOn = '2026-03-04') =>
      `${number};FV-1;stroke-check;line;${dueOn};technician`;
    const read = readPlansCsv([head, row('1'), row('2', 'soon'), row('1')].join('\n'));
    expect(read.rows).toEqual([]);
    expect(read.faults.map(({ row: at, column }) => `${at} ${column}`)).toEqual(['3 dueOn', '4 number']);
  });
});
