import { describe, expect, test } from 'vitest';
import { forwardMachine, nextStep, proofUnder } from '../../procedures/compile.ts';
import { everyFacts, type Facts } from '../../procedures/facts.ts';
import { proofGraphs } from '../../procedures/proof-graph.ts';
import { prove } from '../../safety/proof.ts';
import { COMPILED } from '../builders/jobs.ts';

const { definition } = COMPILED;

describe('[SAF-03] [SAF-09] [SAF-10] The stroke check', () => {
  test.each(everyFacts(COMPILED.facts))(
    'exposes nobody at $place, bypass $bypassLine, stem may turn $stemMayTurn, spring in $springHeldBy',
    (facts: Facts) => {
      const proof = proofUnder(COMPILED, facts);
      expect(proof?.findings.filter((finding) => finding.rule !== 'unreachable')).toEqual([]);
    },
  );

  // The machine that runs has ways back that the first proof did not see.
  test.each(everyFacts(COMPILED.facts))(
    'exposes nobody with its ways back either: $place, $bypassLine, $stemMayTurn, $springHeldBy',
    (facts: Facts) => {
      const graph = proofGraphs(COMPILED.machine, definition)(facts);
      const allowed = graph.edges.filter(
        ({ from, by }) =>
          !by.startsWith('BACK.') ||
          nextStep(COMPILED, { step: from, event: { type: by, outcome: '', facts } }) !== null,
      );
      const proof = prove({ ...graph, edges: allowed });
      expect(proof.findings.filter((finding) => finding.rule !== 'unreachable')).toEqual([]);
      expect(allowed.some(({ by }) => by.startsWith('BACK.'))).toBe(true);
    },
  );

  test('never lets a stem that must not be turned come to the turning, nor a case spring to the adjuster', () => {
    for (const facts of everyFacts(COMPILED.facts)) {
      const reach = proofUnder(COMPILED, facts)?.reach;
      expect(reach?.has('turnStem')).toBe(facts.stemMayTurn === 'yes');
      expect(reach?.has('windAdjuster')).toBe(facts.springHeldBy === 'adjuster');
    }
  });

  test('is proved under all standings of the facts at once as under each by itself', () => {
    for (const facts of everyFacts(COMPILED.facts)) {
      const alone = prove(proofGraphs(forwardMachine(definition), definition)(facts));
      const served = proofUnder(COMPILED, facts);
      expect(served?.findings).toEqual(alone.findings);
      expect(served?.reach.keys()).toEqual(alone.reach.keys());
      for (const step of alone.reach.keys()) expect(served?.reach.get(step)).toEqual(alone.reach.get(step));
    }
  });

  test('takes no way that is not written', () => {
    const facts = everyFacts(COMPILED.facts)[0] as Facts;
    expect(nextStep(COMPILED, { step: 'needs', event: { type: 'SIGN', outcome: '', facts } })).toBeNull();
    expect(
      nextStep(COMPILED, { step: 'rigGauges', event: { type: 'ANSWER', outcome: 'maybe', facts } }),
    ).toBeNull();
    expect(nextStep(COMPILED, { step: 'done', event: { type: 'STOP', outcome: '', facts } })).toBeNull();
  });
});
