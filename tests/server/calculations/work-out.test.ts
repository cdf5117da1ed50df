import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CALCULATIONS, calculationOf } from '../../../procedures/calculations/registry.ts';
import type { RefusalText } from '../../../safety/refusal.ts';
import { Refusal } from '../../../safety/refusal.ts';
import type { Texts } from '../../../server/calculations/read-inputs.ts';
import { workOut } from '../../../server/calculations/work-out.ts';
import { exampleTexts } from './examples.ts';

const worked = (id: string, texts: Texts, units: 'us' | 'si' = 'us') =>
  workOut(calculationOf(id), { texts, units });

function refused(id: string, texts: Texts, units: 'us' | 'si' = 'us'): RefusalText {
  try {
    worked(id, texts, units);
  } catch (error) {
    if (error instanceof Refusal) return error.text;
    throw error;
  }
  throw new Error('It was not refused.');
}

const bench = { effectiveAreaM2: '100', benchSetLowPa: '3', benchSetHighPa: '15', travelM: '0.75' };

describe('a calculation from what was typed', () => {
  test.each(CALCULATIONS.map(({ id }) => id))('gives the same whatever units it was typed in: %s', (id) => {
    const calculation = calculationOf(id);
    const wanted = calculation.run(calculation.example);
    for (const units of ['us', 'si'] as const) {
      for (const typed of ['us', 'si'] as const) {
        const { result } = worked(id, exampleTexts(calculation, typed), units);
        expect(rounded(result), `${typed} read as ${units}`).toEqual(rounded(wanted));
      }
    }
  });

  test('names every field that is blank, and every one that cannot be read', () => {
    expect(refused('bench-set', { travelM: '0.75' })).toMatchObject({
      code: 'CAL-001',
      what: '3 fields are blank.',
      fields: { effectiveAreaM2: 'Write this.', benchSetLowPa: 'Write this.', benchSetHighPa: 'Write this.' },
    });
    expect(refused('bench-set', { ...bench, travelM: '3/4' })).toMatchObject({
      code: 'CAL-002',
      fields: { travelM: '“3/4” is a fraction. Write 0.75.' },
    });
  });

  test('names the input that cannot be, in the words and units of the form', () => {
    expect(refused('bench-set', { ...bench, effectiveAreaM2: '0' })).toMatchObject({
      code: 'CAL-003',
      fields: { effectiveAreaM2: 'Effective area of the diaphragm: 0 cannot be. Allowed: above 0.00 in².' },
    });
    expect(refused('bench-set', { ...bench, benchSetHighPa: '2 psi' }).fields).toEqual({
      benchSetHighPa:
        'Upper end of the bench set: 2 psi cannot be. Allowed: above lower end of the bench set (3.000 psi).',
    });
    const loop = {
      signal: '12 mA',
      rangeLow: '20 mA',
      rangeHigh: '4 mA',
      airAction: 'air-to-open',
      ratedTravelM: '1',
    };
    expect(refused('current-travel', loop).fields).toEqual({
      rangeHigh: 'Upper end of the range: 4 mA cannot be. Allowed: above lower end of the range (20.00 mA).',
    });
    expect(refused('flange-bolt-torque', { boltDiameterM: '33 mm' }).what).toContain(
      '33 mm cannot be. Allowed: one of 0.5 in, ',
    );
    const graphite = { table: 'reference-manual', stemDiameterM: '', packing: 'graphite' };
    expect(refused('packing-friction', { ...graphite, stemDiameterM: '0.5' }).fields).toEqual({
      pressureClass: 'Pressure class: it is needed here. Allowed: one of 150, 300, 600, 900, 1500, 2500.',
    });
    expect(refused('stem-thread', { thread: 'M12' }).fields).toEqual({
      thread: 'Thread, as in 1/2-20: M12 cannot be. Allowed: as in 1/2-20.',
    });
  });

  test('says what is wrong inside a table at the table', () => {
    const step = { samples: '0;50\n2;60\n1;60\n4;60', stepTimeS: '0.5' };
    expect(refused('step-response', step)).toMatchObject({ code: 'CAL-003' });
    expect(Object.keys(refused('step-response', step).fields ?? {})).toEqual(['samples']);
  });

  test('says above the form what belongs to no field of it', () => {
    const choked = {
      ...exampleTexts(calculationOf('liquid-coefficient')),
      valveM: '25 mm',
      pipeInM: '300 mm',
      pipeOutM: '300 mm',
    };
    const { what, fields } = refused('liquid-coefficient', choked);
    expect(what).toContain('Allowed: ');
    expect(Object.keys(fields ?? {}).length).toBeLessThanOrEqual(1);
  });

  test('says of a figure that one choice needs that it is needed, where it was left blank', () => {
    const calculation = calculationOf('decision-risk');
    const texts = { ...exampleTexts(calculation), standardDeviation: '' };
    expect(refused('decision-risk', texts).what).toContain('it is needed here');
  });

  test('is a result or a refusal in words, whatever was typed', () => {
    const text = fc.oneof(
      fc.constantFrom(
        '',
        '0',
        '-1',
        '9',
        '12,5',
        '1e3',
        '9 psi',
        '50 %',
        '100 in2',
        '-40 °C',
        'yes',
        'under',
        '1;2;up\n3;4;down',
      ),
      fc.string({ maxLength: 12 }),
    );
    const any = fc.constantFrom(...CALCULATIONS).chain((calculation) =>
      fc.record({
        calculation: fc.constant(calculation),
        changed: fc.dictionary(fc.constantFrom(...Object.keys(calculation.inputs)), text, { maxKeys: 3 }),
        units: fc.constantFrom('us' as const, 'si' as const),
      }),
    );
    fc.assert(
      fc.property(any, ({ calculation, changed, units }) => {
        try {
          const { result } = workOut(calculation, {
            texts: { ...exampleTexts(calculation), ...changed },
            units,
          });
          expect(JSON.stringify(result)).not.toContain('NaN');
        } catch (error) {
          if (!(error instanceof Refusal)) throw error;
          // What was typed is said again, whatever it was.
          const typed = Object.values(changed).map((one) => one.trim());
          const said = typed.reduce(
            (left, one) => (one === '' ? left : left.replaceAll(one, '')),
            error.text.what,
          );
          expect(said).not.toMatch(/undefined|NaN|[a-z][A-Z]\w*(Pa|M2|N)\b/);
        }
      }),
      { numRuns: 1000 },
    );
  });
});

/** Eight digits, and nothing for a rest that is only rounding beside the other figures of the result. */
function rounded(result: unknown): unknown {
  const rest = 1e-11 * Math.max(...numbersIn(result).map(Math.abs), 1e-9);
  const round = (value: unknown): unknown => {
    if (typeof value === 'number') return Math.abs(value) < rest ? 0 : Number(value.toPrecision(8));
    if (Array.isArray(value)) return value.map(round);
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, round(inner)]));
  };
  return round(result);
}

function numbersIn(value: unknown): readonly number[] {
  if (typeof value === 'number') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}
