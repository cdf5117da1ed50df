import {
  analyseCycle,
  analyseStroke,
  type CycleAnalysis,
  type CyclePoint,
} from '../../procedures/calculations/cycle-analysis.ts';
import { instrumentErrorMaxPercent } from '../../procedures/calculations/measurement.ts';
import {
  deadBandPercent,
  hysteresisAlonePercent,
  ratedTravelDeviation,
} from '../../procedures/calculations/performance-terms.ts';
import {
  firstOrderTimes,
  overshootPercent,
  stepResponse,
} from '../../procedures/calculations/step-response.ts';
import type { StrokeRow } from '../../procedures/calculations/stroke-rows.ts';
import { each, type Given, runCases } from './cases.ts';

type Reading = number | null;

function points(given: Given): CyclePoint[] {
  const inputs = given.list('input_percent');
  given.notNeeded('ideal');
  return (['up', 'down'] as const).flatMap((direction) => {
    const cycles = given.value(`${direction}_cycles_percent`) as readonly (readonly Reading[])[];
    return cycles.flatMap((readings, at) =>
      readings.flatMap((outputPercent, place): CyclePoint[] => {
        const inputPercent = inputs[place];
        if (inputPercent === undefined || outputPercent === null) return [];
        return [{ inputPercent, outputPercent, direction, cycle: at + 1 }];
      }),
    );
  });
}

function terms(analysis: CycleAnalysis) {
  return {
    inaccuracy_max_pct: analysis.errorMaxPercent,
    inaccuracy_min_pct: analysis.errorMinPercent,
    measured_error_max_of_direction_averages_pct: analysis.measuredErrorMaxPercent,
    measured_error_min_of_direction_averages_pct: analysis.measuredErrorMinPercent,
    hysteretic_error_single_cycle_pct: analysis.hysteresisPercent,
    hysteretic_error_of_direction_averages_pct: analysis.hysteresisOfAveragesPercent,
    nonlinearity_independent_pct: analysis.linearity?.independentPercent ?? null,
    nonlinearity_terminal_based_pct: analysis.linearity?.terminalPercent ?? null,
    nonlinearity_zero_based_pct: analysis.linearity?.zeroBasedPercent ?? null,
  };
}

function strokeRows(given: Given): StrokeRow[] {
  const signals = given.list('input_psi');
  return (['up', 'down'] as const).flatMap((direction) =>
    given.list(`${direction}_travel_in`).map((travel, at) => ({
      signalPa: (signals[at] ?? Number.NaN) * 6894.757293168361,
      travelM: travel * 0.0254,
      direction,
      cycle: 1,
    })),
  );
}

runCases('performance-terms', {
  'perf-r01': (given) => {
    const analysis = analyseCycle({ points: points(given) });
    return {
      ...terms(analysis),
      repeatability_error_pct: analysis.repeatabilityPercent,
      hysteresis_from_single_cycle_pct: hysteresisAlonePercent({
        hystereticErrorPercent: analysis.hysteresisPercent ?? Number.NaN,
        deadBandPercent: given.number('dead_band_percent_of_input_span'),
      }),
    };
  },
  ...each(['perf-r02', 'perf-r13'], (given) => terms(analyseCycle({ points: points(given) }))),
  'perf-r03': (given) => {
    const [rangeLowPa = 0, rangeHighPa = 0] = given
      .list('input_range_psi')
      .map((psi) => psi * 6894.757293168361);
    given.notNeeded('ideal');
    const analysis = analyseStroke({
      rows: strokeRows(given),
      rangeLowPa,
      rangeHighPa,
      ratedTravelM: given.si('rated_travel_in'),
      airAction: 'air-to-open',
    });
    return terms(analysis);
  },
  'perf-r04': (given) => {
    const { t63S, t86S } = firstOrderTimes({
      deadTimeS: given.number('dead_time_s'),
      timeConstantS: given.number('time_constant_s'),
    });
    return { T63_s: t63S, T86_s: t86S };
  },
  ...each(['perf-r05', 'perf-r06'], (given) => ({
    overshoot_percent_of_step: overshootPercent({
      initialPercent: given.number('initial_percent'),
      finalPercent: given.number('final_percent'),
      peakPercent: given.number('peak_percent'),
    }),
  })),
  'perf-r07': (given) => {
    given.notNeeded('initial_value', 'final_value');
    const travel = given.list('travel_percent');
    const { t63S, t86S } = stepResponse({
      samples: given.list('time_s').map((timeS, at) => ({ timeS, travelPercent: travel[at] ?? Number.NaN })),
      stepTimeS: given.number('input_step_time_s'),
      noisePercent: 0,
    });
    return { T63_s: t63S, T86_s: t86S };
  },
  'perf-r08': (given) => {
    const span = given.number('span_inH2O');
    const both = (['ascending', 'descending'] as const).flatMap((name) => {
      const runs = given.value(`${name}_inH2O`) as readonly (readonly number[])[];
      return runs.flatMap((readings, cycle) =>
        readings.map((reading, at) => ({
          inputPercent: 25 * (at + 1),
          outputPercent: (100 * reading) / span,
          direction: name === 'ascending' ? ('up' as const) : ('down' as const),
          cycle,
        })),
      );
    });
    const { hysteresisPercent, repeatabilityPercent } = analyseCycle({ points: both });
    return { hysteresis_percent_span: hysteresisPercent, repeatability_percent_span: repeatabilityPercent };
  },
  'perf-r09': (given) => {
    const { percent, reachesRated } = ratedTravelDeviation({
      ratedTravelM: given.si('rated_travel_mm'),
      actualTravelM: given.si('actual_travel_mm'),
    });
    return { rated_travel_deviation_percent: percent, actual_exceeds_rated: reachesRated };
  },
  ...each(['perf-r10', 'perf-r11'], (given) => {
    const unit = given.has('input_span_psi') ? 'psi' : 'percent';
    return {
      dead_band_percent_of_input_span: deadBandPercent({
        lastMovementUp: given.number(`input_at_last_movement_up_${unit}`),
        firstMovementDown: given.number(`input_at_first_movement_down_${unit}`),
        inputSpan: given.number(`input_span_${unit}`),
      }),
    };
  }),
  'perf-r12': (given) => ({
    max_instrument_error_percent: instrumentErrorMaxPercent({
      valveLimitPercent: given.number('valve_basic_error_limit_percent'),
    }),
  }),
});
