import { describe, expect, test } from 'vitest';
import { bearsOn } from '../../../procedures/troubleshooting/engine/bears-on.ts';
import { believe, causeRanking } from '../../../procedures/troubleshooting/engine/belief.ts';
import type { Evidence } from '../../../procedures/troubleshooting/engine/evidence.ts';
import { jointOf, questionOf } from '../../../procedures/troubleshooting/engine/information.ts';
import { modelOf } from '../../../procedures/troubleshooting/engine/model.ts';
import { openingEvidence } from '../../../procedures/troubleshooting/openings.ts';
import { repairFor } from '../../../procedures/troubleshooting/repairs.ts';
import { BARE_DIAPHRAGM } from './valves.ts';

const model = modelOf(BARE_DIAPHRAGM);
const sticks = openingEvidence(BARE_DIAPHRAGM, 'sticksThenJumps');
type CheckId = (typeof model.checks)[number];

function told(evidence: readonly Evidence[], check: CheckId) {
  const belief = believe(model, evidence);
  const table = model.tables.get(check);
  if (table === undefined) throw new Error(`no check ${check} on this valve`);
  const joint = jointOf(questionOf(model, belief), table);
  return bearsOn(model, { joint, causes: causeRanking(model, belief) });
}

/** Chance that a repair is wanted. */
function wanted(evidence: readonly Evidence[], cause: Parameters<typeof repairFor>[0]): number {
  return causeRanking(model, believe(model, evidence))
    .filter(({ id }) => repairFor(id) === repairFor(cause))
    .reduce((sum, { probability }) => sum + probability, 0);
}

describe('What a check tells of', () => {
  test('of a valve that sticks, a small step tells of its packing before all', () => {
    expect(told(sticks, 'smallStep')[0]).toBe('packingTight');
  });

  test('soap at the joint of the case tells of that joint and not of the seat', () => {
    const causes = told(openingEvidence(BARE_DIAPHRAGM, 'movesPartWay'), 'soapCaseJoint');
    expect(causes).toContain('caseJoint');
    expect(causes).not.toContain('seatWorn');
  });

  test('changes by at least one of its answers, for every fourth check after a complaint', () => {
    let named = 0;
    for (const check of model.checks.filter((_, at) => at % 4 === 0)) {
      const outcomes = model.tables.get(check)?.codes ?? [];
      for (const cause of told(sticks, check)) {
        named += 1;
        const before = wanted(sticks, cause);
        const shifts = outcomes.map((outcome) => {
          const answer: Evidence = { kind: 'answer', check, outcome, gaugeAlive: true };
          return Math.abs(wanted([...sticks, answer], cause) - before);
        });
        expect(Math.max(...shifts), `${check} on ${cause}`).toBeGreaterThan(0.02);
      }
    }
    expect(named).toBeGreaterThan(3);
  });

  test('looking for fluid outside does not tell of a packing that is too tight', () => {
    expect(told(sticks, 'fluidOutside')).not.toContain('packingTight');
  });
});
