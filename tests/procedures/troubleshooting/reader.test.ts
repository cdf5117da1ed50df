import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CheckId } from '../../../procedures/troubleshooting/checks.ts';
import { believe, causeRanking } from '../../../procedures/troubleshooting/engine/belief.ts';
import type { Answer, Evidence } from '../../../procedures/troubleshooting/engine/evidence.ts';
import { HEARSAY } from '../../../procedures/troubleshooting/engine/evidence.ts';
import { questionOf } from '../../../procedures/troubleshooting/engine/information.ts';
import type { Model } from '../../../procedures/troubleshooting/engine/model.ts';
import { modelOfValve } from '../../../procedures/troubleshooting/engine/model-of-valve.ts';
import { amissOf, expectedExtraMisread, READERS } from '../../../procedures/troubleshooting/engine/reader.ts';
import { readBy } from './simulate.ts';
import { BARE_DIAPHRAGM, PISTON_ONE_RELAY } from './valves.ts';

const bare = modelOfValve(BARE_DIAPHRAGM);
const piston = modelOfValve(PISTON_ONE_RELAY);
const carefulAlone = (model: Model): Model => readBy(model, 0);
const CAREFUL_BEFORE = READERS[0]?.prior ?? 0;

const said = (check: CheckId, outcome: string): Answer => ({
  kind: 'answer',
  check,
  outcome,
  gaugeAlive: true,
});
const carefulAfter = (model: Model, evidence: readonly Evidence[]) =>
  believe(model, evidence).readers[0] ?? Number.NaN;
const leader = (model: Model, evidence: readonly Evidence[]) =>
  causeRanking(model, believe(model, evidence))[0]?.probability ?? 0;

/** One cause explains all of it. */
const TORN = [
  said('springSideVent', 'air comes'),
  said('soapAdjuster', 'bubbles'),
  said('blockActuatorSide', 'fast fall'),
];
/** No cause explains more than two of it. */
const ABSURD = [
  said('loopCurrent', 'high'),
  said('smallStep', 'other way'),
  said('supplyPressure', 'high'),
  said('flowArrow', 'turned round'),
  said('couplingMarks', 'slipped'),
];

describe('how carefully a valve is read', () => {
  test('is left open by answers that agree, and the leading cause stays nearly as sure', () => {
    expect(Math.abs(carefulAfter(bare, TORN) - CAREFUL_BEFORE)).toBeLessThan(0.2);
    expect(leader(bare, TORN)).toBeGreaterThan(leader(carefulAlone(bare), TORN) - 0.05);
  });

  test('is held to be poor once answers contradict each other, and the leading cause is less sure for it', () => {
    expect(carefulAfter(bare, ABSURD)).toBeLessThan(0.1);
    expect(leader(bare, ABSURD)).toBeLessThan(leader(carefulAlone(bare), ABSURD) - 0.05);
  });

  test('is hardly told by the same answer again through one gauge', () => {
    const often = Array.from({ length: 3 }, () => said('fluidOutside', 'dry'));
    expect(carefulAfter(bare, often)).toBeLessThan(CAREFUL_BEFORE + 0.1);
  });

  test('is not judged by what the operator said before anybody looked', () => {
    const told = ABSURD.map((item) => ({ ...item, gauge: HEARSAY, doubt: 0.3 }));
    expect(carefulAfter(bare, told)).toBeCloseTo(CAREFUL_BEFORE, 9);
  });

  test('is one chance for each reader whatever was answered, and a single one is believed alone', () => {
    const answer = fc.constantFrom(...bare.checks).chain((check) =>
      fc.record({
        kind: fc.constant('answer' as const),
        check: fc.constant(check),
        outcome: fc.constantFrom(...(bare.tables.get(check)?.codes ?? [])),
        gauge: fc.constantFrom('a', 'b'),
        gaugeAlive: fc.boolean(),
      }),
    );
    fc.assert(
      fc.property(fc.array(answer, { maxLength: 30 }), (evidence) => {
        const { readers, weights } = believe(bare, evidence);
        for (const shares of [readers, weights]) {
          expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
          expect(shares.every((share) => share >= 0)).toBe(true);
        }
        expect(believe(carefulAlone(bare), evidence).readers[0]).toBeCloseTo(1, 9);
      }),
      { numRuns: 20 },
    );
  });

  test('makes the mixture of what each reader alone would believe', () => {
    const both = believe(piston, ABSURD);
    const alone = READERS.map(({ extraMisread }) => believe(readBy(piston, extraMisread), ABSURD).weights);
    both.weights.forEach((weight, h) => {
      const mixed = alone.reduce((sum, weights, r) => sum + (both.readers[r] ?? 0) * (weights[h] ?? 0), 0);
      expect(weight).toBeCloseTo(mixed, 12);
    });
  });

  test('is counted in what the next answer is expected to tell', () => {
    const extraMisread = (evidence: readonly Evidence[]) =>
      questionOf(bare, believe(bare, evidence)).extraMisread;
    expect(extraMisread([])).toBeCloseTo(
      expectedExtraMisread(
        READERS,
        READERS.map(({ prior }) => prior),
      ),
      12,
    );
    expect(extraMisread(ABSURD)).toBeGreaterThan(extraMisread(TORN));
    expect(amissOf([0.05, 0.1])).toBeCloseTo(0.145, 12);
  });
});
