/** A definition as one valve has it: what a signature allows follows from how its spring is held, and where it stands. */
import { describe, expect, test } from 'vitest';
import { factsOf } from '../../procedures/facts.ts';
import { compiledForValve, forValve } from '../../procedures/for-valve.ts';
import { reachedSteps } from '../../procedures/reached.ts';
import { PROCEDURES } from '../../procedures/served.ts';
import type { Place } from '../../procedures/served-procedure.ts';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import type { Definition, HoldStep } from '../../procedures/vocabulary.ts';
import type { ActionClass } from '../../safety/action-classes.ts';
import { COMPILED, jobAt } from '../builders/jobs.ts';
import { aSheet, aSheetOf } from '../builders/sheets.ts';

const IN_CASE = aSheetOf({ springHeldBy: 'case', adjusterThread: '' });
const BY_ADJUSTER: readonly ActionClass[] = ['backOffAdjuster', 'windAdjusterOnTestAir', 'loosenCaseBolts'];
const BY_LONG_BOLTS: readonly ActionClass[] = ['loosenShortCaseBolts', 'loosenLongCaseBolts'];

function holdsOf({ steps }: Definition): readonly HoldStep<string>[] {
  return Object.values(steps).filter((step): step is HoldStep<string> => step.kind === 'hold');
}

function everyHold(sheet: ValveSheet, place: Place): readonly ActionClass[] {
  const facts = factsOf(sheet, place);
  return PROCEDURES.filter(({ whyNot }) => whyNot(sheet, place) === null).flatMap(({ definition }) =>
    holdsOf(forValve(definition, facts)).flatMap(({ allows }) => allows),
  );
}

describe.each(['line', 'bench'] as const)('What a signature allows, on a valve in its %s', (place) => {
  test('has no adjuster work where the case holds the spring, and its long bolts', () => {
    const allowed = everyHold(IN_CASE, place);
    expect(allowed.filter((action) => BY_ADJUSTER.includes(action))).toEqual([]);
    expect(allowed).toEqual(expect.arrayContaining([...BY_LONG_BOLTS]));
  });

  test('has no long bolts where an adjuster holds the spring, and its adjuster', () => {
    const allowed = everyHold(aSheet(), place);
    expect(allowed.filter((action) => BY_LONG_BOLTS.includes(action))).toEqual([]);
    expect(allowed).toEqual(expect.arrayContaining([...BY_ADJUSTER]));
  });

  test('still has all signed work to which a job of such a valve comes', () => {
    for (const sheet of [IN_CASE, aSheet()]) {
      const facts = factsOf(sheet, place);
      for (const { definition } of PROCEDURES) {
        const reached = [...reachedSteps(definition, facts)].map((id) => definition.steps[id]);
        const signed = reached.flatMap((step) =>
          step === undefined || step.kind === 'end' || step.action === undefined ? [] : [step.action],
        );
        const own = forValve(definition, facts);
        for (const [id, hold] of Object.entries(definition.steps)) {
          const held = own.steps[id];
          if (hold.kind !== 'hold' || held?.kind !== 'hold') continue;
          const wanted = hold.allows.filter((action) => signed.includes(action));
          expect(held.allows, `${definition.id} ${id}`).toEqual(wanted);
          // A hold that allowed work never allows none of it because of how the valve is built.
          if (hold.allows.length > 0 && reached.includes(hold))
            expect(held.allows.length, `${definition.id} ${id}`).toBeGreaterThan(0);
        }
      }
    }
  });
});

test('What was signed on a case that holds its spring names no adjuster in its envelope', () => {
  const compiled = compiledForValve(COMPILED, factsOf(IN_CASE, 'line'));
  const { envelope } = jobAt('connectAir', { sheet: IN_CASE, compiled }).job;
  expect(envelope?.work).toEqual([
    'connectTestAir',
    'strokeByTestAir',
    'turnPlugStem',
    'setIndicatorOnTestAir',
  ]);
  expect(jobAt('connectAir').job.envelope?.work).toContain('windAdjusterOnTestAir');
});

describe('A valve whose case holds its spring', () => {
  const facts = factsOf(IN_CASE, 'line');
  const labelsOf = (own: typeof facts, definition: Definition): readonly string[] =>
    [...reachedSteps(definition, own)].flatMap((id) => {
      const step = forValve(definition, own).steps[id];
      return step?.kind === 'question' ? Object.values(step.choices).map(({ label }) => label) : [];
    });

  test('is offered no adjuster to wind in any procedure, and no card that says there is none', () => {
    const winds = /^(?:Wind the|The adjuster)/;
    const fitting = PROCEDURES.filter(({ whyNot }) => whyNot(IN_CASE, 'line') === null);
    const offered = fitting.map(({ definition }) =>
      labelsOf(facts, definition).filter((one) => winds.test(one)),
    );
    expect(offered.flat()).toEqual([]);
    const byAdjuster = PROCEDURES.filter(({ whyNot }) => whyNot(aSheet(), 'line') === null);
    const wound = byAdjuster.flatMap(({ definition }) => labelsOf(factsOf(aSheet(), 'line'), definition));
    expect(wound.filter((one) => winds.test(one)).length).toBeGreaterThan(8);
  });

  test('still has a way on from each of its questions', () => {
    for (const { definition } of PROCEDURES) {
      const own = forValve(definition, facts).steps;
      for (const [id, step] of Object.entries(own))
        if (step.kind === 'question')
          expect(Object.keys(step.choices), `${definition.id} ${id}`).not.toEqual([]);
    }
  });
});
