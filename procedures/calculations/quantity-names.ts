import { endingOf } from './name-endings.ts';
import { QUANTITY_TITLES } from './quantity-titles.ts';
import type { Dimension } from './unit-table.ts';

/** Names that do not carry their unit at the end, and temperatures that are differences. */
const DIMENSION_BY_NAME: Readonly<Record<string, Dimension>> = {
  kv: 'flowCoefficient',
  percent: 'percent',
  percentOfSpan: 'percent',
  openPercentClamped: 'percent',
  percentClamped: 'percent',
  turns: 'turns',
  turnsToQuarter: 'turns',
  temperatureUncertaintyK: 'temperatureDifference',
};

/**
 * What a quantity measures, read off its name.
 *
 * Shape: a name in, a dimension out. Names carry their unit, so that no dimension is written twice.
 * @param name  as spelled in code, for example `contactPa`
 * @returns dimension; `ratio` for a plain number
 * @source none: a rule of this code
 * @example dimensionOfName('springRateNPerM') // 'forcePerLength'
 * @example dimensionOfName('relativeDensity') // 'ratio'
 */
export function dimensionOfName(name: string): Dimension {
  const named = Object.hasOwn(DIMENSION_BY_NAME, name) ? DIMENSION_BY_NAME[name] : undefined;
  if (named !== undefined) return named;
  return endingOf(name)?.dimension ?? 'ratio';
}

/**
 * What a quantity is called on a page.
 *
 * Shape: a name in, a text out.
 * @param name  as spelled in code
 * @returns title from the list
 * @source none: a rule of this code
 * @example titleOf('contactPa') // 'Seat contact at'
 */
export function titleOf(name: string): string {
  const title = Object.hasOwn(QUANTITY_TITLES, name) ? QUANTITY_TITLES[name] : undefined;
  if (title === undefined) throw new Error(`no title for ${name}`);
  return title;
}
