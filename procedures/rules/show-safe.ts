import { SAFE_LIMIT_PA } from '../../safety/limits.ts';
import { type Evidence, shownSafe } from '../../safety/shown-safe.ts';
import type { Judged, Rule, RuleInput } from './rule.ts';

/** `before` and `after` name fields; the vent is watched instead where the person says so. */
export const showSafeRule: Rule = {
  outcomes: ['shown', 'not shown', 'gauge not seen alive', 'gauge too coarse'],
  params: ['energy', 'before', 'after'],
  judge(input) {
    const safeLimitPa = SAFE_LIMIT_PA[input.params.energy as keyof typeof SAFE_LIMIT_PA];
    const evidence = evidenceOf(input);
    return evidence === null
      ? unread(safeLimitPa)
      : { outcome: shownSafe(evidence, safeLimitPa), figures: { safeLimitPa } };
  },
};

function unread(safeLimitPa: number): Judged {
  return { outcome: 'not shown', figures: { safeLimitPa } };
}

function evidenceOf({ job, readings, words, params }: RuleInput): Evidence | null {
  if (words.method === 'vent') {
    const flow = (said: string | undefined) => (said === 'no flow' ? 'no flow' : 'flow');
    return { method: 'vent', flowFirst: flow(words.flowFirst), flowAgain: flow(words.flowAgain) };
  }
  const after = readings[params.after ?? ''];
  const before = readings[params.before ?? ''] ?? job.readings[params.before ?? ''];
  // A zero on another gauge than the one seen alive proves nothing.
  if (after === undefined || before === undefined || before.gauge !== after.gauge) return null;
  return {
    method: 'gauge',
    beforePa: before.valueSi,
    afterPa: after.valueSi,
    uncertaintyPa: Math.max(after.uncertaintySi ?? 0, before.uncertaintySi ?? 0),
  };
}
