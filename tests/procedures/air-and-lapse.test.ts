/** Air on and off, and what was shown and counts no more: tried on the real stroke check, in memory. */
import { describe, expect, test } from 'vitest';
import { type ActionClass, needsOf } from '../../safety/action-classes.ts';
import type { ConditionId } from '../../safety/conditions.ts';
import { lacks } from '../../safety/interlock.ts';
import {
  act,
  answer,
  COMPILED,
  type JobRun,
  jobAt,
  OTHER_TECHNICIAN,
  playTo,
  pointsOf,
  scripted,
} from '../builders/jobs.ts';
import { openSteps } from '../builders/mutants.ts';
import { refusalOf } from '../builders/refusals.ts';

const { definition } = COMPILED;

/** What the interlock has against an act now. */
function against(run: JobRun, action: ActionClass): readonly ConditionId[] {
  const { job, nowMs } = run;
  const envelope = job.envelope === null ? null : { ...job.envelope, work: [action] };
  const standing = { job: job.id, situation: job.situation, envelope, points: pointsOf(job), nowMs };
  return lacks(action, standing).map((lack) => lack.condition);
}

/** Classes that put hands on something: air on the case refuses each. */
const HANDS_ON: readonly ActionClass[] = [
  'releaseStemConnector',
  'loosenCaseBolts',
  'loosenShortCaseBolts',
  'openPistonCylinder',
  'liftActuator',
  'removePacking',
  'breakBonnetJoint',
  'removeTrim',
  'takeOutOfLine',
  'backOffAdjuster',
];

describe('Air on, air off', () => {
  test('voids what was shown of it: hands go in again only after a live-to-zero reading (EI-13)', () => {
    const run = jobAt('connectAir');
    expect(against(run, 'backOffAdjuster')).toEqual([]);
    scripted(run);
    for (const action of HANDS_ON) expect(against(run, action), action).toContain('signalAir');
    expect(against(run, 'turnPlugStem')).toContain('signalAir');
    act(run, { kind: 'make-safe', reason: 'hands in' });
    expect(against(run, 'backOffAdjuster')).toContain('signalAir');
    answer(run, { lastAirPa: '9 psi', airZeroPa: '1 psi', method: 'gauge' });
    expect(against(run, 'backOffAdjuster')).toContain('signalAir');
    answer(run, { lastAirPa: '9 psi', airZeroPa: '0', method: 'gauge' });
    expect(against(run, 'backOffAdjuster')).toEqual([]);
  });

  test('held air lasts as long as its act: nothing else is opened under it, and it ends by itself (EI-14)', () => {
    const run = jobAt('turnStem');
    expect(against(run, 'turnPlugStem')).toEqual([]);
    for (const action of HANDS_ON) expect(against(run, action), action).toContain('signalAir');
    run.nowMs += 31 * 60_000;
    expect(refusalOf(() => scripted(run)).what).toContain(
      'Signal or test air counts as live, because of age',
    );
  });

  test('an adjustment with five rounds of it takes exactly one signature and five live-to-zero readings', () => {
    const run = jobAt('contactFound');
    for (let round = 1; round <= 5; round += 1) {
      const before = run.job.situation.states.signalAir;
      expect(before, `round ${round}`).toBe('live');
      act(run, { kind: 'make-safe', reason: `round ${round}` });
      answer(run, { lastAirPa: '9 psi', airZeroPa: '0', method: 'gauge' });
      expect(run.job.situation.states.signalAir).toBe('isolated');
      expect(run.job.step).toBe('haltAir');
      answer(run, { choice: 'goOn' });
      answer(run, { peopleClear: 'yes' });
      answer(run, { choice: round === 5 ? 'contact' : 'work' });
      if (round === 5) break;
      // A round's work: the plug is held off its seat and turned a quarter.
      answer(run, { choice: 'setPlug' });
      answer(run, { choice: 'enough' });
      scripted(run);
      answer(run, { turnsMade: '0.25', lockNuts: 'yes' });
    }
    playTo(run, 'chooseWork');
    expect(run.job.holds.map((hold) => hold.step)).toEqual(['holdWork']);
    const zeros = run.job.answers.filter(
      (one) => one.outcome === 'shown' && one.readings.some((reading) => reading.field === 'airZeroPa'),
    );
    expect(zeros).toHaveLength(5);
    for (const { readings } of zeros)
      expect(readings.map(({ field }) => field).sort()).toEqual(['airZeroPa', 'lastAirPa']);
    playTo(run, 'signReturn');
    expect(run.job.holds).toHaveLength(1);
  });
});

describe('What was shown', () => {
  test('of the process counts no more when it is old, and is read again on the way round (EI-08, EI-28)', () => {
    const run = jobAt('connectAir');
    run.nowMs += 4 * 3_600_000;
    const refused = refusalOf(() => answer(run, { peopleClear: 'yes' }));
    expect(refused.what).toContain('Process, inlet side counts as live, because of age');
    const zeros = {
      supplyAirAgainPa: '0',
      signalAirAgainPa: '0',
      processInletAgainPa: '0',
      processOutletAgainPa: '0',
    };
    expect(
      refusalOf(() => act(run, { kind: 'prove-again', given: { asLeft: 'yes' } })).fields,
    ).toHaveProperty('processInletAgainPa');
    act(run, { kind: 'prove-again', given: { asLeft: 'yes', ...zeros } });
    answer(run, { peopleClear: 'yes' });
    expect(run.job.step).toBe('contactFound');
  });

  test('lapses in other hands: whoever takes over a parked job looks for themselves', () => {
    const run = jobAt('connectAir');
    act(run, { kind: 'park', reason: 'shift ends' });
    act(run, { kind: 'take-up' }, OTHER_TECHNICIAN);
    expect(run.job.situation.lapsed.supplyAir).toBe('handover');
    expect(run.job.situation.lapsed.supplyLock).toBeUndefined();
    const mine = jobAt('connectAir');
    act(mine, { kind: 'park', reason: 'meal' });
    act(mine, { kind: 'take-up' });
    expect(mine.job.situation.lapsed.supplyAir).toBe('parked');
  });

  test('at a vent is watched again at the vent, where no gauge can tell', () => {
    const run = jobAt('ventSupply');
    answer(run, { method: 'vent', flowFirst: 'no flow', flowAgain: 'no flow' });
    playTo(run, 'connectAir');
    act(run, { kind: 'park', reason: 'meal' });
    act(run, { kind: 'take-up' });
    const rest = { signalAirAgainPa: '0', processInletAgainPa: '0', processOutletAgainPa: '0' };
    const again = (supplyAirAgainFlow: string) =>
      act(run, { kind: 'prove-again', given: { asLeft: 'yes', ...rest, supplyAirAgainFlow } });
    expect(refusalOf(() => again('flow')).what).toBe('Not at zero: Supply air.');
    again('no flow');
    answer(run, { peopleClear: 'yes' });
    expect(run.job.step).toBe('contactFound');
  });

  test('of the process rests on two readings, the second after the sides stood shut in', () => {
    const run = jobAt('waitDrained');
    expect(run.job.situation.states).toMatchObject({ processInlet: 'live', processOutlet: 'live' });
    // The wait runs from the drained outlet side: the work on the air fills it.
    const drained = run.job.answers.find((one) => one.step === 'drainOutlet')?.at ?? '';
    run.nowMs = Date.parse(drained) + 299_000;
    expect(refusalOf(() => answer(run)).what).toBe('The wait is not over: 1 s is left.');
    run.nowMs += 1000;
    answer(run);
    answer(run, { inletAgainPa: '9 psi', outletAgainPa: '0' });
    expect(run.job.step).toBe('inletNotShown');
    expect(run.job.situation.states.processInlet).toBe('live');
  });

  test('a drain that may be plugged proves no zero', () => {
    const run = jobAt('drainInlet');
    answer(run, { inletAfterPa: '0', method: 'gauge', inletDrained: 'no' });
    expect(run.job.step).toBe('inletNotShown');
  });
});

test('Every class of the stroke check names what its step needs; none of its cards opens anything', () => {
  const classes = new Set(openSteps(definition).flatMap(([, step]) => (step.action ? [step.action] : [])));
  for (const action of classes) expect(HANDS_ON).not.toContain(action);
  for (const action of ['turnPlugStem', 'windAdjusterOnTestAir', 'setIndicatorOnTestAir'] as const) {
    expect(classes.has(action)).toBe(true);
    expect(needsOf(action).signalAir).toEqual(['held']);
  }
});
