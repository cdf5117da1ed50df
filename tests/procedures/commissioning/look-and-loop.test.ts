import { describe, expect, test } from 'vitest';
import { auditJob } from '../../../procedures/audit.ts';
import { CYCLE_POINTS, pointField } from '../../../procedures/rules/own-stroke.ts';
import { PROCEDURES } from '../../../procedures/served.ts';
import type { ServedProcedure } from '../../../procedures/served-procedure.ts';
import type { ValveSheet } from '../../../procedures/valve-sheet/sheet.ts';
import { jobOn, type Overrides, outcomesOf, pathOf, play } from '../../builders/answers.ts';
import { aSheetOf } from '../../builders/sheets.ts';

function served(id: string): ServedProcedure {
  const found = PROCEDURES.find(({ definition }) => definition.id === id);
  if (found === undefined) throw new Error(`${id} is not served`);
  return found;
}

const SHEET = aSheetOf({
  positioner: 'pneumatic',
  positionerRisingSignalLoads: 'bottom',
  positionerRelays: 'one',
  supplyLowPa: '18',
  supplyHighPa: '22',
});
const SUPPLY = { supplyReadPa: '20 psi', supplyLowestPa: '19 psi' };
const travels = (off = 0) =>
  Object.fromEntries(
    CYCLE_POINTS.map((point) => [pointField(point, 'travel'), `${Math.max(0, point.percent - off)} %`]),
  );

function playOf(
  id: string,
  overrides: Overrides,
  { to, sheet = SHEET }: { to?: string; sheet?: ValveSheet } = {},
) {
  const run = jobOn(served(id), { sheet, place: 'line' });
  return play(run, { overrides, ...(to === undefined ? {} : { to }) });
}

/** A tenth up, without overshoot. */
const A_STEP = { stepFromM: '45 %', stepFurthestM: '55 %', stepRestM: '55 %' };

/** The straight way of each, and what it has to show at its end. */
const STRAIGHT: readonly (readonly [string, Overrides])[] = [
  ['positioner-calibration', { supplyRead: SUPPLY, strokeFound: travels(), stepIt: A_STEP }],
  ['soap-tests', { soapBody: {}, soapAir: {} }],
  ['loop-check', { loopStroke: travels() }],
  ['air-supply', { supplyRead: SUPPLY, supplyMoving: SUPPLY, blowDown: { drainCame: 'clean' } }],
  ['first-commissioning', {}],
];

describe('[SAF-09] Looking, setting and checking in the line', () => {
  test.each(STRAIGHT)(
    '%s is done whole, with nothing locked, nothing signed and nothing left',
    (id, overrides) => {
      const run = playOf(id, overrides);
      expect(run.job.closedAs).toBe('done');
      expect(run.job.holds).toEqual([]);
      expect(run.job.situation.states).toMatchObject({
        inletLock: 'off',
        supplyLock: 'off',
        consent: 'none',
      });
      expect(auditJob(run.entries, run.compiled)).toEqual([]);
    },
  );

  test.each(STRAIGHT)('%s leaves a locked valve alone', (id) => {
    const run = playOf(id, { noLock: { notLocked: 'no' }, lockedByOthers: { choice: 'stop' } });
    const beyond = pathOf(run.job).filter((step) => !['needs', 'noLock', 'lockedByOthers'].includes(step));
    expect([run.job.closedAs, beyond]).toEqual(['stopped', []]);
  });

  test.each(['loop-check', 'air-supply', 'first-commissioning'])('%s is not done on the bench', (id) => {
    expect(served(id).whyNot(SHEET, 'bench')).not.toBeNull();
  });
});

describe('Soap', () => {
  test('that bubbles at the gland is told to the operator, and no nut is touched', () => {
    const run = playOf('soap-tests', { soapBody: { glandBubbles: 'bubbles' } }, { to: 'bodyLeaks' });
    expect(outcomesOf(run.job, 'soapBody')).toEqual(['some']);
    for (const step of Object.values(served('soap-tests').definition.steps))
      expect('action' in step ? step.action : undefined).not.toBe('tightenLiveGland');
  });

  test.each([
    ['9 psi', '9 psi', 'steady'],
    ['9 psi', '7 psi', 'falls'],
  ])('an actuator shut in at %s that reads %s later is %s', (shutInStartPa, shutInEndPa, outcome) => {
    const run = playOf('soap-tests', {
      shutIn: { shutInStartPa },
      shutInEnd: { shutInStartPa, shutInEndPa },
      actuatorLeaks: { choice: 'leave', reason: 'for the overhaul' },
    });
    expect(outcomesOf(run.job, 'shutInEnd').at(0)).toBe(outcome);
  });
});

describe('A loop', () => {
  test('that moves another valve stops at once', () => {
    const run = playOf('loop-check', { thisValve: { rightValve: 'no' } }, { to: 'wrongValve' });
    expect(pathOf(run.job)).not.toContain('loopStroke');
  });

  test('whose screen says otherwise than the stem does not go back in silence', () => {
    const run = playOf(
      'loop-check',
      { loopStroke: travels(), feedback: { feedbackSays: 'wrong' } },
      { to: 'feedbackWrong' },
    );
    expect(run.job.step).toBe('feedbackWrong');
  });
});

describe('Air', () => {
  test.each(['water', 'oil', 'dirt'])('that carries %s is followed to its source', (drainCame) => {
    const run = playOf('air-supply', { supplyRead: SUPPLY, blowDown: { drainCame } }, { to: 'airDirty' });
    expect(outcomesOf(run.job, 'blowDown')).toEqual(['no']);
  });

  test('of a cylinder without a range on its sheet is held to the usual one, and says so', () => {
    const sheet = { ...SHEET, actuatorKind: 'piston', supplyLowPa: null, supplyHighPa: null } as const;
    const run = playOf('air-supply', { supplyRead: { supplyReadPa: '30 psi' } }, { sheet, to: 'supplyOut' });
    expect(outcomesOf(run.job, 'supplyRead')).toEqual(['low']);
  });
});
