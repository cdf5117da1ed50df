/** Numbers with a normal distribution of mean 0 and standard deviation 1, the same for the same seed. */
export function normalChance(seed: number): () => number {
  let state = seed;
  const even = () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 0x2c1b3c6d);
    mixed = Math.imul(mixed ^ (mixed >>> 12), 0x297a2d39);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(1 - even())) * Math.cos(2 * Math.PI * even());
}
