import type { Disposition, SignWay } from '../safety/sign-off.ts';

/** Who signed and what it means, in words that stand for themselves when the list of people has changed. */
export interface SignatureNote {
  readonly person: string;
  /** As printed on the day; blank where no list of people stands behind the job. */
  readonly name: string;
  readonly role: string;
  readonly meaning:
    | 'signed'
    | 'sent back'
    | 'waived'
    | 'witnessed'
    | 'reviewed'
    | 'overridden'
    | 'read again';
  readonly way: SignWay;
  /** Why no supervisor stood there; blank where one did. */
  readonly why: string;
  /** The one-time number of the page that it was given on. */
  readonly nonce: string;
  /** By radio: the code that was read out and read back, and who heard it. */
  readonly radio: { readonly code: string; readonly heardBy: string } | null;
}

/** A refused hold: what is wrong, and what is done about it. */
export interface SentBack {
  readonly step: string;
  readonly place: number;
  readonly at: string;
  readonly person: string;
  readonly reason: string;
  readonly disposition: Disposition;
  /** The line of the signature that accepted it after all. */
  readonly acceptedAt: number | null;
}

/** A record that somebody has to look at before the job closes. */
export interface OpenReview {
  readonly step: string;
  readonly place: number;
  readonly at: string;
  /** Who had a hand in what is reviewed. */
  readonly performers: readonly string[];
  readonly reviewedAt: number | null;
  /** What was wrong with it; blank where it was accepted, or is not looked at yet. */
  readonly sentBack: string;
}

/** A point that was passed without a signature, as its definition allows. */
export interface PassedPoint {
  readonly step: string;
  readonly place: number;
  readonly how: 'waived' | 'not witnessed';
}

export interface RadioNote {
  readonly step: string;
  readonly place: number;
  readonly at: string;
  readonly person: string;
  readonly heardBy: string;
  readonly code: string;
  readonly confirmBy: number;
  readonly stands: 'open' | 'confirmed' | 'denied';
}

export interface ReadAgain {
  readonly about: number;
  readonly place: number;
  readonly person: string;
  /** Alone and without seeing the first reading, or looking on together. */
  readonly mode: 'independent' | 'peer';
  readonly agrees: boolean;
}

/** What the lines of a job say of its signatures, beside the signed holds themselves. */
export interface Signing {
  readonly acknowledgers: readonly string[];
  readonly sentBack: readonly SentBack[];
  readonly reviews: readonly OpenReview[];
  readonly passed: readonly PassedPoint[];
  readonly radio: readonly RadioNote[];
  readonly readAgain: readonly ReadAgain[];
  /** One-time numbers of signature pages that were used. */
  readonly nonces: readonly string[];
}

export const NOTHING_SIGNED: Signing = {
  acknowledgers: [],
  sentBack: [],
  reviews: [],
  passed: [],
  radio: [],
  readAgain: [],
  nonces: [],
};
