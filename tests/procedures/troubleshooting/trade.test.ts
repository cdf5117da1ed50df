import { describe, expect, test } from 'vitest';
import type { CauseId } from '../../../procedures/troubleshooting/causes.ts';
import { believe, causeRanking } from '../../../procedures/troubleshooting/engine/belief.ts';
import type { Answer } from '../../../procedures/troubleshooting/engine/evidence.ts';
import { modelOf } from '../../../procedures/troubleshooting/engine/model.ts';
import type { ValveFacts } from '../../../procedures/troubleshooting/valve-facts.ts';
import { AIR_TO_CLOSE, BARE_DIAPHRAGM, DIAPHRAGM_WITH_POSITIONER, PISTON_RELAY_AN_END } from './valves.ts';

// What every technician knows: common practice, no source.

type Told = Omit<Answer, 'kind'>;

function ranked(facts: ValveFacts, answers: readonly Told[]) {
  const model = modelOf(facts);
  const evidence = answers.map((one): Answer => ({ kind: 'answer', gaugeAlive: true, ...one }));
  return causeRanking(model, believe(model, evidence));
}

function likelihoodOf(
  facts: ValveFacts,
  of: { readonly cause: CauseId; readonly answers: readonly Told[] },
): number {
  return ranked(facts, of.answers).find(({ id }) => id === of.cause)?.probability ?? 0;
}

describe('12 psi at the valve for 15 from the controller', () => {
  const missing: readonly Told[] = [{ check: 'valveAgainstSource', value: -25, readSigma: 1 }];

  test('does not clear the diaphragm: it is more likely than before', () => {
    for (const facts of [BARE_DIAPHRAGM, { ...BARE_DIAPHRAGM, tubeM: 3 }, { ...BARE_DIAPHRAGM, tubeM: 30 }]) {
      const of = { cause: 'diaphragmTorn', answers: missing } as const;
      expect(likelihoodOf(facts, of)).toBeGreaterThan(1.5 * likelihoodOf(facts, { ...of, answers: [] }));
    }
  });

  test('is told apart from a leaking tube by blocking in at the actuator', () => {
    const climbs = [...missing, { check: 'blockSourceSide', outcome: 'climbs to full' }] as const;
    const stays = [...missing, { check: 'blockSourceSide', outcome: 'stays low' }] as const;
    const torn = (answers: readonly Told[]) =>
      likelihoodOf(BARE_DIAPHRAGM, { cause: 'diaphragmTorn', answers });
    const tube = (answers: readonly Told[]) =>
      likelihoodOf(BARE_DIAPHRAGM, { cause: 'signalTubeLeaks', answers });
    expect(torn(climbs)).toBeGreaterThan(3 * tube(climbs));
    expect(tube(stays)).toBeGreaterThan(3 * torn(stays));
  });
});

describe('a valve that stays at one end while the controller stands at the other', () => {
  const told = [
    { facts: BARE_DIAPHRAGM, word: 'stays shut', value: -100 },
    { facts: DIAPHRAGM_WITH_POSITIONER, word: 'stays shut', value: -100 },
    { facts: AIR_TO_CLOSE, word: 'stays open', value: 100 },
  ] as const;

  test.each(told)(
    '0 or 100 % of travel told as a number speaks for what is dead, as "$word" does',
    ({ facts, word, value }) => {
      const check = 'travelAgainstOutput';
      for (const cause of ['wiringOpen', 'supplyLost'] as const) {
        const chance = (answers: readonly Told[]) => likelihoodOf(facts, { cause, answers });
        expect(chance([{ check, outcome: word }])).toBeGreaterThan(2 * chance([]));
        expect(chance([{ check, value, readSigma: 0.5 }])).toBeGreaterThan(2 * chance([]));
      }
    },
  );
});

test('no current at 100 % of output, told as 0 mA, speaks for wires that are open, as "No current" does', () => {
  const chance = (answers: readonly Told[]) => likelihoodOf(BARE_DIAPHRAGM, { cause: 'wiringOpen', answers });
  for (const told of [{ outcome: 'none' }, { value: -20, readSigma: 0.01 }, { value: -9.6, readSigma: 0.01 }])
    expect(chance([{ check: 'loopCurrent', ...told }])).toBeGreaterThan(15 * chance([]));
});

describe('a soap test', () => {
  test('that bubbles at the adjuster is the diaphragm, not the case joint', () => {
    for (const facts of [BARE_DIAPHRAGM, AIR_TO_CLOSE]) {
      const answers: readonly Told[] = [
        { check: 'soapAdjuster', outcome: 'bubbles' },
        { check: 'soapCaseJoint', outcome: 'none' },
      ];
      const [first, second] = ranked(facts, answers).map(({ id }) => id);
      expect([first, second].sort()).toEqual(['diaphragmPorous', 'diaphragmTorn']);
    }
  });

  test('that bubbles at the case joint alone is the case joint', () => {
    const answers: readonly Told[] = [
      { check: 'soapCaseJoint', outcome: 'bubbles' },
      { check: 'soapAdjuster', outcome: 'none' },
    ];
    expect(ranked(BARE_DIAPHRAGM, answers)[0]?.id).toBe('caseJoint');
  });
});

describe('the top of the cylinder at zero with the flapper on its nozzle', () => {
  test('is the restriction of the relay that loads the top', () => {
    const answers: readonly Told[] = [
      { check: 'topPressure', outcome: 'empty' },
      { check: 'bothFlappersAgainstGauges', outcome: 'top covered, low' },
    ];
    expect(ranked(PISTON_RELAY_AN_END, answers)[0]?.id).toBe('restrictionTop');
  });

  test('the other way up, is the one that loads the bottom', () => {
    const answers: readonly Told[] = [
      { check: 'bottomPressure', outcome: 'empty' },
      { check: 'bothFlappersAgainstGauges', outcome: 'bottom covered, low' },
    ];
    expect(ranked(PISTON_RELAY_AN_END, answers)[0]?.id).toBe('restrictionBottom');
  });
});

describe('more pressure at the valve than was sent', () => {
  test('is trapped air or a gauge, never a leak', () => {
    const answers: readonly Told[] = [{ check: 'valveAgainstSource', value: 20, readSigma: 1 }];
    const first = ranked(BARE_DIAPHRAGM, answers)
      .slice(0, 2)
      .map(({ id }) => id);
    expect(first.sort()).toEqual(['gaugeWrong', 'signalTubeBlocked']);
  });
});

describe('hysteresis that only a test rig shows', () => {
  const wide: readonly Told[] = [{ check: 'upAgainstDown', outcome: 'wide' }];

  test('is the rig until its regulator was seen to bleed', () => {
    const rig = { ...BARE_DIAPHRAGM, rigUsed: true };
    const of = { cause: 'rigDoesNotBleed', answers: wide } as const;
    expect(likelihoodOf(rig, of)).toBeGreaterThan(2 * likelihoodOf(rig, { ...of, answers: [] }));
    const proven = [...wide, { check: 'rigBleed', outcome: 'follows' }] as const;
    expect(likelihoodOf(rig, { ...of, answers: proven })).toBeLessThan(0.02);
  });
});
