import { describe, expect, test } from 'vitest';
import { ENERGY_ISOLATION } from '../safety/required/energy-isolation.ts';
import { FAULTS } from '../safety/required/faults.ts';
import { HOLD_POINTS } from '../safety/required/hold-points.ts';
import { INTERFACE } from '../safety/required/interface.ts';
import { RELIABILITY } from '../safety/required/reliability.ts';
import { SIGNATURES } from '../safety/required/signatures.ts';
import { WEB_SECURITY } from '../safety/required/web-security.ts';
import { REQUIREMENTS } from '../safety/requirements.ts';
import { quoteFaults, tableFaults } from './tidy/requirements.ts';
import { everyFile } from './tidy/tree.ts';

// The files of this test quote ids that stand for bad ones, so they do not count.
const tests = everyFile().filter(
  ({ path }) =>
    path.startsWith('tests/') &&
    path.endsWith('.test.ts') &&
    path !== 'tests/requirements.test.ts' &&
    path !== 'tests/tidy.test.ts',
);

describe('requirements of safety', () => {
  test('are stated once each, with what shall be and a source', () => {
    expect(tableFaults(REQUIREMENTS)).toEqual([]);
    expect(REQUIREMENTS.length).toBeGreaterThan(0);
  });

  test('are each quoted by a test, and tests quote no other', () => {
    expect(quoteFaults(REQUIREMENTS, tests)).toEqual([]);
  });

  test.each([
    ['EI-', ENERGY_ISOLATION],
    ['HP-', HOLD_POINTS],
    ['R-', FAULTS],
    ['RL-', RELIABILITY],
    ['SA-', SIGNATURES],
    ['UI-', INTERFACE],
    ['WS-', WEB_SECURITY],
  ])('of one subject stand in one file: %s', (letters, rows) => {
    expect(rows.filter(({ id }) => !id.startsWith(letters))).toEqual([]);
    expect(rows.filter((row) => !REQUIREMENTS.includes(row))).toEqual([]);
  });

  const table = [{ id: 'SAF-01', text: 'Hands shall wait.', source: 'common practice, no source' }];
  const quoting = (id: string) => [{ path: 'tests/a.test.ts', text: `test('hands wait (${id})', f)` }];

  test('that stand twice, say nothing, or come from nowhere are found', () => {
    expect(tableFaults(table)).toEqual([]);
    expect(tableFaults([...table, ...table])).toEqual(['SAF-01 stands twice']);
    expect(tableFaults([{ id: 'SAF-1', text: 'Hands wait.', source: ' ' }])).toHaveLength(3);
  });

  test('without a test are found, and so are quotes of what is not required', () => {
    expect(quoteFaults(table, quoting('SAF-01'))).toEqual([]);
    expect(quoteFaults(table, [])).toEqual(['SAF-01 is quoted by no test']);
    expect(quoteFaults(table, [...quoting('SAF-01'), ...quoting('SAF-99')])).toHaveLength(1);
  });

  test('that are not built say why, and no test claims them', () => {
    const one = { id: 'EI-01', text: 'Hands shall wait.', source: 'common practice, no source' };
    expect(tableFaults([{ ...one, notBuilt: '' }])).toEqual(['EI-01 is not built and says no reason']);
    expect(quoteFaults([{ ...one, notBuilt: 'later' }], [])).toEqual([]);
    expect(quoteFaults([{ ...one, notBuilt: 'later' }], quoting('EI-01'))).toHaveLength(1);
  });
});
