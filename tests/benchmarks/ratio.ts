/** One line of the table of `npm run benchmark`. */
export interface Ratio {
  readonly what: string;
  readonly measured: string;
  readonly goal: string;
  readonly isReached: boolean;
  /** The figures behind it. */
  readonly from: string;
}

/** How long something took at best of some rounds, on the clock and on the processor: others use this machine too. */
export interface Took {
  readonly wallMs: number;
  readonly cpuMs: number;
}

/** @returns the best of each, which need not be of one round */
export async function best(rounds: number, work: () => unknown): Promise<Took> {
  const wallMs: number[] = [];
  const cpuMs: number[] = [];
  for (let round = 0; round < rounds; round += 1) {
    const [begunMs, before] = [performance.now(), process.cpuUsage()];
    await work();
    const { user, system } = process.cpuUsage(before);
    wallMs.push(performance.now() - begunMs);
    cpuMs.push((user + system) / 1000);
  }
  return { wallMs: Math.min(...wallMs), cpuMs: Math.min(...cpuMs) };
}

export function told({ wallMs, cpuMs }: Took): string {
  return `${wallMs.toFixed(1)} ms, of the processor ${cpuMs.toFixed(1)} ms`;
}

export function atLeast(goal: number, ratio: number): Pick<Ratio, 'measured' | 'goal' | 'isReached'> {
  return { measured: ratio.toFixed(2), goal: `>= ${goal}`, isReached: ratio >= goal };
}

export function atMostMs(goalMs: number, took: number): Pick<Ratio, 'measured' | 'goal' | 'isReached'> {
  return { measured: `${took.toFixed(2)} ms`, goal: `< ${goalMs} ms`, isReached: took < goalMs };
}
