import type { SourceId } from './sources.ts';
import type { Dimension } from './unit-table.ts';

export interface NumberInput {
  readonly kind: 'number';
  readonly title: string;
  readonly dimension: Dimension;
  /** May be left blank. */
  readonly optional?: true;
  /** Stands where it is left blank. */
  readonly usual?: number;
}

export interface ChoiceInput {
  readonly kind: 'choice';
  readonly title: string;
  readonly choices: readonly string[];
  readonly optional?: true;
}

export interface YesNoInput {
  readonly kind: 'yes-no';
  readonly title: string;
}

export interface TextInput {
  readonly kind: 'text';
  readonly title: string;
}

export type CellInput = NumberInput | ChoiceInput | YesNoInput | TextInput;

/** A table: a list of rows, each with the same cells. */
export interface RowsInput {
  readonly kind: 'rows';
  readonly title: string;
  readonly columns: Readonly<Record<string, CellInput>>;
}

export type InputSpec = CellInput | RowsInput;
export type Inputs = Readonly<Record<string, InputSpec>>;

/** A result: a number, a word, a yes or no, or a list of any of these; null where the inputs do not say it. */
export interface OutputSpec {
  readonly kind: 'number' | 'word' | 'yes-no' | 'list' | 'rows';
  readonly title: string;
  readonly dimension: Dimension | null;
  readonly columns?: Readonly<Record<string, OutputSpec>>;
}

export type ValueOf<I> = I extends { kind: 'number'; optional: true }
  ? number | null
  : I extends { kind: 'number' }
    ? number
    : I extends { kind: 'choice'; choices: readonly (infer C)[]; optional: true }
      ? C | null
      : I extends { kind: 'choice'; choices: readonly (infer C)[] }
        ? C
        : I extends { kind: 'yes-no' }
          ? boolean
          : I extends { kind: 'text' }
            ? string
            : I extends { kind: 'rows'; columns: infer Columns }
              ? readonly { readonly [K in keyof Columns]: ValueOf<Columns[K]> }[]
              : never;

export type ValuesOf<I> = { readonly [K in keyof I]: ValueOf<I[K]> };

export type CalcResult = Readonly<Record<string, unknown>>;

/** One calculation as pages, JSON and a description for programs take it: plain data, and a function that runs it. */
export interface Calculation {
  /** Stands in addresses. */
  readonly id: string;
  readonly title: string;
  readonly topic: Topic;
  readonly inputs: Inputs;
  readonly outputs: Readonly<Record<string, OutputSpec>>;
  /** Names of the outputs that were asked for; the others are the working, in the order in which it is done. */
  readonly answers: readonly string[];
  /** How it is worked out, in one line that a person can follow by hand. */
  readonly equation: string;
  /** When the answer holds, in a sentence or two. */
  readonly validity: string;
  readonly sources: readonly SourceId[];
  /** Inputs that give an answer: for tests, and for a first look. */
  readonly example: Readonly<Record<string, unknown>>;
  /**
   * Works it out, all values in SI under the names of the inputs.
   *
   * @throws CalcError by the name of the input that is missing, unknown or out of range
   */
  run(values: Readonly<Record<string, unknown>>): CalcResult;
}

export const TOPICS = [
  'units',
  'signal and travel',
  'stroke table',
  'step response',
  'force balance',
  'seating',
  'seat leakage',
  'flow',
  'leak and decay',
  'restriction and nozzle',
  'measurement',
  'bolting',
  'stored energy',
] as const;

export type Topic = (typeof TOPICS)[number];
