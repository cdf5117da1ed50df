import { CalcError } from '../calc-error.ts';
import { calculation } from '../calculation.ts';
import type { Calculation } from '../calculation-types.ts';
import { decisionRisk, type Prior } from '../decision-risk.ts';
import {
  ASME_GRADES,
  type AsmeGrade,
  asmeGaugeError,
  chineseGaugeError,
  EN_CLASSES,
  enGaugeError,
} from '../gauge-grades.ts';
import { guardBandFactor } from '../guard-band.ts';
import {
  gaugeUncertainty,
  instrumentErrorMaxPercent,
  testAccuracyRatio,
  testUncertaintyRatio,
  travelErrorUncertainty,
} from '../measurement.ts';
import { choice, numbers, optionalNumbers, results, told, usualNumbers } from '../specs.ts';
import { DIVISORS, type Distribution, uncertaintyBudget } from '../uncertainty.ts';
import { conformanceProbability, guardedVerdict } from '../verdict.ts';

const SCALE = { ...usualNumbers({ scaleLow: 0 }), ...numbers('scaleHigh', 'reading') };
const PERMITTED = { ...results('percentOfSpan', 'error'), ...told('word', 'part', 'kind') };
const ONE_UNIT = 'All figures in one unit, whichever it is.';
const LIMITS = optionalNumbers('lowerLimit', 'upperLimit');
const GRADES = Object.keys(ASME_GRADES) as AsmeGrade[];
const DISTRIBUTIONS = Object.keys(DIVISORS) as Distribution[];

export const MEASURING_CALCULATIONS: readonly Calculation[] = [
  calculation({
    id: 'gauge-error-asme',
    title: 'Error that a gauge may have, ASME B40.100',
    topic: 'measurement',
    inputs: { ...choice('grade', GRADES), ...SCALE },
    outputs: PERMITTED,
    answers: ['error'],
    equation: 'error = percent of the grade · span/100',
    validity: `Percent of span, not of reading. ${ONE_UNIT}`,
    sources: ['S-27'],
    example: { grade: 'A', scaleHigh: 100, reading: 50 },
    run: asmeGaugeError,
  }),
  calculation({
    id: 'gauge-error-en',
    title: 'Error that a gauge may have, EN 837-1',
    topic: 'measurement',
    inputs: { ...choice('enClass', EN_CLASSES), ...SCALE },
    outputs: PERMITTED,
    answers: ['error'],
    equation: 'error = class · span/100',
    validity: `Percent of span, over the whole scale. ${ONE_UNIT}`,
    sources: ['S-28'],
    example: { enClass: '1.6', scaleHigh: 10, reading: 5 },
    run: enGaugeError,
  }),
  calculation({
    id: 'gauge-error-chinese',
    title: 'Error that a gauge may have, Chinese verification rule',
    topic: 'measurement',
    inputs: { ...choice('gaugeClass', ['1', '1.6', '2.5']), ...SCALE },
    outputs: PERMITTED,
    answers: ['error'],
    equation: 'error = percent of the part of the scale · span/100',
    validity: `Wider in the last tenth of the scale. ${ONE_UNIT}`,
    sources: ['S-29'],
    example: { gaugeClass: '1.6', scaleHigh: 1, reading: 0.95 },
    run: chineseGaugeError,
  }),
  calculation({
    id: 'gauge-uncertainty',
    title: 'Uncertainty of a reading on a gauge',
    topic: 'measurement',
    inputs: { ...numbers('span', 'accuracyPercent'), ...usualNumbers({ resolution: 0 }) },
    outputs: results('permittedError', 'standard', 'expanded'),
    answers: ['expanded'],
    equation: 'u² = (accuracy · span/100)²/3 + resolution²/12; U = 2 u',
    validity: `Both influences rectangular; about 95 %. ${ONE_UNIT}`,
    sources: ['S-09'],
    example: { span: 30, accuracyPercent: 0.5, resolution: 0.1 },
    run: gaugeUncertainty,
  }),
  calculation({
    id: 'travel-error-uncertainty',
    title: 'Uncertainty of a travel error',
    topic: 'measurement',
    inputs: numbers('signalUncertaintyPa', 'signalSpanPa', 'travelUncertaintyM', 'ratedTravelM'),
    outputs: results('signalPercent', 'travelPercent', 'percent'),
    answers: ['percent'],
    equation: 'U² = (100 · U(signal)/span)² + (100 · U(travel)/stroke)²',
    validity: 'Gauge and indicator independent of each other.',
    sources: ['S-09'],
    example: {
      signalUncertaintyPa: 400,
      signalSpanPa: 80000,
      travelUncertaintyM: 0.0001,
      ratedTravelM: 0.02,
    },
    run: (values) =>
      travelErrorUncertainty({
        signalUncertainty: values.signalUncertaintyPa,
        signalSpan: values.signalSpanPa,
        travelUncertainty: values.travelUncertaintyM,
        ratedTravel: values.ratedTravelM,
      }),
  }),
  calculation({
    id: 'uncertainty-budget',
    title: 'Uncertainty budget',
    topic: 'measurement',
    inputs: {
      influences: {
        kind: 'rows',
        title: 'Influences',
        columns: {
          name: { kind: 'text', title: 'Influence' },
          ...numbers('size'),
          ...choice('distribution', DISTRIBUTIONS),
          ...usualNumbers({ sensitivity: 1 }),
          ...optionalNumbers('degreesOfFreedom'),
        },
      },
      ...optionalNumbers('coverageFactor'),
    },
    outputs: {
      ...results('combined', 'degreesOfFreedom', 'coverageFactor', 'expanded'),
      parts: {
        kind: 'rows',
        title: 'Parts',
        dimension: null,
        columns: { ...told('word', 'name'), ...results('standard', 'sharePercent') },
      },
    },
    answers: ['expanded'],
    equation: 'u = √Σ(c · u)²; U = k · u',
    validity: `Influences independent of each other. ${ONE_UNIT}`,
    sources: ['S-09'],
    example: {
      influences: [
        { name: 'gauge', size: 0.075, distribution: 'rectangular', sensitivity: 1, degreesOfFreedom: null },
        {
          name: 'certificate',
          size: 0.03,
          distribution: 'normal, k = 2',
          sensitivity: 1,
          degreesOfFreedom: null,
        },
      ],
    },
    run: uncertaintyBudget,
  }),
  calculation({
    id: 'uncertainty-ratio',
    title: 'Test uncertainty ratio',
    topic: 'measurement',
    inputs: numbers('toleranceHalfWidth', 'expandedUncertainty'),
    outputs: { ...results('ratio'), ...told('yes-no', 'meetsFourToOne') },
    answers: ['ratio', 'meetsFourToOne'],
    equation: 'ratio = half width of the tolerance/U',
    validity: `U at k = 2. Not the ratio of two accuracies. ${ONE_UNIT}`,
    sources: ['S-11'],
    example: { toleranceHalfWidth: 0.5, expandedUncertainty: 0.12 },
    run: testUncertaintyRatio,
  }),
  calculation({
    id: 'accuracy-ratio',
    title: 'Test accuracy ratio',
    topic: 'measurement',
    inputs: numbers('toleranceHalfWidth', 'permittedError'),
    outputs: { ...results('ratio'), ...told('yes-no', 'atMostAQuarter') },
    answers: ['ratio', 'atMostAQuarter'],
    equation: 'ratio = half width of the tolerance/permitted error',
    validity: `Compares accuracies only. ${ONE_UNIT}`,
    sources: ['S-12'],
    example: { toleranceHalfWidth: 1.5, permittedError: 0.375 },
    run: testAccuracyRatio,
  }),
  calculation({
    id: 'instrument-error',
    title: 'Largest error of the instrument for a limit of the valve',
    topic: 'measurement',
    inputs: numbers('valveLimitPercent'),
    outputs: results('instrumentErrorMaxPercent'),
    answers: ['instrumentErrorMaxPercent'],
    equation: 'a quarter of the limit',
    validity: 'A quarter of the limit.',
    sources: ['S-12'],
    example: { valveLimitPercent: 1.5 },
    run: (values) => ({ instrumentErrorMaxPercent: instrumentErrorMaxPercent(values) }),
  }),
  calculation({
    id: 'guard-band',
    title: 'Guard band: what is left of a tolerance',
    topic: 'measurement',
    inputs: {
      ...choice('method', ['root sum of squares', 'one U', 'RP-10', 'managed 2 %']),
      ...numbers('ratio'),
    },
    outputs: results('factor'),
    answers: ['factor'],
    equation:
      'root sum of squares: √(1 − 1/ratio²); one U: 1 − 1/ratio; RP-10: 1.25 − 1/ratio; managed 2 %: 1 − (1.04 − e^(0.38 ln ratio − 0.54))/ratio; 1 at most',
    validity: 'U at k = 2. The rule that was used is named with the verdict.',
    sources: ['S-11'],
    example: { method: 'root sum of squares', ratio: 2.5 },
    run: (values) => ({ factor: guardBandFactor(values) }),
  }),
  calculation({
    id: 'verdict',
    title: 'Inside, outside, or too close to call',
    topic: 'measurement',
    inputs: numbers('value', 'limit', 'uncertainty'),
    outputs: {
      ...told('word', 'verdict'),
      ...results('acceptanceLimit', 'rejectionLimit', 'wrongAcceptChance'),
    },
    answers: ['verdict', 'wrongAcceptChance'],
    equation: 'inside: |value| + U at most the limit; outside: |value| − U above it; else too close',
    validity: `Limits on both sides of zero; U at about 95 %. ${ONE_UNIT}`,
    sources: ['S-08'],
    example: { value: 0.9, limit: 1, uncertainty: 0.12 },
    run: guardedVerdict,
  }),
  calculation({
    id: 'conformance',
    title: 'Probability that a measured value conforms',
    topic: 'measurement',
    inputs: { ...numbers('estimate', 'standardUncertainty'), ...LIMITS },
    outputs: results('probability'),
    answers: ['probability'],
    equation: 'probability = Φ((upper − value)/u) − Φ((lower − value)/u)',
    validity: `Normal distribution; one limit or two. ${ONE_UNIT}`,
    sources: ['S-08'],
    example: { estimate: 13.6, standardUncertainty: 1.8, lowerLimit: 12.5, upperLimit: 16.3 },
    run: (values) => ({ probability: conformanceProbability(values) }),
  }),
  calculation({
    id: 'decision-risk',
    title: 'Risks of a decision over all items',
    topic: 'measurement',
    inputs: {
      ...choice('prior', ['normal', 'gamma']),
      ...optionalNumbers('mean', 'standardDeviation', 'shape', 'scale'),
      ...numbers('standardUncertainty'),
      ...LIMITS,
      ...optionalNumbers('acceptLower', 'acceptUpper'),
    },
    outputs: results('nonconforming', 'wrongAccept', 'wrongReject'),
    answers: ['wrongAccept', 'wrongReject'],
    equation: 'the prior times the chance of each reading, summed over what is accepted and over what is not',
    validity: `Normal: mean and standard deviation; gamma: shape and scale. Joint probabilities, of all items. ${ONE_UNIT}`,
    sources: ['S-08'],
    example: {
      prior: 'normal',
      mean: 0,
      standardDeviation: 4,
      standardUncertainty: 1,
      lowerLimit: -8,
      upperLimit: 8,
    },
    run: ({ prior: kind, mean, standardDeviation, shape, scale, ...decision }) => {
      const prior: Prior =
        kind === 'normal'
          ? { kind, ...allNeeded({ mean, standardDeviation }) }
          : { kind, ...allNeeded({ shape, scale }) };
      return decisionRisk({ ...decision, prior });
    },
  }),
];

/** What one choice asks for and another does not may be blank on the form, and is refused by its name here. */
function allNeeded<Name extends string>(
  figures: Readonly<Record<Name, number | null>>,
): Record<Name, number> {
  for (const [name, value] of Object.entries(figures)) {
    if (value === null)
      throw new CalcError({ code: 'CALC-001', name, value: null, range: 'a number', unit: '' });
  }
  // The loop has left no null.
  return figures as Record<Name, number>;
}
