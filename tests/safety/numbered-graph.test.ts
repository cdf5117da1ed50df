import { expect, test } from 'vitest';
import { numbered } from '../../safety/numbered-graph.ts';
import type { ProofEdge } from '../../safety/proof-graph.ts';
import { statesAmong, WORDS } from '../../safety/state-bits.ts';

const PLAIN = { action: null, end: false, safe: false };
const way = (from: string, to: string, sets: ProofEdge['sets'] = {}): ProofEdge => ({
  from,
  to,
  sets,
  guarded: true,
  by: 'ANSWER',
});

test('[SAF-03] A numbered graph has each way at the step that it leaves, with what it sets and what it keeps', () => {
  const edges = [way('b', 'a'), way('a', 'b', { spring: ['released'] }), way('b', 'beyond')];
  const graph = numbered({ start: 'a', steps: { a: PLAIN, b: PLAIN }, edges });
  expect(graph.ids).toEqual(['a', 'b', 'beyond']);
  const waysOf = (step: string) => {
    const number = graph.numberOf(step) ?? Number.NaN;
    return [...graph.ways.slice(graph.firstWay[number], graph.firstWay[number + 1])];
  };
  expect(['a', 'b', 'beyond'].map(waysOf)).toEqual([[1], [0, 2], []]);
  expect(Array.from(graph.to, (step) => graph.ids[step])).toEqual(['a', 'b', 'beyond']);
  expect(statesAmong({ words: graph.sets, at: WORDS }, 'spring')).toEqual(['released']);
  expect(statesAmong({ words: graph.keeps, at: WORDS }, 'spring')).toEqual([]);
  expect(statesAmong({ words: graph.keeps, at: 0 }, 'spring')).toHaveLength(4);
  expect(graph.numberOf('nowhere')).toBeUndefined();
});
