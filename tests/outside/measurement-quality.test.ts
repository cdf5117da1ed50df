import { decisionRisk, type Prior } from '../../procedures/calculations/decision-risk.ts';
import {
  type AsmeGrade,
  asmeGaugeError,
  type EnClass,
  enGaugeError,
} from '../../procedures/calculations/gauge-grades.ts';
import { guardBandFactor } from '../../procedures/calculations/guard-band.ts';
import { testUncertaintyRatio } from '../../procedures/calculations/measurement.ts';
import {
  type Distribution,
  standardUncertainty,
  uncertaintyBudget,
} from '../../procedures/calculations/uncertainty.ts';
import { conformanceProbability, guardedVerdict } from '../../procedures/calculations/verdict.ts';
import { each, type Given, runCases } from './cases.ts';

function asme(given: Given) {
  given.notNeeded('standard');
  const { percentOfSpan, error } = asmeGaugeError({
    grade: given.text('grade') as AsmeGrade,
    scaleHigh: given.number('span_psi'),
    reading: given.number('reading_psi'),
  });
  return { permitted_error_percent_of_span: percentOfSpan, permitted_error_psi: error };
}

function en(given: Given) {
  given.notNeeded('standard');
  const { percentOfSpan, error } = enGaugeError({
    enClass: String(given.number('class')) as EnClass,
    scaleHigh: given.number('span_bar'),
    reading: given.number('span_bar') / 2,
  });
  return { permitted_error_percent_of_span: percentOfSpan, permitted_error_bar: error };
}

function ratio(given: Given) {
  const found = testUncertaintyRatio({
    toleranceHalfWidth: given.number('tolerance_half_width_psi'),
    expandedUncertainty: given.number('expanded_uncertainty_U_k2_psi'),
  });
  return { TUR: found.ratio, meets_4_to_1: found.meetsFourToOne };
}

function guardBand(given: Given) {
  const method = given.text('method').startsWith('one-U') ? 'one U' : 'root sum of squares';
  return { acceptance_limit_over_tolerance: guardBandFactor({ method, ratio: given.number('TUR') }) };
}

/** Ball bearings: mean 1 um, standard deviation 0.5 um. */
function bearings(given: Given): Prior {
  if (!given.text('prior').startsWith('gamma, shape 4, scale 0.25 um')) throw new Error('another prior');
  return { kind: 'gamma', shape: 4, scale: 0.25 };
}

const DISTRIBUTIONS: Readonly<Record<string, Distribution>> = {
  rectangular: 'rectangular',
  triangular: 'triangular',
  'U-shaped': 'U-shaped',
  normal_k2: 'normal, k = 2',
  normal_k1: 'normal, k = 1',
};

function budget(given: Given) {
  const parts = given.value('components_half_width_or_U_or_u_psi') as readonly Readonly<
    Record<string, unknown>
  >[];
  const { combined, expanded } = uncertaintyBudget({
    influences: parts.map((part, at) => {
      const distribution = DISTRIBUTIONS[String(part.distribution)];
      if (distribution === undefined) throw new Error(`no distribution ${part.distribution}`);
      return { name: `part ${at}`, size: Number(part.value_psi), distribution };
    }),
    coverageFactor: given.number('coverage_factor_k'),
  });
  return { combined_u_psi: combined, expanded_U_psi: expanded };
}

runCases('measurement-quality', {
  ...each(['meas-r01', 'meas-r02', 'meas-r03', 'meas-r04', 'meas-r19'], asme),
  ...each(['meas-r05', 'meas-r06', 'meas-r20'], en),
  ...each(['meas-r07', 'meas-r08'], ratio),
  ...each(['meas-r09', 'meas-r10'], guardBand),
  // Before inspection the measurement has no part in the answer.
  'meas-r11': (given) => ({
    prior_nonconforming_probability: decisionRisk({
      prior: bearings(given),
      standardUncertainty: 0.25,
      upperLimit: given.number('tolerance_upper_um'),
    }).nonconforming,
  }),
  'meas-r12': (given) => ({
    global_consumer_risk: decisionRisk({
      prior: bearings(given),
      standardUncertainty: given.number('measurement_u_um'),
      upperLimit: given.number('tolerance_upper_um'),
      acceptUpper: given.number('acceptance_upper_um'),
    }).wrongAccept,
  }),
  'meas-r13': (given) => {
    const half = given.number('acceptance_half_width_psi');
    const risk = decisionRisk({
      prior: {
        kind: 'normal',
        mean: given.number('process_mean_psi'),
        standardDeviation: given.number('process_sd_psi'),
      },
      standardUncertainty: given.number('measurement_sd_psi'),
      lowerLimit: given.number('lower_limit_psi'),
      upperLimit: given.number('upper_limit_psi'),
      acceptLower: -half,
      acceptUpper: half,
    });
    return {
      false_accept_probability_joint: risk.wrongAccept,
      false_reject_probability_joint: risk.wrongReject,
    };
  },
  'meas-r14': (given) => ({
    conformance_probability: conformanceProbability({
      estimate: given.number('best_estimate_V'),
      standardUncertainty: given.number('u_V'),
      upperLimit: given.number('upper_limit_V'),
    }),
  }),
  'meas-r15': (given) => ({
    conformance_probability: conformanceProbability({
      estimate: given.number('best_estimate_kPa'),
      standardUncertainty: given.number('u_kPa'),
      lowerLimit: given.number('lower_limit_kPa'),
    }),
  }),
  'meas-r16': (given) => {
    const value = given.number('measured_psi');
    const limit = given.number('upper_limit_psi');
    const standard = given.number('standard_uncertainty_u_psi');
    const verdictWith = (uncertainty: number) => guardedVerdict({ value, limit, uncertainty }).verdict;
    return {
      conformance_probability: conformanceProbability({
        estimate: value,
        standardUncertainty: standard,
        upperLimit: limit,
      }),
      accept_simple: verdictWith(0) === 'inside',
      accept_guarded_U_k2: verdictWith(2 * standard) === 'inside',
    };
  },
  ...each(['meas-r17', 'meas-r18'], budget),
  'meas-r21': (given) => {
    const size = given.number('half_width_psi');
    return {
      rectangular_u_psi: standardUncertainty({ size, distribution: 'rectangular' }),
      triangular_u_psi: standardUncertainty({ size, distribution: 'triangular' }),
      u_shaped_u_psi: standardUncertainty({ size, distribution: 'U-shaped' }),
    };
  },
});
