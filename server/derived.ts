/**
 * What is worked out from a list that is kept in memory: once for each state of it, since a list that changed is another one.
 *
 * @example const inUse = derived((lines: readonly Line[]) => lines.filter(({ retired }) => !retired));
 */
export function derived<From extends object, To>(workOut: (from: From) => To): (from: From) => To {
  const known = new WeakMap<From, { readonly to: To }>();
  return (from) => {
    const found = known.get(from) ?? { to: workOut(from) };
    known.set(from, found);
    return found.to;
  };
}
