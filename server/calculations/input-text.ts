/** One input of a calculation, from the text that was typed to a value in SI. */
import type { CellInput, NumberInput } from '../../procedures/calculations/calculation-types.ts';
import { DIMENSIONS, type Dimension, type UnitId } from '../../procedures/calculations/unit-table.ts';
import { preferredUnit, type UnitSystem, unitFor } from '../../procedures/calculations/units.ts';
import { readNumber } from '../../procedures/readings/number-text.ts';

export interface InputRead {
  readonly kind: 'read';
  readonly value: unknown;
  /** Of a number: what it was taken in. */
  readonly unit: UnitId | null;
  /** Did the text itself name the unit? */
  readonly unitWritten: boolean;
}

export type InputText =
  | InputRead
  | { readonly kind: 'blank' }
  | { readonly kind: 'wrong'; readonly what: string };

/** Absolute pressures are named so; everything else is gauge. */
export function isAbsolute(name: string): boolean {
  return /PaAbs$/.test(name);
}

/** What a number alone is taken in. */
export function unitOfInput({ dimension }: { readonly dimension: Dimension }, units: UnitSystem): UnitId {
  return preferredUnit(dimension, units);
}

/** As it stands behind a number: long labels of gas flows say their state in the result. */
export function unitWords({ name, unit }: { readonly name: string; readonly unit: UnitId }): string {
  const { label, dimension } = unitFor(unit);
  const short = dimension === 'gasFlow' ? unit : label;
  return isAbsolute(name) ? `${short} absolute` : short;
}

/**
 * @example inputText('12,1 mm', { name: 'travelM', spec: numbers('travelM').travelM, units: 'us' })
 *   // { kind: 'read', value: 0.0121, unit: 'mm', unitWritten: true }
 */
export function inputText(
  text: string,
  of: { readonly name: string; readonly spec: CellInput; readonly units: UnitSystem; readonly unit?: UnitId },
): InputText {
  const tidy = text.trim();
  if (tidy === '') return { kind: 'blank' };
  const { spec } = of;
  if (spec.kind === 'number') return numberText(tidy, { ...of, spec });
  if (spec.kind === 'choice') return choiceText(tidy, spec.choices);
  if (spec.kind === 'yes-no') return yesNoText(tidy);
  return { kind: 'read', value: tidy, unit: null, unitWritten: false };
}

const GAUGE = /(?:psig|psi\s*\(?g\)?|barg|bar\s*\(?g\)?|kpag|kpa\s*\(?g\)?)$/i;
const ABSOLUTE = /((?:psi|bar|mbar|kpa|mpa|pa))\s*(?:a|\(a\)|abs\.?|absolute)$/i;

function numberText(
  text: string,
  of: {
    readonly name: string;
    readonly spec: NumberInput;
    readonly units: UnitSystem;
    readonly unit?: UnitId;
  },
): InputText {
  const { name, spec } = of;
  const absolute = isAbsolute(name);
  if (absolute && GAUGE.test(text)) {
    return {
      kind: 'wrong',
      what: `“${text}” is gauge pressure. Write absolute pressure: gauge plus barometer.`,
    };
  }
  const read = readNumber(absolute ? text.replace(ABSOLUTE, '$1') : text, {
    dimensions: [spec.dimension],
    unit: of.unit ?? unitOfInput(spec, of.units),
  });
  if (!read.ok) return { kind: 'wrong', what: `${read.what} ${read.next}` };
  return { kind: 'read', value: read.valueSi, unit: read.unit, unitWritten: read.unitWritten };
}

/** A choice as it is called, or as it is shown. */
function choiceText(text: string, choices: readonly string[]): InputText {
  const found = choices.find((choice) => choice === text || choiceWords(choice) === text.toLowerCase());
  if (found !== undefined) return { kind: 'read', value: found, unit: null, unitWritten: false };
  return { kind: 'wrong', what: `“${text}” is not among: ${choices.map(choiceWords).join(', ')}.` };
}

function yesNoText(text: string): InputText {
  const said = text.toLowerCase();
  if (said !== 'yes' && said !== 'no') return { kind: 'wrong', what: 'Write yes or no.' };
  return { kind: 'read', value: said === 'yes', unit: null, unitWritten: false };
}

/** A choice as people read it. @example choiceWords('air-to-open') // 'air to open' */
export function choiceWords(choice: string): string {
  if (Object.hasOwn(DIMENSIONS, choice)) return choice;
  return /^[a-z]+(?:-[a-z]+)+$/.test(choice) ? choice.replaceAll('-', ' ') : choice;
}
