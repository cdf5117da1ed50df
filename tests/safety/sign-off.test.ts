import { describe, expect, test } from 'vitest';
import { ACTION_CLASSES, type ActionClass } from '../../safety/action-classes.ts';
import { covers, type Envelope, mayNotSign } from '../../safety/sign-off.ts';

describe('[SAF-05] A hold', () => {
  test('is signed by a supervisor who did none of the work', () => {
    expect(mayNotSign({ id: 's', role: 'supervisor' }, { performers: ['t', 'u'] })).toBeNull();
  });

  test.each(['technician', 'operator', 'administrator', 'Supervisor', ''])(
    'is not signed by the role "%s"',
    (role) => {
      expect(mayNotSign({ id: 'x', role }, { performers: [] })).toBe('role');
    },
  );

  test('is not signed by a supervisor who did or acknowledged any of the work', () => {
    expect(mayNotSign({ id: 's', role: 'supervisor' }, { performers: ['t', 's'] })).toBe('did the work');
  });
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
