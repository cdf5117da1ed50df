import { describe, expect, test } from 'vitest';
import { PROCEDURES } from '../../procedures/served.ts';
import type { SignalWord, Step } from '../../procedures/vocabulary.ts';
import { waysOf } from '../../procedures/ways.ts';

const CAUTIONS = PROCEDURES.flatMap(({ definition }) =>
  Object.entries(definition.steps).flatMap(([name, step]) =>
    'caution' in step && step.caution !== undefined
      ? [{ where: `${definition.id}, ${name}`, caution: step.caution }]
      : [],
  ),
);
const WORDS: readonly SignalWord[] = ['danger', 'warning', 'caution', 'notice'];

test('every caution says the hazard, what it does and how it is avoided, in three sentences that differ (UI-35)', () => {
  const empty = CAUTIONS.filter(({ caution: { hazard, consequence, avoid } }) => {
    const said = [hazard, consequence, avoid].map((text) => text.trim());
    return said.some((text) => !/^[A-Z0-9].*[.!]$/s.test(text)) || new Set(said).size < 3;
  });
  expect(empty.map(({ where }) => where)).toEqual([]);
  expect(CAUTIONS.length).toBeGreaterThan(100);
});

test('a caution has one of the four signal words and no other (UI-34)', () => {
  expect(CAUTIONS.filter(({ caution }) => !WORDS.includes(caution.word)).map(({ where }) => where)).toEqual(
    [],
  );
});

type Open = Exclude<Step, { kind: 'end' }>;

const cautionOf = (step: Step) => (step.kind === 'end' ? undefined : step.caution);

/** The steps of a procedure that do something, by what finds them. */
const stepsThat = (does: (step: Open) => boolean) =>
  PROCEDURES.flatMap(({ definition }) =>
    Object.entries(definition.steps).flatMap(([id, step]) =>
      step.kind !== 'end' && does(step) ? [{ at: `${definition.id}: ${id}`, step }] : [],
    ),
  );

const unwarned = (does: (step: Open) => boolean, said: RegExp) =>
  stepsThat(does)
    .filter(({ step }) => {
      const caution = cautionOf(step);
      return caution === undefined || !said.test(Object.values(caution).join(' '));
    })
    .map(({ at }) => at);

describe('Before hands do what can hurt, the card says so with a signal word', () => {
  test('wherever air is let off and watched: the jet or the stem', () => {
    const vents = (step: Open) => step.action === 'ventCase';
    expect(stepsThat(vents).length).toBeGreaterThan(50);
    expect(unwarned(vents, /stem (moves|may move)|kills/)).toEqual([]);
    const atLinePressure = ['supplyAir', 'secondSupply'];
    const watched = (step: Open) =>
      vents(step) &&
      step.kind === 'reading' &&
      ((step.judge.rule === 'showSafe' && atLinePressure.includes(String(step.judge.with?.energy))) ||
        step.asks.some(({ name, optional }) => name === 'flowFirst' && optional !== true));
    expect(stepsThat(watched).length).toBeGreaterThan(40);
    expect(unwarned(watched, /Eye protection on/)).toEqual([]);
  });

  test('wherever flow passes to or from a bypass on a running process: the upset elsewhere', () => {
    const sets = (state: string) => (step: Open) =>
      step.action !== undefined && waysOf(step).some(({ way }) => way.sets?.bypass === state);
    for (const state of ['open', 'shut']) {
      expect(stepsThat(sets(state)).length).toBeGreaterThan(10);
      expect(unwarned(sets(state), /bypass (opens|shuts).* hurt people elsewhere/)).toEqual([]);
    }
  });

  test('wherever loop or circuits come back and move the valve: the finger in the yoke', () => {
    const back = (step: Open) =>
      step.kind === 'reading' &&
      step.action !== 'shutBypass' &&
      waysOf(step).some(({ way }) => way.sets?.loop === 'automatic' || way.sets?.electrical === 'live');
    expect(stepsThat(back).length).toBeGreaterThan(20);
    expect(unwarned(back, /finger in the yoke/)).toEqual([]);
  });

  test('wherever a part is blown clear with air, or a drain is blown down: the eyes', () => {
    const blows = (step: Open) =>
      step.action === 'blowAirLineDown' ||
      ('do' in step && (step.do ?? []).some((line) => /\bblow\b/.test(line)));
    expect(stepsThat(blows).length).toBeGreaterThan(5);
    expect(unwarned(blows, /eye/i)).toEqual([]);
  });

  test('wherever a bonnet hangs: what it does to hands and feet', () => {
    const hangs = (step: Open) =>
      'do' in step && (step.do ?? []).some((line) => /(Raise|Lower) the bonnet/.test(line));
    expect(stepsThat(hangs).length).toBeGreaterThan(3);
    expect(unwarned(hangs, /hands and feet/)).toEqual([]);
  });
});
