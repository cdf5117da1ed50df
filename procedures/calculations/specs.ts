import type { NumberInput, OutputSpec } from './calculation-types.ts';
import { dimensionOfName, titleOf } from './quantity-names.ts';

/**
 * Number inputs by their names; title and dimension follow from the name.
 *
 * Shape: names in, specifications out.
 * @param names  as the calculation spells them
 * @returns a number input for each
 * @source none: a rule of this code
 * @example numbers('travelM').travelM // { kind: 'number', title: 'Travel', dimension: 'length' }
 */
export function numbers<const N extends string>(...names: readonly N[]): Readonly<Record<N, NumberInput>> {
  return byName(names, (name) => ({
    kind: 'number',
    title: titleOf(name),
    dimension: dimensionOfName(name),
  }));
}

/**
 * Number inputs that may be left blank.
 *
 * Shape: names in, specifications out.
 * @param names  as the calculation spells them
 * @returns an optional number input for each
 * @source none: a rule of this code
 * @example optionalNumbers('springRateNPerM').springRateNPerM.optional // true
 */
export function optionalNumbers<const N extends string>(
  ...names: readonly N[]
): Readonly<Record<N, NumberInput & { readonly optional: true }>> {
  return byName(names, (name) => ({
    kind: 'number',
    title: titleOf(name),
    dimension: dimensionOfName(name),
    optional: true,
  }));
}

/**
 * Number inputs with the value that stands where they are left blank.
 *
 * Shape: names with values in, specifications out.
 * @param values  the usual value, in SI, under each name
 * @returns a number input for each
 * @source none: a rule of this code
 * @example usualNumbers({ relativeDensity: 1 }).relativeDensity.usual // 1
 */
export function usualNumbers<const N extends string>(
  values: Readonly<Record<N, number>>,
): Readonly<Record<N, NumberInput>> {
  const names = Object.keys(values) as N[];
  return byName(names, (name) => ({
    kind: 'number',
    title: titleOf(name),
    dimension: dimensionOfName(name),
    usual: values[name],
  }));
}

/**
 * A choice from a closed list.
 *
 * Shape: name and list in, a specification under the name out.
 * @param name     as the calculation spells it
 * @param choices  the closed list
 * @returns a choice input
 * @source none: a rule of this code
 * @example choice('flow', ['under', 'over']).flow.choices // ['under', 'over']
 */
export function choice<const N extends string, const C extends string>(
  name: N,
  choices: readonly C[],
): Readonly<Record<N, { readonly kind: 'choice'; readonly title: string; readonly choices: readonly C[] }>> {
  return byName([name], () => ({ kind: 'choice', title: titleOf(name), choices }));
}

/**
 * Number results by their names; title and dimension follow from the name.
 *
 * Shape: names in, specifications out.
 * @param names  as the calculation spells them
 * @returns a number output for each
 * @source none: a rule of this code
 * @example results('seatLoadN').seatLoadN // { kind: 'number', title: 'Seat load', dimension: 'force' }
 */
export function results<const N extends string>(...names: readonly N[]): Readonly<Record<N, OutputSpec>> {
  return byName(names, (name) => ({
    kind: 'number',
    title: titleOf(name),
    dimension: dimensionOfName(name),
  }));
}

/**
 * Results that are words, a yes or no, or a list.
 *
 * Shape: kind and names in, specifications out.
 * @param kind   word, yes-no or list
 * @param names  as the calculation spells them
 * @returns an output for each
 * @source none: a rule of this code
 * @example told('yes-no', 'enough').enough // { kind: 'yes-no', title: 'Enough', dimension: null }
 */
export function told<const N extends string>(
  kind: 'word' | 'yes-no' | 'list',
  ...names: readonly N[]
): Readonly<Record<N, OutputSpec>> {
  return byName(names, (name) => ({ kind, title: titleOf(name), dimension: null }));
}

function byName<N extends string, T>(names: readonly N[], of: (name: N) => T): Readonly<Record<N, T>> {
  return Object.fromEntries(names.map((name) => [name, of(name)])) as Record<N, T>;
}
