/** One requirement, met or not. */
export interface Requirement {
  /** Letters for the subject and a number, `SAF-01`, never given twice; one that is dropped leaves a gap. */
  readonly id: string;
  /** What shall be. */
  readonly text: string;
  /** Published source, or `common practice, no source`. */
  readonly source: string;
  /** Why no test quotes it: it does not apply to this trade, or what is missing. Absent where it is built. */
  readonly notBuilt?: string;
}
