/** What the rules of energy isolation ask of the stroke check as a whole: tried on the real procedure, in memory. */
import { describe, expect, test } from 'vitest';
import { advance } from '../../procedures/advance.ts';
import { faultsOf } from '../../procedures/check.ts';
import { holdEvidence } from '../../procedures/hold.ts';
import type { Job } from '../../procedures/job.ts';
import { printSheet } from '../../procedures/sheet-print.ts';
import { CONTRADICTIONS } from '../../procedures/valve-sheet/contradiction-codes.ts';
import { FIELDS } from '../../procedures/valve-sheet/fields.ts';
import type { Definition, EnergyControl } from '../../procedures/vocabulary.ts';
import type { ActionClass } from '../../safety/action-classes.ts';
import type { AnyState, ConditionId } from '../../safety/conditions.ts';
import { lacks } from '../../safety/interlock.ts';
import { stateThatCounts } from '../../safety/situation.ts';
import {
  act,
  answer,
  around,
  COMPILED,
  type JobRun,
  jobAt,
  openJob,
  playTo,
  pointsOf,
  scripted,
  sign,
} from '../builders/jobs.ts';
import { withStep } from '../builders/mutants.ts';
import { refusalOf } from '../builders/refusals.ts';
import { aSheet, aSheetOf } from '../builders/sheets.ts';
import { strokeScript, textsAt } from '../builders/stroke-script.ts';

const { definition } = COMPILED;
const TWO_FEEDS = aSheetOf({ secondSupplyHighPa: '20', secondSupplyPoint: 'IA-214-2' });
const NO_BYPASS = aSheetOf({ bypassPoint: '' });

/** What the interlock has against an act now. */
function against(run: JobRun, action: ActionClass): readonly ConditionId[] {
  const { job, nowMs } = run;
  const envelope = job.envelope === null ? null : { ...job.envelope, work: [action] };
  const standing = { job: job.id, situation: job.situation, envelope, points: pointsOf(job), nowMs };
  return lacks(action, standing).map((lack) => lack.condition);
}

describe('A procedure', () => {
  test('is not served without its use, how it isolates, who locks and how it is tried (EI-01)', () => {
    for (const part of ['use', 'isolation', 'locks', 'verification'] as const) {
      const energyControl: EnergyControl = { ...definition.energyControl, [part]: ' ' };
      expect(faultsOf({ ...COMPILED, definition: { ...definition, energyControl } })).toEqual([
        `the procedure does not state its ${part}`,
      ]);
      expect(printSheet(definition)).toContain(definition.energyControl[part]);
    }
    const { energyControl: _, ...older } = definition;
    expect(faultsOf({ ...COMPILED, definition: older as Definition })).toHaveLength(4);
  });

  test('locks a point and shows its energy gone in two cards, never in one (EI-07)', () => {
    const step = definition.steps.shutSupply;
    if (step?.kind !== 'reading' || step.ways.kept === undefined) throw new Error('no such card');
    const sets = { supplyLock: 'on', supplyAir: 'isolated' } as const;
    const both = { ...step, ways: { kept: { ...step.ways.kept, sets } } };
    expect(faultsOf({ ...COMPILED, definition: withStep(definition, 'shutSupply', both) })).toContain(
      'shutSupply: "kept" locks and shows safe in one',
    );
  });

  test('frees a spring by its adjuster or the long bolts alone, and opens no case by a class for the adjuster', () => {
    const faultsWith = (id: string, change: object) =>
      faultsOf({
        ...COMPILED,
        definition: withStep(definition, id, { ...definition.steps[id], ...change } as never),
      }).join('\n');
    const look = definition.steps.springLook;
    if (look?.kind !== 'reading') throw new Error('no such card');
    const freed = { ...look.ways, yes: { ...look.ways.yes, sets: { spring: 'released' } } };
    expect(faultsWith('springLook', { ways: freed })).toContain('the spring is freed by its adjuster');
    for (const text of ['Loosen the case bolts.', 'Open the case.', 'Lift the upper case half.'])
      expect(faultsWith('windAdjuster', { do: [text] }), text).toContain('wants the class loosenCaseBolts');
    expect(faultsWith('setIndicator', { action: 'windAdjusterOnTestAir' })).toContain(
      'wants the class setIndicatorOnTestAir',
    );
    expect(faultsWith('turnStem', { action: 'strokeByTestAir' })).toContain('wants the class turnPlugStem');
  });

  test('speaks of published guidance where it names HSG253, never of law (EI-29)', () => {
    const texts = [
      printSheet(definition),
      ...FIELDS.map((field) => field.help ?? ''),
      ...Object.values(CONTRADICTIONS).map(({ why }) => why),
    ];
    const naming = texts.filter((text) => text.includes('HSG253'));
    expect(naming.length).toBeGreaterThan(0);
    for (const text of naming) {
      expect(text).toContain('guidance');
      expect(text).not.toMatch(/\b(law|regulation|must by)\b/i);
    }
  });
});

describe('The order prepare, shut down, isolate and lock, relieve, verify, work (EI-02)', () => {
  const ORDER = ['loopManual', 'openBypass', 'shutInlet', 'drainInlet', 'breakSignalLine', 'connectAir'];
  const pairs = ORDER.slice(0, -1).map((before, at) => ({ before, later: ORDER[at + 1] ?? '' }));

  test.each(pairs)('$later is refused while $before is not done, wherever the machine stands', (of) => {
    const run = jobAt(of.before);
    const job: Job = { ...run.job, step: of.later };
    const given = textsAt(strokeScript(job.sheet), { step: of.later, row: 0 });
    const tried = () =>
      advance(job, { kind: 'answer', place: job.place, step: of.later, given }, around({ ...run, job }));
    if (of.before === 'loopManual') {
      // Consent is there; what is refused is the next card, since the job does not stand on it.
      const asked = { kind: 'answer', place: run.job.place, step: of.later, given } as const;
      expect(refusalOf(() => advance(run.job, asked, around(run))).code).toBe('JOB-003');
      return;
    }
    expect(refusalOf(tried).code).toBe('ILK-001');
  });
});

describe('Two air feeds are two (EI-05)', () => {
  test('each is shut, locked and shown at zero by itself, before anybody signs', () => {
    const run = jobAt('keptAir', { sheet: TWO_FEEDS });
    expect(run.job.locks).toMatchObject({
      supplyLock: { point: 'IA-214-1', lock: '43' },
      secondSupplyLock: { point: 'IA-214-2', lock: '44' },
    });
    expect(run.job.situation.states).toMatchObject({ supplyAir: 'isolated', secondSupply: 'isolated' });
  });

  test('the lock of a second feed is signed for where the valve has one, and not spoken of where it has none', () => {
    for (const [sheet, isSpokenOf] of [
      [TWO_FEEDS, true],
      [aSheet(), false],
    ] as const) {
      const run = jobAt('signReturn', { sheet });
      const step = run.compiled.definition.steps.signReturn;
      if (step?.kind !== 'hold') throw new Error('a hold');
      const spokenOf = holdEvidence(step, run.job).map(({ condition }) => condition);
      expect(spokenOf).toContain('supplyLock');
      expect(spokenOf.includes('secondSupplyLock')).toBe(isSpokenOf);
    }
  });

  test('one of them live again refuses hold and work, and one lock gone from the site does', () => {
    const held = jobAt('holdWork', { sheet: TWO_FEEDS });
    const live = { ...held.job.situation.states, secondSupply: 'live' as const };
    held.job = { ...held.job, situation: { states: live, lapsed: {} } };
    expect(refusalOf(() => sign(held)).what).toBe('Not shown safe: Second air feed.');
    const run = jobAt('connectAir', { sheet: TWO_FEEDS });
    expect(against(run, 'connectTestAir')).toEqual([]);
    const { secondSupplyLock: _, ...others } = pointsOf(run.job);
    run.points = others;
    expect(refusalOf(() => answer(run, { peopleClear: 'yes' })).what).toContain(
      'Second air feed counts as live',
    );
  });

  test('a lapse of one is not a lapse of the other', () => {
    const run = jobAt('connectAir', { sheet: TWO_FEEDS });
    const lapsed = { secondSupply: 'age' as const };
    run.job = { ...run.job, situation: { ...run.job.situation, lapsed } };
    expect(against(run, 'connectTestAir')).toEqual(['secondSupply']);
    expect(stateThatCounts(run.job.situation, 'supplyAir')).toBe('isolated');
  });

  test('the whole job gives both back', () => {
    const run = playTo(openJob({ sheet: TWO_FEEDS }), 'done');
    expect(run.job.closedAs).toBe('done');
    expect(run.job.situation.states).toMatchObject({ supplyLock: 'off', secondSupplyLock: 'off' });
    expect(run.job.answers.map((one) => one.step)).toContain('secondBack');
  });

  test('a feed that the sheet does not have stops the work until the sheet is right', () => {
    const run = jobAt('noSecondFeed');
    answer(run, { oneFeed: 'no' });
    expect(run.job.step).toBe('secondFound');
    expect(run.job.situation.states.secondSupply).toBe('live');
  });

  test('every volume that keeps air counts by itself', () => {
    const run = jobAt('keptAir', { sheet: aSheet({ volumeTank: true, tankVolumeM3: 0.01, lockUp: true }) });
    answer(run, { trappedAir: 'isolated', lockUpAir: 'live', oppositeAir: 'absent' });
    expect(run.job.step).toBe('keptAirLeft');
    answer(run, { choice: 'again' });
    answer(run, { trappedAir: 'isolated', lockUpAir: 'isolated', oppositeAir: 'absent' });
    expect(run.job.situation.states).toMatchObject({
      trappedAir: 'isolated',
      lockUpAir: 'isolated',
      oppositeAir: 'absent',
    });
  });
});

describe('What is absent', () => {
  test('is recorded by a person with name and time, never assumed', () => {
    const run = jobAt('holdWork');
    const { states } = run.job.situation;
    for (const id of Object.keys(states) as ConditionId[]) {
      const state: AnyState = states[id];
      if (state !== 'absent') continue;
      const note = run.job.evidence[id];
      expect(note, id).toBeDefined();
      expect(note?.person, id).not.toBe('');
      expect(note?.at, id).toMatch(/^2026-/);
    }
    expect(Object.values(openJob().job.situation.states)).not.toContain('absent');
  });
});

describe('Onto the bypass', () => {
  test('names consent, a watcher, where the loop stood, and how far the bypass is open', () => {
    const run = jobAt('shutInlet');
    expect(run.job.words).toMatchObject({
      operator: 'board operator',
      watchedBy: 'board operator',
      loopOutput: '48 %',
      bypassTag: 'HV-214C',
      bypassPosition: '3 turns',
    });
    expect(run.job.situation.states).toMatchObject({ loop: 'manual', commands: 'isolated', bypass: 'open' });
  });

  test.each(['watchedBy', 'operator'])('is not begun without %s', (name) => {
    const run = jobAt('consent');
    const given = { ...textsAt(strokeScript(run.job.sheet), { step: 'consent', row: 0 }), [name]: '' };
    expect(refusalOf(() => answer(run, given)).code).toBe('REA-008');
  });

  test('with an open bypass that does not carry the flow, nothing is blocked in', () => {
    const run = jobAt('openBypass');
    const given = textsAt(strokeScript(run.job.sheet), { step: 'openBypass', row: 0 });
    answer(run, { ...given, processHeld: 'no' });
    expect(run.job.step).toBe('bypassUpset');
    expect(run.job.situation.states.bypass).toBe('open');
    expect(against(run, 'shutBlockValves')).toEqual(['processFlow']);
    expect(against(run, 'shutSupply')).toEqual(['processFlow']);
  });

  test('without a bypass the state of the plant is agreed, and it is recorded with whom', () => {
    const run = jobAt('noBypass', { sheet: NO_BYPASS });
    answer(run, { plantState: 'neither', plantSaid: 'needs the flow', plantAgreedWith: 'board operator' });
    expect(run.job.step).toBe('plantNotAgreed');
    expect(against(run, 'shutBlockValves')).toContain('processFlow');
    answer(run, { choice: 'again' });
    expect(refusalOf(() => answer(run, { plantState: 'line out', plantSaid: 'stands' })).code).toBe(
      'REA-008',
    );
    answer(run, { plantState: 'line out', plantSaid: 'unit stands', plantAgreedWith: 'shift supervisor' });
    expect(run.job.step).toBe('shutInlet');
    expect(run.job.words.plantAgreedWith).toBe('shift supervisor');
    expect(against(run, 'shutBlockValves')).toEqual([]);
  });
});

describe('On the way back', () => {
  test('no air and no process returns before tools are out and people clear, after the last work (EI-10)', () => {
    for (const step of ['supplyBack', 'unlockBlocks', 'openBlocks']) {
      const run = jobAt(step);
      const states = { ...run.job.situation.states, clear: 'not looked at' as const };
      run.job = { ...run.job, situation: { states, lapsed: {} } };
      expect(refusalOf(() => scripted(run)).what, step).toContain('Tools out and people clear');
    }
    const working = jobAt('contactFound');
    expect(working.job.situation.states.clear).toBe('not looked at');
  });

  test('people are told after the locks came off and before anything is opened (EI-11)', () => {
    const run = jobAt('unlockBlocks');
    scripted(run);
    expect(run.job.situation.states).toMatchObject({ inletLock: 'off', outletLock: 'off', told: 'nobody' });
    expect(against(run, 'restoreProcess')).toEqual(['told']);
    answer(run, { toldWho: 'board operator', peopleClear: 'yes' });
    expect(run.job.step).toBe('openBlocks');
    expect(against(run, 'restoreProcess')).toEqual([]);
  });

  test('a word that was given before a pause is given again', () => {
    const run = jobAt('openBlocks');
    act(run, { kind: 'park', reason: 'meal' });
    act(run, { kind: 'take-up' });
    expect(refusalOf(() => scripted(run)).what).toContain('People told counts as nobody, because of parked');
    expect(
      refusalOf(() => act(run, { kind: 'prove-again', given: { asLeft: 'yes' } })).fields,
    ).toHaveProperty('toldAgain');
    act(run, { kind: 'prove-again', given: { asLeft: 'yes', toldAgain: 'board operator' } });
    scripted(run);
    expect(run.job.step).toBe('shutBypass');
  });
});

describe('By radio', () => {
  test('every reading may name who read it; who wrote it stands on the line', () => {
    const run = jobAt('shutSupply');
    const given = textsAt(strokeScript(run.job.sheet), { step: 'shutSupply', row: 0 });
    answer(run, { ...given, readBy: 'field operator', signalBeforePaReadBy: 'helper at the valve' });
    const line = run.job.answers.at(-1);
    expect(line?.person).toBe('p-technician');
    expect(line?.readings.map(({ field, readBy }) => [field, readBy])).toEqual([
      ['supplyBeforePa', 'field operator'],
      ['signalBeforePa', 'helper at the valve'],
    ]);
  });
});
