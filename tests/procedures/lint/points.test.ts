import { describe, expect, test } from 'vitest';
import { pointFaults, startFaults } from '../../../procedures/lint/points.ts';
import type { HoldStep, OpenStep } from '../../../procedures/vocabulary.ts';
import { COMPILED } from '../../builders/jobs.ts';
import { openSteps } from '../../builders/mutants.ts';
import { A_POINT } from '../../builders/points.ts';

const { definition } = COMPILED;

function of(id: string, change: Partial<HoldStep<string>>): readonly string[] {
  return pointFaults(id, { ...definition.steps[id], ...change } as OpenStep);
}

describe('A point is not served', () => {
  test('where nothing says when it is acceptable (HP-05)', () => {
    expect(of('holdWork', { criterion: ' ' })).toEqual(['holdWork: nothing says when it is acceptable']);
  });

  test('where anything but a signed hold gives the sign-off that first break, opening and return want (HP-06)', () => {
    const answered = { ...definition.steps.springLook } as Extract<OpenStep, { kind: 'reading' }>;
    const ways = { ...answered.ways, yes: { to: 'connectAir', sets: { workSignOff: 'given' as const } } };
    expect(pointFaults('springLook', { ...answered, ways })).toEqual([
      'springLook: "yes" gives a sign-off, and no signed hold does',
    ]);
    const witness = of('holdWork', { point: 'witness', noticeS: 60 });
    expect(witness).toContain('holdWork: "SIGN" gives a sign-off, and no signed hold does');
    expect(witness).toContain('holdWork: "GO_ON" gives a sign-off, and no signed hold does');
    // A hold that is sent back gives none either.
    const sentBack = { to: 'haltIsolating', sets: { workSignOff: 'given' as const } };
    expect(of('holdWork', { sentBack })).toEqual([
      'holdWork: "SEND_BACK" gives a sign-off, and no signed hold does',
    ]);
  });

  test.each(['witness', 'review'] as const)('where a %s stands over an isolation (HP-06)', (point) => {
    expect(of('signBench', { point, noticeS: 60 })).toContain(
      `signBench: a ${point} stands over an isolation, where only a hold will do`,
    );
    expect(pointFaults('point', { ...A_POINT, point, noticeS: 60 })).toEqual([]);
  });

  test('where a hold over an isolation could be waived (HP-12)', () => {
    for (const id of ['holdWork', 'signReturn', 'signAgain', 'signBench'])
      expect(of(id, { waivedBy: 'engineer' })).toContain(`${id}: a hold over an isolation is waived`);
    expect(pointFaults('point', { ...A_POINT, waivedBy: 'engineer' })).toEqual([]);
  });

  test('where a witness has no time to come, or what is read twice is not shown', () => {
    const { noticeS: _, ...point } = A_POINT;
    expect(pointFaults('point', point)).toEqual(['point: a witness has no time to come']);
    expect(of('signBench', { readTwice: ['supplyAir'] })).toEqual([
      'signBench: supplyAir is read twice and not shown',
    ]);
  });
});

test('A procedure begins with what is needed, listed, and taken in hand before its first step (HP-33)', () => {
  expect(startFaults(definition)).toEqual([]);
  expect(startFaults({ ...definition, start: 'rigGauges' })).toEqual([
    'rigGauges: the first card does not list what is needed',
  ]);
});

test('Every point of the stroke check is one that people can rely on', () => {
  expect(openSteps(definition).flatMap(([id, step]) => pointFaults(id, step))).toEqual([]);
});
