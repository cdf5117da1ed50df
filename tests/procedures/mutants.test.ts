import { describe, expect, test } from 'vitest';
import { faultsOf } from '../../procedures/check.ts';
import { factsKey, forwardMachine } from '../../procedures/compile.ts';
import { everyFacts, type Facts } from '../../procedures/facts.ts';
import { unshown } from '../../procedures/hold.ts';
import { proverOf } from '../../procedures/proof-graph.ts';
import type { Definition, HoldStep } from '../../procedures/vocabulary.ts';
import { waysOf } from '../../procedures/ways.ts';
import { ACTION_CLASSES, type ActionClass } from '../../safety/action-classes.ts';
import { CONDITIONS, ENERGY_IDS, LOCK_IDS } from '../../safety/conditions.ts';
import { Refusal } from '../../safety/refusal.ts';
import { COMPILED, openJob, playTo } from '../builders/jobs.ts';
import {
  brokenStops,
  droppedEvidence,
  droppedSets,
  hurts,
  isFound,
  isHarmful,
  openSteps,
  reroutes,
  tellingFacts,
} from '../builders/mutants.ts';
import { aSheetOf } from '../builders/sheets.ts';
import { after, standings } from '../builders/standings.ts';

const { definition } = COMPILED;
const FACTS = everyFacts(COMPILED.facts);
const TELLING_FACTS = tellingFacts(definition);

/** All of them take minutes: the usual run takes every so-many-th, a long run takes all. */
const EVERY = process.env.YOKESIDE_MUTANTS === 'all' ? 1 : 79;
const some = <T>(all: readonly T[], every = EVERY) => all.filter((_, at) => at % every === 0);

/** Seconds on a machine of its own; minutes where all are tried, or where others work beside it. */
const timeout = EVERY === 1 ? 3_600_000 : 120_000;

describe('[SAF-03] [SAF-10] A stroke check made wrong in one place is not served', { timeout }, () => {
  test('with a state left out that a way sets', () => {
    const all = droppedSets(definition);
    const mutants = some(all, EVERY === 1 ? 1 : 2);
    const missed = mutants.filter((mutant) => !isFound(mutant, COMPILED) && !isRefused(mutant.definition));
    console.log(
      `states left out: ${all.length}, tried ${mutants.length}, found ${mutants.length - missed.length}`,
    );
    expect(missed.filter((mutant) => isHarmful(mutant.definition)).map(({ name }) => name)).toEqual([]);
    const harmless = mutants.map(({ name }) => name).filter((name) => Object.hasOwn(HARMLESS, name));
    expect(missed.map(({ name }) => name).sort()).toEqual(harmless.sort());
    expect(all.map(({ name }) => name)).toEqual(expect.arrayContaining(Object.keys(HARMLESS)));
  });

  test('with a lock or an open bypass that is never recorded as put back', () => {
    const restores = openSteps(definition).flatMap(([id, step]) =>
      waysOf(step).flatMap(({ outcome, way }) =>
        ([...LOCK_IDS, 'bypass'] as const)
          .filter((condition) => ['off', 'shut'].includes(String(way.sets?.[condition])))
          .map((condition) => `${id} ${outcome} without ${condition}`),
      ),
    );
    const mutants = droppedSets(definition).filter(({ name }) => restores.includes(name));
    expect(mutants.length).toBeGreaterThanOrEqual(6);
    expect(mutants.filter((mutant) => !isFound(mutant, COMPILED)).map(({ name }) => name)).toEqual([]);
  });

  test('with any energy kept from a signer', () => {
    const mutants = droppedEvidence(definition).filter(({ condition }) => ENERGY_IDS.includes(condition));
    expect(mutants.length).toBeGreaterThan(12);
    expect(mutants.filter((mutant) => !isFound(mutant, COMPILED)).map(({ name }) => name)).toEqual([]);
  });

  test('with a stop that leads to an action', () => {
    const mutants = some(brokenStops(definition));
    const missed = mutants.filter(
      (mutant) => faultsOf({ ...COMPILED, definition: mutant.definition }).length === 0,
    );
    console.log(`stops: ${mutants.length}, found ${mutants.length - missed.length}`);
    // Venting is the way to safe itself, and harms nobody from anywhere.
    expect(missed.filter(({ name }) => !name.endsWith('stops at ventNow')).map(({ name }) => name)).toEqual(
      [],
    );
  });

  test('with an answer that leads to an action too early', () => {
    const met = TELLING_FACTS.map((facts) => ({ facts, played: standings(definition, facts) }));
    const harmAt = (mutant: ReturnType<typeof reroutes>[number]): Facts | undefined =>
      met.find(({ played }) => {
        const sets = mutant.named.way.sets ?? {};
        return (played.get(mutant.from) ?? []).some((states) =>
          [0, 1].some((choice) => hurts(definition.steps[mutant.to], after(states, { sets, choice }))),
        );
      })?.facts;
    const all = reroutes(definition);
    const harmful = all.flatMap((mutant) => {
      const facts = harmAt(mutant);
      return facts === undefined ? [] : [{ mutant, facts }];
    });
    const tried = some(harmful);
    const missed = tried.filter(({ mutant, facts }) => !isFound(mutant, COMPILED, [facts]));
    console.log(`reroutes: ${all.length}, harmful at once ${harmful.length}, tried ${tried.length}`);
    expect(missed.map(({ mutant }) => mutant.name)).toEqual([]);
    expect(tried.length).toBeGreaterThan(50);
  });

  test('with an answer that leads past what a later action needs', () => {
    const tried = some(reroutes(definition), EVERY === 1 ? 7 : 211);
    const missed = tried.filter((mutant) => !isFound(mutant, COMPILED));
    const survivors = missed.filter((mutant) => isHarmful(mutant.definition));
    console.log(`reroutes, whole: tried ${tried.length}, found ${tried.length - missed.length}`);
    expect(survivors.map(({ name }) => name)).toEqual([]);
  });

  test('with any other action put on a card that has none', () => {
    const plain = openSteps(definition).filter(([, step]) => step.action === undefined);
    let count = 0;
    const machine = forwardMachine(definition);
    const met = TELLING_FACTS.map((facts) => ({ facts, played: standings(definition, facts) }));
    for (const action of some(Object.keys(ACTION_CLASSES) as ActionClass[], EVERY === 1 ? 1 : 2)) {
      const mutant = withAction(definition, action);
      const proveUnder = proverOf(machine, mutant);
      for (const { facts, played } of met) {
        const proof = proveUnder(facts);
        const found = new Set(proof.findings.filter((one) => one.rule === 'exposed').map((one) => one.step));
        for (const [id] of plain) {
          const harmful = (played.get(id) ?? []).some((states) => hurts(mutant.steps[id], states));
          if (harmful) count += 1;
          expect(found.has(id), `${action} on ${id}, ${factsKey(facts, COMPILED.facts)}`).toBe(harmful);
        }
      }
    }
    console.log(`actions swapped in: ${count} harmful, all found`);
    expect(count).toBeGreaterThan(500);
  });
});

/** Plays the script against it: refused on the way, by interlock or hold, it is found as well. */
function isRefused(mutant: Definition): boolean {
  const machine = forwardMachine(mutant);
  const twoFeeds = aSheetOf({ secondSupplyHighPa: '20', secondSupplyPoint: 'IA-214-2' });
  const places = [{ place: 'bench' }, { place: 'line' }, { place: 'line', sheet: twoFeeds }] as const;
  return places.some((of) => {
    try {
      playTo(
        openJob({ ...of, compiled: { definition: mutant, machine, facts: [], proofs: new Map() } }),
        'done',
      );
      return false;
    } catch (error) {
      if (error instanceof Refusal) return ['ILK-001', 'HLD-003'].includes(error.text.code);
      throw error;
    }
  });
}

const OVER = 'the job ends there, and nothing more is done on it';
const SHOWN_AGAIN = 'it is shown again before anything that needs it';
const SET_BEFORE = 'the stem is turned only straight after a way that sets it';
const NOT_HANDED_BACK = 'the loop is handed back only as the job ends, and there it was not taken';
const TOLD_ANEW = 'taking the locks off says anew that nobody was told';
const TAKEN_OVER =
  'the packing job does not take over a valve that is signed for: that is held between the two';
const SIGNED_AGAIN = 'the next card that leads to work is a hold, which must be signed';
const BEFORE_THE_RETURN = 'it was so before the process began to come back, and nobody works there since';
const NOT_MOVED = 'nothing on a bench asks for it, and no job ends by it';

/** Left out, these expose nobody; the record alone would be poorer. Each with its reason. */
const HARMLESS: Readonly<Record<string, string>> = {
  'openBypass no without bypass': 'the only ways on open it again or record it shut',
  'openBypass no without processFlow': 'the only ways on open it again or give the valve back',
  'undoBypass yes without loop': OVER,
  'undoBypass yes without commands': OVER,
  'undoBypass yes without processFlow': OVER,
  'undoBypass yes without consent': OVER,
  'loopBack yes without loop': OVER,
  'loopBack yes without commands': OVER,
  'loopBack yes without processFlow': OVER,
  'shutBypass yes without processFlow': OVER,
  'loopBack yes without consent': OVER,
  'shutInlet kept without processInlet': SHOWN_AGAIN,
  'shutOutlet kept without processOutlet': SHOWN_AGAIN,
  'shutSupply kept without supplyAir': SHOWN_AGAIN,
  'shutSecond kept without secondSupply': SHOWN_AGAIN,
  'springLook no without spring': SHOWN_AGAIN,
  'springLook no without closure': SHOWN_AGAIN,
  'finalCheck yes without spring': SHOWN_AGAIN,
  'finalCheck yes without closure': SHOWN_AGAIN,
  'finalCheck yes without clear': SHOWN_AGAIN,
  'lookAgain yes without spring': BEFORE_THE_RETURN,
  'lookAgain yes without closure': BEFORE_THE_RETURN,
  'lookAgain yes without clear': BEFORE_THE_RETURN,
  'airOff not shown without signalAir': SHOWN_AGAIN,
  'airOff gauge not seen alive without signalAir': SHOWN_AGAIN,
  'airOff gauge too coarse without signalAir': SHOWN_AGAIN,
  'benchRecord yes without loop': NOT_MOVED,
  'benchRecord yes without bypass': NOT_MOVED,
  'holdOpen held without plug': SET_BEFORE,
  'holdForAdjuster held without plug': SET_BEFORE,
  'ventFirst shown without plug': SET_BEFORE,
  'ventNow shown without plug': SET_BEFORE,
  'airOff shown without plug': SET_BEFORE,
  'backCheck off without controllerLine': 'the line is connected before anything that needs it',
  'haltAir signAgain without workSignOff': SIGNED_AGAIN,
  'bleedForNext shown without plug': SET_BEFORE,
  'bleedForNext not shown without signalAir': SHOWN_AGAIN,
  'bleedForNext gauge not seen alive without signalAir': SHOWN_AGAIN,
  'bleedForNext gauge too coarse without signalAir': SHOWN_AGAIN,
  'toPackingNow on without workSignOff': TAKEN_OVER,
  'bypassAgain yes without workSignOff': SIGNED_AGAIN,
  'bypassAgain yes without returnSignOff': SIGNED_AGAIN,
  'bypassAgain yes without loop': NOT_HANDED_BACK,
  'bypassAgain yes without commands': NOT_HANDED_BACK,
  'bypassAgain yes without told': TOLD_ANEW,
  'bypassAgain no without bypass': 'the only ways on open it again or record it shut',
  'bypassAgain no without processFlow': 'the only ways on open it again or give the valve back',
  'plantAgain yes without workSignOff': SIGNED_AGAIN,
  'plantAgain yes without returnSignOff': SIGNED_AGAIN,
  'plantAgain yes without loop': NOT_HANDED_BACK,
  'plantAgain yes without commands': NOT_HANDED_BACK,
  'plantAgain yes without told': TOLD_ANEW,
  'plantAgain yes without bypass': 'a line without one had it recorded so before it was isolated',
  'plantAgain no without processFlow': 'the only ways on agree on it again or give the valve back',
  'finalNotRight more without workSignOff': SIGNED_AGAIN,
  'finalNotRight more without returnSignOff': SIGNED_AGAIN,
  'returnLeaks isolate without workSignOff': SIGNED_AGAIN,
  'returnLeaks isolate without returnSignOff': SIGNED_AGAIN,
  'haltOnAir isolate without workSignOff': SIGNED_AGAIN,
  'haltOnAir isolate without returnSignOff': SIGNED_AGAIN,
  'haltProcess signAgain without returnSignOff': SIGNED_AGAIN,
};

/** Whether a card exposes somebody does not depend on the other cards' actions, so all are changed at once. */
function withAction(of: Definition, action: ActionClass): Definition {
  const steps = openSteps(of).map(([id, step]) => [
    id,
    step.action === undefined ? { ...step, action } : step,
  ]);
  return { ...of, steps: { ...of.steps, ...Object.fromEntries(steps) } };
}

describe('A hold', () => {
  test('names each energy that is not shown, and none that is', () => {
    const hold = definition.steps.holdWork as HoldStep<string>;
    const shown = standings(definition, FACTS.at(-1) as Facts).get('holdWork') ?? [];
    // Every lock hangs: what a missing one does is shown where locks come off.
    const hung = { lock: '1', point: 'HV-1', owner: 'p' };
    const locks = Object.fromEntries(LOCK_IDS.map((id) => [id, hung]));
    for (const states of shown) {
      expect(unshown(hold, { locks, situation: { states, lapsed: {} } })).toEqual([]);
      for (const id of hold.evidence.filter((one) => ENERGY_IDS.includes(one) && states[one] !== 'absent')) {
        const lapsed = { states, lapsed: { [id]: 'age' as const } };
        expect(unshown(hold, { locks, situation: lapsed })).toEqual([CONDITIONS[id].name]);
        const blind = { ...hold, evidence: hold.evidence.filter((one) => one !== id) };
        expect(unshown(blind, { locks, situation: lapsed })).toEqual([]);
      }
    }
  });
});
