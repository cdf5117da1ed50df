/** Evenly from 0 to below 1. Handed in: nothing here draws by itself. */
export type Random = () => number;

/**
 * A generator whose numbers come again for the same seed.
 * @example seeded(7)() === seeded(7)() // true
 */
export function seeded(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = state ^ (state >>> 16);
    mixed = Math.imul(mixed, 0x21f0aaad);
    mixed ^= mixed >>> 15;
    mixed = Math.imul(mixed, 0x735a2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 4294967296;
  };
}

/** Evenly between two places. */
export function between(random: Random, [low, high]: readonly [number, number]): number {
  return low + (high - low) * random();
}

/** Mean 0, standard deviation 1. */
export function bell(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/** One of a list that is not empty. */
export function oneFrom<T>(random: Random, list: readonly [T, ...T[]]): T {
  return list[Math.floor(random() * list.length)] ?? list[0];
}

/** Up or down. */
export function eitherWay(random: Random): 1 | -1 {
  return random() < 0.5 ? -1 : 1;
}
