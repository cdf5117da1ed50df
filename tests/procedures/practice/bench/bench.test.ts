import { describe, expect, test } from 'vitest';
import { complaintOf } from '../../../../procedures/practice/bench/complaint.ts';
import { causesToPractise, drawFaults, mayMeet } from '../../../../procedures/practice/bench/draw.ts';
import { seenAtCheck, USUAL_OUTPUT } from '../../../../procedures/practice/bench/gauges.ts';
import { benchEnds, rowOnRig } from '../../../../procedures/practice/bench/on-rig.ts';
import { searchByEngine, searching, truthOf } from '../../../../procedures/practice/bench/search.ts';
import { loopTableOf, recordLoop } from '../../../../procedures/practice/loop-table.ts';
import { seeded } from '../../../../procedures/practice/random.ts';
import { type SimulatedValve, simulatedValve } from '../../../../procedures/practice/simulated.ts';
import type { CauseId } from '../../../../procedures/troubleshooting/causes.ts';
import { CHECK_READINGS } from '../../../../procedures/troubleshooting/check-readings.ts';
import { checkOf } from '../../../../procedures/troubleshooting/checks.ts';
import { modelOfValve } from '../../../../procedures/troubleshooting/engine/model-of-valve.ts';
import { OPENING_IDS } from '../../../../procedures/troubleshooting/openings.ts';
import { valveFactsOf } from '../../../../procedures/troubleshooting/valve-facts.ts';
import { demoSheet, valveKinds } from '../demo-sheets.ts';

const long = process.env.YOKESIDE_LONG === '1';
const sheet = demoSheet('FV-214');

function valveWith(cause: CauseId, severity = 0.9, of = sheet): SimulatedValve {
  return simulatedValve(of, { faults: [{ cause, severity }], seed: 7 });
}

/** Whatever an apprentice may look at shows a word of the check, or numbers that come onto its axis, or nothing. */
function looksWhole(valve: SimulatedValve): void {
  const { checks } = modelOfValve(valveFactsOf(valve.build.frame.sheet));
  expect(OPENING_IDS).toContain(complaintOf(valve).opening);
  for (const check of checks) {
    // Whole strokes and trends take long: the long run has them too.
    if (!long && CHECK_READINGS[check] === undefined) continue;
    const [hub] = checkOf(check).hubs;
    if (hub === undefined) continue;
    const seen = seenAtCheck(valve, { check, hub, again: 0, output: USUAL_OUTPUT });
    const where = `${check}: ${JSON.stringify(seen)}`;
    if (seen.found !== null) expect(Object.keys(checkOf(check).outcomes), where).toContain(seen.found);
    for (const one of seen.shown) expect(Number.isFinite(one.valueSi), where).toBe(true);
    if (seen.shown.length > 0)
      expect(
        seen.shown.map(({ name }) => name),
        where,
      ).toEqual(CHECK_READINGS[check]?.asks.map(({ name }) => name));
    expect(seen.found !== null || seen.shown.length > 0 || seen.cannotTell, where).toBe(true);
  }
}

describe('What the practice bench shows', () => {
  test('is whole at every check of every kind of valve, whatever is wrong with it', {
    timeout: 3_600_000,
  }, () => {
    if (long) {
      for (const kind of Object.values(valveKinds()))
        for (const cause of causesToPractise(kind)) looksWhole(valveWith(cause, 0.9, kind));
    } else looksWhole(valveWith('couplingSlipped'));
  });

  test('is the same when the same look is taken again', () => {
    const look = () =>
      seenAtCheck(valveWith('signalTubeLeaks'), {
        check: 'valveAgainstCommand',
        hub: 'bypassed',
        again: 0,
        output: USUAL_OUTPUT,
      });
    expect(look()).toEqual(look());
  });

  test('moves with the output that is asked for', () => {
    const valve = simulatedValve(sheet, { faults: [], seed: 7 });
    const travelM = (outputPercent: number) =>
      seenAtCheck(valve, {
        check: 'travelAgainstOutput',
        hub: 'in service',
        again: 0,
        output: { outputPercent, fromPercent: 60 },
      }).shown.find(({ name }) => name === 'openedM')?.valueSi ?? Number.NaN;
    expect(travelM(80) - travelM(20)).toBeGreaterThan(0.4 * sheet.travelM);
  });

  test('begins with what an operator would have seen of it', () => {
    expect(complaintOf(valveWith('plugSeized')).opening).toBe('doesNotMove');
    expect(complaintOf(simulatedValve(sheet, { faults: [], seed: 7 })).opening).toBe('controlsPoorly');
  });
});

describe('Test air on the simulated valve', () => {
  const psi = 6894.757;
  const sound = simulatedValve(sheet, { faults: [], seed: 7 });
  const travelShare = (valve: typeof sound, direction: 'up' | 'down') =>
    (rowOnRig(valve, {
      plan: { percent: 50, direction },
      plannedPa: (sheet.benchSetLowPa + sheet.benchSetHighPa) / 2,
      row: 0,
    }).find(({ name }) => name === 'travelM')?.valueSi ?? Number.NaN) / sheet.travelM;

  test('stands it half open in the middle of its bench set, and lower going up than coming down', () => {
    const [up, down] = [travelShare(sound, 'up'), travelShare(sound, 'down')];
    expect((up + down) / 2).toBeGreaterThan(0.4);
    expect((up + down) / 2).toBeLessThan(0.6);
    const tight = valveWith('packingTight');
    expect(travelShare(tight, 'down') - travelShare(tight, 'up')).toBeGreaterThan(down - up + 0.03);
  });

  test('moves its stem from end to end of the bench set of the sheet, and shows friction between up and down', () => {
    const { benchLowUpPa, benchHighUpPa, benchLowDownPa, benchTravelM } = benchEnds(sound);
    expect(Math.abs((benchLowUpPa ?? 0) - sheet.benchSetLowPa)).toBeLessThan(1.5 * psi);
    expect(Math.abs((benchHighUpPa ?? 0) - sheet.benchSetHighPa)).toBeLessThan(1.5 * psi);
    expect(benchLowUpPa ?? 0).toBeGreaterThan(benchLowDownPa ?? 0);
    expect(benchTravelM / sheet.travelM).toBeGreaterThan(0.9);
  });

  test('does not move one that is seized', () => {
    expect(benchEnds(valveWith('plugSeized')).benchLowUpPa).toBeNull();
  });
});

describe('The engine on the bench', () => {
  test('comes to a plain fault by itself, and each check says how likely the truth was before and after', () => {
    const valve = valveWith('signalTubeLeaks');
    const { told, minutes, cause } = searchByEngine(valve);
    expect(cause).toBe('signalTubeLeaks');
    expect(minutes).toBe(told.reduce((sum, one) => sum + one.minutes, 0));
    expect(told.at(-1)?.afterFraction).toBeGreaterThan(0.5);
    expect(truthOf(valve)).toEqual(['signalTubeLeaks']);
  });

  test('searches in steps, and a loop is recorded a second at a time: others are served between', () => {
    const valve = valveWith('signalTubeLeaks');
    expect([...searching(valve)].length).toBeGreaterThan(2);
    expect([...searching(valve)]).toEqual([]);
    expect([...recordLoop(valve)].length).toBeGreaterThan(900);
    expect([...recordLoop(valve)]).toEqual([]);
    expect(loopTableOf(valve).trimEnd().split('\r\n')).toHaveLength(901);
  });
});

describe('A draw', () => {
  test('gives faults that the valve can have, two that may meet, and now and then none', () => {
    const can = causesToPractise(sheet);
    const singles = Array.from({ length: 80 }, (_, seed) =>
      drawFaults(sheet, { count: 1, random: seeded(seed) }),
    );
    expect(singles.some((faults) => faults.length === 0)).toBe(true);
    expect(singles.flat().every(({ cause }) => can.includes(cause))).toBe(true);
    expect(new Set(singles.flat().map(({ cause }) => cause)).size).toBeGreaterThan(20);
    for (let seed = 0; seed < 20; seed += 1) {
      const [one, other] = drawFaults(sheet, { count: 2, random: seeded(seed) });
      if (one !== undefined && other !== undefined)
        expect(mayMeet(sheet, [one.cause, other.cause])).toBe(true);
    }
  });
});
