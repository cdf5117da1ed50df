import { describe, expect, test } from 'vitest';
import type { Reading, Words } from '../../../procedures/job.ts';
import { glandFrictionRule, glandLookRule, glandRoundRule } from '../../../procedures/rules/live-gland.ts';
import { PSI_PA } from '../../builders/gear.ts';
import { openJob } from '../../builders/jobs.ts';

const { job } = openJob();

function psi(field: string, value: number): Reading {
  const valueSi = value * PSI_PA;
  return { field, valueSi, typed: '', unit: '', gauge: 'G', uncertaintySi: 0.1 * PSI_PA, readBy: null };
}

const both = (up: number, down: number) => ({
  glandUpPa: psi('glandUpPa', up),
  glandDownPa: psi('glandDownPa', down),
});
const input = (readings: Readonly<Record<string, Reading>>, words: Words = {}) => ({
  job,
  readings,
  words,
  step: 's',
  params: { round: 'glandRound' },
});

describe('A look at a live gland', () => {
  const SOUND = { glandLeak: 'weeps', studsSound: 'yes', stemSound: 'yes', followerRoom: 'yes' };
  const look = (words: Words) => glandLookRule.judge(input({}, { ...SOUND, ...words })).outcome;

  test('says whether it may be tightened, the worst first', () => {
    expect(look({})).toBe('may be tightened');
    expect(look({ glandLeak: 'dry' })).toBe('dry');
    expect(look({ followerRoom: 'no' })).toBe('no room');
    expect(look({ studsSound: 'no', followerRoom: 'no' })).toBe('not sound');
    expect(look({ stemSound: 'no' })).toBe('not sound');
    expect(look({ glandLeak: 'jets', studsSound: 'no' })).toBe('jets');
  });
});

// By hand: 10 % of 12 psi are 1.2 psi; two gauges readings of 0.1 psi are off by 0.141 psi together.
describe('Friction of 3 to 15 psi with 10 % hysteresis allowed', () => {
  test('is inside up to 1.058 psi between up and down, the gauge counted in', () => {
    expect(glandFrictionRule.judge(input(both(9.5, 8.5))).outcome).toBe('inside');
    expect(glandFrictionRule.judge(input(both(9.6, 8.5))).outcome).toBe('too tight');
    expect(glandFrictionRule.judge(input(both(8.5, 9.6))).outcome).toBe('too tight');
  });

  test('is not known where one way was not read', () => {
    expect(glandFrictionRule.judge(input({ glandUpPa: psi('glandUpPa', 9) })).outcome).toBe('not read');
  });
});

describe('After a round', () => {
  const round = (of: { readonly gap?: number; readonly now: string; readonly rounds?: number }) => {
    const one = { step: 'glandRound', superseded: false } as (typeof job.answers)[number];
    const answers = Array.from({ length: of.rounds ?? 1 }, () => one);
    const given = input(of.gap === undefined ? {} : both(9 + of.gap, 9), { glandLeakNow: of.now });
    return glandRoundRule.judge({ ...given, job: { ...job, answers } }).outcome;
  };

  test('the leak decides while the stem moves freely', () => {
    expect(round({ gap: 0.5, now: 'dry' })).toBe('dry');
    expect(round({ gap: 0.5, now: 'less' })).toBe('still leaks');
    expect(round({ gap: 0.5, now: 'less', rounds: 6 })).toBe('rounds used up');
  });

  test('a stem that is gripped ends it, leak or none', () => {
    expect(round({ gap: 1.2, now: 'less' })).toBe('too tight');
    expect(round({ gap: 1.2, now: 'dry' })).toBe('too tight');
  });

  test('what leaks more is broken, also where nothing was read', () => {
    expect(round({ now: 'more' })).toBe('worse');
    expect(round({ now: 'dry' })).toBe('not read');
  });
});
