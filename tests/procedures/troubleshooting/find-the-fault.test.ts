import { describe, expect, test } from 'vitest';
import { auditJob } from '../../../procedures/audit.ts';
import { faultsOf } from '../../../procedures/check.ts';
import { compile } from '../../../procedures/compile.ts';
import { CHECK_IDS, checkOf } from '../../../procedures/troubleshooting/checks.ts';
import { findTheFault } from '../../../procedures/troubleshooting/find-the-fault.ts';
import { adviceFor } from '../../../procedures/troubleshooting/job/advice.ts';
import { evidenceOf } from '../../../procedures/troubleshooting/job/evidence-of-job.ts';
import { factsOfJob } from '../../../procedures/troubleshooting/job/facts-of-job.ts';
import { checkStepId } from '../../../procedures/troubleshooting/steps/check-cards.ts';
import {
  hubsOf,
  LOOKED_ELSEWHERE,
  ON_TEST_AIR,
} from '../../../procedures/troubleshooting/steps/hub-choices.ts';
import { Refusal } from '../../../safety/refusal.ts';
import { DEMO_VALVES } from '../../../server/demo/demo-valves.ts';
import { jobOn, type Overrides, pathOf, play, playOne } from '../../builders/answers.ts';
import { answer, type JobRun } from '../../builders/jobs.ts';
import { aSheet, sheetOf } from '../../builders/sheets.ts';
import { random } from './simulate.ts';
import { VALVES } from './valves.ts';

/** The long run walks further. */
const WALKS = process.env.YOKESIDE_LONG === '1' ? 60 : 3;

const compiled = compile(findTheFault);
const opened = (): JobRun => jobOn({ definition: findTheFault }, { place: 'line' });

/** The complaint of the trade: full signal sent, and less of it arrives at the valve. */
const TWELVE_OF_FIFTEEN = {
  symptom: 'doesNotMove',
  outputPercent: '100 %',
  signalSeenPa: '12 psi',
  openedM: '',
};
const atHub = (complaint: Record<string, string> = TWELVE_OF_FIFTEEN): JobRun =>
  play(opened(), { to: 'inService', overrides: { complaint } });

/** Chooses a check at the open hub and answers its card. */
function check(run: JobRun, id: string, given: Record<string, string>): void {
  answer(run, { hubChoice: id });
  answer(run, given);
}

const codeOf = (act: () => unknown): string => {
  try {
    act();
    return 'done';
  } catch (error) {
    if (error instanceof Refusal) return error.text.code;
    throw error;
  }
};

describe('[SAF-03] Finding a fault', () => {
  test('is proved over all its facts, and its lint finds nothing', () => {
    expect(faultsOf(compiled)).toEqual([]);
    expect(compiled.facts).not.toContain('place');
  });

  test('has a card for each check of the list at each hub where it can be made', () => {
    for (const id of CHECK_IDS)
      for (const hub of hubsOf(id)) {
        const step = ON_TEST_AIR.includes(id) ? `${id}OnTestAir` : checkStepId(id, hub);
        const card = findTheFault.steps[step];
        expect(card?.kind === 'reading' && card.judge).toEqual({ rule: 'faultCheck', with: { check: id } });
      }
  });

  test('names on the card of a check what that check exposes people to', () => {
    const exposing = CHECK_IDS.filter(
      (id) => checkOf(id).exposes !== undefined && !LOOKED_ELSEWHERE.includes(id),
    );
    expect(exposing.length).toBeGreaterThan(5);
    for (const id of exposing)
      for (const hub of hubsOf(id)) {
        const card = findTheFault.steps[ON_TEST_AIR.includes(id) ? `${id}OnTestAir` : checkStepId(id, hub)];
        const classes = Object.values(VALVES).flatMap((facts) => checkOf(id).exposes?.(facts) ?? []);
        expect(classes, id).toContain(card?.kind === 'reading' ? card.action : undefined);
      }
  });

  test('goes from the complaint to the cause named and the valve back with its operator', () => {
    const run = play(opened());
    expect(run.job.closedAs).toBe('done');
    expect(pathOf(run.job)).toEqual([
      'needs',
      'complaint',
      'fitted',
      'askOperator',
      'inService',
      'nameCauseInService',
      'serviceBack',
      'afterReturn',
    ]);
    expect(run.job.situation.states).toMatchObject({ consent: 'none', bypass: 'shut', loop: 'automatic' });
    expect(auditJob(run.entries, run.compiled)).toEqual([]);
  });

  test('counts a first line as evidence: 12 psi at the valve for 15 sent', () => {
    const { job } = atHub();
    const evidence = evidenceOf(job, factsOfJob(job));
    expect(evidence).toContainEqual(
      expect.objectContaining({ check: 'valveAgainstCommand', value: expect.closeTo(-25, 6) }),
    );
    expect(evidence).toContainEqual(expect.objectContaining({ check: 'smallStep', outcome: 'no move' }));
  });

  test('keeps at each hub what was advised, and the evidence is the answered cards alone', () => {
    const run = atHub();
    const { decision, causes } = adviceFor(run.job, 'in service');
    check(run, 'soapSignalTube', { found: 'bubbles' });
    expect(run.job.figures.inService).toMatchObject({
      advised: decision.check?.check,
      cause1: causes[0]?.id,
      cause1Fraction: causes[0]?.probability,
    });
    const without = run.job.answers.map((one) => (one.step === 'inService' ? { ...one, figures: {} } : one));
    expect(evidenceOf({ answers: without }, factsOfJob(run.job))).toEqual(
      evidenceOf(run.job, factsOfJob(run.job)),
    );
    expect(adviceFor(run.job, 'in service').causes[0]?.id).toBe('signalTubeLeaks');
  });

  test('puts a number on its axis, and the number outranks the word', () => {
    const run = atHub();
    check(run, 'valveAgainstSource', { found: 'equal', sourcePa: '15 psi', signalSeenPa: '12 psi' });
    expect(run.job.figures.valveAgainstSourceInService).toMatchObject({ found: 'lower', sound: 'no' });
    expect(Number(run.job.figures.valveAgainstSourceInService?.value)).toBeCloseTo(-25, 6);
  });

  test('takes "cannot tell" and "skip", and neither moves the ranking', () => {
    const run = atHub();
    const before = adviceFor(run.job, 'in service').causes;
    check(run, 'trend', { found: 'cannot tell' });
    check(run, 'lineUp', { found: 'skip' });
    const after = adviceFor(run.job, 'in service');
    expect(after.causes).toEqual(before);
    expect(after.checks.map((one) => one.check)).not.toContain('trend');
  });

  test('refuses a check that this valve has not, one whose gauge is missing, and one without an answer', () => {
    const run = atHub();
    expect(codeOf(() => answer(run, { hubChoice: 'topPressure' }))).toBe('TRB-001');
    expect(codeOf(() => answer(run, { hubChoice: 'nozzlePressure' }))).toBe('TRB-001');
    answer(run, { hubChoice: 'valveAgainstSource' });
    expect(codeOf(() => answer(run, { sourcePa: '15 psi' }))).toBe('TRB-002');
    expect(run.job.step).toBe('valveAgainstSourceInService');
  });

  test('advises the check that proves a repair before all others, and not cured is evidence', () => {
    const run = atHub({ symptom: 'movesPartWay', outputPercent: '', signalSeenPa: '', openedM: '' });
    answer(run, { hubChoice: 'mend freeStop' });
    answer(run, { made: 'yes', mendNote: 'a stop was wound in' });
    expect(adviceFor(run.job, 'in service').proofDue).toEqual({
      repair: 'freeStop',
      check: 'handwheelAndStops',
    });
    check(run, 'handwheelAndStops', { found: 'engaged' });
    const advice = adviceFor(run.job, 'in service');
    expect(advice.proofDue).toBeNull();
    expect(advice.evidence).toContainEqual({
      kind: 'repaired',
      repair: 'freeStop',
      cured: false,
      proof: { check: 'handwheelAndStops', soundBefore: null },
    });
  });

  test('goes onto the bypass, behind locks, on test air behind a hold, and back', () => {
    const overrides: Overrides = {
      complaint: TWELVE_OF_FIFTEEN,
      inService: { hubChoice: 'bypass' },
      onBypass: { hubChoice: 'isolate' },
      isolated: [{ hubChoice: 'strokeOnTestAir' }, { hubChoice: 'name' }],
      onTestAir: [{ choice: 'strokeOnTestAir' }, { choice: 'away' }],
      nameCauseIsolated: { repairToDo: 'changeDiaphragm' },
      goOnDiaphragmRenewal: { choice: 'back' },
      bleedAir: { lastAirPa: '9 psi', airZeroPa: '0 psi', method: 'gauge' },
      backCheck: { choice: 'off' },
    };
    const run = play(opened(), { overrides });
    expect(run.job.closedAs).toBe('done');
    expect(pathOf(run.job)).toEqual(
      expect.arrayContaining(['holdTestAir', 'strokeOnTestAirOnTestAir', 'signReturn']),
    );
    expect(run.job.situation.states).toMatchObject({ inletLock: 'off', testAir: 'off', bypass: 'shut' });
    expect(auditJob(run.entries, run.compiled)).toEqual([]);
  });

  test('leads a cylinder that wants its packing to no job that it may not have: the valve goes back', () => {
    const piston = DEMO_VALVES.map(sheetOf).find(({ actuatorKind }) => actuatorKind === 'piston');
    const named = play(jobOn({ definition: findTheFault }, { place: 'line', sheet: piston ?? aSheet() }), {
      overrides: {
        inService: { hubChoice: 'bypass' },
        onBypass: { hubChoice: 'isolate' },
        keptAir: { oppositeAir: 'isolated' },
        isolated: { hubChoice: 'name' },
        nameCauseIsolated: { repairToDo: 'repack' },
      },
      to: 'backCheck',
    });
    expect(pathOf(named.job).at(-1)).toBe('nameCauseIsolated');
    expect(named.job.figures.nameCauseIsolated).toMatchObject({ procedure: 'packing-renewal' });
  });

  test('walks at random without a crash: each job ends safe or stands at a card, and its log is borne out', {
    timeout: 120_000,
  }, () => {
    for (let seed = 1; seed <= WALKS; seed += 1) {
      const chance = random(seed);
      const run = atHub();
      for (let acts = 0; acts < 40 && run.job.status === 'open'; acts += 1) walk(run, chance);
      expect(auditJob(run.entries, run.compiled)).toEqual([]);
      const total = [...adviceFor(run.job, 'in service').belief.weights].reduce((sum, one) => sum + one, 0);
      expect(total).toBeCloseTo(1, 9);
    }
  });
});

/** One act: at a hub any choice that stands on it, at a check any answer; else as the builder answers. */
function walk(run: JobRun, chance: () => number): void {
  const step = findTheFault.steps[run.job.step];
  const field = step?.kind === 'reading' ? step.asks[0] : undefined;
  if (field?.type !== 'choice' || (field.name !== 'hubChoice' && field.name !== 'found')) {
    playOne(run);
    return;
  }
  const { value = '' } = field.choices[Math.floor(chance() * field.choices.length)] ?? {};
  const done = codeOf(() => answer(run, { [field.name]: value }));
  expect(['done', 'TRB-001']).toContain(done);
  if (done !== 'done') expect(field.name).toBe('hubChoice');
}
