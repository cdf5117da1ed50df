import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { hang, type Lock, mayNotRestore, type PointState, takeOff } from '../../safety/isolation-points.ts';

const MINE: Lock = { lock: '15', owner: 't1', job: '7' };
const point = (...locks: Lock[]): PointState => ({ tag: 'HV-1', position: 'shut', locks });
const asked = { job: '7', person: 't1' };

describe('[SAF-07] An isolation point', () => {
  test('is restored by the person whose lock hangs alone on it', () => {
    expect(mayNotRestore(point(MINE), asked)).toBeNull();
  });

  test('is not restored while another job relies on it, whoever owns the lock', () => {
    expect(mayNotRestore(point(MINE, { lock: '16', owner: 't1', job: '8' }), asked)).toBe(
      'another job relies on it',
    );
  });

  test("is not restored over another person's lock on the same job", () => {
    expect(mayNotRestore(point(MINE, { lock: '16', owner: 't2', job: '7' }), asked)).toBe(
      "another person's lock",
    );
  });

  test('stands shut while any lock is left, and opens with the last', () => {
    const both = hang(hang({ tag: 'HV-1', position: 'open', locks: [] }, MINE), {
      lock: '16',
      owner: 't2',
      job: '8',
    });
    expect(both).toMatchObject({ position: 'shut', locks: [{ lock: '15' }, { lock: '16' }] });
    const one = takeOff(both, { job: '7', restores: true });
    expect(one).toMatchObject({ position: 'shut', locks: [{ lock: '16' }] });
    expect(takeOff(one, { job: '8', restores: true })).toEqual({ tag: 'HV-1', position: 'open', locks: [] });
  });

  test('keeps both jobs in mind that rely on one lock', () => {
    const both = hang(point(MINE), { ...MINE, job: '8' });
    expect(mayNotRestore(both, { job: '8', person: MINE.owner })).toBe('another job relies on it');
    expect(takeOff(both, { job: '8', restores: true })).toMatchObject({
      position: 'shut',
      locks: [{ job: '7' }],
    });
  });

  test('counts a lock once, however often it is hung', () => {
    expect(hang(point(MINE), MINE).locks).toEqual([MINE]);
  });

  test('is never open with a lock on it, in any order of hanging and taking off', () => {
    const move = fc.record({
      hangs: fc.boolean(),
      job: fc.constantFrom('7', '8', '9'),
      lock: fc.constantFrom('1', '2', '3'),
    });
    fc.assert(
      fc.property(fc.array(move, { maxLength: 20 }), (moves) => {
        let at: PointState = { tag: 'HV-1', position: 'open', locks: [] };
        for (const { hangs, job, lock } of moves) {
          at = hangs ? hang(at, { lock, owner: 't', job }) : takeOff(at, { job, restores: true });
          expect(at.position === 'open').toBe(at.locks.length === 0);
        }
      }),
      { seed: 7 },
    );
  });
});
