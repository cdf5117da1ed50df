import { describe, expect, test } from 'vitest';
import { auditJob } from '../../../procedures/audit.ts';
import { textsOf } from '../../../procedures/check.ts';
import { PLUNGER_TRIES_MAX } from '../../../procedures/rules/relay.ts';
import { jobOn, type Overrides, outcomesOf, pathOf, play } from '../../builders/answers.ts';
import {
  AIR_AS_IT_SHOULD,
  EMPTY,
  FULL,
  POSITIONER_SHEET,
  repairNamed,
  SWINGS,
  swing,
} from '../../builders/own-air-valve.ts';
import { aSheet } from '../../builders/sheets.ts';

const relay = repairNamed('relay-restriction');
const playing = (overrides: Overrides, to?: string) =>
  play(jobOn(relay, { sheet: POSITIONER_SHEET, place: 'line' }), {
    overrides: { ...AIR_AS_IT_SHOULD, ...overrides },
    ...(to === undefined ? {} : { to }),
  });
const PLUGGED: Overrides = { swingFound: EMPTY, pressPlunger: SWINGS };

describe('[SAF-09] A relay with a plugged restriction', () => {
  test('is cured by its plunger with the air on: the gauge swings, the drain is looked at, and it strokes', () => {
    const run = playing(PLUGGED);
    expect(run.job.closedAs).toBe('done');
    expect(outcomesOf(run.job, 'swingFound')).toEqual(['dead low']);
    expect(outcomesOf(run.job, 'pressPlunger')).toEqual(['answers']);
    expect(pathOf(run.job)).not.toContain('shutSupply');
    expect(pathOf(run.job).indexOf('blowDown')).toBeGreaterThan(pathOf(run.job).indexOf('pressPlunger'));
    expect(outcomesOf(run.job, 'strokeLeft')).toEqual(['inside']);
    expect(run.job.situation.states).toMatchObject({ supplyLock: 'off', bypass: 'shut', loop: 'automatic' });
    expect(auditJob(run.entries, run.compiled)).toEqual([]);
  });

  test('whose plunger does not clear it is opened with the air off, locked and read at zero', () => {
    const run = playing({ ...PLUGGED, pressPlunger: EMPTY, swingLeft: SWINGS });
    const path = pathOf(run.job);
    expect(run.job.closedAs).toBe('done');
    expect(path.filter((step) => step === 'pressPlunger')).toHaveLength(PLUNGER_TRIES_MAX);
    expect(outcomesOf(run.job, 'pressPlunger').at(-1)).toBe('tries used up');
    expect(path.indexOf('actuatorZero')).toBeLessThan(path.indexOf('relayOut'));
    expect(path.indexOf('supplyBack')).toBeGreaterThan(path.indexOf('relayIn'));
    expect(outcomesOf(run.job, 'swingLeft')).toEqual(['answers']);
    expect(auditJob(run.entries, run.compiled)).toEqual([]);
  });

  test('is opened while its supply is locked and no air is on the actuator', () => {
    const { job } = playing({ ...PLUGGED, plungerThere: { choice: 'none' } }, 'relayOut');
    expect(job.situation.states).toMatchObject({
      supplyAir: 'isolated',
      supplyLock: 'on',
      signalAir: 'isolated',
    });
  });

  test.each([
    ['spoiled', 'yes', 'restrictionNew'],
    ['free', 'yes', 'restrictionFree'],
    ['plugged', 'no', 'relayNew'],
    ['plugged', 'yes', 'cleanRestriction'],
  ])('with a hole that is %s, relay sound: %s, goes on at %s', (restrictionFound, relaySound, step) => {
    const opened = { ...PLUGGED, plungerThere: { choice: 'none' } };
    const run = playing({ ...opened, relayOut: { restrictionFound, relaySound }, swingLeft: SWINGS });
    expect(pathOf(run.job)).toContain(step);
    expect(run.job.closedAs).toBe('done');
  });

  // A plugged nozzle stands at supply, a plugged restriction at nothing; by hand on 20 psi: 80 % are 16 psi.
  test.each([
    [swing(20, 0.5), 'answers'],
    [EMPTY, 'dead low'],
    [FULL, 'dead high'],
    [swing(12, 2), 'in part'],
    [swing(15.5, 0), 'in part'],
    [swing(4, 0, 5), 'no supply'],
  ])('tells by supply and output %j: %s', (read, outcome) => {
    const { job } = playing({ swingFound: read }, stepAfter(outcome));
    expect(outcomesOf(job, 'swingFound')).toEqual([outcome]);
  });

  test('that loses its supply under the plunger is not called plugged', () => {
    const { job } = playing({ ...PLUGGED, pressPlunger: swing(3, 0, 4) }, 'supplyLost');
    expect(outcomesOf(job, 'pressPlunger')).toEqual(['no supply']);
  });

  test.each([
    [{ drainFound: 'wet' }, 'dirty'],
    [{ drainFound: 'dirt' }, 'dirty'],
    [{ blowDownAgreed: 'no' }, 'not agreed'],
    [{}, 'clean'],
  ])('has the air looked at before it goes back: %j is %s', (blowDown, outcome) => {
    const { job } = playing({ ...PLUGGED, blowDown: [blowDown, {}] });
    expect(outcomesOf(job, 'blowDown')[0]).toBe(outcome);
    expect(job.closedAs).toBe('done');
  });

  test('is never told to be drilled or made larger', () => {
    const told = Object.values(relay.definition.steps).flatMap((step) =>
      step.kind === 'end' || !('do' in step) ? [] : [...(step.do ?? [])],
    );
    expect(told.filter((line) => /drill|ream|enlarge|bigger|thicker/i.test(line))).toEqual([]);
    const { cleanRestriction } = relay.definition.steps;
    if (cleanRestriction === undefined || cleanRestriction.kind === 'end') throw new Error('it has no wire');
    expect(textsOf(cleanRestriction).join(' ')).toContain('Never a drill');
  });
});

test('A relay is cleaned on a valve with a pneumatic positioner, in its line', () => {
  expect(relay.whyNot(POSITIONER_SHEET, 'line')).toBeNull();
  expect(relay.whyNot(POSITIONER_SHEET, 'bench')).toContain('no air of its own');
  expect(relay.whyNot(aSheet(), 'line')).toContain('no positioner');
  expect(relay.whyNot(aSheet({ positioner: 'electropneumatic' }), 'line')).toContain('electric cover');
});

function stepAfter(outcome: string): string {
  const { swingFound } = relay.definition.steps;
  if (swingFound?.kind !== 'reading') throw new Error('nothing is tried');
  const to = swingFound.ways[outcome]?.to;
  if (typeof to !== 'string') throw new Error(`nothing follows ${outcome}`);
  return to;
}
