import { describe, expect, test } from 'vitest';
import type { CheckId } from '../../../procedures/troubleshooting/checks.ts';
import { believe, repairRanking } from '../../../procedures/troubleshooting/engine/belief.ts';
import { decide } from '../../../procedures/troubleshooting/engine/decide.ts';
import type { Evidence } from '../../../procedures/troubleshooting/engine/evidence.ts';
import { likelihoods } from '../../../procedures/troubleshooting/engine/likelihood.ts';
import { sharesOf } from '../../../procedures/troubleshooting/engine/model.ts';
import { modelOfValve } from '../../../procedures/troubleshooting/engine/model-of-valve.ts';
import {
  expectedRepair,
  UNNAMED_MINUTES,
  unnamedShare,
} from '../../../procedures/troubleshooting/engine/repair-cost.ts';
import { readBy, standingAtStart } from './simulate.ts';
import { BARE_DIAPHRAGM, FULLY_FITTED } from './valves.ts';

const bare = modelOfValve(BARE_DIAPHRAGM);
const fitted = modelOfValve(FULLY_FITTED);

describe('what may be so beside the three repairs that are named', () => {
  test('is all but the three likeliest, in whatever order they stand', () => {
    expect(unnamedShare([0.05, 0.5, 0.1, 0.05, 0.3], 5)).toBeCloseTo(0.1, 12);
    expect(unnamedShare([0.5, 0.3, 0.05, 0.1], 4)).toBeCloseTo(0.05, 12);
    expect(unnamedShare([0.7, 0.3], 2)).toBeCloseTo(0, 12);
    expect(unnamedShare([0.2, 0.2, 0.2, 0.2, 0.2], 4)).toBeCloseTo(0.2, 12);
  });

  test('costs two shifts beside the repairs that were made in vain', () => {
    const cost = { minutes: 10, inVainMinutes: 5 };
    const even = expectedRepair([0.25, 0.25, 0.25, 0.25], [cost, cost, cost, cost]);
    // Ten minutes until each, and five more for each that was in vain before it.
    expect(even.expectedMinutes).toBeCloseTo(0.25 * (10 + 25 + 40 + 55) + 0.25 * UNNAMED_MINUTES, 9);
    const three = expectedRepair([0.5, 0.25, 0.25], [cost, cost, cost]);
    expect(three.expectedMinutes).toBeCloseTo(0.5 * 10 + 0.25 * (25 + 40), 9);
  });
});

describe('before a repair', () => {
  const said = (check: CheckId, outcome: string): Evidence => ({
    kind: 'answer',
    check,
    outcome,
    gaugeAlive: true,
  });
  const bestAfter = (evidence: readonly Evidence[]) =>
    decide(bare, { belief: believe(bare, evidence), evidence, standing: standingAtStart(bare) });

  test('another look is taken where one is nearly sure, and the fault may well be none of three', () => {
    const evidence = [
      said('controllerOutput', 'in line'),
      said('fluidOutside', 'dry'),
      said('springSideVent', 'clear'),
      said('secondMeasurement', 'differs'),
      said('soapCaseJoint', 'none'),
      said('filterBowl', 'dry'),
      said('flowAgainstTravel', 'more'),
      said('trend', 'steady'),
      said('secondMeasurement', 'differs'),
    ];
    const repairs = repairRanking(bare, believe(bare, evidence)).map(({ probability }) => probability);
    expect(repairs[0]).toBeGreaterThan(0.8);
    expect(unnamedShare(repairs, repairs.length)).toBeGreaterThan(0.01);
    expect(bestAfter(evidence).best).toBe('check');
  });
});

describe('what an answer says', () => {
  test('in a word is its share with slips counted in, under one fault and under two, hidden ones too', () => {
    const model = readBy(fitted, 0);
    for (const check of ['supplyPressure', 'soapCaseJoint', 'smallStep', 'springSideVent'] as const) {
      const table = model.tables.get(check);
      const codes = table?.codes ?? [];
      codes.forEach((outcome, at) => {
        const item = { kind: 'answer', check, outcome, gaugeAlive: true } as const;
        const [likely] = likelihoods(model, { item, looks: [item], after: [], earlier: null });
        model.hypotheses.forEach(({ rows }, h) => {
          const misread = table?.check.misread ?? 0;
          const share = table === undefined ? 0 : (sharesOf(table, rows)[at] ?? 0);
          const told = (1 - misread) * share + misread / codes.length;
          if (Math.abs((likely?.[h] ?? 0) - told) > 1e-12) expect(likely?.[h]).toBeCloseTo(told, 12);
        });
      });
    }
  });

  test('is the same whoever was searched before on such a valve', () => {
    const evidence: readonly Evidence[] = [
      { kind: 'answer', check: 'supplyPressure', value: -3, readSigma: 0.5, gaugeAlive: true },
      { kind: 'answer', check: 'smallStep', outcome: 'jumps' },
      { kind: 'repaired', repair: 'setRegulator', cured: false },
      { kind: 'answer', check: 'supplyPressure', value: -1, readSigma: 0.5, gaugeAlive: true },
    ];
    for (let count = 1; count <= evidence.length; count++) {
      const some = evidence.slice(0, count);
      believe(bare, some);
      expect([...believe(bare, some).weights]).toEqual([...believe({ ...bare }, some).weights]);
    }
  });
});
