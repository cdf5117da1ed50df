import { describe, expect, test } from 'vitest';
import { auditJob } from '../../procedures/audit.ts';
import { evolve, NO_JOB } from '../../procedures/evolve.ts';
import { FIGURES } from '../../procedures/quantities.ts';
import { INCH_M, PSI_PA } from '../builders/gear.ts';
import { COMPILED, type JobRun, openJob, playTo } from '../builders/jobs.ts';
import { FRICTION_PSI, GEOMETRIES, sheetFor } from '../builders/stroke-script.ts';

/** 1 lbf in N, NIST SP 811. */
const LBF_N = 4.4482216152605;

const EVERY_JOB = GEOMETRIES.flatMap((geometry) =>
  (['bench', 'line'] as const).map((place) => ({ ...geometry, place })),
);

describe.each(EVERY_JOB)(
  'A stroke check, plug closes $plugCloses, air moves the stem $airMovesStem, $place',
  (of) => {
    const run: JobRun = openJob({ sheet: sheetFor(of), place: of.place });
    const opens = of.plugCloses !== of.airMovesStem;
    const turning = playTo(run, 'turnStem').job;
    const done = playTo(run, 'done').job;

    test('runs to its end with every lock off, test air off and the bypass shut', () => {
      expect(done.status).toBe('closed');
      expect(done.closedAs).toBe('done');
      const { supplyLock, inletLock, outletLock, testAir, bypass } = done.situation.states;
      expect({ supplyLock, inletLock, outletLock, testAir }).toEqual({
        supplyLock: 'off',
        inletLock: 'off',
        outletLock: 'off',
        testAir: 'off',
      });
      expect(bypass).toBe(of.place === 'bench' ? 'absent' : 'shut');
      expect(done.locks).toEqual({});
    });

    test('says the way to turn by how the plug closes, whatever the air does', () => {
      expect(FIGURES.turnDirection.of(turning)).toBe(
        of.plugCloses === 'down' ? 'out, so that the stem gets longer' : 'in, so that the stem gets shorter',
      );
      expect(turning.situation.states).toMatchObject({
        signalAir: 'held',
        plug: 'off seat',
        testAir: 'connected',
      });
    });

    // Worked by hand: 1600 lbf/in x 2 turns x 1/20 in = 160 lbf; over 100 in2 that is 1.6 psi.
    test('expects contact, seat load and lift left by the spring, the thread and the area', () => {
      expect(FIGURES.turnsWanted.of(turning)).toBe(2);
      expect(Number(FIGURES.signalShift.of(turning)) / PSI_PA).toBeCloseTo(1.6, 6);
      expect(Number(FIGURES.expectedContact.of(turning)) / PSI_PA).toBeCloseTo(opens ? 4.6 : 13.4, 6);
      expect(Number(FIGURES.seatLoadExpected.of(turning)) / LBF_N).toBeCloseTo(160, 3);
      expect(Number(FIGURES.liftLeft.of(turning)) / INCH_M).toBeCloseTo(0.65, 6);
    });

    test('finds that contact afterwards, and judges the stroke inside its limits as found and as left', () => {
      expect(Number(done.figures.contactLeft?.contactPa) / PSI_PA).toBeCloseTo(opens ? 4.6 : 13.4, 6);
      const outcomes = (step: string) =>
        done.answers.filter((one) => one.step === step).map((one) => one.outcome);
      expect(outcomes('contactLeft')).toEqual(['as expected']);
      expect(outcomes('asFoundVerdict')).toEqual(['inside']);
      expect(outcomes('asLeftVerdict')).toEqual(['inside']);
    });

    test('keeps 9 psi at half travel as left, between the way up and the way down', () => {
      const at9 = (done.tables.asLeftCycle ?? []).filter((row) => row.signal.typed === '9 psi');
      expect(at9).toHaveLength(2);
      const middleM = at9.reduce((sum, row) => sum + row.travel.valueSi, 0) / 2;
      expect(middleM / done.sheet.travelM).toBeCloseTo(0.5, 6);
      expect(at9[0]?.travel.valueSi).not.toBe(at9[1]?.travel.valueSi);
    });

    test('finds the friction that the valve has, and no shift of the bench set', () => {
      const frictionN = FRICTION_PSI * 100 * LBF_N;
      const { frictionN: found, benchSetShiftPa } = done.figures.asFoundVerdict ?? {};
      expect(Math.abs(Number(found) - frictionN) / frictionN).toBeLessThan(0.02);
      expect(Math.abs(Number(benchSetShiftPa)) / PSI_PA).toBeLessThan(0.02);
    });

    test('is the fold of what was stored, and its machine bears every line out', () => {
      expect(run.entries.reduce(evolve, NO_JOB)).toEqual(done);
      expect(auditJob(run.entries, COMPILED)).toEqual([]);
    });
  },
);
