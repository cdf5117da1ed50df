import { SAFE_LIMIT_PA } from '../../safety/limits.ts';
import { type Evidence, shownSafe } from '../../safety/shown-safe.ts';
import type { Job, Reading } from '../job.ts';
import type { Judged, Rule, RuleInput } from './rule.ts';

/** `before` and `after` name fields; the vent is watched instead where the person says so. */
export const showSafeRule: Rule = {
  outcomes: ['shown', 'not shown', 'gauge not seen alive', 'gauge too coarse'],
  params: ['energy', 'before', 'after'],
  judge(input) {
    const safeLimitPa = SAFE_LIMIT_PA[input.params.energy as keyof typeof SAFE_LIMIT_PA];
    const also = input.params.also;
    // A zero on a line that is not capped, or with test air still on, is no isolation.
    if (also !== undefined && input.words[also] !== 'yes') return unread(safeLimitPa);
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
  const before =
    readings[params.before ?? ''] ??
    (params.before === 'lastAirPa' ? lastAir(job) : job.readings[params.before ?? '']);
  // A zero on another gauge than the one seen alive proves nothing.
  if (after === undefined || before === undefined || before.gauge !== after.gauge) return null;
  return {
    method: 'gauge',
    beforePa: before.valueSi,
    afterPa: after.valueSi,
    uncertaintyPa: Math.max(after.uncertaintySi ?? 0, before.uncertaintySi ?? 0),
  };
}

const ON_CASE: readonly string[] = [
  'signalPa',
  'heldAgainPa',
  'contactTouchesPa',
  'contactLeavesPa',
  'lastAirPa',
  'soapPa',
  'benchHighDownPa',
  'joinAgainPa',
];

/** The newest air read on the case in this round: an older round's reading says nothing about this one. */
function lastAir(job: Job): Reading | undefined {
  for (const answer of job.answers.toReversed()) {
    if (answer.outcome === 'shown' && answer.readings.some((reading) => reading.field === 'airZeroPa'))
      return undefined;
    const found = answer.readings.findLast(
      (reading) => ON_CASE.includes(reading.field) && reading.valueSi > 0,
    );
    if (found !== undefined) return found;
  }
  return undefined;
}
