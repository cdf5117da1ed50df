import { describe, expect, test } from 'vitest';
import type { Reading } from '../../procedures/job.ts';
import { oneGoFaults } from '../../procedures/lint/one-go.ts';
import { ONE_GO_MAX, soundOf } from '../../procedures/one-go.ts';
import { placeholdersIn, sayFigure } from '../../procedures/say.ts';
import { PROCEDURES } from '../../procedures/served.ts';
import type { Definition, OpenStep, ReadingStep, Step } from '../../procedures/vocabulary.ts';
import { waysOf } from '../../procedures/ways.ts';
import { openJob } from '../builders/jobs.ts';
import { withStep } from '../builders/mutants.ts';

/** Rows of cards for one go, as far as each leads, from every card that none leads to. */
function rowsOf({ steps }: Definition): readonly (readonly string[])[] {
  const on = (id: string) => {
    const sound = soundOf(steps[id]);
    if (sound === null) return [];
    const targets = typeof sound.way.to === 'string' ? [sound.way.to] : Object.values(sound.way.to.ways);
    return targets.filter((to) => soundOf(steps[to]) !== null && steps[to]?.phase === steps[id]?.phase);
  };
  const ledTo = new Set(Object.keys(steps).flatMap(on));
  const walk = (row: readonly string[]): readonly (readonly string[])[] => {
    const next = on(row.at(-1) ?? '').filter((to) => !row.includes(to));
    return next.length === 0 ? [row] : next.flatMap((to) => walk([...row, to]));
  };
  return Object.keys(steps)
    .filter((id) => !ledTo.has(id))
    .flatMap((id) => walk([id]))
    .filter((row) => row.length > 1);
}

const ROWS = PROCEDURES.flatMap(({ definition }) =>
  rowsOf(definition).map((row) => ({ definition, row, name: `${definition.id}: ${row.join(', ')}` })),
);

test('a technician with dirty hands enters these rows in one go, and no others', () => {
  const case_ = 'caseParts, diaphragmNew, diaphragmIn, closeCase';
  expect(ROWS.map(({ name }) => name).toSorted()).toEqual(
    [
      'diaphragm-renewal: coverOff, diaphragmOut',
      `diaphragm-renewal: ${case_}`,
      'first-commissioning: plate, flow, actuator, tubing, points',
      'piston-seals: sealsIn, pistonIn, cylinderClose',
      'seat-and-plug: cleanOut, sealRingsOn, trimIn',
      'seat-and-plug: cleanOut, trimIn',
      'spring-change: springIn, closeCase',
      `valve-overhaul: ${case_}`,
      'valve-overhaul: cleanOut, sealRingsOn, trimIn',
      'valve-overhaul: cleanOut, trimIn',
      'valve-overhaul: coverOff, diaphragmOut',
    ].toSorted(),
  );
});

/** Said again here in other words than the program has: what may never stand between two cards that are entered together. */
function inTheWay(step: Step | undefined): readonly string[] {
  if (step === undefined || step.kind === 'end') return ['the end'];
  const states = waysOf(step)
    .filter(({ event }) => event === 'ANSWER' || event === 'SIGN')
    .flatMap(({ way }) => Object.entries(way.sets ?? {}));
  const branches = step.kind === 'reading' && !['record', 'allYes'].includes(step.judge.rule);
  return [
    ...(['instruction', 'reading'].includes(step.kind) ? [] : [`a ${step.kind}`]),
    ...(step.caution === undefined ? [] : [`a ${step.caution.word}`]),
    ...(branches ? ['a reading that decides the way'] : []),
    ...states.filter(([, to]) => to !== 'not looked at').map(([condition]) => `${condition} is shown`),
  ];
}

describe.each(ROWS)('$name', ({ definition, row }) => {
  test('[SAF-10] passes no hold, no signature, no danger, no branch and no proof', () => {
    expect(row.length).toBeLessThanOrEqual(ONE_GO_MAX);
    expect(row.flatMap((id) => inTheWay(definition.steps[id]))).toEqual([]);
    expect(new Set(row.map((id) => definition.steps[id]?.phase)).size).toBe(1);
  });

  test('names no number on a later card that an earlier one asks for', () => {
    const { job } = openJob();
    const reading = (field: string): Reading => ({
      ...{ field, valueSi: 1, typed: '1', unit: '', gauge: null, uncertaintySi: null, readBy: null },
    });
    for (const [index, id] of row.entries()) {
      const asked = row.slice(0, index).flatMap((before) => {
        const step = definition.steps[before];
        return step?.kind === 'reading' ? step.asks.map(({ name }) => name) : [];
      });
      const after = {
        ...job,
        readings: Object.fromEntries(asked.map((name) => [name, reading(name)])),
        words: Object.fromEntries(asked.map((name) => [name, '8'])),
      };
      for (const name of placeholdersIn(JSON.stringify(definition.steps[id])))
        expect(sayFigure(name, after), `${id} says {${name}}`).toBe(sayFigure(name, job));
    }
  });

  test('is cut where one of its cards is made to warn, to prove, to branch, to be signed or to let hands in', () => {
    for (const id of row)
      for (const [what, changed] of Object.entries(madeWrong(definition.steps[id] as OpenStep))) {
        const mutant = withStep(definition, id, changed);
        expect(rowsOf(mutant).flat(), `${id}: ${what}`).not.toContain(id);
        // Where the card itself says that it is for one go, it is not even served.
        if (changed.kind === 'reading')
          expect(oneGoFaults(id, { step: changed, definition: mutant }), `${id}: ${what}`).not.toEqual([]);
      }
  });
});

const DANGER = {
  word: 'danger',
  hazard: 'It is loaded.',
  consequence: 'It throws parts.',
  avoid: 'Stay out.',
} as const;

function madeWrong(step: OpenStep): Readonly<Record<string, OpenStep>> {
  const shows = { closure: 'shut' } as const;
  const { phase, title, makeSafe } = step;
  const head = { phase, title, makeSafe };
  const to = waysOf(step)[0]?.way.to ?? '';
  const hold = { kind: 'hold', point: 'hold', criterion: 'Safe.', evidence: [], allows: [] } as const;
  const common: Readonly<Record<string, OpenStep>> = {
    'a danger': { ...step, caution: DANGER } as OpenStep,
    'hands let in': { ...step, action: 'loosenCaseBolts' },
    'a hold': { ...head, ...hold, signed: { to }, sentBack: { to } },
    'a wait': { ...head, kind: 'wait', waitS: 60, next: { to } },
    'a question': { ...head, kind: 'question', choices: { on: { label: 'On', to } } },
  };
  if (step.kind === 'instruction') return { ...common, 'a proof': { ...step, next: { to, sets: shows } } };
  const asks = step as ReadingStep<string>;
  const ways = Object.entries(asks.ways).map(([name, way]) => [name, { ...way, sets: shows }]);
  return {
    ...common,
    'a proof': { ...asks, ways: Object.fromEntries(ways) },
    'a branch': { ...asks, judge: { rule: 'oneOf', with: { field: 'x', good: 'yes' } } },
  };
}

describe('A definition is not served', () => {
  const [{ definition, row } = { definition: undefined, row: [] }] = ROWS.filter(({ name }) =>
    name.startsWith('first-commissioning'),
  );
  const of = (id: string, change: (definition: Definition) => Definition) => {
    const mutant = change(definition as Definition);
    return oneGoFaults(id, { step: mutant.steps[id] as OpenStep, definition: mutant });
  };

  test('where a card for one go stands alone', () => {
    const alone = (whole: Definition) =>
      row.slice(1).reduce((left, id) => {
        const { oneGo: _, ...step } = left.steps[id] as ReadingStep<string>;
        return withStep(left, id, step);
      }, whole);
    expect(of(row[0] ?? '', alone)).toEqual([`${row[0]}: nothing beside it is entered with it`]);
  });

  test('where more cards follow one another than are remembered', () => {
    const longer = (whole: Definition) => {
      const first = whole.steps[row[0] ?? ''] as ReadingStep<string>;
      const more = { ...first, ways: { ...first.ways, yes: { to: row[0] ?? '' } } };
      return withStep(whole, 'oneMore', more);
    };
    expect(of('oneMore', longer)).toEqual([`oneMore: begins a row of more than ${ONE_GO_MAX} cards`]);
    expect(of(row[0] ?? '', longer)).toEqual([]);
  });
});
