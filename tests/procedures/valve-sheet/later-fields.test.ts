import { expect, test } from 'vitest';
import { evolve, NO_JOB } from '../../../procedures/evolve.ts';
import type { Json } from '../../../procedures/json.ts';
import { contradictionsOf } from '../../../procedures/valve-sheet/contradictions.ts';
import { writeSheetsCsv } from '../../../procedures/valve-sheet/csv.ts';
import { wholeSheet } from '../../../procedures/valve-sheet/later-fields.ts';
import type { LogEntry } from '../../../server/store/store.ts';
import { historyOf } from '../../../server/valves/sheet-words.ts';
import { valveKind } from '../../../server/valves/valve-stream.ts';
import { valveTable } from '../../../server/valves/valve-table.ts';
import { aSheet, FV_214 } from '../../builders/sheets.ts';

const BLANK = { frictionMaxN: null, strokeOpenMaxS: null, strokeShutMaxS: null } as const;
const { frictionMaxN: _f, strokeOpenMaxS: _o, strokeShutMaxS: _s, ...LOGGED } = aSheet();

const saved = (sheet: object, place: number): LogEntry => ({
  seq: place,
  stream: 'valve:FV-214',
  place,
  at: '2025-11-26T08:00:00.000Z',
  person: 'e1',
  screen: 'desk',
  kind: 'valve-sheet-saved',
  inputs: { sheet, typed: FV_214 } as unknown as Json,
  outcome: {},
  effects: {},
  codeVersion: 'test',
  requestId: null,
  previousHash: '',
  previousInStream: '',
  hash: '',
});

test('A sheet that was saved before friction and stroke times had limits has them blank, and is valid', () => {
  const sheet = wholeSheet(LOGGED);
  expect(sheet).toEqual(aSheet(BLANK));
  expect(contradictionsOf(sheet)).toEqual([]);
  expect(wholeSheet(aSheet())).toEqual(aSheet());
});

test('Such a sheet comes whole out of the log, for the valve and for a job that pinned it', () => {
  expect(valveKind.evolve(valveKind.initial, saved(LOGGED, 1)).sheet).toEqual(aSheet(BLANK));
  const opened = { seq: 1, place: 1, at: '2025-11-26T08:00:00.000Z', person: 't1', kind: 'job-opened' };
  const inputs = { id: '1', tag: 'FV-214', sheet: LOGGED } as unknown as Json;
  const job = evolve(NO_JOB, { ...opened, inputs, outcome: {}, effects: { to: 'needs' } });
  expect(job.sheet).toEqual(aSheet(BLANK));
});

test('Its table comes back in as unchanged, and its history names no change that nobody made', () => {
  const valve = valveKind.evolve(valveKind.initial, saved(LOGGED, 1));
  expect(valve.sheet === null ? '' : writeSheetsCsv([valve.sheet], 'us')).not.toContain('undefined');
  const standing = { state: () => valve } as unknown as Parameters<typeof valveTable.look>[0];
  const item = { sheet: aSheet(BLANK), contradictions: [] };
  expect(valveTable.look(standing, item).change).toBe('unchanged');
  const lines = historyOf([saved(LOGGED, 1), saved(aSheet({ ...BLANK, strokeOpenMaxS: 10 }), 2)]);
  expect(lines[0]?.what).toBe('Revision 2, Time to open, at most: 10 s, was not on the sheet');
});
