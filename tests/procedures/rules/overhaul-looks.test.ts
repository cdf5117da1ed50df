import { describe, expect, test } from 'vitest';
import type { Job, Reading, Words } from '../../../procedures/job.ts';
import { hotCheckRule } from '../../../procedures/rules/hot-check.ts';
import { gasTestRule, shutOffRule } from '../../../procedures/rules/open-line.ts';
import { ringsRule, stemLookRule } from '../../../procedures/rules/packing.ts';
import type { Rule } from '../../../procedures/rules/rule.ts';
import { springFreeRule, turnsBackRule } from '../../../procedures/rules/spring-free.ts';
import { openJob } from '../../builders/jobs.ts';
import { aSheet } from '../../builders/sheets.ts';

const { job: JOB } = openJob();

function counted(field: string, valueSi: number): Reading {
  return { field, valueSi, typed: '', unit: '', gauge: null, uncertaintySi: null, readBy: null };
}

function outcome(
  rule: Rule,
  of: {
    readonly job?: Job;
    readonly words?: Words;
    readonly readings?: readonly Reading[];
    readonly field?: string;
  },
): string {
  const readings = Object.fromEntries((of.readings ?? []).map((one) => [one.field, one]));
  const params = { field: of.field ?? '' };
  return rule.judge({ job: of.job ?? JOB, readings, words: of.words ?? {}, step: 's', params }).outcome;
}

const on = (sheet: Parameters<typeof aSheet>[0]): Job => ({ ...JOB, sheet: aSheet(sheet) });

describe('The shut-off of a line that is opened', () => {
  const shut = (fluidHarm: 'none' | 'scalding' | 'toxic', shutOffBy: string, assessment = '') =>
    outcome(shutOffRule, {
      job: on({ fluidHarm, isolationReference: null }),
      words: { shutOffBy, assessment },
    });

  test('is enough where it is as sure as the fluid wants', () => {
    expect(shut('toxic', 'positive')).toBe('enough');
    expect(shut('scalding', 'double block and bleed')).toBe('enough');
    expect(shut('none', 'block and bleed')).toBe('enough');
  });

  test('rests on a numbered assessment where it is less', () => {
    expect(shut('toxic', 'double block and bleed')).toBe('wants an assessment');
    expect(shut('toxic', 'double block and bleed', 'RA-7')).toBe('enough');
    expect(shut('none', 'block only')).toBe('wants an assessment');
    expect(shut('none', 'block only', 'RA-7')).toBe('enough');
  });

  test('is never one valve that nobody tried, where the fluid hurts', () => {
    expect(shut('scalding', 'block only', 'RA-7')).toBe('not enough');
    expect(shut('none', 'a rag')).toBe('not enough');
  });
});

describe('The gas test', () => {
  const gas = (fluidHarm: 'none' | 'flammable', words: Words) =>
    outcome(gasTestRule, { job: on({ fluidHarm }), words });

  test('is wanted where the fluid burns or poisons, with its instrument', () => {
    expect(gas('flammable', { gasTest: 'absent' })).toBe('the fluid wants one');
    expect(gas('flammable', { gasTest: 'fresh' })).toBe('not said how');
    expect(gas('flammable', { gasTest: 'fresh', gasTestBy: 'meter 4, 10:20' })).toBe('may be opened');
    expect(gas('none', { gasTest: 'absent' })).toBe('may be opened');
    expect(gas('none', { gasTest: 'none' })).toBe('not clean');
  });
});

// By hand for FV-214: free after 3.375 turns; counted to a quarter turn, 3.125 is the least.
describe('A spring under its adjuster', () => {
  const free = (turns: number, springSlack: string, job = JOB) =>
    outcome(springFreeRule, { job, readings: [counted('adjusterTurnsOff', turns)], words: { springSlack } });

  test('is free where it feels so and the turns bear it out', () => {
    expect(free(3.5, 'yes')).toBe('free');
    expect(free(3.125, 'yes')).toBe('free');
    expect(free(3, 'yes')).toBe('too few turns');
    expect(free(6, 'no')).toBe('not free');
  });

  test('goes by its feel alone where the thread is not on the sheet', () => {
    expect(free(1, 'yes', on({ adjusterThreadPitchM: null }))).toBe('free');
  });

  test('is wound back by what came off, to a quarter turn', () => {
    const job = { ...JOB, readings: { adjusterTurnsOff: counted('adjusterTurnsOff', 4) } };
    const back = (turns: number) =>
      outcome(turnsBackRule, { job, readings: [counted('adjusterTurnsOn', turns)] });
    expect(back(4.25)).toBe('as found');
    expect(back(4.5)).toBe('differs');
    expect(outcome(turnsBackRule, { readings: [counted('adjusterTurnsOn', 4)] })).toBe('differs');
  });
});

describe('Packing and stem', () => {
  test('rings are held against the sheet', () => {
    const rings = (count: number, job = JOB) =>
      outcome(ringsRule, { job, field: 'ringsOut', readings: [counted('ringsOut', count)] });
    expect(rings(5)).toBe('as the sheet');
    expect(rings(4)).toBe('differs');
    expect(rings(4, on({ packingRings: null }))).toBe('not on the sheet');
  });

  test('the worst of stem and box is told first', () => {
    const GOOD = { stemSmooth: 'yes', stemStraight: 'yes', boxClean: 'yes' };
    const look = (words: Words) => outcome(stemLookRule, { words: { ...GOOD, ...words } });
    expect(look({})).toBe('good');
    expect(look({ boxClean: 'no' })).toBe('box not clean');
    expect(look({ stemSmooth: 'no', boxClean: 'no' })).toBe('scored');
    expect(look({ stemStraight: 'no', stemSmooth: 'no' })).toBe('bent');
  });
});

test('Hot, a leaking joint comes before a weeping gland, and that before sticking', () => {
  const FINE = { glandHot: 'dry', jointHot: 'dry', movesHot: 'yes' };
  const hot = (words: Words) => outcome(hotCheckRule, { words: { ...FINE, ...words } });
  expect(hot({})).toBe('dry');
  expect(hot({ movesHot: 'no' })).toBe('sticks');
  expect(hot({ glandHot: 'weeps', movesHot: 'no' })).toBe('gland weeps');
  expect(hot({ jointHot: 'weeps', glandHot: 'weeps' })).toBe('joint weeps');
});
