import { type Dimension, UNITS, type UnitId } from '../calculations/unit-table.ts';
import { unitFor } from '../calculations/units.ts';

const LBF_FT =
  'lbf ft|lbf-ft|lb ft|lb-ft|lbft|lb.ft|ft lb|ft-lb|ftlb|ft.lb|ft lbs|ft-lbs|ft lbf|ft-lbf|foot pounds|foot-pounds'.split(
    '|',
  );

/** How people write the units that they read off gauges and scales, besides the unit's id and label. */
const SPELLINGS: { readonly [U in UnitId]?: readonly string[] } = {
  psi: ['psig', 'psi g', 'psi(g)', 'lbf/in2', 'lbf/in²', 'lb/in2', 'lb/in²'],
  kPa: ['kpag', 'kpa g', 'kpa(g)'],
  'kgf/cm2': ['kg/cm2', 'kg/cm²', 'kg/cm^2'],
  bar: ['barg', 'bar g', 'bar(g)'],
  in: ['"', '″', '”', 'inch', 'inches'],
  mm: ['millimetre', 'millimetres', 'millimeter', 'millimeters'],
  in2: ['in^2', 'sq in', 'sq.in', 'sqin'],
  cm2: ['cm^2', 'sq cm'],
  'lbf/in': ['lb/in', 'lbs/in'],
  '%': ['percent', 'pct', 'per cent'],
  degC: ['c', 'deg c', 'degc', 'celsius'],
  degF: ['f', 'deg f', 'degf', 'fahrenheit'],
  'N.m': ['nm', 'n m', 'n-m', 'newton metre', 'newton metres', 'newton meter', 'newton meters'],
  'lbf.ft': [...LBF_FT],
  'lbf.in': [
    'lbf in',
    'lbf-in',
    'lb in',
    'lb-in',
    'lbin',
    'lb.in',
    'in lb',
    'in-lb',
    'inlb',
    'in lbs',
    'in-lbs',
  ],
  turns: ['turn', 'rev', 'revs'],
  s: ['sec', 'second', 'seconds'],
  min: ['minute', 'minutes'],
  mA: ['milliamp', 'milliamps'],
};

/** Gauge and absolute differ by the air around us, 14.7 psi: never taken one for the other. */
const ABSOLUTE = new Set(['psia', 'psi a', 'psi(a)', 'kpaa', 'kpa a', 'kpa(a)', 'bara', 'bar a', 'bar(a)']);

/** Here a capital letter changes the unit, so it must be written as it is. */
const CASE_COUNTS: readonly UnitId[] = ['MPa', 'mbar', 'Pa', 'K', 'N', 'm', 'J', 'A'];

/** Several units may be written alike: 1 °F is a temperature or a difference of two. */
const BY_WORD: ReadonlyMap<string, readonly UnitId[]> = allWords();

export type UnitWord =
  | { readonly kind: 'units'; readonly units: readonly UnitId[] }
  | { readonly kind: 'absolute' }
  | { readonly kind: 'unknown' };

/**
 * The units that a word behind a number may mean.
 *
 * @example unitWord('psig') // { kind: 'units', units: ['psi'] }
 * @example unitWord('°F') // { kind: 'units', units: ['degF', 'degF diff'] }
 * @example unitWord('psia') // { kind: 'absolute' }
 * @example unitWord('stone') // { kind: 'unknown' }
 */
export function unitWord(word: string): UnitWord {
  const tidy = word.trim().replaceAll(/\s+/g, ' ');
  const folded = fold(tidy);
  if (ABSOLUTE.has(folded)) return { kind: 'absolute' };
  const units = BY_WORD.get(tidy) ?? BY_WORD.get(folded);
  return units === undefined ? { kind: 'unknown' } : { kind: 'units', units };
}

/** @example measures('psi', ['length', 'pressure']) // true */
export function measures(unit: UnitId, dimensions: readonly Dimension[]): boolean {
  return dimensions.includes(unitFor(unit).dimension);
}

function allWords(): ReadonlyMap<string, readonly UnitId[]> {
  const byWord = new Map<string, UnitId[]>();
  for (const unit of Object.keys(UNITS) as UnitId[]) {
    for (const word of wordsOf(unit)) byWord.set(word, [...(byWord.get(word) ?? []), unit]);
  }
  return byWord;
}

function wordsOf(unit: UnitId): ReadonlySet<string> {
  // A plain number has no word behind it; its id would read as a second number.
  const own = unit === '1' ? [] : [unit, unitFor(unit).label];
  const folded = CASE_COUNTS.includes(unit) ? [] : own.map(fold);
  return new Set([...own, ...folded, ...(SPELLINGS[unit] ?? [])]);
}

/** Small letters, and no point behind an abbreviation: `PSI`, `In.` */
function fold(word: string): string {
  return word.toLowerCase().replace(/\.$/, '');
}
