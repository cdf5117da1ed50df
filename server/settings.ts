/** What can be set from outside, with the values that hold otherwise. */

/** Cost of hashing a PIN, as `crypto.scrypt` takes it. */
export interface HashCost {
  readonly N: number;
  readonly r: number;
  readonly p: number;
}

/** OWASP's password storage cheat sheet: scrypt with N = 2^17, r = 8, p = 1 is the least for a secret of people. */
export const HASH_COST: HashCost = { N: 2 ** 17, r: 8, p: 1 };

export interface Settings {
  /**
   * The addresses that this server is reached by, `http://127.0.0.1:8430`. A request must name the host of one of
   * them, and a form must come from it: that keeps other sites' pages out, whatever name they point here.
   */
  readonly origins: readonly string[];
  /** A session ends when nobody touched its screen for so long; OWASP's session cheat sheet allows 15 to 30. */
  readonly sessionIdleMinutesMax: number;
  /** And after a shift in any case. */
  readonly sessionHoursMax: number;
  readonly pinDigitsMin: number;
  readonly hashCost: HashCost;
  /** Hashes at once; each takes 128 MiB for about half a second. */
  readonly hashesAtOnceMax: number;
  /** Hashes that may wait for those; beyond, people are asked to try again. */
  readonly hashesWaitingMax: number;
  /** What the first set-up must name where the server listens beyond this machine; null where it need not. */
  readonly setUpToken: string | null;
  /** Reached from other machines without encryption, which every page then says. */
  readonly isOpenHttp: boolean;
}

export const SETTINGS: Settings = {
  origins: [],
  sessionIdleMinutesMax: 30,
  sessionHoursMax: 12,
  pinDigitsMin: 6,
  hashCost: HASH_COST,
  hashesAtOnceMax: 2,
  hashesWaitingMax: 20,
  setUpToken: null,
  isOpenHttp: false,
};
