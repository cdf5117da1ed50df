import { ABOVE_ZERO, oneOf, refuseOutside } from './checks.ts';
import type { SourceKind } from './sources.ts';

/** Permitted error in percent of span in the first quarter, the middle half and the last quarter of the scale. */
export interface GaugeGrade {
  readonly firstQuarterPercent: number;
  readonly middleHalfPercent: number;
  readonly lastQuarterPercent: number;
  readonly kind: SourceKind;
}

/** ASME B40.100 [S-27]. Texts that flatten grade A to 2 % everywhere are too loose in the middle. */
export const ASME_GRADES = {
  '4A': evenGrade({ percent: 0.1, kind: 'published' }),
  '3A': evenGrade({ percent: 0.25, kind: 'published' }),
  '2A': evenGrade({ percent: 0.5, kind: 'published' }),
  '1A': evenGrade({ percent: 1, kind: 'published' }),
  A: { firstQuarterPercent: 2, middleHalfPercent: 1, lastQuarterPercent: 2, kind: 'published' },
  B: { firstQuarterPercent: 3, middleHalfPercent: 2, lastQuarterPercent: 3, kind: 'memory' },
  C: { firstQuarterPercent: 4, middleHalfPercent: 3, lastQuarterPercent: 4, kind: 'memory' },
  D: evenGrade({ percent: 5, kind: 'memory' }),
} as const satisfies Readonly<Record<string, GaugeGrade>>;

export type AsmeGrade = keyof typeof ASME_GRADES;

/** EN 837-1 [S-28]: percent of span over the whole scale. 0.16 and 0.4 of some lists are not classes of it. */
export const EN_CLASSES = ['0.1', '0.25', '0.6', '1', '1.6', '2.5', '4'] as const;

export type EnClass = (typeof EN_CLASSES)[number];

export interface PermittedError {
  readonly percentOfSpan: number;
  /** In the unit of the scale. */
  readonly error: number;
  readonly part: 'first quarter' | 'middle half' | 'last quarter' | 'whole scale';
  readonly kind: SourceKind;
}

interface Scale {
  readonly scaleLow?: number;
  readonly scaleHigh: number;
  readonly reading: number;
}

/**
 * Error that a gauge of an ASME B40.100 grade may have at a reading.
 *
 * Shape: grade, scale and reading of one unit in, percent of span and an error out.
 * Valid: percent of span, not of reading. A reading on the border of two parts takes the larger.
 * @param grade      4A, 3A, 2A, 1A, A, B, C or D
 * @param scaleLow   0 where left out
 * @param scaleHigh  above scaleLow
 * @param reading    on the scale
 * @returns percent of span, error in the unit of the scale, part of the scale, whether the figure was read or remembered
 * @throws CalcError CALC-001 or CALC-002 by the name of the input; CALC-005 if the grade is unknown
 * @source [S-27] grade table
 * @example asmeGaugeError({ grade: 'A', scaleHigh: 100, reading: 50 })
 *   // { percentOfSpan: 1, error: 1, part: 'middle half', kind: 'published' }
 */
export function asmeGaugeError(input: Scale & { readonly grade: AsmeGrade }): PermittedError {
  const grades = Object.keys(ASME_GRADES) as AsmeGrade[];
  const grade: GaugeGrade = ASME_GRADES[oneOf({ name: 'grade', value: input.grade, choices: grades })];
  const { span, share } = onScale(input);
  const part = share <= 0.25 ? 'first quarter' : share >= 0.75 ? 'last quarter' : 'middle half';
  const percents = {
    'first quarter': grade.firstQuarterPercent,
    'middle half': grade.middleHalfPercent,
    'last quarter': grade.lastQuarterPercent,
  };
  const percentOfSpan = percents[part];
  return { percentOfSpan, error: (percentOfSpan / 100) * span, part, kind: grade.kind };
}

/**
 * Error that a gauge of an EN 837-1 class may have.
 *
 * Shape: class, scale and reading of one unit in, percent of span and an error out.
 * Valid: percent of span over the whole scale.
 * @param enClass    0.1, 0.25, 0.6, 1, 1.6, 2.5 or 4, as text
 * @param scaleLow   0 where left out
 * @param scaleHigh  above scaleLow
 * @param reading    on the scale
 * @returns percent of span, error in the unit of the scale
 * @throws CalcError CALC-001 or CALC-002 by the name of the input; CALC-005 if the class is unknown
 * @source [S-28] accuracy classes
 * @example enGaugeError({ enClass: '1.6', scaleHigh: 10, reading: 5 })
 *   // { percentOfSpan: 1.6, error: 0.16, part: 'whole scale', kind: 'published' }
 */
export function enGaugeError(input: Scale & { readonly enClass: EnClass }): PermittedError {
  const percentOfSpan = Number(oneOf({ name: 'enClass', value: input.enClass, choices: EN_CLASSES }));
  const { span } = onScale(input);
  return { percentOfSpan, error: (percentOfSpan / 100) * span, part: 'whole scale', kind: 'published' };
}

/** Classes to which the Chinese rule gives the next wider error in the last tenth of the scale. */
const WIDER_IN_LAST_TENTH = { '1': 1.6, '1.6': 2.5, '2.5': 4 } as const;

/**
 * Error that a general pressure gauge may have by the Chinese verification rule.
 *
 * Shape: class, scale and reading of one unit in, percent of span and an error out.
 * Valid: classes 1, 1.6 and 2.5, whose last tenth of the scale has the next wider limit, stop pin or not.
 * @param gaugeClass  1, 1.6 or 2.5, as text
 * @param scaleLow    0 where left out
 * @param scaleHigh   above scaleLow
 * @param reading     on the scale
 * @returns percent of span, error in the unit of the scale
 * @throws CalcError CALC-001 or CALC-002 by the name of the input; CALC-005 if the class is unknown
 * @source [S-29] last tenth of the scale
 * @example chineseGaugeError({ gaugeClass: '1.6', scaleHigh: 1, reading: 0.95 }).percentOfSpan // 2.5
 */
export function chineseGaugeError(
  input: Scale & { readonly gaugeClass: keyof typeof WIDER_IN_LAST_TENTH },
): PermittedError {
  const choices = Object.keys(WIDER_IN_LAST_TENTH) as (keyof typeof WIDER_IN_LAST_TENTH)[];
  const gaugeClass = oneOf({ name: 'gaugeClass', value: input.gaugeClass, choices });
  const { span, share } = onScale(input);
  const percentOfSpan = share > 0.9 ? WIDER_IN_LAST_TENTH[gaugeClass] : Number(gaugeClass);
  return { percentOfSpan, error: (percentOfSpan / 100) * span, part: 'whole scale', kind: 'published' };
}

function onScale({ scaleLow = 0, scaleHigh, reading }: Scale): {
  readonly span: number;
  readonly share: number;
} {
  refuseOutside({ scaleLow }, {});
  const span = scaleHigh - scaleLow;
  refuseOutside({ scaleHigh }, { above: scaleLow });
  refuseOutside({ span }, ABOVE_ZERO);
  refuseOutside({ reading }, { atLeast: scaleLow, atMost: scaleHigh });
  return { span, share: (reading - scaleLow) / span };
}

function evenGrade({ percent, kind }: { readonly percent: number; readonly kind: SourceKind }): GaugeGrade {
  return { firstQuarterPercent: percent, middleHalfPercent: percent, lastQuarterPercent: percent, kind };
}
