import { describe, expect, test } from 'vitest';
import { proveAgainFields } from '../../../procedures/actions/prove-again.ts';
import { fieldsToReadAgain } from '../../../procedures/actions/read-again.ts';
import { holdEvidence } from '../../../procedures/hold.ts';
import type { ConditionId } from '../../../safety/conditions.ts';
import { jobOn, type Play, play } from '../../builders/answers.ts';
import { PSI_PA } from '../../builders/gear.ts';
import {
  act,
  around,
  COMPILED,
  type JobRun,
  OTHER_TECHNICIAN,
  SUPERVISOR,
  sign,
  TECHNICIAN,
} from '../../builders/jobs.ts';
import { withStep } from '../../builders/mutants.ts';
import { atHoldWith } from '../../builders/points.ts';
import { refusalOf } from '../../builders/refusals.ts';

const AT_VENT = { supplyAfterPa: '', method: 'vent', flowFirst: 'no flow', flowAgain: 'no flow' };

/** A stroke check whose hold wants these read twice, played to that hold or to a card before it. */
function playedTo(
  readTwice: readonly ConditionId[],
  {
    overrides = {},
    to = 'holdWork',
    place = 'line',
  }: Pick<Play, 'overrides' | 'to'> & { readonly place?: 'line' | 'bench' },
): JobRun {
  const { definition } = COMPILED;
  const step = definition.steps.holdWork;
  if (step?.kind !== 'hold') throw new Error('holdWork is a hold');
  const run = jobOn({ definition: withStep(definition, 'holdWork', { ...step, readTwice }) }, { place });
  return play(run, { overrides, to });
}

/** Hours later everything that was shown is shown once more, at the open card. */
function walkRound(run: JobRun): void {
  run.nowMs += 13 * 3_600_000;
  const asked = proveAgainFields(run.job, around(run)).map((field) => [
    field.name,
    field.name === 'asLeft' ? 'yes' : field.type === 'choice' ? 'no flow' : '0',
  ]);
  act(run, { kind: 'prove-again', given: Object.fromEntries(asked) as Record<string, string> });
}

const lineOf = (run: JobRun) => run.job.evidence.supplyAir?.place ?? 0;
const again = (run: JobRun, value: string, mode = 'independent') =>
  ({ kind: 'read-again', about: lineOf(run), mode, given: { supplyAfterPa: value } }) as const;

describe('A reading that two people have to read', () => {
  test('keeps a hold from being signed until a second one did, who is not the first (SA-22)', () => {
    const run = atHoldWith({ readTwice: ['supplyAir'] });
    expect(refusalOf(() => sign(run))).toMatchObject({
      code: 'HLD-009',
      what: 'Read by one person only: Supply air.',
    });
    expect(refusalOf(() => act(run, again(run, '0'), TECHNICIAN)).code).toBe('HLD-014');
    act(run, again(run, '0'), OTHER_TECHNICIAN);
    sign(run);
    expect(run.job.step).toBe('connectAir');
  });

  test('says whether it was read alone or together, and shows whoever reads alone nothing of the first reading (HP-18)', () => {
    const run = atHoldWith({ readTwice: ['supplyAir'] });
    const { fields } = fieldsToReadAgain(run.job, { about: lineOf(run), around: around(run) });
    expect(fields.map(({ name }) => name)).toEqual(['supplyAfterPa']);
    // What a gauge read while it was alive cannot be read again.
    const alive = run.job.answers.find((one) => one.step === 'shutInlet')?.place ?? 0;
    expect(refusalOf(() => fieldsToReadAgain(run.job, { about: alive, around: around(run) })).what).toBe(
      'That line has no reading of a gauge.',
    );
    expect(JSON.stringify(fields)).not.toContain(run.job.readings.supplyAfterPa?.typed ?? 'nothing');
    expect(refusalOf(() => act(run, again(run, '0', 'somehow'), OTHER_TECHNICIAN)).code).toBe('HLD-015');
    act(run, again(run, '0', 'peer'), OTHER_TECHNICIAN);
    act(run, again(run, '0', 'independent'), OTHER_TECHNICIAN);
    expect(run.job.signing.readAgain.map(({ mode, agrees }) => [mode, agrees])).toEqual([
      ['peer', true],
      ['independent', true],
    ]);
    const step = run.compiled.definition.steps.holdWork;
    if (step?.kind !== 'hold') throw new Error('a hold');
    const row = holdEvidence(step, run.job).find(({ condition }) => condition === 'supplyAir');
    expect(row?.readAgain).toMatchObject({ mode: 'independent', person: OTHER_TECHNICIAN.id });
  });

  test('may be the signer, who read alone and so inspected; whoever looked on together took part', () => {
    const together = atHoldWith({ readTwice: ['supplyAir'] });
    act(together, again(together, '0', 'peer'), SUPERVISOR);
    expect(refusalOf(() => sign(together)).code).toBe('HLD-002');
    const alone = atHoldWith({ readTwice: ['supplyAir'] });
    act(alone, again(alone, '0', 'independent'), SUPERVISOR);
    sign(alone);
    expect(alone.job.step).toBe('connectAir');
  });

  test('is a vent that is watched again where no gauge was read', () => {
    const run = playedTo(['supplyAir'], { overrides: { ventSupply: AT_VENT } });
    const { fields } = fieldsToReadAgain(run.job, { about: lineOf(run), around: around(run) });
    expect(fields.map(({ name }) => name)).toEqual(['flowFirst', 'flowAgain']);
    const seen = (flowAgain: string) =>
      ({
        kind: 'read-again',
        about: lineOf(run),
        mode: 'independent',
        given: { flowFirst: 'no flow', flowAgain },
      }) as const;
    expect(refusalOf(() => sign(run)).code).toBe('HLD-009');
    expect(act(run, seen('no flow'), OTHER_TECHNICIAN).outcome.name).toBe('agrees');
    expect(act(run, seen('flow'), OTHER_TECHNICIAN).outcome.name).toBe('differs');
    expect(run.job.situation.lapsed.supplyAir).toBe('corrected');
  });

  test('after a walk-round is what the walk-round read', () => {
    const run = playedTo(['processInlet', 'processOutlet'], {});
    walkRound(run);
    expect(refusalOf(() => sign(run)).code).toBe('HLD-009');
    const about = run.job.evidence.processInlet?.place ?? 0;
    const { fields } = fieldsToReadAgain(run.job, { about, around: around(run) });
    expect(fields.map(({ name }) => name)).toEqual([
      'processInletAgainFlow',
      'processOutletAgainFlow',
      'supplyAirAgainPa',
      'signalAirAgainPa',
    ]);
    const given = Object.fromEntries(
      fields.map(({ name, type }) => [name, type === 'choice' ? 'no flow' : '0']),
    );
    act(run, { kind: 'read-again', about, mode: 'independent', given }, OTHER_TECHNICIAN);
    sign(run);
    expect(run.job.step).toBe('connectAir');
  });

  test('is asked of no energy that is absent, nor of one that nothing was read of', () => {
    const bench = playedTo(['processInlet', 'signalAir'], { place: 'bench' });
    sign(bench);
    expect(bench.job.step).toBe('connectAir');
  });

  test('that the second finds otherwise takes away what rested on the first, and answers no card', () => {
    const run = atHoldWith({});
    const readings = run.job.readings;
    const draft = act(run, again(run, '12 psi'), OTHER_TECHNICIAN);
    expect(draft.outcome.name).toBe('differs');
    expect(run.job.step).toBe('holdWork');
    expect(run.job.readings).toBe(readings);
    expect(run.job.situation.lapsed.supplyAir).toBe('corrected');
    expect(refusalOf(() => sign(run)).what).toContain('Not shown safe: Supply air');
  });

  test('agrees as far as both gauges together may err, and no further', () => {
    const apartPsi = (run: JobRun) => {
      const { uncertaintySi = 0 } = run.job.readings.supplyAfterPa ?? {};
      return Number(uncertaintySi) / PSI_PA;
    };
    for (const [share, outcome] of [
      [1.9, 'agrees'],
      [2.1, 'differs'],
    ] as const) {
      const run = atHoldWith({});
      expect(apartPsi(run)).toBeGreaterThan(0);
      const draft = act(run, again(run, `${share * apartPsi(run)} psi`), OTHER_TECHNICIAN);
      expect(draft.outcome.name, String(share)).toBe(outcome);
    }
  });

  test('is a reading of a gauge that stands: other lines have none to read again', () => {
    const run = atHoldWith({});
    const act0 = { kind: 'read-again', about: 2, mode: 'peer', given: {} } as const;
    expect(refusalOf(() => act(run, act0, OTHER_TECHNICIAN)).what).toBe(
      'That line has no reading of a gauge.',
    );
  });
});
