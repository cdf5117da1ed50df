import type { Dimension, UnitId } from '../calculations/unit-table.ts';
import type { Possible } from '../readings/number-text.ts';
import type { ValveSheet } from './sheet.ts';

/** Names of the sheet's fields that hold this, or this and nothing. */
type Names<T> = { [N in keyof ValveSheet]: ValveSheet[N] extends T | null ? N : never }[keyof ValveSheet];

interface FieldBase {
  readonly label: string;
  /** One short sentence in the trade's words. */
  readonly help?: string;
  /** A blank field is refused. */
  readonly required?: true;
}

export interface TextField extends FieldBase {
  /** A tag has no blanks at its ends and is written in capitals. */
  readonly kind: 'text' | 'long text' | 'tag';
  readonly name: Names<string>;
}

export interface ChoiceField extends FieldBase {
  readonly kind: 'choice';
  readonly name: Names<string>;
  readonly choices: readonly { readonly value: string; readonly label: string }[];
  /** What a blank field stands for; without it, a choice must be made. */
  readonly blank?: string;
}

export interface YesNoField extends FieldBase {
  readonly kind: 'yes or no';
  readonly name: Names<boolean>;
}

export interface QuantityField extends FieldBase {
  readonly kind: 'quantity';
  readonly name: Names<number>;
  readonly dimension: keyof typeof STORED_UNIT;
  readonly possible: Possible;
  /** Stands where nothing is written, and is marked as what it is. */
  readonly usual?: { readonly text: string; readonly mark: 'common practice, no source' };
}

export interface CountField extends FieldBase {
  readonly kind: 'count';
  readonly name: Names<number>;
  readonly atMost: number;
}

export interface ThreadField extends FieldBase {
  readonly kind: 'thread';
  readonly name: 'stemThread' | 'adjusterThread';
  /** The pitch is read out of the thread's own text. */
  readonly pitchName: 'stemThreadPitchM' | 'adjusterThreadPitchM';
}

export type SheetField = TextField | ChoiceField | YesNoField | QuantityField | CountField | ThreadField;
export type FieldName = SheetField['name'];

export interface Section {
  readonly id: string;
  readonly title: string;
  readonly fields: readonly SheetField[];
}

/** What the values of a dimension are kept in inside a sheet: SI, but temperatures in degrees Celsius. */
export const STORED_UNIT = {
  pressure: 'Pa',
  length: 'm',
  area: 'm2',
  force: 'N',
  forcePerLength: 'N/m',
  flowCoefficient: 'Kv',
  percent: '%',
  ratio: '1',
  turns: 'turns',
  temperature: 'degC',
  volume: 'm3',
  mass: 'kg',
  time: 's',
} as const satisfies { readonly [D in Dimension]?: UnitId };

/** Far beyond any control valve; what is above is a slip of the pen. */
export const POSSIBLE = {
  air: { atLeastSi: 0, atMostSi: 2e6 },
  /** Down to no air at all: a process may stand under vacuum. */
  process: { atLeastSi: -101325, atMostSi: 1e8 },
  drop: { atLeastSi: 0, atMostSi: 1e8 },
  travel: { aboveSi: 0, atMostSi: 0.5 },
  diameter: { aboveSi: 0, atMostSi: 2 },
  area: { aboveSi: 0, atMostSi: 2 },
  springRate: { aboveSi: 0, atMostSi: 1e8 },
  seatLoad: { atLeastSi: 0, atMostSi: 1e6 },
  force: { atLeastSi: 0, atMostSi: 1e6 },
  flowCoefficient: { aboveSi: 0, atMostSi: 1e5 },
  ratio: { aboveSi: 0, atMostSi: 1 },
  turns: { atLeastSi: 0, atMostSi: 20 },
  tolerance: { aboveSi: 0, atMostSi: 50 },
  airTolerance: { aboveSi: 0, atMostSi: 2e5 },
  temperature: { atLeastSi: 0, atMostSi: 1300 },
  volume: { aboveSi: 0, atMostSi: 1 },
  mass: { aboveSi: 0, atMostSi: 5000 },
  /** An hour for one stroke: the slowest that is meant to be slow is far below. */
  strokeTime: { aboveSi: 0, atMostSi: 3600 },
} as const satisfies Readonly<Record<string, Possible>>;
