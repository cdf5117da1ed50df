import { describe, expect, test } from 'vitest';
import { choice, numbers } from '../../../procedures/calculations/specs.ts';
import { choiceWords, inputText, unitWords } from '../../../server/calculations/input-text.ts';

const of = (name: string) => {
  const spec = numbers(name)[name];
  if (spec === undefined) throw new Error(name);
  return { name, spec };
};
const read = (text: string, name: string, units: 'us' | 'si' = 'us') =>
  inputText(text, { ...of(name), units });

describe('a number of a form', () => {
  test.each([
    ['9', 'pressurePa', 'us', 62052.81563851525],
    ['9', 'pressurePa', 'si', 9000],
    ['12,1 mm', 'travelM', 'us', 0.0121],
    ['20 °C', 'temperatureK', 'us', 293.15],
    ['80 psia', 'inletPaAbs', 'us', 551580.5834534689],
    ['5.5 bar(a)', 'inletPaAbs', 'si', 550000],
    ['5.5 bar abs', 'inletPaAbs', 'us', 550000],
  ] as const)('is read as people write it: %s for %s, %s', (text, name, units, value) => {
    expect(read(text, name, units)).toMatchObject({ kind: 'read', value: expect.closeTo(value, 6) });
  });

  test('keeps whether its unit was written, so that a change of units never changes its meaning', () => {
    expect(read('9', 'pressurePa')).toMatchObject({ unit: 'psi', unitWritten: false });
    expect(read('9 psi', 'pressurePa')).toMatchObject({ unit: 'psi', unitWritten: true });
  });

  test.each([
    ['80 psig', 'inletPaAbs', 'gauge pressure'],
    ['5 barg', 'inletPaAbs', 'gauge pressure'],
    ['9 psia', 'pressurePa', 'absolute pressure'],
    ['3/4', 'travelM', 'Write 0.75'],
    ['1,234', 'pressurePa', '1.234 or 1234'],
    ['9 psi', 'travelM', 'measures pressure'],
  ] as const)(
    'is refused where it could be read in two ways or is of another kind: %s for %s',
    (text, name, why) => {
      const got = read(text, name);
      expect(got.kind).toBe('wrong');
      expect(got).toHaveProperty('what', expect.stringContaining(why));
    },
  );

  test('that is not there is blank', () => {
    expect(read('  ', 'travelM')).toEqual({ kind: 'blank' });
  });

  test('says its unit, absolute where it is, and a gas flow by its short name', () => {
    expect(unitWords({ name: 'inletPaAbs', unit: 'kPa' })).toBe('kPa absolute');
    expect(unitWords({ name: 'flowMolPerS', unit: 'Nl/min' })).toBe('Nl/min');
    expect(unitWords({ name: 'areaM2', unit: 'in2' })).toBe('in²');
  });
});

describe('a choice', () => {
  const { airAction } = choice('airAction', ['air-to-open', 'air-to-close']);
  const chosen = (text: string) => inputText(text, { name: 'airAction', spec: airAction, units: 'us' });

  test('is taken as it is called and as it is shown', () => {
    expect(chosen('air-to-open')).toMatchObject({ value: 'air-to-open' });
    expect(chosen('Air to close')).toMatchObject({ value: 'air-to-close' });
    expect(chosen('by hand')).toMatchObject({ kind: 'wrong' });
  });

  test('loses its dashes only where it is made of words', () => {
    expect(choiceWords('ptfe-single')).toBe('ptfe single');
    expect(choiceWords('PCC-1')).toBe('PCC-1');
    expect(choiceWords('30/60/100')).toBe('30/60/100');
  });
});

test('yes and no are read in words, and nothing else is', () => {
  const spec = { kind: 'yes-no', title: 'Pinned' } as const;
  expect(inputText('Yes', { name: 'pinned', spec, units: 'us' })).toMatchObject({ value: true });
  expect(inputText('no', { name: 'pinned', spec, units: 'us' })).toMatchObject({ value: false });
  expect(inputText('1', { name: 'pinned', spec, units: 'us' }).kind).toBe('wrong');
});
