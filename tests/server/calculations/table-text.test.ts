import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { RowsInput } from '../../../procedures/calculations/calculation-types.ts';
import { calculationOf } from '../../../procedures/calculations/registry.ts';
import { tableText } from '../../../server/calculations/table-text.ts';

function tableOf(id: string, name: string): RowsInput {
  const spec = calculationOf(id).inputs[name];
  if (spec?.kind !== 'rows') throw new Error(`${id} has no table ${name}`);
  return spec;
}
const samples = tableOf('step-response', 'samples');
const stroke = tableOf('stroke-table', 'rows');
const rows = (text: string, spec = samples) => tableText(text, { spec, units: 'us' });

const TWO = [
  { timeS: 0, travelPercent: 50.5 },
  { timeS: 1.5, travelPercent: 60 },
];

describe('a pasted table', () => {
  test.each([
    ['commas', '0,50.5\n1.5,60'],
    ['semicolons and decimal commas', '0;50,5\r\n1,5;60'],
    ['tabs', '0\t50.5\n1.5\t60\n'],
    ['blanks', '0   50.5\n1.5 60'],
    ['blanks and decimal commas', '0,0 50,5\n1,5 60,0'],
    ['blank lines between', '\n0;50,5\n\n1,5;60\n\n'],
    ['units in the cells', '0 s; 50.5 %\n1500 ms; 60 %'],
    ['a head', 'time; travel\n0;50,5\n1,5;60'],
    ['a head with units', 'Time [ms],Travel (%)\n0,50.5\n1500,60'],
    [
      'a head in another order, with columns that are not asked for',
      'number,travel,valve,time\n1,50.5,FV,0\n2,60,FV,1.5',
    ],
    ['quoted cells', '"time","travel"\n"0","50.5"\n"1.5","60"'],
  ])('is read with %s', (_, text) => {
    expect(rows(text)).toEqual({ kind: 'read', rows: TWO });
  });

  test('takes words and leaves blank what may be blank', () => {
    const got = rows('signal [kPa];travel [mm];direction\n20;0;up\n60;9,5;down', stroke);
    expect(got).toEqual({
      kind: 'read',
      rows: [
        { signalPa: 20000, travelM: 0, direction: 'up' },
        { signalPa: 60000, travelM: 0.0095, direction: 'down' },
      ],
    });
    expect(rows('20 kPa; 0 mm; up; 2', stroke)).toMatchObject({ rows: [{ cycle: 2 }] });
    expect(rows('20 kPa; 0 mm; up;', stroke)).toMatchObject({ rows: [{ cycle: null }] });
  });

  test.each([
    ['0;50\n1;fast', 'Line 2: Travel: “fast” is not a number'],
    ['time;travel\n0;50\n1;', 'Line 3: Travel: nothing is written'],
    ['time;travel', 'Below the head stands no line'],
    ['time;speed\n0;50', 'no column Travel'],
    ['0;50;7\n1;60;8', 'Line 1: it has 3 cells; there are 2 columns'],
    ['0;50 psi', 'Line 1: Travel: “psi” measures pressure'],
  ])('names the line and the cell that is wrong: %j', (text, why) => {
    expect(rows(text)).toEqual({ kind: 'wrong', what: expect.stringContaining(why) });
  });

  test('longer than any record is refused, and none is blank', () => {
    expect(rows('0;50\n'.repeat(6000))).toMatchObject({
      kind: 'wrong',
      what: expect.stringContaining('at most 5000'),
    });
    expect(rows(' \n ')).toEqual({ kind: 'blank' });
  });

  test('whatever it is, is read or refused in words', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'0123456789,.;\t "\n-epsi%a') }), (text) => {
        const got = rows(text);
        expect(['read', 'blank', 'wrong']).toContain(got.kind);
        if (got.kind === 'read')
          for (const row of got.rows) expect(Object.values(row).every(Number.isFinite)).toBe(true);
      }),
      { numRuns: 500 },
    );
  });

  test('that is written out is read back, with any of the signs between', () => {
    const number = fc.double({ min: 0, max: 1000, noNaN: true }).map((value) => Number(value.toFixed(3)));
    const sign = fc.constantFrom(';', '\t', ' ');
    const comma = fc.boolean();
    fc.assert(
      fc.property(
        fc.array(fc.tuple(number, number), { minLength: 1 }),
        sign,
        comma,
        (pairs, between, decimal) => {
          const say = (value: number) => String(value).replace('.', decimal ? ',' : '.');
          // Three digits behind a comma could be thousands, and are refused as such elsewhere.
          const plain = pairs.map((pair) => pair.map((value) => Number(value.toFixed(2))));
          const text = plain.map((pair) => pair.map(say).join(between)).join('\n');
          expect(rows(text)).toEqual({
            kind: 'read',
            rows: plain.map(([timeS, travelPercent]) => ({ timeS, travelPercent })),
          });
        },
      ),
    );
  });
});
