import { describe, expect, test } from 'vitest';
import { auditJob } from '../../../procedures/audit.ts';
import { textsOf } from '../../../procedures/check.ts';
import { OVERHAUL } from '../../../procedures/overhaul/procedures.ts';
import { LIVE_ROUNDS_MAX } from '../../../procedures/rules/live-gland.ts';
import { jobOn, type Overrides, outcomesOf, pathOf, play } from '../../builders/answers.ts';
import { aSheet } from '../../builders/sheets.ts';

const served = OVERHAUL.find(({ definition }) => definition.id === 'live-gland');
if (served === undefined) throw new Error('it is not served');
const gland = served;

const path = (overrides: Overrides) => play(jobOn(gland), { overrides }).job;

describe('[SAF-09] The gland of a live valve', () => {
  test('is tightened until it is dry, settles, and the valve goes back', () => {
    const run = play(jobOn(gland), {
      overrides: { glandAfter: [{ glandLeakNow: 'less' }, { glandLeakNow: 'dry' }] },
    });
    expect(run.job.closedAs).toBe('done');
    expect(outcomesOf(run.job, 'glandAfter')).toEqual(['still leaks', 'dry']);
    expect(pathOf(run.job)).toContain('glandSettles');
    expect(auditJob(run.entries, run.compiled)).toEqual([]);
  });

  test('is stroked after each round, before the next', () => {
    const after = Array.from({ length: 3 }, () => ({ glandLeakNow: 'less' }));
    const job = path({ glandAfter: [...after, { glandLeakNow: 'dry' }] });
    const rounds = pathOf(job).filter((step) => step === 'glandRound' || step === 'glandAfter');
    expect(rounds.filter((step, at) => step === rounds[at - 1])).toEqual([]);
  });

  test('is left once it has had as many rounds as rings give', () => {
    const job = path({ glandAfter: { glandLeakNow: 'less' } });
    expect(pathOf(job).filter((step) => step === 'glandRound')).toHaveLength(LIVE_ROUNDS_MAX);
    expect(pathOf(job)).toContain('glandNoRoom');
  });

  // By hand: 10 % of a span of 12 psi are 1.2 psi between up and down.
  test('is left as soon as the packing grips: 1.2 psi between up and down', () => {
    const job = path({ glandAfter: { glandUpPa: '9.7 psi', glandDownPa: '8.5 psi', glandLeakNow: 'less' } });
    expect(outcomesOf(job, 'glandAfter')).toEqual(['too tight']);
    expect(pathOf(job).at(-3)).toBe('glandTooTight');
  });

  test('is not touched where it grips already, jets, or is not sound', () => {
    const before = path({ glandBefore: { glandUpPa: '10 psi', glandDownPa: '8 psi' } });
    const jets = path({ glandLook: { glandLeak: 'jets' } });
    const wasted = path({ glandLook: { studsSound: 'no' } });
    const spent = path({ glandLook: { followerRoom: 'no' } });
    for (const job of [before, jets, wasted, spent]) expect(pathOf(job)).not.toContain('glandRound');
  });

  test('is never told to be loosened', () => {
    const told = Object.values(gland.definition.steps).flatMap((step) =>
      step.kind === 'end' || !('do' in step) ? [] : [...(step.do ?? []), step.title],
    );
    expect(told.filter((text) => /loosen|slacken|back off|undo/i.test(text))).toEqual([]);
    const round = gland.definition.steps.glandRound;
    if (round === undefined || round.kind === 'end') throw new Error('there is no round');
    expect(textsOf(round).join(' ')).toContain('never loosen');
  });
});

test('Only a live valve with packing and one actuator pressure is offered it', () => {
  expect(gland.whyNot(aSheet(), 'line')).toBeNull();
  expect(gland.whyNot(aSheet(), 'bench')).toContain('nothing is live');
  expect(gland.whyNot(aSheet({ bellowsSeal: true }), 'line')).toContain('bellows');
  expect(gland.whyNot(aSheet({ actuatorKind: 'piston' }), 'line')).toContain('for a diaphragm');
  const cylinder = aSheet({ actuatorKind: 'piston', springHeldBy: 'no spring' });
  expect(gland.whyNot(cylinder, 'line')).toContain('two pressures');
});
