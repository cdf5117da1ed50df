import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CauseId } from '../../../procedures/troubleshooting/causes.ts';
import { CHECK_IDS, checkOf } from '../../../procedures/troubleshooting/checks.ts';
import {
  believe,
  causeRanking,
  repairRanking,
  weightsWithoutEach,
} from '../../../procedures/troubleshooting/engine/belief.ts';
import { decide } from '../../../procedures/troubleshooting/engine/decide.ts';
import { type Evidence, HEARSAY } from '../../../procedures/troubleshooting/engine/evidence.ts';
import { questionOf } from '../../../procedures/troubleshooting/engine/information.ts';
import { modelOf } from '../../../procedures/troubleshooting/engine/model.ts';
import { suggestions } from '../../../procedures/troubleshooting/engine/next-check.ts';
import { voicesFor } from '../../../procedures/troubleshooting/engine/speaks.ts';
import { surpriseOf } from '../../../procedures/troubleshooting/engine/surprise.ts';
import { REPAIR_IDS, repairFor } from '../../../procedures/troubleshooting/repairs.ts';
import { standingAtStart } from './simulate.ts';
import { BARE_DIAPHRAGM, DIAPHRAGM_WITH_POSITIONER, PISTON_RELAY_AN_END, VALVES } from './valves.ts';

const bare = modelOf(BARE_DIAPHRAGM);
const piston = modelOf(PISTON_RELAY_AN_END);

const word = fc.constantFrom(...CHECK_IDS).chain((check) =>
  fc.record({
    kind: fc.constant('answer' as const),
    check: fc.constant(check),
    outcome: fc.constantFrom(...Object.keys(checkOf(check).outcomes), 'no such word'),
    gauge: fc.constantFrom('a', 'b'),
    gaugeAlive: fc.boolean(),
    doubt: fc.double({ min: 0, max: 2, noNaN: false }),
  }),
);
const number = fc.record({
  kind: fc.constant('answer' as const),
  check: fc.constantFrom(...CHECK_IDS),
  value: fc.oneof(fc.double(), fc.double({ min: -120, max: 120, noNaN: true })),
  readSigma: fc.oneof(fc.double(), fc.double({ min: 0, max: 10, noNaN: true })),
});
const silent = fc.record({
  kind: fc.constantFrom('cannot tell' as const, 'skip' as const),
  check: fc.constantFrom(...CHECK_IDS),
});
const repaired = fc.record({
  kind: fc.constant('repaired' as const),
  repair: fc.constantFrom(...REPAIR_IDS),
  cured: fc.boolean(),
});
const anyEvidence: fc.Arbitrary<readonly Evidence[]> = fc.array(fc.oneof(word, number, silent, repaired), {
  maxLength: 12,
});

const answered = (check: (typeof CHECK_IDS)[number], outcome: string): Evidence => ({
  kind: 'answer',
  check,
  outcome,
  gaugeAlive: true,
});

function probability(
  model: typeof bare,
  of: { readonly evidence: readonly Evidence[]; readonly cause: string },
): number {
  return causeRanking(model, believe(model, of.evidence)).find(({ id }) => id === of.cause)?.probability ?? 0;
}

describe('what is believed', () => {
  test('adds up to one whatever was read: contradictions, impossible numbers, unknown words', () => {
    fc.assert(
      fc.property(anyEvidence, fc.constantFrom(bare, piston), (evidence, model) => {
        const belief = believe(model, evidence);
        for (const weights of [belief.weights, ...weightsWithoutEach(model, belief)]) {
          const sum = weights.reduce((total, weight) => total + weight, 0);
          expect(sum).toBeCloseTo(1, 9);
          expect(weights.every((weight) => Number.isFinite(weight) && weight >= 0)).toBe(true);
        }
        const surprise = surpriseOf(model, belief);
        expect(surprise.chanceFraction).toBeGreaterThanOrEqual(0);
        expect(surprise.chanceFraction).toBeLessThanOrEqual(1);
      }),
      { numRuns: 60 },
    );
  });

  test('never asks what cannot be asked, and never a number that is none, after any evidence', () => {
    fc.assert(
      fc.property(anyEvidence, (evidence) => {
        const standing = { ...standingAtStart(bare), consent: false };
        const belief = believe(bare, evidence);
        for (const { check, bits, minutes } of suggestions(bare, {
          question: questionOf(bare, belief),
          evidence,
          standing,
        })) {
          expect(bits).toBeGreaterThanOrEqual(0);
          expect(minutes).toBeGreaterThan(0);
          expect('consent' in checkOf(check)).toBe(false);
        }
        expect(Number.isFinite(decide(bare, { belief, evidence, standing }).repairNowMinutes)).toBe(true);
      }),
      { numRuns: 20 },
    );
  });

  test('counts an answer whose doubt is no number as one of the largest doubt', () => {
    const doubted = (doubt: number): Evidence => ({
      kind: 'answer',
      check: 'upAgainstDown',
      outcome: 'usual',
      doubt,
    });
    const weights = (doubt: number) => [...believe(bare, [doubted(doubt)]).weights];
    expect(weights(Number.NaN)).toEqual(weights(2));
  });

  test('does not depend on the order in which different things were read', () => {
    const once = fc.uniqueArray(fc.oneof(word, number), { maxLength: 8, selector: ({ check }) => check });
    fc.assert(
      fc.property(once, (evidence) => {
        const [one, other] = [evidence, [...evidence].reverse()].map((each) => believe(bare, each).weights);
        one?.forEach((weight, h) => {
          expect(weight).toBeCloseTo(other?.[h] ?? -1, 9);
        });
      }),
      { numRuns: 30 },
    );
  });

  test('is not moved by what nobody could tell, nor by what was put off', () => {
    const before = believe(bare, []).weights;
    const evidence: Evidence[] = [
      { kind: 'cannot tell', check: 'smallStep' },
      { kind: 'skip', check: 'trend' },
    ];
    expect([...believe(bare, evidence).weights]).toEqual([...before]);
  });

  test('counts what a reading says once, however often it comes on one gauge: a slip in it is less likely, no more', () => {
    const read = (gauge: string): Evidence => ({
      kind: 'answer',
      check: 'valveAgainstSource',
      outcome: 'lower',
      gauge,
    });
    const cause = 'signalTubeLeaks';
    const odds = (evidence: readonly Evidence[]) => {
      const [is, sound] = [cause, 'nothingWrong'].map((one) => probability(bare, { evidence, cause: one }));
      return (is ?? 0) / (sound ?? 1);
    };
    const once = odds([read('a')]);
    const again = odds([read('a'), read('a')]);
    const often = odds([...Array(12)].map(() => read('a')));
    const other = odds([read('a'), read('b')]);
    expect(again).toBeGreaterThan(once);
    // A third of the slips come again, so no number of looks through one gauge makes more of it than that.
    expect(often).toBeLessThan(4 * once);
    expect(other).toBeGreaterThan(2 * often);
  });

  test('leaves both open where two looks through one gauge differ, and goes with two of three', () => {
    const [engaged, neutral] = [
      answered('handwheelAndStops', 'engaged'),
      answered('handwheelAndStops', 'neutral'),
    ];
    const stop = (evidence: readonly Evidence[]) => probability(bare, { evidence, cause: 'stopEngaged' });
    const [none, one, both] = [stop([]), stop([engaged]), stop([engaged, neutral])];
    expect(both).toBeCloseTo(none, 3);
    expect(both).toBeLessThan(one / 5);
    expect(stop([neutral, engaged])).toBeCloseTo(both, 9);
    expect(stop([engaged, neutral, engaged])).toBeGreaterThan(one);
    expect(stop([engaged, neutral, neutral])).toBeLessThan(none);
  });

  test('looks once more at the one answer on which a costly repair hangs, and then repairs', () => {
    const standing = standingAtStart(bare);
    const sound = bare.checks
      .filter((check) => checkOf(check).hubs.includes('in service') && check !== 'fluidOutside')
      .map((check) => answered(check, Object.keys(checkOf(check).outcomes)[0] ?? ''));
    const leak = answered('fluidOutside', 'bonnet');
    const at = (evidence: readonly Evidence[]) =>
      decide(bare, { belief: believe(bare, evidence), evidence, standing });
    const first = at([...sound, leak]);
    expect(repairRanking(bare, believe(bare, [...sound, leak]))[0]?.probability).toBeGreaterThan(0.85);
    expect(first).toMatchObject({ best: 'check', check: { check: 'fluidOutside', again: true } });
    expect(at([...sound, leak, leak])).toMatchObject({
      best: 'repair',
      repair: { id: repairFor('bonnetLeaks') },
    });
    const dry = answered('fluidOutside', 'dry');
    const slip = [...sound, leak, dry, dry];
    expect(causeRanking(bare, believe(bare, slip))[0]?.id).toBe('nothingWrong');
  });

  test('does not look a fourth time at what three looks have not told, nor at what only somebody said', () => {
    const standing = standingAtStart(bare);
    const asked = (evidence: readonly Evidence[]) =>
      suggestions(bare, { question: questionOf(bare, believe(bare, evidence)), evidence, standing }).filter(
        ({ again }) => again,
      );
    const look = answered('fluidOutside', 'bonnet');
    const other = answered('fluidOutside', 'dry');
    expect(asked([look, other]).map(({ check }) => check)).toEqual(['fluidOutside']);
    expect(asked([look, other, look])).toEqual([]);
    expect(
      asked([{ kind: 'answer', check: 'fluidOutside', outcome: 'bonnet', gauge: HEARSAY, doubt: 0.1 }]),
    ).toEqual([]);
  });

  test('lets what somebody said give way to what somebody looked at', () => {
    const said: Evidence = {
      kind: 'answer',
      check: 'smallStep',
      outcome: 'jumps',
      gauge: HEARSAY,
      doubt: 0.2,
    };
    const seen = answered('smallStep', 'smooth');
    expect([...believe(bare, [said, seen]).weights]).toEqual([...believe(bare, [seen]).weights]);
    expect([...believe(bare, [seen, said]).weights]).toEqual([...believe(bare, [seen]).weights]);
    expect(probability(bare, { evidence: [said], cause: 'packingTight' })).toBeGreaterThan(0.1);
  });

  test('trusts a gauge at zero only where it was seen alive', () => {
    const at = (gaugeAlive: boolean) =>
      probability(bare, {
        evidence: [{ kind: 'answer', check: 'supplyPressure', outcome: 'none', gaugeAlive }],
        cause: 'supplyLost',
      });
    expect(at(true)).toBeGreaterThan(0.5);
    expect(at(false)).toBeLessThan(at(true) / 2);
  });

  test('goes with a number as far as its gauge allows, and further with a better one', () => {
    const at = (value: number, readSigma: number) =>
      probability(bare, {
        evidence: [{ kind: 'answer', check: 'valveAgainstSource', value, readSigma }],
        cause: 'nothingWrong',
      });
    expect(at(-4, 0.5)).toBeLessThan(at(-4, 4));
    expect(at(0, 0.5)).toBeGreaterThan(at(-4, 0.5));
  });
});

describe('what speaks for and against a cause', () => {
  test('is signed the right way, and what says nothing of it stays near nothing', () => {
    const evidence = [
      answered('soapCaseJoint', 'bubbles'),
      answered('soapAdjuster', 'none'),
      answered('flowArrow', 'agrees'),
    ];
    const belief = believe(bare, evidence);
    const voice = (cause: 'caseJoint' | 'diaphragmTorn', check: string) =>
      voicesFor(bare, { belief, causes: [cause] })[0]?.find(
        ({ item }) => item.item.kind === 'answer' && item.item.check === check,
      )?.logOdds ?? Number.NaN;
    expect(voice('caseJoint', 'soapCaseJoint')).toBeGreaterThan(1.5);
    expect(voice('diaphragmTorn', 'soapAdjuster')).toBeLessThan(-1);
    expect(Math.abs(voice('caseJoint', 'flowArrow'))).toBeLessThan(0.1);
  });
});

test('An answer speaks for a cause by the odds with it over the odds that a search without it would have', () => {
  const evidence = [
    answered('soapCaseJoint', 'bubbles'),
    answered('smallStep', 'jumps'),
    answered('blockActuatorSide', 'fast fall'),
    answered('springSideVent', 'air comes'),
  ];
  const causes = ['caseJoint', 'diaphragmTorn', 'packingTight'] as const;
  const oddsOf = (known: readonly Evidence[], cause: (typeof causes)[number]) => {
    const chance = probability(bare, { evidence: known, cause });
    return Math.log(chance / (1 - chance));
  };
  const voices = voicesFor(bare, { belief: believe(bare, evidence), causes });
  causes.forEach((cause, at) => {
    expect(voices[at]).toHaveLength(evidence.length);
    for (const { item, logOdds } of voices[at] ?? []) {
      const others = evidence.filter((one) => one !== item.item);
      expect(others).toHaveLength(evidence.length - 1);
      expect(logOdds).toBeCloseTo(oddsOf(evidence, cause) - oddsOf(others, cause), 6);
    }
  });
});

describe('a warning that nothing on the list explains it', () => {
  test('comes where readings contradict each other, and not for a plain case', () => {
    const torn = [
      answered('springSideVent', 'air comes'),
      answered('soapAdjuster', 'bubbles'),
      answered('blockActuatorSide', 'fast fall'),
    ];
    expect(surpriseOf(bare, believe(bare, torn)).strange).toBe(false);
    const absurd = [
      answered('loopCurrent', 'high'),
      answered('smallStep', 'other way'),
      answered('supplyPressure', 'high'),
      answered('flowArrow', 'turned round'),
      answered('couplingMarks', 'slipped'),
      answered('traceTubing', 'crossed'),
    ];
    expect(surpriseOf(bare, believe(bare, absurd)).strange).toBe(true);
  });

  test('is not given while nothing was read', () => {
    expect(surpriseOf(bare, believe(bare, []))).toEqual({
      chanceFraction: 1,
      strange: false,
      unexplained: [],
    });
  });
});

describe('a repair', () => {
  const found = [answered('soapCaseJoint', 'bubbles'), answered('blockActuatorSide', 'slow fall')];

  test('that did not cure speaks against its cause, and the others rise', () => {
    const before = repairRanking(bare, believe(bare, found));
    expect(before[0]?.id).toBe('tightenCase');
    const after = repairRanking(
      bare,
      believe(bare, [...found, { kind: 'repaired', repair: 'tightenCase', cured: false }]),
    );
    expect(after[0]?.id === 'tightenCase' ? after[0].probability : 0).toBeLessThan(
      before[0]?.probability ?? 0,
    );
  });

  test('that cured leaves a sound valve, unless a second fault is left', () => {
    const belief = believe(bare, [...found, { kind: 'repaired', repair: 'tightenCase', cured: true }]);
    expect(causeRanking(bare, belief)[0]?.id).toBe('nothingWrong');
  });

  describe('by which the true fault is not touched', () => {
    const chanceOf = (cause: CauseId, evidence: readonly Evidence[]) =>
      causeRanking(bare, believe(bare, evidence)).find(({ id }) => id === cause)?.probability ?? 0;
    const controllerBack = (soundBefore: boolean | null, cured: boolean): Evidence => ({
      kind: 'repaired',
      repair: 'controllerBack',
      cured,
      proof: { check: 'controllerMode', soundBefore },
    });

    test('hardly speaks against that fault where its proof was sound before', () => {
      const before = [...found, answered('controllerMode', 'automatic')];
      const leak = chanceOf('caseJoint', before);
      expect(chanceOf('caseJoint', [...before, controllerBack(true, true)])).toBeGreaterThan(0.95 * leak);
    });

    test('hardly speaks against it where nobody had looked, and the proof would not have shown it', () => {
      const leak = chanceOf('caseJoint', found);
      expect(chanceOf('caseJoint', [...found, controllerBack(null, true)])).toBeGreaterThan(0.9 * leak);
    });

    test('speaks against it where the proof was amiss and is sound now', () => {
      const before = [...found, answered('controllerMode', 'held')];
      const leak = chanceOf('caseJoint', before);
      expect(chanceOf('caseJoint', [...before, controllerBack(false, true)])).toBeLessThan(0.5 * leak);
    });

    test('leaves each chance above zero and their sum one, whatever its proof said', () => {
      for (const soundBefore of [true, false, null])
        for (const cured of [true, false]) {
          const { weights } = believe(bare, [...found, controllerBack(soundBefore, cured)]);
          expect(Math.min(...weights)).toBeGreaterThan(0);
          expect(weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 9);
        }
    });
  });
});

describe('on every kind of valve', () => {
  test.each(Object.entries(VALVES))(
    '%s: its next check is chosen and its best repair is one of its own',
    (_, facts) => {
      const model = modelOf(facts);
      const belief = believe(model, []);
      const decision = decide(model, { belief, evidence: [], standing: standingAtStart(model) });
      expect(decision.best).toBe('check');
      expect(model.checks).toContain(decision.check?.check);
      expect(model.repairs).toContain(decision.repair.id);
    },
  );

  test('with a positioner, travel that agrees clears no leak of the actuator; without one it does', () => {
    const left = (facts: typeof BARE_DIAPHRAGM, cause: string) => {
      const model = modelOf(facts);
      const evidence = [answered('travelAgainstOutput', 'agrees')];
      return probability(model, { evidence, cause }) / probability(model, { evidence: [], cause });
    };
    // A tear so large that the relay cannot feed it shows all the same.
    expect(left(DIAPHRAGM_WITH_POSITIONER, 'diaphragmTorn')).toBeGreaterThan(0.85);
    expect(left(DIAPHRAGM_WITH_POSITIONER, 'diaphragmPorous')).toBeGreaterThan(1);
    expect(left(DIAPHRAGM_WITH_POSITIONER, 'springBroken')).toBeGreaterThan(1);
    expect(left(BARE_DIAPHRAGM, 'diaphragmTorn')).toBeLessThan(0.5);
    expect(left(BARE_DIAPHRAGM, 'springBroken')).toBeLessThan(0.5);
  });
});
