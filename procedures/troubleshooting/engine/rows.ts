import { isSpread, type Piece, type Row } from '../cause.ts';
import type { Check, Measured } from '../check.ts';
import { densityAt, densityOfPieces, shareWithin } from './spread.ts';

/** What one cause, in one grade, gives on one check, before anybody misreads it. */
export interface BareRow {
  /** Share of each outcome, in the order of the check; the sound one first. They add up to 1. */
  readonly shares: Float64Array;
  /** Measured checks: share that reads as on a sound valve, and where the rest reads. */
  readonly soundShare: number;
  readonly pieces: readonly Piece[];
}

/** Works a row out in words and numbers at once, so that a reading in either says the same. */
export function bareRow(check: Check, row: Row | undefined): BareRow {
  const codes = Object.keys(check.outcomes);
  const { pieces, words } = inPieces(check, row ?? {});
  const named = pieces.reduce((sum, [share]) => sum + share, 0);
  const spoken = Object.values(words).reduce((sum, share) => sum + share, 0);
  const soundShare = Math.max(0, 1 - named - spoken);
  const shares = new Float64Array(codes.length);
  codes.forEach((code, at) => {
    shares[at] = words[code] ?? 0;
  });
  if (check.measured === undefined) shares[0] = (shares[0] ?? 0) + soundShare;
  else addBands(shares, { codes, measured: check.measured, pieces, soundShare });
  scale(shares);
  return { shares, soundShare, pieces: [...pieces, ...numbersOf(check, words)] };
}

/** Where the number lies that stands for a word: it counts for a number that is read, the word keeps its own share. */
function numbersOf(check: Check, words: Readonly<Record<string, number>>): readonly Piece[] {
  return Object.entries(check.measured?.numberOf ?? {}).flatMap(([word, [low, high]]): Piece[] => {
    const share = words[word] ?? 0;
    return share > 0 ? [[share, low, high]] : [];
  });
}

/** A cause that names only the word of a measured check is taken to read where that word usually does. */
function inPieces(
  check: Check,
  row: Row,
): { readonly pieces: readonly Piece[]; readonly words: Readonly<Record<string, number>> } {
  if (isSpread(row)) return { pieces: row.pieces, words: row.words ?? {} };
  const typical = check.measured?.typical ?? {};
  const pieces: Piece[] = [];
  const words: Record<string, number> = {};
  for (const [code, share] of Object.entries(row)) {
    const stretch = typical[code];
    if (stretch === undefined) words[code] = share;
    else if (share > 0) pieces.push([share, ...stretch]);
  }
  return { pieces, words };
}

function addBands(
  shares: Float64Array,
  of: {
    readonly codes: readonly string[];
    readonly measured: Measured;
    readonly pieces: readonly Piece[];
    readonly soundShare: number;
  },
): void {
  const { measured } = of;
  const at = measured.soundAt ?? 0;
  const parts: readonly Piece[] = [...of.pieces, [of.soundShare, at, at]];
  of.codes.forEach((code, index) => {
    const band = measured.bands[code];
    if (band === undefined) return;
    for (const [share, low, high] of parts) {
      const within = shareWithin(band, { low, high, sigma: measured.soundSigma });
      shares[index] = (shares[index] ?? 0) + share * within;
    }
  });
}

function scale(shares: Float64Array): void {
  const sum = shares.reduce((total, share) => total + share, 0);
  for (let at = 0; at < shares.length; at++) shares[at] = (shares[at] ?? 0) / sum;
}

/**
 * Two faults at once: where one reads as on a sound valve the other shows, where both show something it is one of
 * them, half and half.
 */
export function bothShares(one: Float64Array, other: Float64Array): Float64Array {
  const [soundOne, soundOther] = [one[0] ?? 0, other[0] ?? 0];
  const both = new Float64Array(one.length);
  both[0] = soundOne * soundOther;
  for (let at = 1; at < one.length; at++)
    both[at] = ((one[at] ?? 0) * (1 + soundOther) + (other[at] ?? 0) * (1 + soundOne)) / 2;
  return both;
}

export interface NumberRead {
  readonly value: number;
  /** Standard uncertainty of the reading on the same axis. */
  readonly readSigma: number;
}

/** What one row makes of a number; scatter of the process and of the gauge together. */
export interface PartsUnder {
  readonly soundShare: number;
  /** Density where it reads as on a sound valve, and where it does not: the second already times its shares. */
  readonly sound: number;
  readonly amiss: number;
}

export function partsUnder(measured: Measured, of: NumberRead & { readonly row: BareRow }): PartsUnder {
  const sigma = Math.hypot(measured.soundSigma, of.readSigma);
  const at = measured.soundAt ?? 0;
  return {
    soundShare: of.row.soundShare,
    sound: densityAt(of.value, { low: at, high: at, sigma }),
    amiss: densityOfPieces(of.value, { pieces: of.row.pieces, sigma }),
  };
}

/** Density of a number under one fault, or under two at once by the rule of `bothShares`; 0 where there is none. */
export function densityTogether(one: PartsUnder | undefined, other?: PartsUnder): number {
  if (one === undefined) return 0;
  if (other === undefined) return one.soundShare * one.sound + one.amiss;
  return (
    one.soundShare * other.soundShare * one.sound +
    (one.amiss * (1 + other.soundShare) + other.amiss * (1 + one.soundShare)) / 2
  );
}
