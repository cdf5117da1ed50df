import { describe, expect, test } from 'vitest';
import { understand } from '../../../procedures/readings/given.ts';
import type { Field } from '../../../procedures/vocabulary.ts';
import { gearFor, gearItem, PSI_PA } from '../../builders/gear.ts';
import { jobAt, openJob } from '../../builders/jobs.ts';
import { refusalOf } from '../../builders/refusals.ts';

const { job } = openJob();
const SIGNAL: Field = {
  name: 'signalPa',
  label: 'Signal',
  type: 'quantity',
  dimension: 'pressure',
  gauge: 'signalGauge',
};
const TRAVEL: Field = {
  name: 'travelM',
  label: 'Travel',
  type: 'quantity',
  dimension: 'travel',
  gauge: 'travelIndicator',
};
const read = (fields: readonly Field[], given: Readonly<Record<string, string>>, of = job) =>
  understand(fields, { given, job: of, today: '2026-11-25' });

describe('A reading', () => {
  test('without a unit is in the unit of the plant', () => {
    expect(Number(read([SIGNAL], { signalPa: '9' }).readings.signalPa?.valueSi) / PSI_PA).toBeCloseTo(9, 9);
  });

  test('of travel is percent of the stroke, or a length', () => {
    expect(read([TRAVEL], { travelM: '50' }).readings.travelM?.valueSi).toBeCloseTo(0.009525, 9);
    expect(read([TRAVEL], { travelM: '12.1 mm' }).readings.travelM?.valueSi).toBeCloseTo(0.0121, 9);
  });

  test('says who read it where that was somebody else, by radio', () => {
    expect(read([SIGNAL], { signalPa: '9', readBy: 'helper at the valve' }).readings.signalPa?.readBy).toBe(
      'helper at the valve',
    );
    expect(read([SIGNAL], { signalPa: '9' }).readings.signalPa?.readBy).toBeNull();
  });

  test('on a second gauge of this job carries that gauge', () => {
    const reading = read([SIGNAL], { signalPa: '9', signalPaGauge: 'G-103' }).readings.signalPa;
    expect(reading?.gauge).toBe('G-103');
    expect(Number(reading?.uncertaintySi) / PSI_PA).toBeCloseTo(0.6928, 4);
  });

  test('on a gauge that does not belong to this job is refused', () => {
    expect(refusalOf(() => read([SIGNAL], { signalPa: '9', signalPaGauge: 'G-999' })).code).toBe('GEA-110');
  });

  test('on a gauge of another kind is refused: no pressure gauge shows a travel', () => {
    expect(refusalOf(() => read([SIGNAL], { signalPa: '9', signalPaGauge: 'D-201' }))).toMatchObject({
      code: 'GEA-111',
      next: 'Name the gauge that this was read on.',
    });
  });

  test('on a gauge past its due day is refused, on the day itself it is taken (HP-14)', () => {
    const due = (dueOn: string) => ({
      ...job,
      gear: { ...gearFor('line'), signalGauge: gearItem('signalGauge', { dueOn }) },
    });
    expect(refusalOf(() => read([SIGNAL], { signalPa: '9' }, due('2026-11-24')))).toMatchObject({
      code: 'GEA-102',
      what: 'Gauge G-101 was due for calibration on 2026-11-24.',
    });
    expect(read([SIGNAL], { signalPa: '9' }, due('2026-11-25')).readings.signalPa?.gauge).toBe('G-101');
  });

  test('beyond the range of its gauge is refused, with the range', () => {
    const beyond = refusalOf(() => read([SIGNAL], { signalPa: '31 psi' }));
    expect(beyond.code).toBe('GEA-103');
    expect(beyond.what).toBe('Signal: 31.00 psi is beyond gauge G-101, 0.00 psi to 30.00 psi.');
    expect(refusalOf(() => read([SIGNAL], { signalPa: '-1 psi' })).code).toBe('GEA-103');
    expect(read([SIGNAL], { signalPa: '30 psi' }).readings.signalPa?.typed).toBe('30 psi');
  });

  test('past the travel of this valve is refused: 105 % is a slip, 103 % is a stem past its mark', () => {
    expect(read([TRAVEL], { travelM: '103 %' }).readings.travelM?.typed).toBe('103 %');
    const past = refusalOf(() => read([TRAVEL], { travelM: '105 %' }));
    expect(past).toMatchObject({
      code: 'REA-005',
      fields: { travelM: expect.stringContaining('105 % is past') },
    });
  });

  test('left blank is refused, where it is not optional or known already', () => {
    expect(refusalOf(() => read([SIGNAL], {})).fields).toHaveProperty('signalPa');
    expect(read([{ ...SIGNAL, optional: true }], { signalPa: ' ' }).readings).toEqual({});
    const known = jobAt('ventSupply').job;
    const carried: Field = { ...SIGNAL, name: 'supplyBeforePa', carried: true };
    expect(read([carried], {}, known).readings).toEqual({});
    expect(refusalOf(() => read([carried], {}, job)).fields).toHaveProperty('supplyBeforePa');
  });
});

describe('A count of turns', () => {
  const TURNS: Field = { name: 'turnsMade', label: 'Turns made', type: 'quantity', dimension: 'turns' };
  test('has no direction: that stands on the card', () => {
    expect(read([TURNS], { turnsMade: '2' }).readings.turnsMade).toMatchObject({
      valueSi: 2,
      gauge: null,
      uncertaintySi: null,
    });
    expect(refusalOf(() => read([TURNS], { turnsMade: '-2' })).code).toBe('REA-006');
  });
});

describe('A tag', () => {
  const TAG: Field = { name: 'inletTag', label: 'Tag on the valve', type: 'text', mustBe: 'inletPoint' };
  test('must be the one of this step, in any case of letters', () => {
    expect(read([TAG], { inletTag: 'hv-214a' }).words.inletTag).toBe('hv-214a');
    expect(refusalOf(() => read([TAG], { inletTag: 'HV-214B' }))).toMatchObject({
      code: 'REA-010',
      what: '"HV-214B" is not the tag of this step.',
      next: 'Go to HV-214A and read its label.',
    });
  });

  test('is not guessed from a blank, and a text has an end', () => {
    expect(refusalOf(() => read([TAG], { inletTag: '  ' })).code).toBe('REA-008');
    const note: Field = { name: 'note', label: 'Note', type: 'text' };
    expect(read([note], { note: 'x'.repeat(400) }).words.note).toHaveLength(400);
    expect(refusalOf(() => read([note], { note: 'x'.repeat(401) })).code).toBe('REA-009');
  });
});

describe('A choice', () => {
  const CHOICE: Field = {
    name: 'moves',
    label: 'The stem',
    type: 'choice',
    choices: [{ value: 'yes', label: 'Moves' }],
  };
  test('is one of those on the card', () => {
    expect(read([CHOICE], { moves: 'yes' }).words.moves).toBe('yes');
    expect(refusalOf(() => read([CHOICE], { moves: 'maybe' }))).toMatchObject({
      code: 'REA-007',
      next: 'Choose one of: Moves.',
    });
    expect(refusalOf(() => read([CHOICE], {})).what).toBe('The stem: nothing chosen.');
  });

  test('from a long list is not told by saying the whole list over again', () => {
    const choices = Array.from({ length: 12 }, (_, at) => ({ value: `${at}`, label: `The repair ${at}` }));
    expect(refusalOf(() => read([{ ...CHOICE, choices }], {})).next).toBe('Choose one of those on the card.');
  });

  test('that belongs to another kind of valve is not asked', () => {
    const field: Field = { ...CHOICE, when: { fact: 'place', is: 'bench' } };
    expect(read([field], {}).words).toEqual({});
  });
});

test('Every wrong field is named at once, not only the first', () => {
  const wrong = refusalOf(() => read([SIGNAL, TRAVEL], { signalPa: '99 psi', travelM: '200 %' }));
  expect(Object.keys(wrong.fields ?? {})).toEqual(['signalPa', 'travelM']);
});
