import { expect, it } from 'vitest';
import { endingOf } from '../../../procedures/calculations/name-endings.ts';

it.each([
  ['springRateNPerM', 'N/m', 'forcePerLength'],
  ['leakMolPerS', 'mol/s', 'gasFlow'],
  ['lostMol', 'mol', 'ratio'],
  ['flowM3PerS', 'm³/s', 'flowVolume'],
  ['benchSetLowPa', 'Pa', 'pressure'],
  ['inletPaAbs', 'Pa absolute', 'pressure'],
  ['torqueNmMax', 'N·m', 'torque'],
  ['startK', 'K', 'temperature'],
  ['ratedKv', '', 'flowCoefficient'],
])('the name %s ends in %s', (name, unit, dimension) => {
  expect(endingOf(name)).toMatchObject({ unit, dimension });
});

it.each(['turns', 'PA', 'Pa', 'scaleHigh', 'dropRatio'])('the name %s carries no unit', (name) => {
  expect(endingOf(name)).toBeUndefined();
});
