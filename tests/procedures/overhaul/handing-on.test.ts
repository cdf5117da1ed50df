import { describe, expect, test } from 'vitest';
import { faultsOf } from '../../../procedures/check.ts';
import { compile } from '../../../procedures/compile.ts';
import { handingFaults } from '../../../procedures/handing-on.ts';
import { bypassedAt } from '../../../procedures/phases/bypass-taken-over.ts';
import { caseOpenAt, isolatedAt } from '../../../procedures/phases/taken-over.ts';
import { procedureNamed } from '../../../procedures/served.ts';
import { GOES_ON_AS } from '../../../procedures/troubleshooting/steps/goes-on.ts';
import type { Definition } from '../../../procedures/vocabulary.ts';
import { jobOn, type Overrides, outcomesOf, play } from '../../builders/answers.ts';
import { servedAs } from '../../builders/handing-pair.ts';

function definitionOf(id: string): Definition {
  const served = procedureNamed(id);
  if (served === undefined) throw new Error(`${id} is not served`);
  return served.definition;
}

const served = (id: string) => ({ definition: definitionOf(id) });

/** Which procedures go on from which, and how the valve stands then. */
function handsTo(id: string): readonly string[] {
  return Object.values(definitionOf(id).steps).flatMap((step) =>
    step.kind === 'end' && step.handsOver !== undefined
      ? [`${step.handsOver.procedure}, ${step.handsOver.as}`]
      : [],
  );
}

const LEAKS: Overrides = { soapFound: { springSideAir: 'yes' }, diaphragmLeaks: { choice: 'renew' } };

describe('[SAF-03] A finding of an overhaul leads on', () => {
  test.each([
    ['stroke-check', ['packing-renewal, isolated']],
    ['case-nuts', ['diaphragm-renewal, isolated']],
    ['diaphragm-renewal', ['spring-change, case open']],
    ['spring-change', ['diaphragm-renewal, case open']],
    ['packing-renewal', ['seat-and-plug, gland open', 'live-gland, hot']],
    ['seat-and-plug', ['seat-leak-test, isolated', 'spring-change, isolated', 'live-gland, hot']],
  ] as const)('from %s to the procedure that cures it', (id, onward) => {
    expect(handsTo(id)).toEqual(onward);
  });

  test.each(['line', 'bench'] as const)(
    'with the air off, the rig off and nothing signed, each lock where it hung, %s',
    (place) => {
      const { job } = play(jobOn(served('case-nuts'), { place }), { overrides: LEAKS, to: 'caseOpens' });
      expect(outcomesOf(job, 'bleedForNext')).toEqual(['shown']);
      const lock = place === 'line' ? 'on' : 'off';
      expect(job.situation.states).toMatchObject({
        signalAir: 'isolated',
        testAir: 'off',
        closure: 'shut',
        spring: 'contained',
        supplyLock: lock,
        inletLock: lock,
      });
    },
  );

  test('a repair made on the bypass takes the valve over as the search leaves it, and in no other way', () => {
    const search = compile(definitionOf('find-the-fault'));
    const onBypass = GOES_ON_AS.bypassed.map((id) => `${id}, bypassed`);
    expect(handsTo('find-the-fault')).toEqual(expect.arrayContaining(onBypass));
    const about = (tubing: Definition) =>
      handingFaults([search, compile(tubing)]).filter((fault) => fault.includes('toTubing'));
    const tubing = definitionOf('tubing');
    expect(about(tubing)).toEqual([]);
    const taken = bypassedAt('takenOver');
    const locked = { ...taken, standing: { ...taken.standing, supplyLock: ['on'] } } as const;
    expect(about({ ...tubing, takesOver: { bypassed: locked } }).join()).toContain('does not take over');
  });

  test.each(['positioner-calibration', 'converter-calibration', 'indicator-and-coupling'] as const)(
    '%s takes the valve over from the bypass as the search leaves it',
    (id) => {
      const both = ['find-the-fault', id].map((one) => compile(definitionOf(one)));
      const about = handingFaults(both).filter((fault) => fault.includes(`: ${id}`));
      expect(about).toEqual([]);
      expect(both.map(faultsOf).at(-1)).toEqual([]);
    },
  );

  test.each(['positioner-calibration', 'converter-calibration'] as const)(
    '%s, done on the bench as well, is taken over in the line alone',
    (id) => {
      const definition = definitionOf(id);
      const anywhere = { ...definition, takesOver: { bypassed: bypassedAt('takenOver') } };
      expect(faultsOf(compile(anywhere)).length).toBeGreaterThan(0);
      const onBench = { ...bypassedAt('takenOver'), onlyWhere: { place: 'bench' } } as const;
      const both = [definitionOf('find-the-fault'), { ...definition, takesOver: { bypassed: onBench } }];
      const about = handingFaults(both.map((one) => compile(one))).filter((fault) =>
        fault.includes(`: ${id}`),
      );
      expect(about).toContain(
        `find-the-fault, to${id === 'positioner-calibration' ? 'PositionerCalibration' : 'ConverterCalibration'}: ${id} does not take over at all with line`,
      );
    },
  );

  test.each(['line', 'bench'] as const)(
    'friction that no setting cures goes from the stroke check to the packing, the locks as they hang, %s',
    (place) => {
      const overrides: Overrides = {
        contactFound: { moves: 'no' },
        doesNotMove: { choice: 'packing' },
      };
      const { job } = play(jobOn(served('stroke-check'), { place }), { overrides, to: 'toPackingNow' });
      expect(job.situation.states).toMatchObject({
        signalAir: 'isolated',
        testAir: 'off',
        closure: 'shut',
        supplyLock: place === 'line' ? 'on' : 'off',
      });
      const taken = ['stroke-check', 'packing-renewal', 'live-gland'].map((id) => compile(definitionOf(id)));
      const about = handingFaults(taken).filter((fault) => fault.startsWith('stroke-check'));
      expect(about).toEqual([]);
    },
  );

  test('is given back all the same where nothing is at hand, and says which job comes next', () => {
    const { job } = play(jobOn(served('case-nuts')), {
      overrides: { ...LEAKS, caseOpens: { choice: 'leave', reason: 'no diaphragm here' } },
    });
    expect(job.closedAs).toBe('done');
    const card = definitionOf('case-nuts').steps.caseOpens;
    expect(card?.kind === 'question' && card.choices.leave?.comesNext).toBe('diaphragm-renewal');
  });

  test('with the gland apart from the packing to plug and stem, with the case open from diaphragm to spring', () => {
    const bent = play(jobOn(served('packing-renewal')), {
      overrides: { stemLook: { stemStraight: 'no' } },
      to: 'stemBent',
    });
    expect(bent.job.situation.states).toMatchObject({ closure: 'open', spring: 'released', testAir: 'off' });
    const broken = play(jobOn(served('diaphragm-renewal')), {
      overrides: { caseParts: { springWhole: 'no' } },
      to: 'casePartsBad',
    });
    expect(broken.job.situation.states).toMatchObject({ closure: 'open', spring: 'released' });
  });
});

describe('[SAF-03] What one hands on the other takes over', () => {
  const [nuts, diaphragm] = [compile(definitionOf('case-nuts')), definitionOf('diaphragm-renewal')];
  const spring = compile(definitionOf('spring-change'));
  const takingAs = (standing: object): Definition => ({
    ...diaphragm,
    takesOver: {
      ...diaphragm.takesOver,
      isolated: {
        ...isolatedAt('takenOver'),
        standing: { ...isolatedAt('takenOver').standing, ...standing },
      },
    },
  });

  test('in every state in which it may be left', () => {
    expect(handingFaults([nuts, spring, compile(diaphragm), servedAs('live-gland')])).toEqual([]);
  });

  test('and is not served where it would take over in fewer', () => {
    const [fault] = handingFaults([
      nuts,
      spring,
      compile(takingAs({ weight: ['absent'] })),
      servedAs('live-gland'),
    ]);
    expect(fault).toBe('case-nuts, toDiaphragm: diaphragm-renewal does not take over with Weight hung');
  });

  test('nor where it would begin under air, or with air kept somewhere', () => {
    for (const standing of [{ trappedAir: ['live'] }, { signalAir: ['live'] }])
      expect(faultsOf(compile(takingAs(standing))).some((one) => one.includes('taken over'))).toBe(true);
  });

  test('nor where work at the open case could go on with no signature for it', () => {
    const { takesOver = {} } = diaphragm;
    const unsigned = { ...diaphragm, takesOver: { ...takesOver, 'case open': caseOpenAt('whereCase') } };
    expect(faultsOf(compile(unsigned)).some((one) => one.includes('Sign-off for the work'))).toBe(true);
  });
});
