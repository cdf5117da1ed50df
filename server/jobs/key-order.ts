import type { Json } from '../../procedures/json.ts';

/** The order of names in an object and in what it holds, told only where it is not that of the letters. */
export interface KeyOrder {
  readonly names?: readonly string[];
  readonly within?: Readonly<Record<string, KeyOrder>>;
}

/**
 * The order in which a definition writes its steps, choices and ways. The log sorts names, so that one content has one
 * hash; on a card the order is meant: the way on stands first.
 *
 * @returns null where every name stands in the order of its letters
 * @example keyOrder({ yes: 1, no: 2 }) // { names: ['yes', 'no'] }
 */
export function keyOrder(value: Json): KeyOrder | null {
  if (value === null || typeof value !== 'object') return null;
  const within = Object.fromEntries(
    Object.entries(value).flatMap(([name, each]) => {
      const order = keyOrder(each);
      return order === null ? [] : [[name, order] as const];
    }),
  );
  const names = Array.isArray(value) ? [] : Object.keys(value);
  const isSorted = names.every((name, at) => at === 0 || (names[at - 1] ?? '') < name);
  const hasWithin = Object.keys(within).length > 0;
  if (isSorted && !hasWithin) return null;
  return { ...(isSorted ? {} : { names }), ...(hasWithin ? { within } : {}) };
}

/** The same content with its names in that order; names that the order does not tell come last. */
export function inOrder(value: Json, order: KeyOrder | null | undefined): Json {
  if (!order || value === null || typeof value !== 'object') return value;
  const within = (name: string, each: Json) => inOrder(each, order.within?.[name]);
  if (Array.isArray(value)) return value.map((each, at) => within(String(at), each));
  const own = value as Readonly<Record<string, Json>>;
  const told = (order.names ?? []).filter((name) => Object.hasOwn(own, name));
  const names = [...told, ...Object.keys(own).filter((name) => !told.includes(name))];
  return Object.fromEntries(names.map((name) => [name, within(name, own[name] as Json)]));
}
