import { describe, expect, test } from 'vitest';
import type { Job, Reading, Words } from '../../../procedures/job.ts';
import { seatLoadRule, torquedRule, trimLookRule } from '../../../procedures/rules/trim.ts';
import { PSI_PA } from '../../builders/gear.ts';
import { openJob } from '../../builders/jobs.ts';
import { aSheet } from '../../builders/sheets.ts';

const { job: JOB } = openJob();

function reading(field: string, valueSi: number): Reading {
  return { field, valueSi, typed: '', unit: '', gauge: null, uncertaintySi: null, readBy: null };
}

function readings(of: Readonly<Record<string, number>>): Readonly<Record<string, Reading>> {
  return Object.fromEntries(Object.entries(of).map(([field, value]) => [field, reading(field, value)]));
}

describe('Trim on the bench', () => {
  const GOOD = { runOutM: 0.03e-3, guideBoreM: 12.1e-3, guidePlugM: 12e-3 };
  const look = (of: Readonly<Record<string, number>> = {}, words: Words = {}) =>
    trimLookRule.judge({
      job: JOB,
      readings: readings({ ...GOOD, ...of }),
      words: { pinTight: 'yes', seatFace: 'marked', plugFace: 'bright', ...words },
      step: 's',
      params: {},
    }).outcome;

  test('is lapped where it is only marked, and left where it is bright', () => {
    expect(look()).toBe('lap');
    expect(look({}, { seatFace: 'bright' })).toBe('sound');
  });

  test('wants parts where lapping cures nothing, the worst first', () => {
    expect(look({}, { plugFace: 'pitted' })).toBe('seat or plug spent');
    expect(look({ clearanceMaxM: 0.05e-3 }, { plugFace: 'pitted' })).toBe('guides worn');
    expect(look({ runOutM: 0.06e-3, clearanceMaxM: 0.05e-3 })).toBe('stem bent');
    expect(look({ runOutM: 0.06e-3 }, { pinTight: 'no' })).toBe('plug loose');
  });

  test('is held to the manual’s run-out where there is one', () => {
    expect(look({ runOutM: 0.06e-3, runOutMaxM: 0.08e-3 })).toBe('lap');
    expect(look({ runOutM: 0.03e-3, runOutMaxM: 0.02e-3 })).toBe('stem bent');
  });
});

test('Bonnet nuts are as wanted within 5 % of their torque, and the stem must be free', () => {
  const job: Job = { ...JOB, readings: readings({ bonnetTorqueNm: 100 }) };
  const torqued = (leftNm: number, stemFree = 'yes') =>
    torquedRule.judge({
      job,
      readings: readings({ bonnetTorqueLeftNm: leftNm }),
      words: { stemFree },
      step: 's',
      params: {},
    }).outcome;
  expect([95, 100, 105].map((leftNm) => torqued(leftNm))).toEqual(Array(3).fill('as wanted'));
  expect(torqued(94)).toBe('less');
  expect(torqued(106)).toBe('more');
  expect(torqued(100, 'no')).toBe('stem not free');
});

// By hand, FV-214: 30 lbf an inch on a 1 in port are 94.2 lbf; on 100 in2 that is a contact at 3.94 psi.
describe('The load on a seat', () => {
  const seat = (contactPsi: number | null, sheet = aSheet()) => {
    const figures = contactPsi === null ? {} : { seatContact: { contactPa: contactPsi * PSI_PA } };
    return seatLoadRule.judge({
      job: { ...JOB, sheet, figures },
      readings: {},
      words: {},
      step: 's',
      params: { contact: 'seatContact' },
    }).outcome;
  };

  test('is enough from a contact of 3.95 psi on', () => {
    expect(seat(3.95)).toBe('enough');
    expect(seat(3.9)).toBe('too little');
  });

  test('is not mended by turning what must not be turned', () => {
    expect(seat(3.9, aSheet({ stemPinned: true }))).toBe('must not be turned');
    expect(seat(3.9, aSheet({ bellowsSeal: true }))).toBe('must not be turned');
  });

  test('is not judged where the sheet names none, or no contact was found', () => {
    expect(seat(3.9, aSheet({ seatLoadNPerM: null }))).toBe('not on the sheet');
    expect(seat(null)).toBe('not on the sheet');
  });
});
