import { SAFE_LIMIT_PA } from '../../safety/limits.ts';
import type { Rule, RuleInput } from './rule.ts';

/**
 * Both sides of the process once more, after they stood shut in: a side that was zero and is not any more has a block
 * valve that passes. Read on the gauge of the first zero; where that was too coarse, the drain is cracked.
 */
export const stillZeroRule: Rule = {
  outcomes: ['still zero', 'inlet builds up', 'outlet builds up', 'not read'],
  params: ['inlet', 'outlet'],
  judge(input) {
    const inlet = sideOf(input, {
      after: input.params.inlet ?? '',
      again: 'inletAgainPa',
      flow: 'inletFlow',
    });
    const outlet = sideOf(input, {
      after: input.params.outlet ?? '',
      again: 'outletAgainPa',
      flow: 'outletFlow',
    });
    const figures = { safeLimitPa: SAFE_LIMIT_PA.processInlet };
    if (inlet === 'builds up') return { outcome: 'inlet builds up', figures };
    if (outlet === 'builds up') return { outcome: 'outlet builds up', figures };
    return { outcome: inlet === 'zero' && outlet === 'zero' ? 'still zero' : 'not read', figures };
  },
};

function sideOf(
  { job, readings, words }: RuleInput,
  names: { readonly after: string; readonly again: string; readonly flow: string },
): 'zero' | 'builds up' | 'not read' {
  const again = readings[names.again];
  if (words[names.flow] === 'flow') return 'builds up';
  if (again === undefined) return words[names.flow] === 'no flow' ? 'zero' : 'not read';
  if (Math.abs(again.valueSi) + (again.uncertaintySi ?? 0) > SAFE_LIMIT_PA.processInlet) return 'builds up';
  // Another gauge than the one of the first zero proves nothing; a drain first shown by flow is cracked again.
  const first = job.readings[names.after];
  return first !== undefined && first.gauge === again.gauge ? 'zero' : 'not read';
}
