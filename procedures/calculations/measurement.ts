import { ABOVE_ZERO, PERCENT, refuseCount, refuseOutside, ZERO_OR_MORE } from './checks.ts';
import { uncertaintyBudget } from './uncertainty.ts';

export interface GaugeInput {
  /** Length of the scale, in the unit that the uncertainty is wanted in. */
  readonly span: number;
  /** Permitted error in percent of span: grade or class, or the certificate's figure. */
  readonly accuracyPercent: number;
  /** Smallest step that is read: a digit, or the part of a division that the eye tells apart. */
  readonly resolution?: number;
}

/**
 * Expanded uncertainty of one reading of a gauge.
 *
 * Shape: span, accuracy and resolution in. u² = (accuracy · span/100)²/3 + resolution²/12; U = 2u
 * Valid: percent of span, not of reading; both influences rectangular.
 * @param span             above 0
 * @param accuracyPercent  of span; from 0 to 100
 * @param resolution       0 or more; 0 where left out
 * @returns permitted error, standard and expanded uncertainty (about 95 %), all in the unit of the span
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-09] rectangular limits of error
 * @example gaugeUncertainty({ span: 30, accuracyPercent: 0.5, resolution: 0.1 })
 *   // { permittedError: 0.15, standard: 0.0912871, expanded: 0.182574 }
 */
export function gaugeUncertainty(input: GaugeInput): {
  readonly permittedError: number;
  readonly standard: number;
  readonly expanded: number;
} {
  const { span, accuracyPercent, resolution = 0 } = input;
  refuseOutside({ span }, ABOVE_ZERO);
  refuseOutside({ accuracyPercent }, PERCENT);
  refuseOutside({ resolution }, ZERO_OR_MORE);
  const permittedError = (accuracyPercent / 100) * span;
  const { combined, expanded } = uncertaintyBudget({
    influences: [
      { name: 'accuracy', size: permittedError, distribution: 'rectangular' },
      { name: 'resolution', size: resolution / 2, distribution: 'rectangular' },
    ],
  });
  return { permittedError, standard: combined, expanded };
}

/**
 * Several expanded uncertainties of one unit put together.
 *
 * Shape: a list in, one number out: the root of the sum of squares.
 * Valid: independent influences, all at about 95 %.
 * @param expanded  each 0 or more, already in the unit of the result
 * @returns expanded uncertainty in the same unit
 * @throws CalcError CALC-001 or CALC-002 by the name of the input; CALC-004 if the list is empty
 * @source [S-09] law of propagation
 * @example combinedUncertainty([3, 4]) // 5
 */
export function combinedUncertainty(expanded: readonly number[]): number {
  if (expanded.length === 0)
    throw refuseCount({ name: 'expanded', value: 0, range: 'at least 1 uncertainty' });
  for (const uncertainty of expanded) refuseOutside({ uncertainty }, ZERO_OR_MORE);
  return Math.hypot(...expanded);
}

/**
 * Expanded uncertainty of a travel error in percent, from that of signal and indicator.
 *
 * Shape: two uncertainties and the two spans that they are measured on in, percents out.
 * Valid: error = travel − signal, both in percent, independent.
 * @param signalUncertainty  0 or more, in the unit of signalSpan
 * @param signalSpan         of the valve's range; above 0
 * @param travelUncertainty  0 or more, in the unit of ratedTravel
 * @param ratedTravel        above 0
 * @returns part of the signal, part of the travel, and both together, in percent
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-09] law of propagation
 * @example travelErrorUncertainty({ signalUncertainty: 0.06, signalSpan: 12, travelUncertainty: 0.1, ratedTravel: 20 })
 *   // { signalPercent: 0.5, travelPercent: 0.5, percent: 0.707107 }
 */
export function travelErrorUncertainty(input: {
  readonly signalUncertainty: number;
  readonly signalSpan: number;
  readonly travelUncertainty: number;
  readonly ratedTravel: number;
}): { readonly signalPercent: number; readonly travelPercent: number; readonly percent: number } {
  const { signalUncertainty, signalSpan, travelUncertainty, ratedTravel } = input;
  refuseOutside({ signalUncertainty, travelUncertainty }, ZERO_OR_MORE);
  refuseOutside({ signalSpan, ratedTravel }, ABOVE_ZERO);
  const signalPercent = (100 * signalUncertainty) / signalSpan;
  const travelPercent = (100 * travelUncertainty) / ratedTravel;
  return { signalPercent, travelPercent, percent: Math.hypot(signalPercent, travelPercent) };
}

/**
 * Test uncertainty ratio, with the usual minimum of four to one.
 *
 * Shape: half width of the tolerance and U of one unit in, a ratio out.
 * Valid: U at k = 2; the ratio of two accuracies is another thing and must not be put here.
 * @param toleranceHalfWidth   above 0
 * @param expandedUncertainty  about 95 %; above 0
 * @returns ratio, and whether it is four or more
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-11] test uncertainty ratio
 * @example testUncertaintyRatio({ toleranceHalfWidth: 1, expandedUncertainty: 0.3 }) // { ratio: 3.33333, meetsFourToOne: false }
 */
export function testUncertaintyRatio(input: {
  readonly toleranceHalfWidth: number;
  readonly expandedUncertainty: number;
}): { readonly ratio: number; readonly meetsFourToOne: boolean } {
  const { toleranceHalfWidth, expandedUncertainty } = input;
  refuseOutside({ toleranceHalfWidth, expandedUncertainty }, ABOVE_ZERO);
  const ratio = toleranceHalfWidth / expandedUncertainty;
  return { ratio, meetsFourToOne: ratio >= 4 * (1 - 1e-12) };
}

/**
 * Test accuracy ratio: tolerance over the gauge's own permitted error. Not the uncertainty ratio.
 *
 * Shape: half width of the tolerance and permitted error of one unit in, a ratio out.
 * @param toleranceHalfWidth  above 0
 * @param permittedError      of the gauge; above 0
 * @returns ratio, and whether the gauge's error is at most a quarter of the tolerance
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-12] instrument error at most a quarter of the valve's limit
 * @example testAccuracyRatio({ toleranceHalfWidth: 1.5, permittedError: 0.375 }) // { ratio: 4, atMostAQuarter: true }
 */
export function testAccuracyRatio(input: {
  readonly toleranceHalfWidth: number;
  readonly permittedError: number;
}): { readonly ratio: number; readonly atMostAQuarter: boolean } {
  const { toleranceHalfWidth, permittedError } = input;
  refuseOutside({ toleranceHalfWidth, permittedError }, ABOVE_ZERO);
  const ratio = toleranceHalfWidth / permittedError;
  return { ratio, atMostAQuarter: ratio >= 4 * (1 - 1e-12) };
}

/**
 * Largest error that the measuring instrument may have for a limit of the valve.
 *
 * Shape: one number in, a quarter of it out.
 * @param valveLimitPercent  the valve's limit; above 0, at most 100
 * @returns percent
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-12] a published test note for valves
 * @example instrumentErrorMaxPercent({ valveLimitPercent: 1.5 }) // 0.375
 */
export function instrumentErrorMaxPercent(input: { readonly valveLimitPercent: number }): number {
  const { valveLimitPercent } = input;
  refuseOutside({ valveLimitPercent }, { above: 0, atMost: 100 });
  return valveLimitPercent / 4;
}
