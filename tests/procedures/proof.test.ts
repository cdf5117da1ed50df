import { describe, expect, test } from 'vitest';
import { faultsOf } from '../../procedures/check.ts';
import { factsKey, nextStep } from '../../procedures/compile.ts';
import { everyFacts, type Facts } from '../../procedures/facts.ts';
import { proofGraph } from '../../procedures/proof-graph.ts';
import { waysOf } from '../../procedures/ways.ts';
import { CONDITION_IDS } from '../../safety/conditions.ts';
import { prove } from '../../safety/proof.ts';
import { COMPILED } from '../builders/jobs.ts';
import { standings } from '../builders/standings.ts';

const { definition } = COMPILED;

describe('[SAF-03] [SAF-09] [SAF-10] The stroke check', () => {
  test('has no fault, so that it may be served', () => {
    expect(faultsOf(COMPILED)).toEqual([]);
  });

  test.each(everyFacts())(
    'exposes nobody at $place, bypass $bypassLine, stem may turn $stemMayTurn, spring in $springHeldBy',
    (facts: Facts) => {
      const proof = COMPILED.proofs.get(factsKey(facts));
      expect(proof?.findings.filter((finding) => finding.rule !== 'unreachable')).toEqual([]);
    },
  );

  test.each(everyFacts())(
    'is proved over exactly what can be met when it is played: $place, $bypassLine, $stemMayTurn, $springHeldBy',
    (facts: Facts) => {
      const reach = COMPILED.proofs.get(factsKey(facts))?.reach;
      const played = standings(definition, facts);
      expect([...(reach?.keys() ?? [])].sort()).toEqual([...played.keys()].sort());
      for (const [step, met] of played)
        for (const id of CONDITION_IDS)
          expect(reach?.get(step)?.get(id), `${step} ${id}`).toEqual(
            new Set(met.map((states) => states[id])),
          );
    },
  );

  // The machine that runs has ways back that the first proof did not see.
  test.each(everyFacts())(
    'exposes nobody with its ways back either: $place, $bypassLine, $stemMayTurn, $springHeldBy',
    (facts: Facts) => {
      const graph = proofGraph(COMPILED.machine, { definition, facts });
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
    for (const facts of everyFacts()) {
      const reach = COMPILED.proofs.get(factsKey(facts))?.reach;
      expect(reach?.has('turnStem')).toBe(facts.stemMayTurn === 'yes');
      expect(reach?.has('windAdjuster')).toBe(facts.springHeldBy === 'adjuster');
    }
  });

  test('takes every way that its definition writes', () => {
    for (const [step, written] of Object.entries(definition.steps))
      for (const { event, outcome } of waysOf(written)) {
        const led = everyFacts().map((facts) =>
          nextStep(COMPILED, { step, event: { type: event, outcome: outcome ?? '', facts } }),
        );
        expect(led, `${step} ${event} ${outcome}`).not.toContain(null);
      }
  });

  test('takes no way that is not written', () => {
    const facts = everyFacts()[0] as Facts;
    expect(nextStep(COMPILED, { step: 'needs', event: { type: 'SIGN', outcome: '', facts } })).toBeNull();
    expect(
      nextStep(COMPILED, { step: 'rigGauges', event: { type: 'ANSWER', outcome: 'maybe', facts } }),
    ).toBeNull();
    expect(nextStep(COMPILED, { step: 'done', event: { type: 'STOP', outcome: '', facts } })).toBeNull();
  });
});
