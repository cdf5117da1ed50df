import { CONTRADICTIONS } from './contradiction-codes.ts';
import { airRules } from './contradictions/air-rules.ts';
import { energyRules } from './contradictions/energy-rules.ts';
import { forceRules } from './contradictions/force-rules.ts';
import { moveRules } from './contradictions/move-rules.ts';
import { recordRules } from './contradictions/record-rules.ts';
import type { Contradiction, Rule } from './contradictions/rule.ts';
import type { ValveSheet } from './sheet.ts';

const RULES: readonly Rule[] = [...moveRules, ...airRules, ...forceRules, ...recordRules, ...energyRules];

/**
 * Everything that a sheet says against itself, in the order of the form, with numbers and units. Those that stop
 * come without the rest, since nothing can be worked out from such a sheet.
 *
 * @example contradictionsOf({ ...sheet, failPosition: 'open' })[0].code // 'VAL-102' for a valve that air opens
 */
export function contradictionsOf(sheet: ValveSheet): readonly Contradiction[] {
  const stopping = RULES.filter(({ code }) => CONTRADICTIONS[code].stops).flatMap((rule) =>
    found(rule, sheet),
  );
  if (stopping.length > 0) return stopping;
  return RULES.flatMap((rule) => found(rule, sheet));
}

/** Those that keep a sheet from being saved; the rest are only shown. @example stoppingIn(contradictionsOf(sheet)) // [] */
export function stoppingIn(contradictions: readonly Contradiction[]): readonly Contradiction[] {
  return contradictions.filter(({ stops }) => stops);
}

function found({ code, fields, says }: Rule, sheet: ValveSheet): readonly Contradiction[] {
  const what = says(sheet);
  return what === null ? [] : [{ code, stops: CONTRADICTIONS[code].stops, fields, what }];
}

export type { Contradiction };
