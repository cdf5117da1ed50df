import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { advance } from '../../../procedures/advance.ts';
import { compile } from '../../../procedures/compile.ts';
import { ONE_GO_MAX, soundOf } from '../../../procedures/one-go.ts';
import { yesNo } from '../../../procedures/phases/common.ts';
import { runFrom } from '../../../procedures/reply/together.ts';
import { type Definition, procedure, type ReadingStep, type Step } from '../../../procedures/vocabulary.ts';
import { act, around, COMPILED, openJob, playTo } from '../../builders/jobs.ts';

const WARNING = {
  word: 'warning',
  hazard: 'It moves.',
  consequence: 'It crushes.',
  avoid: 'Hands off.',
} as const;

type Kind =
  | 'plain'
  | 'ticked'
  | 'ticked and warned'
  | 'branches'
  | 'warned'
  | 'sets'
  | 'other phase'
  | 'needs air off'
  | 'reading'
  | 'question'
  | 'hold'
  | 'wait';
const KINDS: readonly Kind[] = [
  'plain',
  'ticked',
  'ticked and warned',
  'branches',
  'warned',
  'sets',
  'other phase',
  'needs air off',
  'reading',
  'question',
  'hold',
  'wait',
];

const OF_ONE_GO: readonly Kind[] = ['plain', 'ticked'];

/** Asks whether it is as it should be, and says that it is done in one go with others. */
function ticked(to: string): ReadingStep<string> {
  return {
    kind: 'reading',
    phase: 'one',
    title: 'Do it',
    asks: [yesNo('right', 'It is right')],
    oneGo: true,
    judge: { rule: 'allYes', with: { fields: 'right' } },
    ways: { yes: { to }, no: { to: 'end' } },
    makeSafe: 'end',
  };
}

function stepOf(kind: Kind, to: string): Step<string> {
  const plain = {
    kind: 'instruction',
    phase: 'one',
    title: 'Do it',
    do: ['Read the manual.'],
    makeSafe: 'end',
    next: { to },
  } as const;
  const head = { phase: 'one', title: 'Do it', makeSafe: 'end' } as const;
  switch (kind) {
    case 'plain':
      return plain;
    case 'ticked':
      return ticked(to);
    case 'ticked and warned':
      return { ...ticked(to), caution: WARNING };
    case 'branches':
      return { ...ticked(to), judge: { rule: 'oneOf', with: { field: 'right', good: 'yes' } } };
    case 'warned':
      return { ...plain, caution: WARNING };
    case 'sets':
      return { ...plain, next: { to, sets: { consent: 'given' } } };
    case 'other phase':
      return { ...plain, phase: 'two' };
    case 'needs air off':
      return { ...plain, action: 'breakSignalLine' };
    case 'reading':
      return { ...head, kind: 'reading', asks: [], judge: { rule: 'record' }, ways: { kept: { to } } };
    case 'question':
      return { ...head, kind: 'question', choices: { on: { label: 'Go on', to } } };
    case 'wait':
      return { ...head, kind: 'wait', waitS: 20, next: { to } };
    case 'hold':
      return {
        ...head,
        kind: 'hold',
        point: 'hold',
        criterion: 'All is safe.',
        evidence: [],
        allows: [],
        signed: { to },
        sentBack: { to },
      };
  }
}

/** A procedure whose steps follow one another, and a job that stands at its first. */
function jobAlong(kinds: readonly Kind[]) {
  const named = kinds.map((kind, at): [string, Step<string>] => [
    `s${at}`,
    stepOf(kind, at + 1 < kinds.length ? `s${at + 1}` : 'end'),
  ]);
  const definition: Definition = procedure<string>({
    id: 'chain',
    title: 'A chain',
    energyControl: { use: 'Tests.', isolation: 'None.', locks: 'None.', verification: 'None.' },
    revisions: [{ letter: 'A', date: '2026-11-25', change: 'First issue.' }],
    phases: [
      { id: 'one', title: 'One' },
      { id: 'two', title: 'Two' },
    ],
    start: 's0',
    safe: ['end'],
    steps: Object.fromEntries([
      ...named,
      ['end', { kind: 'end', phase: 'one', title: 'Over', closes: 'done' }],
    ]),
  });
  return openJob({ compiled: compile(definition) });
}

function runOf(...kinds: readonly Kind[]): readonly string[] {
  const run = jobAlong(kinds);
  return runFrom(run.job, around(run));
}

describe('Steps may be entered together', () => {
  test('where plain ones of one phase follow one another', () => {
    expect(runOf('plain', 'plain', 'plain')).toEqual(['s0', 's1', 's2']);
  });

  test('and cards that ask only whether all of it is as it should be, where they say so', () => {
    expect(runOf('ticked', 'plain', 'ticked')).toEqual(['s0', 's1', 's2']);
  });

  test('never from a card with a warning, and never on to one', () => {
    expect(runOf('warned', 'plain', 'plain')).toEqual([]);
    expect(runOf('plain', 'plain', 'warned', 'plain')).toEqual(['s0', 's1']);
    expect(runOf('plain', 'warned')).toEqual([]);
  });

  test('never more than are remembered', () => {
    expect(runOf(...Array.from({ length: ONE_GO_MAX + 2 }, () => 'plain' as const)).length).toBe(ONE_GO_MAX);
  });

  test.each(KINDS.filter((kind) => !OF_ONE_GO.includes(kind)))(
    'never across a card of the kind: %s',
    (kind) => {
      // A card whose action is not allowed is not even come to.
      const entered = kind === 'needs air off' ? [] : ['s0', 's1'];
      expect(runOf('plain', 'plain', kind, 'plain')).toEqual(entered);
      expect(runOf('plain', kind, 'plain')).toEqual([]);
    },
  );

  test('never where there is only one', () => {
    expect(runOf('plain')).toEqual([]);
    expect(runOf('plain', 'reading')).toEqual([]);
  });

  test('not on a job that is parked', () => {
    const run = jobAlong(['plain', 'plain']);
    act(run, { kind: 'park', reason: '' });
    expect(runFrom(run.job, around(run))).toEqual([]);
  });

  test('nowhere in a stroke check where its cards are read, signed or set a state', () => {
    const { steps } = COMPILED.definition;
    for (const id of ['connectAir', 'holdWork', 'asFoundCycle', 'turnStem'])
      expect(soundOf(steps[id])).toBe(null);
    const run = playTo(openJob(), 'holdWork');
    expect(runFrom(run.job, around(run))).toEqual([]);
  });
});

test('whatever steps follow one another, a run holds only such as are done in one go, and each is taken in order', () => {
  fc.assert(
    fc.property(
      fc.array(fc.constantFrom<Kind>('plain', ...KINDS), { minLength: 1, maxLength: 7 }),
      (kinds) => {
        const run = jobAlong(kinds);
        const found = runFrom(run.job, around(run));
        const { steps } = run.compiled.definition;
        expect(found.length).not.toBe(1);
        expect(found.every((id) => soundOf(steps[id]) !== null)).toBe(true);
        expect(new Set(found.map((id) => steps[id]?.phase)).size).toBeLessThan(2);
        for (const id of found) {
          expect(run.job.step).toBe(id);
          act(run, { kind: 'answer', given: { right: 'yes' }, together: { first: 2 } });
        }
        // And it is as long as may be: the next is none for one go, is refused, or is the end.
        const next = steps[run.job.step];
        const phase = steps[found[0] ?? '']?.phase;
        const isFull = found.length === 0 || found.length === ONE_GO_MAX;
        if (isFull || soundOf(next) === null || next?.phase !== phase) return;
        const given = { right: 'yes' };
        const action = { kind: 'answer', place: run.job.place, step: run.job.step, given } as const;
        expect(() => advance(run.job, action, around(run))).toThrow();
      },
    ),
    { numRuns: 150, examples: [[['other phase', 'other phase', 'plain']]] },
  );
});

test('each line that was entered together says with which it was, and no other line does', () => {
  const run = jobAlong(['plain', 'plain', 'plain']);
  act(run, { kind: 'answer', given: {} });
  act(run, { kind: 'answer', given: {}, together: { first: 3 } });
  expect(run.job.answers.map(({ together }) => together)).toEqual([null, { first: 3 }]);
});
