import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ActionClass } from '../../safety/action-classes.ts';
import type { AnyState } from '../../safety/conditions.ts';
import { prove, prover, sayFinding } from '../../safety/proof.ts';
import type { ProofEdge, ProofGraph, ProofStep } from '../../safety/proof-graph.ts';

const PLAIN: ProofStep = { action: null, end: false, safe: false };
const SAFE: ProofStep = { ...PLAIN, safe: true };
const END: ProofStep = { ...PLAIN, end: true };
const act = (action: ActionClass): ProofStep => ({ ...PLAIN, action });

function way(from: string, to: string, sets: ProofEdge['sets'] = {}, by = 'ANSWER'): ProofEdge {
  return { from, to, sets, guarded: by !== 'STOP', by };
}

/** Every step gets its way to the safe one, unless a test gives the ways itself. */
function graph(steps: ProofGraph['steps'], edges: readonly ProofEdge[]): ProofGraph {
  const stops = Object.entries(steps)
    .filter(([, step]) => !step.end && !step.safe)
    .map(([id]) => way(id, 'halt', {}, 'STOP'));
  return {
    start: 'start',
    steps: { ...steps, halt: SAFE },
    edges: [...edges, ...stops, way('halt', 'start')],
  };
}

const rulesOf = (of: ProofGraph) => prove(of).findings.map((one) => `${one.rule} ${one.step}`);

describe('[SAF-03] A proof', () => {
  const steps = { start: PLAIN, vent: PLAIN, apart: act('disconnectTestAir'), done: END };

  test('finds nothing where every way leads through the step that shows it', () => {
    const good = graph(steps, [
      way('start', 'vent'),
      way('vent', 'apart', { signalAir: ['isolated'] }),
      way('apart', 'done', { signalAir: ['isolated'] }),
    ]);
    expect(prove(good).findings).toEqual([]);
  });

  test('finds the way round it, and names the shortest', () => {
    const round = graph({ ...steps, detour: PLAIN, longer: PLAIN }, [
      way('start', 'vent'),
      way('vent', 'apart', { signalAir: ['isolated'] }),
      way('start', 'longer'),
      way('longer', 'detour'),
      way('detour', 'apart', {}, 'ANSWER skip'),
      way('start', 'detour', {}, 'ANSWER short'),
      way('apart', 'done'),
    ]);
    const [finding, ...others] = prove(round).findings;
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ rule: 'exposed', step: 'apart', condition: 'signalAir', state: 'live' });
    expect(finding?.path).toEqual(['start (opened)', 'detour (ANSWER short)', 'apart (ANSWER skip)']);
    expect(finding && sayFinding(finding)).toBe(
      'exposed at apart: Signal or test air can be live by way of start (opened), detour (ANSWER short), apart (ANSWER skip)',
    );
  });

  test('takes the union where ways join: one bad branch is enough, even met first by the good one', () => {
    const join = graph({ ...steps, other: PLAIN, join: PLAIN }, [
      way('start', 'vent'),
      way('vent', 'join', { signalAir: ['isolated'] }),
      way('start', 'other'),
      way('other', 'join'),
      way('join', 'apart'),
      way('apart', 'done'),
    ]);
    const { findings, reach } = prove(join);
    expect(reach.get('join')?.get('signalAir')).toEqual(new Set(['live', 'isolated']));
    expect(findings.map((one) => one.step)).toEqual(['apart']);
  });

  test('takes every state that an answer may choose as possible', () => {
    const chosen = graph(steps, [
      way('start', 'vent'),
      way('vent', 'apart', { signalAir: ['isolated', 'held'] }),
      way('apart', 'done'),
    ]);
    expect(prove(chosen).findings).toMatchObject([{ rule: 'exposed', state: 'held' }]);
  });

  test('sees what a round of the graph leaves behind', () => {
    const loop = graph(steps, [
      way('start', 'vent'),
      way('vent', 'apart', { signalAir: ['isolated'] }),
      way('apart', 'apart', { signalAir: ['live'] }, 'ANSWER again'),
      way('apart', 'done'),
    ]);
    expect(prove(loop).findings.map((one) => one.path.at(-1))).toEqual(['apart (ANSWER again)']);
  });
});

describe('[SAF-10] A procedure', () => {
  const ended = (sets: ProofEdge['sets']) =>
    rulesOf(graph({ start: PLAIN, done: END }, [way('start', 'done', sets)]));

  test('may end with every lock off, the bypass shut and no test air', () => {
    expect(ended({})).toEqual([]);
    expect(ended({ bypass: ['absent'] })).toEqual([]);
  });

  test.each(['supplyLock', 'inletLock', 'outletLock'] as const)('does not end with the %s on', (lock) => {
    expect(ended({ [lock]: ['on'] })).toEqual(['end with a lock on done']);
    expect(ended({ [lock]: ['off', 'on'] })).toEqual(['end with a lock on done']);
  });

  test('does not end with the bypass open or test air on', () => {
    expect(ended({ bypass: ['open'] })).toEqual(['end with a bypass open done']);
    expect(ended({ testAir: ['connected'] })).toEqual(['end with test air done']);
  });
});

describe('[SAF-09] Every step', () => {
  test('has a way to safe that no guard can block', () => {
    const blocked: ProofGraph = {
      start: 'start',
      steps: { start: PLAIN, middle: PLAIN, halt: SAFE, done: END },
      edges: [
        way('start', 'halt', {}, 'STOP'),
        way('start', 'middle'),
        way('middle', 'halt', {}, 'ANSWER'),
        way('halt', 'start'),
        way('halt', 'done'),
      ],
    };
    expect(rulesOf(blocked)).toEqual(['no way to safe middle']);
  });

  test('may reach safe over several steps, each unguarded', () => {
    const chained: ProofGraph = {
      start: 'start',
      steps: { start: PLAIN, vent: PLAIN, halt: SAFE, done: END },
      edges: [way('start', 'vent', {}, 'STOP'), way('vent', 'halt', {}, 'STOP'), way('halt', 'done')],
    };
    expect(rulesOf(chained)).toEqual([]);
  });

  test('can be reached, and leads on (HP-31)', () => {
    const lost = graph({ start: PLAIN, island: PLAIN, done: END }, [way('start', 'done')]);
    expect(rulesOf(lost)).toEqual(['unreachable island']);
    const dead: ProofGraph = {
      start: 'start',
      steps: { start: PLAIN, pit: SAFE },
      edges: [way('start', 'pit', {}, 'STOP')],
    };
    expect(rulesOf(dead)).toEqual(['dead end pit']);
  });
});

describe('[SAF-13] A way back', () => {
  const { reach } = prove(
    graph({ start: PLAIN, vent: PLAIN, after: PLAIN, done: END }, [
      way('start', 'vent'),
      way('vent', 'after', { signalAir: ['isolated'] }),
      way('after', 'vent', {}, 'ANSWER again'),
      way('after', 'done'),
    ]),
  );

  test('is open only where all that is possible here is possible there', () => {
    expect(reach.isWithin({ from: 'after', to: 'vent' })).toBe(true);
    expect(reach.isWithin({ from: 'vent', to: 'after' })).toBe(false);
  });

  test('is not open from or to a step that is not there', () => {
    expect(reach.isWithin({ from: 'after', to: 'nowhere' })).toBe(false);
    expect(reach.isWithin({ from: 'nowhere', to: 'vent' })).toBe(false);
  });
});

describe('[SAF-03] A graph that is proved under many standings of the facts', () => {
  const ids = ['start', 'a', 'b', 'c', 'd', 'halt'];
  const states: readonly AnyState[] = ['live', 'held', 'isolated', 'absent'];
  const someEdge = fc.record({
    from: fc.constantFrom(...ids),
    to: fc.constantFrom(...ids),
    sets: fc.subarray([...states]).map((signalAir) => (signalAir.length === 0 ? {} : { signalAir })),
    guarded: fc.boolean(),
    by: fc.constantFrom('ANSWER', 'STOP'),
  });

  test('has the findings of the graph without the ways that are shut then, wherever it begins', () => {
    const steps = { start: PLAIN, a: act('disconnectTestAir'), b: END, c: PLAIN, d: PLAIN, halt: SAFE };
    const cases = fc.record({
      edges: fc.array(fc.tuple(someEdge, fc.boolean(), fc.boolean()), { maxLength: 16 }),
      at: fc.constantFrom(...ids),
      taken: fc.constantFrom(...states),
    });
    let found = 0;
    fc.assert(
      fc.property(cases, ({ edges, at, taken }) => {
        const all = edges.map(([edge]) => edge);
        const proveUnder = prover({ start: 'start', steps, edges: all });
        const takesOver = [{ at, standing: { signalAir: [taken] } }];
        for (const which of [1, 2] as const) {
          const shut = Uint8Array.from(edges, (each) => (each[which] ? 1 : 0));
          const alone = prove({
            start: 'start',
            steps,
            takesOver,
            edges: all.filter((_, way) => shut[way] !== 1),
          });
          const { findings, reach } = proveUnder({ takesOver, shut });
          expect(findings).toEqual(alone.findings);
          for (const id of ids) expect(reach.get(id)).toEqual(alone.reach.get(id));
          found += findings.filter(({ rule }) => rule === 'exposed').length;
        }
      }),
      { numRuns: 200 },
    );
    expect(found).toBeGreaterThan(50);
  });
});
