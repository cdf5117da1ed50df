import { describe, expect, test } from 'vitest';
import type { Job, Reading, Words } from '../../../procedures/job.ts';
import { FIGURES } from '../../../procedures/quantities.ts';
import { RULE_NAMES, RULES, type RuleName } from '../../../procedures/rules/registry.ts';
import type { ValveSheet } from '../../../procedures/valve-sheet/sheet.ts';
import { PSI_PA } from '../../builders/gear.ts';
import { answer, jobAt, openJob, scripted } from '../../builders/jobs.ts';
import { aSheet } from '../../builders/sheets.ts';

const HELD = jobAt('holdForPlug').job;

function reading(field: string, valueSi: number, uncertaintySi: number | null = 0.1 * PSI_PA): Reading {
  return { field, valueSi, typed: '', unit: '', gauge: 'G', uncertaintySi, readBy: null };
}

const psi = (field: string, value: number) => reading(field, value * PSI_PA);

function outcome(
  rule: RuleName,
  of: {
    readonly job?: Job;
    readonly readings?: readonly Reading[];
    readonly words?: Words;
    readonly params?: Readonly<Record<string, string>>;
  },
): string {
  const readings = Object.fromEntries((of.readings ?? []).map((one) => [one.field, one]));
  return RULES[rule].judge({
    job: of.job ?? HELD,
    readings,
    words: of.words ?? {},
    step: 's',
    params: of.params ?? {},
  }).outcome;
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
      readings: [psi('a', a), psi('b', b), reading('t', (percent / 100) * HELD.sheet.travelM)],
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
    const found = RULES.contact.judge({
      job: HELD,
      readings,
      words: { moves: 'yes' },
      step: 's',
      params: {},
    });
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

test('A stem that does not move after turning is told so, and not taken for a contact elsewhere', () => {
  expect(outcome('contactAfter', { words: { moves: 'no' } })).toBe('does not move');
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
  const params = { fields: 'temperature weight residue electrical safetyFunction' };
  const cold = { fluidHarm: 'none', processTemperatureC: 20 } as const;
  const NOTHING = {
    temperature: 'absent',
    weight: 'absent',
    residue: 'absent',
    electrical: 'absent',
    safetyFunction: 'absent',
  };
  const others = (
    words: Readonly<Record<string, string>>,
    { celsius, on = cold }: { readonly celsius?: number; readonly on?: Partial<ValveSheet> } = {},
  ) =>
    outcome('others', {
      job: openJob({ sheet: aSheet(on) }).job,
      readings: celsius === undefined ? [] : [reading('bodyTemperatureK', celsius + 273.15, null)],
      words: { ...NOTHING, ...words },
      params,
    });

  test('is safe where each is absent, or made safe and said how', () => {
    expect(others({})).toBe('all safe');
    expect(
      others(
        {
          temperature: 'safe',
          weight: 'hung',
          residue: 'cleared',
          residueHow: 'rinsed, gas test 3 at ten',
          electrical: 'isolated',
          electricalHow: 'EB-1 locked, tried dead',
          safetyFunction: 'overridden',
          safetyFunctionHow: 'override 27',
        },
        { celsius: 30 },
      ),
    ).toBe('all safe');
  });

  test.each(['live', 'free', 'present', 'hot', 'armed', ''])('is not safe where one is "%s"', (state) => {
    expect(others({ weight: state })).toBe('one is not safe');
  });

  test('cannot be recorded as no heat, or as safe, on a body that is hotter than skin bears: 50 degrees Celsius', () => {
    expect(others({}, { celsius: 50 })).toBe('all safe');
    expect(others({}, { celsius: 50.1 })).toBe('too hot to touch');
    expect(others({ temperature: 'safe' }, { celsius: 50.1 })).toBe('too hot to touch');
  });

  test('is not made safe by a bare yes: a reading or how it was done is wanted (EI-09)', () => {
    expect(others({ temperature: 'safe' })).toBe('not said how');
    expect(others({ residue: 'cleared' })).toBe('not said how');
    expect(others({ electrical: 'isolated', electricalHow: '' })).toBe('not said how');
    expect(others({ safetyFunction: 'overridden' })).toBe('not said how');
    expect(others({ safetyFunction: 'overridden', safetyFunctionHow: 'override 27' })).toBe('all safe');
    const params = { energy: 'processInlet', before: 'aPa', after: 'bPa', also: 'lineCapped' };
    const shown = (words: Words, readings: readonly Reading[] = []) =>
      outcome('showSafe', { readings, words: { lineCapped: 'yes', ...words }, params });
    expect(shown({})).toBe('not shown');
    expect(shown({ method: 'gauge' })).toBe('not shown');
    expect(shown({ method: 'vent' })).toBe('not shown');
    expect(shown({ method: 'vent', flowFirst: 'no flow' })).toBe('not shown');
    expect(shown({ method: 'vent', flowFirst: 'no flow', flowAgain: 'no flow' })).toBe('shown');
    expect(shown({ method: 'gauge' }, [psi('aPa', 60), psi('bPa', 0)])).toBe('shown');
  });

  test('is not absent because nobody found it, where the sheet has it', () => {
    const sheets: readonly Partial<ValveSheet>[] = [
      { ...cold, processTemperatureC: 60 },
      { ...cold, heatTracing: true },
      { ...cold, fluidHarm: 'toxic' },
      { ...cold, electricalV: 24 },
      { ...cold, tripFunction: true },
    ];
    for (const on of sheets) expect(others({}, { on }), JSON.stringify(on)).toBe('the sheet has one');
  });
});

describe('Air that is kept', () => {
  const params = { fields: 'trappedAir lockUpAir oppositeAir' };
  const NONE = { trappedAir: 'absent', lockUpAir: 'absent', oppositeAir: 'absent' };
  const kept = (words: Readonly<Record<string, string>>, on: Partial<ValveSheet> = {}) =>
    outcome('keptAir', { job: openJob({ sheet: aSheet(on) }).job, words: { ...NONE, ...words }, params });

  test('is safe where each volume is absent or vented at its own vent', () => {
    expect(kept({})).toBe('all safe');
    expect(kept({ trappedAir: 'isolated' }, { volumeTank: true })).toBe('all safe');
  });

  test('counts volume by volume: one vented says nothing of another', () => {
    expect(kept({ trappedAir: 'isolated', lockUpAir: 'live' })).toBe('one is not safe');
    expect(kept({ trappedAir: 'isolated' }, { volumeTank: true, lockUp: true })).toBe('the sheet has one');
    expect(kept({}, { actuatorKind: 'piston', springHeldBy: 'no spring' })).toBe('the sheet has one');
  });

  test('is on the other side of a piston where no spring stands there, or each end has its relay', () => {
    expect(kept({}, { actuatorKind: 'piston', springHeldBy: 'case' })).toBe('all safe');
    const eachEnd = { actuatorKind: 'piston', springHeldBy: 'case', positionerRelays: 'one an end' } as const;
    expect(kept({}, eachEnd)).toBe('the sheet has one');
  });
});

describe('Both sides after they stood shut in', () => {
  const params = { inlet: 'inletAfterPa', outlet: 'outletAfterPa' };
  const at = (field: string, psi: number, gauge: string) => ({
    ...reading(field, psi * PSI_PA, 0.5 * PSI_PA),
    gauge,
  });
  const first = openJob().job;
  const job = {
    ...first,
    readings: { inletAfterPa: at('inletAfterPa', 0, 'G-11'), outletAfterPa: at('outletAfterPa', 0, 'G-12') },
  };
  const still = (
    { inletPsi, outletPsi }: { readonly inletPsi?: number; readonly outletPsi?: number },
    { gauge = 'G-11', ...words }: Readonly<Record<string, string>> = {},
  ) =>
    outcome('stillZero', {
      job,
      readings: [
        ...(inletPsi === undefined ? [] : [at('inletAgainPa', inletPsi, gauge)]),
        ...(outletPsi === undefined ? [] : [at('outletAgainPa', outletPsi, 'G-12')]),
      ],
      words,
      params,
    });

  test('are isolated by a second reading inside the limit on each, and by no single one (EI-27)', () => {
    expect(still({ inletPsi: 0, outletPsi: 0 })).toBe('still zero');
    expect(still({ inletPsi: 2.5, outletPsi: 2.5 })).toBe('still zero');
    expect(still({ inletPsi: 2.6, outletPsi: 0 })).toBe('inlet builds up');
    expect(still({ inletPsi: 0, outletPsi: 2.6 })).toBe('outlet builds up');
    expect(still({ inletPsi: 0 })).toBe('not read');
    expect(still({ outletPsi: 0 })).toBe('not read');
    expect(still({})).toBe('not read');
  });

  test('are read on the gauge of the first zero, or cracked where it could not tell (EI-27)', () => {
    expect(still({ inletPsi: 0, outletPsi: 0 }, { gauge: 'G-03' })).toBe('not read');
    expect(still({}, { inletFlow: 'no flow', outletFlow: 'no flow' })).toBe('still zero');
    expect(still({ inletPsi: 0 }, { outletFlow: 'flow' })).toBe('outlet builds up');
  });
});

describe('What can hurt', () => {
  const known = (words: Readonly<Record<string, string>>, on: Partial<ValveSheet> = {}) =>
    outcome('energiesKnown', { job: openJob({ sheet: aSheet(on) }).job, words });

  test('is known before anything is shut, and a size that the sheet lacks is written down (EI-03)', () => {
    expect(known({ energiesKnown: 'yes' })).toBe('known');
    expect(known({ energiesKnown: 'no' })).toBe('not known');
    expect(known({})).toBe('not known');
    expect(known({ energiesKnown: 'yes' }, { actuatorMassKg: null })).toBe('size missing');
    expect(
      known({ energiesKnown: 'yes', energiesFound: '32 kg by the plate' }, { actuatorMassKg: null }),
    ).toBe('known');
  });
});

describe('One of several', () => {
  test('must be one that is good', () => {
    const params = { field: 'plantState', good: 'line out,set up' };
    expect(outcome('oneOf', { words: { plantState: 'line out' }, params })).toBe('yes');
    expect(outcome('oneOf', { words: { plantState: 'neither' }, params })).toBe('no');
    expect(outcome('oneOf', { words: {}, params })).toBe('no');
  });
});
