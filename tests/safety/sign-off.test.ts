import { describe, expect, test } from 'vitest';
import { ACTION_CLASSES, type ActionClass, needsOf } from '../../safety/action-classes.ts';
import {
  covers,
  type Envelope,
  isDisposition,
  mayBeCompetent,
  mayNotSign,
  workByRadio,
} from '../../safety/sign-off.ts';

describe('[SAF-05] A hold', () => {
  test('is signed by a supervisor who did none of the work', () => {
    expect(
      mayNotSign({ id: 's', role: 'supervisor' }, { performers: ['t', 'u'], acknowledgers: ['v'] }),
    ).toBeNull();
  });

  test.each(['technician', 'operator', 'administrator', 'Supervisor', ''])(
    'is not signed by the role "%s"',
    (role) => {
      expect(mayNotSign({ id: 'x', role }, { performers: [], acknowledgers: [] })).toBe('role');
    },
  );

  test('is not signed by a supervisor who did or acknowledged any of the work', () => {
    expect(mayNotSign({ id: 's', role: 'supervisor' }, { performers: ['t', 's'], acknowledgers: [] })).toBe(
      'did the work',
    );
    expect(mayNotSign({ id: 's', role: 'supervisor' }, { performers: ['t'], acknowledgers: ['s'] })).toBe(
      'acknowledged it',
    );
  });

  test('is signed by the people whom it names, and by no other supervisor (HP-08)', () => {
    const named = { performers: [], acknowledgers: [], named: ['s2'] };
    expect(mayNotSign({ id: 's2', role: 'supervisor' }, named)).toBeNull();
    expect(mayNotSign({ id: 's1', role: 'supervisor' }, named)).toBe('not named');
  });

  test('is signed by a second person only where a supervisor has named them as competent', () => {
    const work = { performers: ['t1'], acknowledgers: [], way: 'second person' } as const;
    expect(mayNotSign({ id: 'e', role: 'engineer', competent: true }, work)).toBeNull();
    expect(mayNotSign({ id: 't2', role: 'technician', competent: true }, work)).toBeNull();
    expect(mayNotSign({ id: 'e', role: 'engineer' }, work)).toBe('not competent');
    expect(mayNotSign({ id: 't1', role: 'technician', competent: true }, work)).toBe('did the work');
    expect(mayNotSign({ id: 'o', role: 'safety-officer', competent: true }, work)).toBe('not competent');
    expect(mayNotSign({ id: 'e', role: 'engineer', competent: true }, { ...work, way: 'walk-up' })).toBe(
      'role',
    );
  });
});

describe('A signature by radio', () => {
  test('is never given for what opens spring, case or line, nor for anything that nobody has thought of', () => {
    const allowed = (Object.keys(ACTION_CLASSES) as ActionClass[]).filter(
      (action) => workByRadio([action]) !== null,
    );
    expect(allowed).toEqual([
      'connectTestAir',
      'strokeByTestAir',
      'turnPlugStem',
      'setIndicatorOnTestAir',
      'restoreSupply',
      'restoreSecondSupply',
      'unlockProcess',
      'restoreProcess',
      'shutBypass',
    ]);
    expect(workByRadio(['turnPlugStem', 'loosenCaseBolts'])).toBeNull();
  });

  test('leaves the spring adjuster out of what the hold allows', () => {
    expect(workByRadio(['strokeByTestAir', 'windAdjusterOnTestAir'])).toEqual(['strokeByTestAir']);
    expect(workByRadio([])).toEqual([]);
  });
});

test('What cannot be undone wants a signature before it, by the table of actions itself (HP-32)', () => {
  const unsigned = (Object.keys(ACTION_CLASSES) as ActionClass[]).filter((action) => {
    const { workSignOff, returnSignOff } = needsOf(action) as Record<string, unknown>;
    return workSignOff === undefined && returnSignOff === undefined;
  });
  for (const action of [
    'backOffAdjuster',
    'releaseStemConnector',
    'loosenCaseBolts',
    'loosenCaseHoldingSpring',
    'openPistonCylinder',
    'liftActuator',
    'removePacking',
    'breakBonnetJoint',
    'removeTrim',
    'takeOutOfLine',
    'restoreProcess',
  ])
    expect(unsigned).not.toContain(action);
});

test('A hold goes back with one of three things that are done about it', () => {
  expect(['again', 'putRight', 'leave', 'use as is', ''].map(isDisposition)).toEqual([
    true,
    true,
    true,
    false,
    false,
  ]);
  expect(['engineer', 'technician', 'supervisor', 'safety-officer'].map(mayBeCompetent)).toEqual([
    true,
    true,
    false,
    false,
  ]);
});

const envelope: Envelope = {
  hold: 'holdWork',
  work: ['strokeByTestAir', 'turnPlugStem'],
  testAirPaMax: 137_895,
  untilMs: 1000,
  signedBy: 's',
  shownDigest: 'd',
};

describe('[SAF-06] A sign-off', () => {
  test('allows the work that it names and no other', () => {
    const allowed = (Object.keys(ACTION_CLASSES) as ActionClass[]).filter((action) =>
      covers(envelope, { action, nowMs: 0 }),
    );
    expect(allowed).toEqual(['strokeByTestAir', 'turnPlugStem']);
  });

  test('ends with its hour', () => {
    expect(covers(envelope, { action: 'turnPlugStem', nowMs: 999 })).toBe(true);
    expect(covers(envelope, { action: 'turnPlugStem', nowMs: 1000 })).toBe(false);
  });

  test('that was never given allows nothing', () => {
    expect(covers(null, { action: 'turnPlugStem', nowMs: 0 })).toBe(false);
  });
});
