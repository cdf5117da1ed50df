import { GEAR_KINDS } from './gear.ts';

interface GearField {
  readonly name: GearFieldName;
  readonly label: string;
  readonly help?: string;
}

export type GearFieldName =
  | 'number'
  | 'kind'
  | 'unit'
  | 'rangeLow'
  | 'rangeHigh'
  | 'accuracyPercentOfSpan'
  | 'calibratedOn'
  | 'dueOn'
  | 'certificate'
  | 'bleedsDown'
  | 'note';

/** What is asked of a piece of test gear, in the order of the form. */
export const GEAR_FIELDS: readonly GearField[] = [
  { name: 'number', label: 'Number', help: 'As on its label, for example G-07.' },
  { name: 'kind', label: 'Kind', help: `One of: ${Object.keys(GEAR_KINDS).join(', ')}.` },
  { name: 'unit', label: 'Scale marked in', help: 'Readings of it are taken in this unit.' },
  { name: 'rangeLow', label: 'Scale from', help: 'In that unit. A reading below it is refused.' },
  { name: 'rangeHigh', label: 'Scale to', help: 'In that unit. A reading above it is refused.' },
  {
    name: 'accuracyPercentOfSpan',
    label: 'Accuracy, percent of span',
    help: 'Of the whole scale, not of the reading. Blank for a regulator.',
  },
  {
    name: 'calibratedOn',
    label: 'Calibrated on',
    help: 'A regulator: checked on. Year, month, day: 2026-03-04.',
  },
  { name: 'dueOn', label: 'Due on', help: 'From the day after, its readings are refused.' },
  { name: 'certificate', label: 'Certificate' },
  {
    name: 'bleedsDown',
    label: 'Bleeds down',
    help: 'Regulators only: does the pressure fall when it is turned down with the line shut?',
  },
  { name: 'note', label: 'Note' },
];
