import { describe, expect, test } from 'vitest';
import { auditJob } from '../../../procedures/audit.ts';
import { comesNext } from '../../../procedures/comes-next.ts';
import { OVERHAUL } from '../../../procedures/overhaul/procedures.ts';
import { sayFigure } from '../../../procedures/say.ts';
import { jobOn, outcomesOf, pathOf, play } from '../../builders/answers.ts';
import { act } from '../../builders/jobs.ts';
import { aSheet, aSheetOf } from '../../builders/sheets.ts';

const served = OVERHAUL.find(({ definition }) => definition.id === 'packing-renewal');
if (served === undefined) throw new Error('it is not served');
const packing = served;

const CASE_HELD = aSheetOf({ springHeldBy: 'case', adjusterThread: '' });

describe('[SAF-09] Packing renewed', () => {
  test.each(['line', 'bench'] as const)(
    'goes its straight way with the spring freed by its adjuster, %s',
    (place) => {
      const run = play(jobOn(packing, { place }));
      const path = pathOf(run.job);
      expect(run.job.closedAs).toBe('done');
      expect(path.indexOf('freeSpring')).toBeLessThan(path.indexOf('connectorOff'));
      expect(path.indexOf('connectorOff')).toBeLessThan(path.indexOf('packingOut'));
      expect(outcomesOf(run.job, 'freeSpring')).toEqual(['free']);
      expect(outcomesOf(run.job, 'springBack')).toEqual(['as found']);
      expect(outcomesOf(run.job, 'asLeftVerdict')).toEqual(['inside']);
      expect(path.includes('hotCheck')).toBe(place === 'line');
      expect(auditJob(run.entries, run.compiled)).toEqual([]);
    },
  );

  test('joins the stems on held air where the case holds the spring, and never winds an adjuster', () => {
    const { job } = play(jobOn(packing, { sheet: CASE_HELD }));
    expect(job.closedAs).toBe('done');
    expect(pathOf(job)).toContain('joinHeld');
    expect(pathOf(job)).not.toContain('freeSpring');
    expect(pathOf(job)).not.toContain('springBack');
  });

  test('takes the load of a case-held spring off the connector by held air before its screws are loosened (EI-44)', () => {
    const run = play(jobOn(packing, { sheet: CASE_HELD }), { to: 'connectorHeld' });
    expect(run.job.situation.states).toMatchObject({ signalAir: 'held', plug: 'off seat', closure: 'shut' });
    const { job } = play(run);
    const path = pathOf(job);
    const at = ['unloadConnector', 'connectorHeld', 'bleedForWork', 'rigOff', 'packingOut'].map((step) =>
      path.indexOf(step),
    );
    expect(at).toEqual([...at].sort((one, other) => one - other));
    expect(path).not.toContain('connectorOff');
  });

  test('leaves the connector on where no air moves its stem off its end, and names the spring next', () => {
    const onItsSeat = { heldTravelM: '0 %' };
    const { job } = play(jobOn(packing, { sheet: CASE_HELD }), {
      overrides: {
        unloadConnector: onItsSeat,
        connectorLoaded: { choice: 'cannot', reason: 'seized' },
      },
    });
    expect(outcomesOf(job, 'unloadConnector')).toEqual(['too near its seat']);
    expect(pathOf(job)).not.toContain('connectorHeld');
    expect(job.closedAs).toBe('done');
    expect(comesNext(job, packing.definition)).toEqual(['spring-change']);
  });

  test('asks after a stop under air whether the connector is off already', () => {
    const run = play(jobOn(packing, { sheet: CASE_HELD }), { to: 'connectorHeld' });
    act(run, { kind: 'make-safe', reason: 'a leak at the hose' });
    play(run, { overrides: { whereAir: { choice: 'apart' } }, to: 'partedYet' });
    play(run, { to: 'connectorHeld' });
    expect(run.job.situation.states.signalAir).toBe('held');
  });

  test('does not touch the connector before the spring is free', () => {
    const stiff = play(jobOn(packing), {
      overrides: { freeSpring: { springSlack: 'no' } },
      to: 'springNotFree',
    });
    expect(stiff.job.situation.states.spring).toBe('contained');
    const soon = { adjusterTurnsOff: '1.5', springSlack: 'yes' };
    const early = play(jobOn(packing), { overrides: { freeSpring: soon }, to: 'springNotFree' });
    expect(outcomesOf(early.job, 'freeSpring')).toEqual(['too few turns']);
    // By hand: 300 lbf less 1.5 turns of 88.9 lbf.
    expect(sayFigure('springForceLeft', early.job)).toBe('167 lbf');
  });

  test('asks after a ring that did not come out', () => {
    const { job } = play(jobOn(packing), { overrides: { packingOut: { ringsOut: '4' } } });
    expect(outcomesOf(job, 'packingOut')).toEqual(['differs']);
    expect(pathOf(job)).toContain('ringsDiffer');
    expect(job.closedAs).toBe('done');
  });

  test('has the gland eased and read again where the stroke is outside as left', () => {
    const rough = {
      overrides: { contactLeft: [{ moves: 'no' }, {}], notMovingLeft: { choice: 'on', reason: 'x' } },
    };
    const { job } = play(jobOn(packing), {
      overrides: { ...rough.overrides, glandAgain: [{ choice: 'same' }, { choice: 'ease' }] },
    });
    expect(pathOf(job)).toEqual(expect.arrayContaining(['leftOutside', 'glandEase', 'glandShut']));
    expect(job.closedAs).toBe('done');
  });

  test('is left open to a stop at every card between spring and stroke, and goes on from there', () => {
    const run = play(jobOn(packing), { to: 'ringsIn' });
    expect(run.job.situation.states).toMatchObject({ closure: 'open', spring: 'released' });
  });

  test('hands a gland that weeps hot on to the job on the live gland', () => {
    const { job } = play(jobOn(packing), { overrides: { hotCheck: { glandHot: 'weeps' } }, to: 'hotGland' });
    expect(outcomesOf(job, 'hotCheck')).toEqual(['gland weeps']);
  });
});

describe('Packing is renewed', () => {
  test('on no bellows and no piston', () => {
    expect(packing.whyNot(aSheet(), 'line')).toBeNull();
    expect(packing.whyNot(aSheet({ bellowsSeal: true }), 'bench')).toContain('bellows');
    expect(packing.whyNot(aSheet({ actuatorKind: 'piston' }), 'bench')).toContain('for a diaphragm');
  });
});
