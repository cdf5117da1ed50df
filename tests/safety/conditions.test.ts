import { describe, expect, test } from 'vitest';
import {
  type AnyState,
  CONDITION_IDS,
  CONDITIONS,
  ENERGY_IDS,
  everythingLive,
  isStateOf,
  LOCK_IDS,
  worstState,
} from '../../safety/conditions.ts';

describe('The energies and records of a valve', () => {
  test('carry one letter each, and no letter twice', () => {
    const letters = CONDITION_IDS.map((id) => CONDITIONS[id].letter).filter((letter) => letter !== null);
    expect(letters.join('')).toBe('ANBCDEFGPRHJKLMS');
  });

  test('are energies all but the bypass where they carry a letter: a bypass isolates nothing', () => {
    const lettered = CONDITION_IDS.filter((id) => CONDITIONS[id].letter !== null);
    expect(lettered.filter((id) => !ENERGY_IDS.includes(id))).toEqual(['bypass']);
    expect(LOCK_IDS).toEqual(['supplyLock', 'secondSupplyLock', 'inletLock', 'outletLock']);
  });

  test('begin at the worst: live, loaded, hot, unlocked, unsigned', () => {
    const begin = everythingLive();
    for (const id of CONDITION_IDS) expect(begin[id]).toBe(worstState(id));
    expect(begin).toMatchObject({
      supplyAir: 'live',
      signalAir: 'live',
      spring: 'loaded',
      temperature: 'hot',
      weight: 'free',
      residue: 'present',
      safetyFunction: 'armed',
      commands: 'live',
      processFlow: 'needs the valve',
      springHolder: 'adjuster',
      closure: 'open',
      isolationGrade: 'not enough',
      gasTest: 'none',
      clear: 'not looked at',
      told: 'nobody',
      supplyLock: 'off',
      plug: 'seat unknown',
      workSignOff: 'none',
      returnSignOff: 'none',
    });
  });

  // Every state, so that a new first state of a set is a decision and not an edit.
  test('count as safe in no first state', () => {
    const safe: readonly AnyState[] = [
      'isolated',
      'absent',
      'held',
      'contained',
      'released',
      'safe',
      'hung',
      'cleared',
      'overridden',
      'set up',
      'enough',
      'fresh',
      'clear',
      'told',
    ];
    expect(CONDITION_IDS.filter((id) => safe.includes(worstState(id)))).toEqual([]);
  });

  test('know their own states and no other', () => {
    expect(isStateOf('spring', 'released')).toBe(true);
    expect(isStateOf('spring', 'held')).toBe(false);
    expect(isStateOf('supplyAir', 'Isolated')).toBe(false);
  });
});
