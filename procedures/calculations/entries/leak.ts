import { calculation } from '../calculation.ts';
import type { Calculation } from '../calculation-types.ts';
import { closedVolume, dropByLeakPa, pressureDecay, waitForLeak } from '../pressure-decay.ts';
import { chokedDischarge } from '../sonic-conductance.ts';
import { numbers, optionalNumbers, results, told, usualNumbers } from '../specs.ts';

export const LEAK_CALCULATIONS: readonly Calculation[] = [
  calculation({
    id: 'pressure-decay',
    title: 'Block in and watch: leak from a fall of pressure',
    topic: 'leak and decay',
    inputs: {
      ...numbers('volumeM3', 'startPa', 'endPa'),
      ...usualNumbers({ startAtmospherePaAbs: 101325, endAtmospherePaAbs: 101325 }),
      ...numbers('startK', 'endK', 'elapsedS'),
      ...usualNumbers({
        gaugeUncertaintyPa: 0,
        temperatureUncertaintyK: 0,
        barometerUncertaintyPa: 0,
        volumeUncertaintyM3: 0,
      }),
    },
    outputs: {
      ...results(
        'startPaAbs',
        'endPaAbs',
        'gaugeFallPa',
        'fallByTemperaturePa',
        'fallByBarometerPa',
        'fallByLeakPa',
      ),
      ...results('lostMol', 'leakMolPerS', 'leakUncertaintyMolPerS'),
      ...told('word', 'leakSeen'),
    },
    answers: ['leakMolPerS', 'leakUncertaintyMolPerS', 'leakSeen'],
    equation: 'n = (V/R) · (p1/T1 − p2/T2)/Δt, absolute pressures and temperatures',
    validity:
      'Hoses count as volume. Wait until the heat of filling is gone; read the barometer at both ends.',
    sources: ['S-23'],
    example: { volumeM3: 0.002, startPa: 140000, endPa: 130000, startK: 293.15, endK: 293.15, elapsedS: 300 },
    run: pressureDecay,
  }),
  calculation({
    id: 'closed-volume',
    title: 'What temperature alone does to a closed volume',
    topic: 'leak and decay',
    inputs: {
      ...numbers('pressurePa'),
      ...usualNumbers({ atmospherePaAbs: 101325 }),
      ...numbers('startK', 'endK'),
    },
    outputs: results('endPa', 'changePa'),
    answers: ['endPa', 'changePa'],
    equation: 'p2 = p1 · T2/T1, absolute',
    validity: 'No leak. 1 K at 500 kPa absolute is 1.7 kPa.',
    sources: ['S-23'],
    example: { pressurePa: 400000, startK: 293.15, endK: 292.15 },
    run: closedVolume,
  }),
  calculation({
    id: 'drop-by-leak',
    title: 'Fall of pressure that a leak makes',
    topic: 'leak and decay',
    inputs: numbers('volumeM3', 'leakMolPerS', 'temperatureK', 'elapsedS'),
    outputs: results('dropPa'),
    answers: ['dropPa'],
    equation: 'Δp = n · R · T · Δt/V',
    validity: 'Constant leak and temperature; a choked hole leaks less as the pressure falls.',
    sources: ['S-23'],
    example: { volumeM3: 0.002, leakMolPerS: 3.7e-5, temperatureK: 293.15, elapsedS: 300 },
    run: (values) => ({ dropPa: dropByLeakPa(values) }),
  }),
  calculation({
    id: 'wait-for-leak',
    title: 'How long to wait to see a leak on this gauge',
    topic: 'leak and decay',
    inputs: numbers('volumeM3', 'leakMolPerS', 'temperatureK', 'smallestPa'),
    outputs: results('seenDropPa', 'waitS'),
    answers: ['waitS'],
    equation: 'wait = 3 · step · V/(n · R · T)',
    validity:
      'Three times the step or drift of the gauge counts as seen (common practice). No wait mends a drift of temperature.',
    sources: ['S-23'],
    example: { volumeM3: 0.002, leakMolPerS: 3.7e-5, temperatureK: 293.15, smallestPa: 500 },
    run: waitForLeak,
  }),
  calculation({
    id: 'choked-discharge',
    title: 'A volume that empties through a small hole',
    topic: 'leak and decay',
    inputs: {
      ...numbers('volumeM3', 'conductanceM3PerSPa'),
      ...optionalNumbers('criticalPressureRatio'),
      ...numbers('startPa'),
      ...usualNumbers({ atmospherePaAbs: 101325 }),
      ...numbers('temperatureK', 'elapsedS'),
    },
    outputs: results('timeConstantS', 'endPaAbs', 'endPa', 'chokedForS'),
    answers: ['endPa', 'chokedForS'],
    equation: 'p = p0 · e^(−t/τ), τ = V/(C · p(ref)) · √(293.15 K/T)',
    validity: 'Isothermal, while the outlet is choked; afterwards it empties more slowly.',
    sources: ['S-24'],
    example: {
      volumeM3: 0.002,
      conductanceM3PerSPa: 2e-11,
      startPa: 400000,
      temperatureK: 293.15,
      elapsedS: 120,
    },
    run: chokedDischarge,
  }),
];
