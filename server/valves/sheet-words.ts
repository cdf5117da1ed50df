/** A sheet in words: its fields, its figures, and what each save changed. */

import { ZERO_CELSIUS_K } from '../../procedures/calculations/gas-states.ts';
import { figuresOf } from '../../procedures/valve-sheet/derived.ts';
import type { SheetField } from '../../procedures/valve-sheet/field.ts';
import { FIELDS, SECTIONS } from '../../procedures/valve-sheet/fields.ts';
import { wholeSheet } from '../../procedures/valve-sheet/later-fields.ts';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import { worded } from '../../procedures/valve-sheet/worded.ts';
import type { LogEntry } from '../store/store.ts';
import type { SheetSaved } from './valve-stream.ts';

export interface Row {
  readonly label: string;
  readonly text: string;
  /** Words of whoever wrote the sheet. */
  readonly isOwn?: boolean;
}

const NOT_ON_SHEET = 'not on the sheet';

/** One field as it is read: with unit, in the units of the valve. */
function fieldWords(field: SheetField, sheet: ValveSheet): string {
  const value = sheet[field.name];
  if (value === null || value === '') return NOT_ON_SHEET;
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (field.kind === 'choice')
    return field.choices.find((choice) => choice.value === value)?.label ?? String(value);
  if (field.kind !== 'quantity' || typeof value !== 'number') return String(value);
  const valueSi = field.dimension === 'temperature' ? value + ZERO_CELSIUS_K : value;
  return worded({ valueSi, dimension: field.dimension, units: sheet.units });
}

/** @param typed  a usual value that nobody wrote is marked as such */
export function sheetSections(
  sheet: ValveSheet,
  typed: Readonly<Record<string, string>>,
): readonly { readonly title: string; readonly rows: readonly Row[] }[] {
  return SECTIONS.map(({ title, fields }) => ({
    title,
    rows: fields.map((field) => ({
      label: field.label,
      text: `${fieldWords(field, sheet)}${markOf(field, typed)}`,
      isOwn: /text$/.test(field.kind) && fieldWords(field, sheet) !== NOT_ON_SHEET,
    })),
  }));
}

function markOf(field: SheetField, typed: Readonly<Record<string, string>>): string {
  if (typed[field.name] !== undefined) return '';
  if (field.kind === 'quantity' && field.usual !== undefined) return ` (${field.usual.mark})`;
  return field.name === 'airAction' || field.name === 'failPosition' ? ' (worked out)' : '';
}

/** The eight facts under the drawing. */
export function eightFacts(sheet: ValveSheet): readonly { readonly label: string; readonly value: string }[] {
  const { units } = sheet;
  const figures = figuresOf(sheet);
  const pressure = (valueSi: number) => worded({ valueSi, dimension: 'pressure', units });
  const span = `${pressure(sheet.benchSetLowPa).replace(/ \D+$/, '')} to ${pressure(sheet.benchSetHighPa)}`;
  const rate = figures.springRateNPerM;
  return [
    {
      label: sheet.airMovesStem === 'up' ? 'air lifts the stem' : 'air lowers the stem',
      value: sheet.airAction.replaceAll('-', ' '),
    },
    { label: 'on loss of air', value: { shut: 'shuts', open: 'opens', stays: 'stays' }[sheet.failPosition] },
    { label: 'bench set', value: span },
    { label: 'area', value: worded({ valueSi: sheet.effectiveAreaM2, dimension: 'area', units }) },
    { label: 'travel', value: worded({ valueSi: sheet.travelM, dimension: 'length', units }) },
    {
      label: 'plug stem',
      value: figures.stemMayTurn ? sheet.stemThread : `${sheet.stemThread}, never turned`,
    },
    {
      label: 'spring',
      value: rate === null ? 'none' : worded({ valueSi: rate, dimension: 'forcePerLength', units }),
    },
    { label: 'test air, at most', value: pressure(figures.testAir.limitPa) },
  ];
}

export interface HistoryLine {
  readonly at: string;
  readonly person: string | null;
  readonly what: string;
}

/**
 * What each save changed, and which jobs had the valve, the latest first.
 * @example historyOf(entries)[0].what // 'Revision 2. Rated travel: 0.8 in, was 0.75 in'
 */
export function historyOf(entries: readonly LogEntry[]): readonly HistoryLine[] {
  let before: ValveSheet | null = null;
  let revision = 0;
  const lines = entries.map(({ at, person, kind, inputs }): HistoryLine => {
    if (kind !== 'valve-sheet-saved') return { at, person, what: otherWords(kind, inputs) };
    const sheet = wholeSheet((inputs as unknown as SheetSaved).sheet);
    const what = before === null ? 'first saved' : changes(before, sheet);
    before = sheet;
    revision += 1;
    return { at, person, what: `Revision ${revision}, ${what}` };
  });
  return lines.reverse();
}

function otherWords(kind: string, inputs: LogEntry['inputs']): string {
  const { why = '', job = '' } = (inputs ?? {}) as { readonly why?: string; readonly job?: string };
  if (kind === 'valve-retired') return `Retired: ${why}`;
  return kind === 'job-taken-on' ? `Job ${job} opened` : `Job ${job} closed`;
}

function changes(before: ValveSheet, after: ValveSheet): string {
  const changed = FIELDS.filter(({ name }) => before[name] !== after[name]).map((field) => {
    const [was, is] = [fieldWords(field, before), fieldWords(field, after)];
    // Too little to show in the unit, and still not the same.
    return was === is
      ? `${field.label}: ${is}, changed beyond the digits shown`
      : `${field.label}: ${is}, was ${was}`;
  });
  return changed.length === 0 ? 'taken back into use' : changed.join('; ');
}
