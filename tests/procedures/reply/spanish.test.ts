import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromSpanish } from '../../../procedures/reply/spanish/from-spanish.ts';
import type { Field } from '../../../procedures/vocabulary.ts';

const signal: Field = { name: 'signalPa', label: 'Signal', type: 'quantity', dimension: 'pressure' };
const operator: Field = { name: 'operator', label: 'Name the operator by role', type: 'text' };
const labels = [{ shown: 'El operador entrega la válvula', label: 'The operator gives the valve' }];
const onCard = (text: string) => fromSpanish(text, { fields: [signal], labels });
const onNames = (text: string) => fromSpanish(text, { fields: [operator], labels });

describe('A reply in Spanish', () => {
  test.each([
    ['señal 9 carrera 50', 'signal 9 travel 50'],
    ['SENAL 9,5 psi Carrera 50 %', 'signal 9,5 psi travel 50 %'],
    ['9 y media psi', '9 and a half psi'],
    ['unos 9 psi', 'about 9 psi'],
    ['no se mueve', 'does not move'],
    ['El operador entrega la valvula: sí', 'The operator gives the valve: yes'],
  ])('%s is read as: %s', (typed, read) => expect(onCard(typed)).toBe(read));

  test.each([
    ['¿Por qué?', 'why?'],
    ['¿qué es la banda muerta?', 'what is la dead band?'],
    ['Hecho.', 'done'],
    ['no sé', 'not sure'],
  ])('%s, a line of its own, is read as: %s', (typed, read) => expect(onCard(typed)).toBe(read));

  test('keeps the words of a person where the card asks for them', () => {
    expect(onNames('jefe de turno de la unidad 3, sí')).toBe('jefe de turno de la unidad 3, yes');
    expect(onNames('José con Íñigo')).toBe('José con Íñigo');
  });

  test('keeps tags, units and English as they are, and ends with any text', () => {
    for (const own of ['FV-214', 'HV-214A', '9 psi 50 %', '0.6 bar', '12,1 mm', 'stop', 'what is bench set?'])
      expect(onCard(own)).toBe(own);
    fc.assert(
      fc.property(fc.string({ maxLength: 200 }), (text) => {
        expect(typeof onCard(text)).toBe('string');
      }),
      { numRuns: 50 },
    );
  });
});
