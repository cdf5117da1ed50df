import { describe, expect, test } from 'vitest';
import { PROCEDURES } from '../../procedures/served.ts';
import type { Definition } from '../../procedures/vocabulary.ts';
import { stoppingOnly } from '../builders/leads-on.ts';
import { withStep } from '../builders/mutants.ts';

const GIVEN_BACK = 'the valve is back with its operator as it was: nothing is left to be put right';
const SPRING_HELD =
  'the long bolts hold the spring again: that was the way to safe, and from there work goes on';

/** Answers that lead to a stop because it is where they are meant to lead, each with its reason. */
const MEANT: Readonly<Record<string, string>> = {
  'undoBypass yes': GIVEN_BACK,
  'runDown yes': SPRING_HELD,
};

describe('A reading or an answer leads on: it is put right, done by another procedure, or left so with a reason', () => {
  test.each(PROCEDURES.map(({ definition }) => [definition.title, definition] as const))(
    '%s',
    (_, definition) => {
      expect(stoppingOnly(definition).filter((one) => MEANT[one] === undefined)).toEqual([]);
    },
  );

  test('and each exception is still one', () => {
    const all = new Set(PROCEDURES.flatMap(({ definition }) => stoppingOnly(definition)));
    expect(Object.keys(MEANT).filter((one) => !all.has(one))).toEqual([]);
  });

  test('and one that did not would be found', () => {
    const definition = PROCEDURES[0]?.definition;
    if (definition === undefined) throw new Error('nothing is served');
    const changed = (id: string, change: object): Definition => {
      const step = definition.steps[id];
      if (step === undefined) throw new Error(`there is no ${id}`);
      return withStep(definition, id, { ...step, ...change });
    };
    const { consent } = definition.steps;
    if (consent?.kind !== 'reading') throw new Error('another card');
    const refused = { ways: { ...consent.ways, no: { to: 'haltBypass' } } };
    expect(stoppingOnly(changed('consent', refused))).toContain('consent no');
    const stuck = { choices: { stop: { label: 'Stop', to: 'haltBypass' } } };
    expect(stoppingOnly(changed('notGiven', stuck))).toContain('notGiven: every choice stops');
    expect(stoppingOnly(changed('locksNotOff', { how: undefined }))).toContain(
      'locksNotOff: nothing says how it is put right',
    );
  });
});
