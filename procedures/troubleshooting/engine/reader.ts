/** How carefully a valve is read, which nobody knows beforehand: it is weighed by the answers, as the causes are. */

/** One grade of care. */
export interface Reader {
  /** Share of the answers that say nothing of the valve, beside the misreads of each check. */
  readonly extraMisread: number;
  /** How likely such a reader is before anything was read. */
  readonly prior: number;
}

/** Reads as the checks say: nothing is amiss beside their own misread shares. */
export const CAREFUL: Reader = { extraMisread: 0, prior: 1 };

/**
 * Who may be reading. Answers that agree are what both give, and leave it open; answers that contradict each other come
 * oftener from the second. Which of the two reads nobody knows, so that either is as likely; the tenth is judgement.
 */
export const READERS: readonly Reader[] = [
  { ...CAREFUL, prior: 0.5 },
  { extraMisread: 0.1, prior: 0.5 },
];

/**
 * The extra misread share to be expected of the next answer.
 * @param chances how likely each reader is now; they add up to 1
 * @example expectedExtraMisread(READERS, [0.5, 0.5]) // 0.05
 */
export function expectedExtraMisread(readers: readonly Reader[], chances: ArrayLike<number>): number {
  return readers.reduce((sum, { extraMisread }, r) => sum + extraMisread * (chances[r] ?? 0), 0);
}

/**
 * Share of answers that are amiss where any of several independent things may make them so.
 * @example amissOf([0.05, 0.1]) // 0.145
 */
export function amissOf(shares: readonly number[]): number {
  return 1 - shares.reduce((right, share) => right * (1 - share), 1);
}
