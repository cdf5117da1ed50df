import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { faultsOf } from '../../procedures/check.ts';
import { nextStep, proofUnder } from '../../procedures/compile.ts';
import { everyFacts, type Facts } from '../../procedures/facts.ts';
import { PROCEDURES } from '../../procedures/served.ts';
import type { ServedProcedure } from '../../procedures/served-procedure.ts';
import { printSheet } from '../../procedures/sheet-print.ts';
import { type PointKind, revisionOf, type Target } from '../../procedures/vocabulary.ts';
import { waysOf } from '../../procedures/ways.ts';
import { CONDITION_IDS } from '../../safety/conditions.ts';
import { Catalogue, hashOf, proveAll } from '../../server/jobs/catalogue.ts';
import { withStep } from '../builders/mutants.ts';
import { standings } from '../builders/standings.ts';
import { coverageOf } from '../builders/state-coverage.ts';
import { ROOT } from '../root.ts';

const catalogue = new Catalogue();

describe.each(PROCEDURES.map((procedure) => [procedure.definition.title, procedure] as const))(
  '[SAF-03] [SAF-09] [SAF-10] %s',
  (_, procedure) => {
    const { definition } = procedure;
    const compiled = catalogue.current(definition.id)?.compiled;
    if (compiled === undefined) throw new Error(`${definition.id} is not served`);
    const every = everyFacts(compiled.facts);

    test('has no fault, so that it may be served', () => {
      expect(faultsOf(compiled)).toEqual([]);
    });

    test('is proved over exactly what can be met when it is played', () => {
      const differ: string[] = [];
      for (const facts of every) {
        const reach = proofUnder(compiled, facts)?.reach;
        const played = standings(definition, facts);
        expect([...(reach?.keys() ?? [])].sort()).toEqual([...played.keys()].sort());
        for (const [step, met] of played) {
          const proved = reach?.get(step);
          for (const id of CONDITION_IDS)
            if (!isSame(proved?.get(id), new Set(met.map((states) => states[id]))))
              differ.push(`${step} ${id}, ${JSON.stringify(facts)}`);
        }
      }
      expect(differ).toEqual([]);
    });

    test('takes every way that its definition writes', () => {
      const untaken: string[] = [];
      for (const [step, written] of Object.entries(definition.steps))
        for (const { event, outcome, way } of waysOf(written))
          for (const facts of telling(way.to, every))
            if (nextStep(compiled, { step, event: { type: event, outcome: outcome ?? '', facts } }) === null)
              untaken.push(`${step} ${event} ${outcome}`);
      expect(untaken).toEqual([]);
    });

    test('is entered in every state from where its jobs begin, and left by every branch', () => {
      const { notEntered, notTaken, line } = coverageOf(compiled);
      console.log(line);
      expect([notEntered, notTaken]).toEqual([[], []]);
    });

    test('prints the sheet that was reviewed; `npm run sheets` prints it anew', () => {
      expect(printSheet(definition)).toBe(stored(procedure, 'sheet.md'));
    });

    test('is what was written down under its letter: a change of any word needs a new one', () => {
      const issued = JSON.parse(stored(procedure, 'revisions.json')) as Readonly<Record<string, string>>;
      expect(hashOf(definition)).toBe(issued[revisionOf(definition)]);
      expect(Object.keys(issued)).toEqual(definition.revisions.map(({ letter }) => letter));
      const [id, step] = Object.entries(definition.steps)[0] ?? [];
      if (id === undefined || step === undefined) throw new Error('it has no step');
      const changed = withStep(definition, id, { ...step, title: `${step.title} ` });
      expect(hashOf(changed)).not.toBe(hashOf(definition));
    });
  },
);

/** One standing for each state of the fact that a way branches on: the others do not change where it leads. */
function telling(to: Target<string>, every: readonly Facts[]): readonly Facts[] {
  if (typeof to === 'string') return every.slice(0, 1);
  const { by } = to;
  return every.filter((facts, at) => every.findIndex((other) => other[by] === facts[by]) === at);
}

test('Every procedure is proved, and what one hands on the other takes over', async () => {
  await expect(proveAll()).resolves.toBeUndefined();
  const faulty = { ...PROCEDURES[0], definition: { ...PROCEDURES[0]?.definition, safe: [] } };
  await expect(proveAll([faulty as ServedProcedure])).rejects.toThrow('is not served: ');
  const other = new Catalogue([faulty as ServedProcedure]);
  expect(() => other.current('stroke-check')?.compiled).toThrow('is not served: ');
});

test('Each procedure has an id of its own', () => {
  const ids = PROCEDURES.map(({ definition }) => definition.id);
  expect(new Set(ids).size).toBe(ids.length);
});

function isSame(one: ReadonlySet<unknown> | undefined, other: ReadonlySet<unknown>): boolean {
  return one?.size === other.size && [...other].every((state) => one.has(state));
}

function stored({ definition, folder }: ServedProcedure, ending: string): string {
  return readFileSync(join(ROOT, 'procedures', folder, `${definition.id}.${ending}`), 'utf8');
}

test('A witness is served where a joint disappears, a review where a verdict is worked out, and neither over an isolation', () => {
  const points = (kind: PointKind) =>
    PROCEDURES.flatMap(({ definition }) =>
      Object.entries(definition.steps).flatMap(([id, step]) =>
        step.kind === 'hold' && step.point === kind ? [`${definition.id} ${id}`] : [],
      ),
    );
  expect(points('witness')).toEqual(['seat-and-plug bonnetWitness', 'valve-overhaul bonnetWitness']);
  expect(points('review')).toEqual(['seat-leak-test leakReview']);
});
