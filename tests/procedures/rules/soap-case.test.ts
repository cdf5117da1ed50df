import { describe, expect, test } from 'vitest';
import type { Words } from '../../../procedures/job.ts';
import { soapCaseRule } from '../../../procedures/rules/soap-case.ts';
import { PSI_PA } from '../../builders/gear.ts';
import { openJob } from '../../builders/jobs.ts';

const { job } = openJob();

function soaped(psi: number | null, words: Words = {}): string {
  const reading = {
    field: 'soapPa',
    valueSi: (psi ?? 0) * PSI_PA,
    typed: '',
    unit: '',
    gauge: null,
    uncertaintySi: 0,
    readBy: null,
  };
  const readings = psi === null ? {} : { soapPa: reading };
  const none = { caseJointAir: 'no', springSideAir: 'no', stemSealAir: 'no' };
  return soapCaseRule.judge({ job, readings, words: { ...none, ...words }, step: 's', params: {} }).outcome;
}

describe('A case of 3 to 15 psi under soap', () => {
  test('is tight where nothing bubbles at 15 psi', () => {
    expect(soaped(15)).toBe('tight');
  });

  test('leaks where the bubbles are', () => {
    expect(soaped(15, { caseJointAir: 'yes' })).toBe('case joint');
    expect(soaped(15, { stemSealAir: 'yes' })).toBe('stem seal');
    expect(soaped(15, { springSideAir: 'yes' })).toBe('diaphragm');
  });

  test('has a leaking diaphragm whatever its joint does: nuts would not cure it', () => {
    expect(soaped(15, { caseJointAir: 'yes', springSideAir: 'yes', stemSealAir: 'yes' })).toBe('diaphragm');
  });

  // By hand: 95 % of 15 psi are 14.25 psi.
  test('says nothing at less than 14.25 psi, or unread', () => {
    expect(soaped(14.25)).toBe('tight');
    expect(soaped(14.2)).toBe('too little air');
    expect(soaped(0, { springSideAir: 'yes' })).toBe('too little air');
    expect(soaped(null)).toBe('too little air');
  });
});
