import { calculation } from '../calculation.ts';
import type { Calculation } from '../calculation-types.ts';
import { choice, numbers, results, told, usualNumbers } from '../specs.ts';
import { energyInPlainTerms, springEnergy } from '../spring-energy.ts';
import { ENERGY_FORMS, gasEnergyJ, pressureTestEnergy } from '../stored-energy.ts';

export const ENERGY_CALCULATIONS: readonly Calculation[] = [
  calculation({
    id: 'air-energy',
    title: 'Energy stored in air under pressure',
    topic: 'stored energy',
    inputs: {
      ...choice('form', ENERGY_FORMS),
      ...numbers('volumeM3', 'pressurePaAbs'),
      ...usualNumbers({ atmospherePaAbs: 101325, heatRatio: 1.4 }),
    },
    outputs: results('energyJ'),
    answers: ['energyJ'],
    equation:
      'isentropic: p V/(k − 1) · (1 − (pa/p)^((k − 1)/k)); constant volume: (p − pa) V/(k − 1); isothermal: p V ln(p/pa); isothermal availability: p V (ln(p/pa) − 1 + pa/p)',
    validity:
      'The forms differ by up to two and a half: name the form with the number. Hoses count as volume.',
    sources: ['S-33'],
    example: { form: 'isentropic', volumeM3: 0.005, pressurePaAbs: 500000 },
    run: (values) => ({ energyJ: gasEnergyJ(values) }),
  }),
  calculation({
    id: 'pressure-test-energy',
    title: 'Stored energy of a pressure test',
    topic: 'stored energy',
    inputs: {
      ...numbers('volumeM3', 'testPa'),
      ...usualNumbers({ atmospherePaAbs: 101000 }),
      ...choice('form', ['SI', 'US']),
    },
    outputs: results('energyJ', 'tntKg'),
    answers: ['energyJ'],
    equation: 'E = 2.5 · p · V · (1 − (pa/p)^0.286), p absolute',
    validity:
      'Written for vessels and piping: an indicator of hazard for an actuator, from which no distance is derived.',
    sources: ['S-33'],
    example: { volumeM3: 0.01, testPa: 600000, form: 'SI' },
    run: pressureTestEnergy,
  }),
  calculation({
    id: 'spring-energy',
    title: 'Energy stored in the spring',
    topic: 'stored energy',
    inputs: numbers('springRateNPerM', 'installedM', 'fullTravelM'),
    outputs: results('installedJ', 'fullTravelJ', 'addedByStrokeJ', 'installedForceN', 'fullTravelForceN'),
    answers: ['installedJ', 'addedByStrokeJ'],
    equation: 'E = k · x²/2 from the free length',
    validity: 'Linear spring. The preload stays when the air is vented: the case holds it.',
    sources: ['S-06'],
    example: { springRateNPerM: 140000, installedM: 0.005, fullTravelM: 0.0431 },
    run: springEnergy,
  }),
  calculation({
    id: 'energy-in-plain-terms',
    title: 'Stored energy in plain terms, and its cautions',
    topic: 'stored energy',
    inputs: { ...numbers('airJ', 'springInstalledJ', 'springStrokeJ'), ...usualNumbers({ weightKg: 10 }) },
    outputs: { ...results('totalJ', 'weightKg', 'fallM'), ...told('list', 'cautions') },
    answers: ['totalJ', 'fallM', 'cautions'],
    equation: 'height = E/(m · g)',
    validity: 'A picture of the size only; how fast it comes out is another matter.',
    sources: ['S-01'],
    example: { airJ: 2304, springInstalledJ: 1.75, springStrokeJ: 128.28 },
    run: energyInPlainTerms,
  }),
];
