import { expect, test } from 'vitest';
import { energyTagPiece } from '../../../views/pictures/energy-tag.ts';

const A = { letter: 'A', name: 'Supply air' } as const;

test('a reading stands beside a short word', () => {
  const drawn = energyTagPiece({ ...A, state: 'capped', value: '0 psi', proof: 'shown 08:26' });
  expect(drawn).toContain('>0 psi<');
  expect(drawn).toContain('>shown 08:26<');
});

test('a reading stands in the line below a long word, never across it', () => {
  const drawn = energyTagPiece({ ...A, state: 'prove-again', value: '0 psi', proof: 'lapsed: age' });
  expect(drawn).not.toContain('>0 psi<');
  expect(drawn).toContain('>0 psi, lapsed: age<');
});
