import { UNITS, type UnitId } from '../calculations/unit-table.ts';
import { isUnitId, unitFor } from '../calculations/units.ts';

/** How people write the units that they read off gauges and scales, besides the unit's id and label. */
const SPELLINGS: { readonly [U in UnitId]?: readonly string[] } = {
  psi: ['psig', 'psi g', 'psi(g)', 'lbf/in2', 'lbf/in²', 'lb/in2', 'lb/in²'],
  kPa: ['kpag', 'kpa g', 'kpa(g)'],
  bar: ['barg', 'bar g', 'bar(g)'],
  in: ['"', '″', '”', 'inch', 'inches'],
  mm: ['millimetre', 'millimetres', 'millimeter', 'millimeters'],
  in2: ['in^2', 'sq in', 'sq.in', 'sqin'],
  cm2: ['cm^2', 'sq cm'],
  'lbf/in': ['lb/in', 'lbs/in'],
  lbf: ['lb force', 'pounds force'],
  '%': ['percent', 'pct', 'per cent'],
  degC: ['c', 'deg c', 'celsius'],
  degF: ['f', 'deg f', 'fahrenheit'],
  turns: ['turn', 'rev', 'revs'],
  s: ['sec', 'second', 'seconds'],
  min: ['minute', 'minutes'],
  mA: ['milliamp', 'milliamps'],
};

/** Gauge and absolute differ by the air around us, 14.7 psi: never taken one for the other. */
const ABSOLUTE = new Set(['psia', 'psi a', 'psi(a)', 'kpaa', 'kpa a', 'kpa(a)', 'bara', 'bar a', 'bar(a)']);

/** Here a capital letter changes the unit, so it must be written as it is. */
const CASE_COUNTS: readonly UnitId[] = ['MPa', 'mbar', 'Pa', 'K', 'N', 'm', 'J', 'A'];

const BY_WORD: ReadonlyMap<string, UnitId> = new Map(
  (Object.keys(UNITS) as UnitId[])
    .filter((id) => id !== '1')
    .flatMap((id) => wordsOf(id).map((word) => [word, id] as const)),
);

export type UnitWord =
  | { readonly kind: 'unit'; readonly unit: UnitId }
  | { readonly kind: 'absolute' }
  | { readonly kind: 'unknown' };

/**
 * The unit that a word behind a number means.
 *
 * @example unitWord('psig') // { kind: 'unit', unit: 'psi' }
 * @example unitWord('psia') // { kind: 'absolute' }
 * @example unitWord('stone') // { kind: 'unknown' }
 */
export function unitWord(word: string): UnitWord {
  const tidy = word.trim().replaceAll(/\s+/g, ' ');
  if (isUnitId(tidy) && tidy !== '1') return { kind: 'unit', unit: tidy };
  const folded = fold(tidy);
  if (ABSOLUTE.has(folded)) return { kind: 'absolute' };
  const unit = BY_WORD.get(tidy) ?? BY_WORD.get(folded);
  return unit === undefined ? { kind: 'unknown' } : { kind: 'unit', unit };
}

function wordsOf(id: UnitId): readonly string[] {
  const own = [id, unitFor(id).label];
  const exact = CASE_COUNTS.includes(id) ? own : [...own, ...own.map(fold)];
  return [...exact, ...(SPELLINGS[id] ?? [])];
}

/** Small letters, and no point behind an abbreviation: `PSI`, `In.` */
function fold(word: string): string {
  return word.toLowerCase().replace(/\.$/, '');
}
