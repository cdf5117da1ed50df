import { describe, expect, test } from 'vitest';
import { auditJob } from '../../../procedures/audit.ts';
import { jobOn, type Overrides, outcomesOf, pathOf, play } from '../../builders/answers.ts';
import { AIR_AS_IT_SHOULD, POSITIONER_SHEET, repairNamed } from '../../builders/own-air-valve.ts';
import { aSheet } from '../../builders/sheets.ts';

const WIRED = { ...POSITIONER_SHEET, electricalV: 24 };
const CIRCUITS_OFF = {
  electrical: 'isolated',
  electricalHow: 'breaker 12, lock 4, tried dead by the electrician',
};

function playing(id: string, overrides: Overrides, to?: string) {
  const wired = ['solenoid', 'converter-wiring'].includes(id);
  const sheet = wired ? WIRED : POSITIONER_SHEET;
  return play(jobOn(repairNamed(id), { sheet, place: 'line' }), {
    overrides: {
      ...AIR_AS_IT_SHOULD,
      ...(wired ? { circuitsOff: CIRCUITS_OFF } : {}),
      ...overrides,
    },
    ...(to === undefined ? {} : { to }),
  });
}

const supply = (still: number, moving: number) => ({
  supplyStillPa: `${still} psi`,
  supplyMovingPa: `${moving} psi`,
});

describe('[SAF-09] The air set', () => {
  const SOUND = supply(20, 19.5);

  test('that sags is opened with the air off, set from below, and read again while the valve moves', () => {
    const run = playing('air-set', { supplyFound: supply(20, 14), supplyLeft: SOUND });
    const path = pathOf(run.job);
    expect(run.job.closedAs).toBe('done');
    expect(path.indexOf('actuatorZero')).toBeLessThan(path.indexOf('bowlOut'));
    expect(outcomesOf(run.job, 'supplyLeft')).toEqual(['holds']);
    expect(auditJob(run.entries, run.compiled)).toEqual([]);
  });

  // By hand on 18 to 22 psi: 10 % of 20 psi are 2 psi, and the gauge counts.
  test.each([
    [SOUND, 'holds'],
    [supply(20, 15), 'sags'],
    [supply(14, 14), 'low'],
    [supply(27, 27), 'high'],
  ])('tells by %j: %s', (read, outcome) => {
    const { job } = playing('air-set', { supplyFound: [read, SOUND], supplyLeft: SOUND });
    expect(outcomesOf(job, 'supplyFound')[0]).toBe(outcome);
    expect(job.closedAs).toBe('done');
  });
});

describe('[SAF-09] A tube', () => {
  test('that leaks comes off with the air off, and is soaped again with it on', () => {
    const run = playing('tubing', { tubesFound: { tubeAir: 'joint' } });
    const path = pathOf(run.job);
    expect(run.job.closedAs).toBe('done');
    expect(path.indexOf('actuatorZero')).toBeLessThan(path.indexOf('tubeOff'));
    expect(path.indexOf('lineBack')).toBeLessThan(path.indexOf('tubesLeft'));
    expect(outcomesOf(run.job, 'tubesLeft')).toEqual(['sound']);
    expect(auditJob(run.entries, run.compiled)).toEqual([]);
  });

  test.each([
    [{}, 'sound'],
    [{ tubeAir: 'tube' }, 'leaks'],
    [{ tubesRun: 'crushed' }, 'crushed'],
    [{ tubesRun: 'crossed', tubeAir: 'joint' }, 'crossed'],
  ])('with %j is %s', (seen, outcome) => {
    const { job } = playing('tubing', { tubesFound: seen });
    expect(outcomesOf(job, 'tubesFound')).toEqual([outcome]);
    expect(pathOf(job).includes('tubeNew')).toBe(outcome !== 'sound');
  });
});

describe('[SAF-09] A solenoid', () => {
  const DEAD: Overrides = { solenoidTried: { onGoes: 'no' } };

  test('that does not answer is opened with air and circuit off, and tried both ways', () => {
    const run = playing('solenoid', { ...DEAD, coilRead: { coilFound: 'open' } });
    const path = pathOf(run.job);
    expect(run.job.closedAs).toBe('done');
    expect(path.indexOf('circuitsOff')).toBeLessThan(path.indexOf('coilRead'));
    expect(path).toContain('coilNew');
    expect(path.indexOf('circuitsBack')).toBeLessThan(path.indexOf('solenoidLeft'));
    expect(auditJob(run.entries, run.compiled)).toEqual([]);
  });

  test('is not touched while its circuit is not shown dead', () => {
    const bare = { circuitsOff: { electrical: 'absent' } };
    const { job } = playing('solenoid', { ...DEAD, ...bare }, 'circuitsNotSafe');
    expect(outcomesOf(job, 'circuitsOff')).toEqual(['the sheet has one']);
    const { job: dead } = playing('solenoid', DEAD, 'coilRead');
    expect(dead.situation.states.electrical).toBe('isolated');
  });

  test('that works is left shut', () => {
    expect(pathOf(playing('solenoid', {}).job)).not.toContain('coilRead');
  });

  test('is offered where the sheet has something electrical', () => {
    const { whyNot } = repairNamed('solenoid');
    expect(whyNot(WIRED, 'line')).toBeNull();
    expect(whyNot(aSheet({ electricalV: null }), 'line')).toContain('no solenoid');
  });
});

const current = (low: number, half: number, high: number) => ({
  loopLowA: `${low} mA`,
  loopHalfA: `${half} mA`,
  loopHighA: `${high} mA`,
});

describe('[SAF-09] The wiring of a converter', () => {
  const RIGHT = current(4, 12, 20);
  const LOW: Overrides = { loopFound: current(3.5, 10.5, 17.5), loopLeft: RIGHT };

  test('that loses current is mended with the circuit dead, and read again', () => {
    const run = playing('converter-wiring', LOW);
    const path = pathOf(run.job);
    expect(run.job.closedAs).toBe('done');
    expect(path.indexOf('circuitsOff')).toBeLessThan(path.indexOf('wiresDead'));
    expect(outcomesOf(run.job, 'loopLeft')).toEqual(['matches']);
    expect(auditJob(run.entries, run.compiled)).toEqual([]);
  });

  // 4 to 20 mA is IEC 60381-1; 0.1 mA off is common practice, no source.
  test.each([
    [RIGHT, 'matches'],
    [current(4.05, 12.08, 19.95), 'matches'],
    [current(0, 0, 0.2), 'none'],
    [current(4, 12, 19), 'low'],
    [current(4, 12, 20.5), 'high'],
  ])('tells by %j: %s', (read, outcome) => {
    const { job } = playing('converter-wiring', { ...LOW, loopFound: read });
    expect(outcomesOf(job, 'loopFound')[0]).toBe(outcome);
    expect(job.closedAs).toBe('done');
  });

  test.each([
    [{ areaAllows: 'no' }, 'area or meter not fit'],
    [{ meterFit: 'no' }, 'area or meter not fit'],
    [{}, 'may be read live'],
  ])('is read live only where area and meter allow it: %j', (seen, outcome) => {
    const { job } = playing('converter-wiring', { ...LOW, mayRead: seen });
    expect(outcomesOf(job, 'mayRead')).toEqual([outcome]);
    expect(pathOf(job).includes('loopFound')).toBe(outcome === 'may be read live');
  });

  test('is not read live where more than 50 V may be behind the cover', () => {
    const mains = { ...WIRED, electricalV: 120 };
    const run = play(jobOn(repairNamed('converter-wiring'), { sheet: mains, place: 'line' }), {
      overrides: { ...AIR_AS_IT_SHOULD, mayRead: { loopOnly: 'no' } },
      to: 'mayNotRead',
    });
    expect(outcomesOf(run.job, 'mayRead')).toEqual(['voltage too high']);
  });
});

describe('[SAF-09] Indicator and coupling', () => {
  test('are tightened and set with the air off, and watched over the whole stroke', () => {
    const run = playing('indicator-and-coupling', { couplingSeen: { couplingLooks: 'slack' } });
    expect(run.job.closedAs).toBe('done');
    expect(pathOf(run.job).indexOf('actuatorZero')).toBeLessThan(pathOf(run.job).indexOf('couplingTight'));
    expect(auditJob(run.entries, run.compiled)).toEqual([]);
  });

  test('that slipped are left to the job that isolates the valve', () => {
    const { job } = playing('indicator-and-coupling', { couplingSeen: { couplingLooks: 'slipped' } });
    expect(pathOf(job)).toContain('couplingSlipped');
    expect(pathOf(job)).not.toContain('couplingTight');
    expect(job.closedAs).toBe('done');
  });
});
