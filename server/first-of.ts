/**
 * The first of many, without putting all of them in order.
 *
 * @param of `isBefore` says whether one stands before another; what stands alike keeps its order
 * @example firstOf([3, 1, 2], { most: 2, isBefore: (one, other) => one < other }) // [1, 2]
 */
export function firstOf<One>(
  all: Iterable<One>,
  { most, isBefore }: { readonly most: number; isBefore(one: One, other: One): boolean },
): One[] {
  const first: One[] = [];
  for (const one of all) {
    const last = first[most - 1];
    if (most === 0 || (last !== undefined && !isBefore(one, last))) continue;
    first.splice(placeOf(one, { first, isBefore }), 0, one);
    if (first.length > most) first.pop();
  }
  return first;
}

/** Behind all that it does not stand before. */
function placeOf<One>(
  one: One,
  { first, isBefore }: { readonly first: readonly One[]; isBefore(one: One, other: One): boolean },
): number {
  let [low, high] = [0, first.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    const met = first[middle] as One;
    if (isBefore(one, met)) high = middle;
    else low = middle + 1;
  }
  return low;
}
