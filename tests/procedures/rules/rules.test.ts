import { describe, expect, test } from 'vitest';
import type { Reading, Words } from '../../../procedures/job.ts';
import { FIGURES } from '../../../procedures/quantities.ts';
import { RULE_NAMES, RULES, type RuleName } from '../../../procedures/rules/registry.ts';
import { PSI_PA } from '../../builders/gear.ts';
import { answer, jobAt, scripted } from '../../builders/jobs.ts';

const { job } = jobAt('holdForPlug');

function reading(field: string, valueSi: number, uncertaintySi: number | null = 0.1 * PSI_PA): Reading {
  return { field, valueSi, typed: '', unit: '', gauge: 'G', uncertaintySi, readBy: null };
}

const psi = (field: string, value: number) => reading(field, value * PSI_PA);

function outcome(
  rule: RuleName,
  of: {
    readonly readings?: readonly Reading[];
    readonly words?: Words;
    readonly params?: Readonly<Record<string, string>>;
  },
): string {
  const readings = Object.fromEntries((of.readings ?? []).map((one) => [one.field, one]));
  return RULES[rule].judge({ job, readings, words: of.words ?? {}, step: 's', params: of.params ?? {} })
    .outcome;
}

test('Every rule names its outcomes, each once', () => {
  for (const name of RULE_NAMES) {
    expect(RULES[name].outcomes.length).toBeGreaterThan(0);
    expect(new Set(RULES[name].outcomes).size).toBe(RULES[name].outcomes.length);
  }
});

describe('Two gauges', () => {
  const params = { one: 'a', other: 'b' };
  const agree = (a: number, b: number) =>
    outcome('gaugesAgree', { readings: [psi('a', a), psi('b', b)], params });

  test('agree where they differ by less than both may be off together: 0.1 psi each make 0.141 psi', () => {
    expect(agree(9, 9.14)).toBe('agree');
    expect(agree(9, 9.15)).toBe('differ');
    expect(agree(9.15, 9)).toBe('differ');
  });

  test('do not agree where one was not read', () => {
    expect(outcome('gaugesAgree', { readings: [psi('a', 9)], params })).toBe('differ');
  });
});

describe('Held air', () => {
  const params = { first: 'a', again: 'b', travel: 't' };
  const held = (a: number, b: number, percent: number) =>
    outcome('heldOffSeat', {
      readings: [psi('a', a), psi('b', b), reading('t', (percent / 100) * job.sheet.travelM)],
      params,
    });

  test('is held where a minute changed nothing that the gauge can tell', () => {
    expect(held(9, 8.91, 50)).toBe('held');
    expect(held(9, 8.89, 50)).toBe('falls');
    expect(held(9, 9.11, 50)).toBe('falls');
  });

  test('is not enough with the plug near its seat: a fifth of the travel keeps it clear', () => {
    expect(held(9, 9, 20)).toBe('held');
    expect(held(9, 9, 19.9)).toBe('too near its seat');
  });

  test('is not held where a reading is missing', () => {
    expect(outcome('heldOffSeat', { readings: [psi('a', 9)], params })).toBe('falls');
    expect(outcome('heldOffSeat', { readings: [psi('a', 9), psi('b', 9)], params })).toBe(
      'too near its seat',
    );
  });
});

describe('Contact', () => {
  const both = [psi('contactLeavesPa', 3.3), psi('contactTouchesPa', 2.7)];

  test('is the middle of the way up and the way down', () => {
    const readings = Object.fromEntries(both.map((one) => [one.field, one]));
    const found = RULES.contact.judge({ job, readings, words: { moves: 'yes' }, step: 's', params: {} });
    expect(found.outcome).toBe('found');
    expect(Number(found.figures.contactPa) / PSI_PA).toBeCloseTo(3, 9);
    expect(Number(found.figures.breakawayPa) / PSI_PA).toBeCloseTo(0.3, 9);
  });

  test('is not found where the stem does not move, or one way was not read', () => {
    expect(outcome('contact', { readings: both, words: { moves: 'no' } })).toBe('does not move');
    expect(outcome('contact', { readings: both.slice(1), words: { moves: 'yes' } })).toBe('does not move');
  });

  // A quarter turn is 0.2 psi, where two make 1.6 psi; the gauge read twice adds sqrt 2 x 0.0866 psi.
  test('after turning is expected to a quarter turn and what the gauge may be off', () => {
    const left = (value: number) =>
      outcome('contactAfter', {
        readings: [psi('contactLeavesPa', value), psi('contactTouchesPa', value)],
        words: { moves: 'yes' },
      });
    expect(left(4.6)).toBe('as expected');
    expect(left(4.9)).toBe('as expected');
    expect(left(4.3)).toBe('as expected');
    expect(left(4.95)).toBe('not as expected');
    expect(left(3)).toBe('not as expected');
  });
});

test('The contact after turning again is expected by all turns made since it was found', () => {
  const run = jobAt('contactLeft');
  answer(run, { moves: 'yes', contactLeavesPa: '4.1 psi', contactTouchesPa: '3.9 psi' });
  expect(run.job.step).toBe('contactDiffers');
  answer(run, { choice: 'turnAgain' });
  scripted(run);
  answer(run, { turnsMade: '0.5', lockNuts: 'yes' });
  // Two and a half turns: 3 psi and 2.0 psi.
  expect(Number(FIGURES.expectedContact.of(run.job)) / PSI_PA).toBeCloseTo(5, 6);
  answer(run, { moves: 'yes', contactLeavesPa: '5.1 psi', contactTouchesPa: '4.9 psi' });
  expect(run.job.answers.at(-1)?.outcome).toBe('as expected');
});

describe('Yes to everything', () => {
  const params = { fields: 'a b' };
  test('is wanted of every question that was asked', () => {
    expect(outcome('allYes', { words: { a: 'yes', b: 'yes' }, params })).toBe('yes');
    expect(outcome('allYes', { words: { a: 'yes', b: 'no' }, params })).toBe('no');
    expect(outcome('allYes', { words: { a: 'yes' }, params })).toBe('yes');
  });

  test('is not said by silence', () => {
    expect(outcome('allYes', { words: {}, params })).toBe('no');
  });
});

describe('Every other energy', () => {
  const params = { fields: 'trappedAir temperature' };
  test('is safe where each is absent or made safe', () => {
    expect(outcome('others', { words: { trappedAir: 'absent', temperature: 'safe' }, params })).toBe(
      'all safe',
    );
  });

  test.each(['live', 'free', 'present', 'hot', 'armed', ''])('is not safe where one is "%s"', (state) => {
    expect(outcome('others', { words: { trappedAir: state, temperature: 'safe' }, params })).toBe(
      'one is not safe',
    );
  });

  test('cannot be recorded as no heat on a body that is hotter than skin bears: 50 degrees Celsius', () => {
    const at = (celsius: number) =>
      outcome('others', {
        readings: [reading('bodyTemperatureK', celsius + 273.15, null)],
        words: { trappedAir: 'absent', temperature: 'absent' },
        params,
      });
    expect(at(50)).toBe('all safe');
    expect(at(50.1)).toBe('too hot to touch');
  });
});
