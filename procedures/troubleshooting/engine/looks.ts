/** Looks at one thing through the same gauge, and what they say together. */
import type { Check } from '../check.ts';
import { type Answer, HEARSAY } from './evidence.ts';
import { type CheckTable, type RowsSideBySide, visibleSideBySide } from './model.ts';
import { amissOf } from './reader.ts';
import { partsUnder } from './rows.ts';

/** A gauge that shows nothing and was never seen to move is wrong so often: judgement. */
const UNPROVEN_ZERO_MISREAD = 0.3;
/** However doubtful an answer is, something of it counts: judgement. */
const DOUBT_MAX = 0.95;
/** Of the answers that say nothing about the valve, so many come again at the next look: the wrong tag, the same eye. Judgement. */
const COMES_AGAIN = 0.5;

/** Share of answers that say nothing about the valve, where a reader adds so much to what the check has. */
export function misreadOf(table: CheckTable, item: Answer, extraMisread = 0): number {
  const zero = item.gaugeAlive !== true && readsNothing(table.check, item);
  const base = zero ? Math.max(UNPROVEN_ZERO_MISREAD, table.check.misread) : table.check.misread;
  const doubt = item.doubt ?? 0;
  // A doubt that is no number leaves as little of the answer as the largest one.
  const share = Number.isNaN(doubt) ? DOUBT_MAX : Math.min(DOUBT_MAX, Math.max(0, doubt));
  // Whoever told it before anybody looked is not who reads now.
  return amissOf([base, share, item.gauge === HEARSAY ? 0 : extraMisread]);
}

/** A gauge that shows nothing, told in its word or as the number that it is. */
function readsNothing({ zero, measured }: Check, { outcome, value }: Answer): boolean {
  if (zero === undefined) return false;
  const [low, high] = measured?.numberOf?.[zero] ?? measured?.typical[zero] ?? [1, 0];
  return value === undefined ? outcome === zero : value >= low && value <= high;
}

/** What one reading of a group weighs, and the part of it that no reading of the valve explains. */
export interface Weighed {
  readonly groups: readonly { readonly item: Answer; readonly code: number; readonly factor: number }[];
  /** Likelihood where no look saw what is there. */
  readonly none: number;
  /** The part of `none` that shows the same at the next look. */
  readonly noneAgain: number;
  /** Share of the looks that are amiss each by itself. */
  readonly slipFraction: number;
}

/**
 * Looks that agree are one reading, and a slip in it is less likely; looks that differ leave both open. What a reading
 * says of the valve is counted once, however often it is taken.
 * @returns null where none of them is a reading of this check
 * @example weighLooks(table, { looks: [{ kind: 'answer', check: 'flowArrow', outcome: 'agrees' }], extraMisread: 0 })
 */
export function weighLooks(
  table: CheckTable,
  of: { readonly looks: readonly Answer[]; readonly extraMisread: number },
): Weighed | null {
  const read = readable(table, of.looks);
  if (read.length === 0) return null;
  const misreads = read.map(({ item }) => misreadOf(table, item, of.extraMisread));
  const lasting = COMES_AGAIN * Math.min(...misreads);
  const slips = misreads.map((misread) => (misread - lasting) / (1 - lasting));
  const { anywhere, near } = spreadOfMisreads(table, read);
  const groups = grouped(read).map(({ look, members }) => {
    let factor = 1 - lasting;
    slips.forEach((slip, at) => {
      const amiss = slip * anywhere;
      if (!members.includes(at)) factor *= amiss;
      else factor *= at === members[0] ? 1 - slip : (1 - slip) * near + amiss;
    });
    return { ...look, factor };
  });
  const noneAgain = groups.length > 1 ? 0 : lasting * anywhere * near ** (read.length - 1);
  const apart = slips.reduce((product, slip) => product * slip * anywhere, 1 - lasting);
  return { groups, none: apart + noneAgain, noneAgain, slipFraction: slips.at(-1) ?? 0 };
}

/** Likelihood of looks together under each hypothesis, from how much it gives of each group of them. */
export function likelyOf({ groups, none }: Weighed, given: readonly Float64Array[]): Float64Array {
  const likely = new Float64Array(given[0]?.length ?? 0).fill(none);
  groups.forEach(({ factor }, g) => {
    const of = given[g];
    for (let h = 0; h < likely.length; h++) likely[h] = (likely[h] ?? 0) + factor * (of?.[h] ?? 0);
  });
  return likely;
}

interface ReadLook {
  readonly item: Answer;
  /** Which word of the check it is, also where it is a number. */
  readonly code: number;
}

/** A word that the check does not know, or a number for a check that has none, says nothing. */
function readable(table: CheckTable, looks: readonly Answer[]): readonly ReadLook[] {
  const read = looks.flatMap((item): ReadLook[] => {
    if (item.value !== undefined && table.check.measured === undefined) return [];
    const word = item.value === undefined ? item.outcome : wordOf(table, item.value);
    const code = table.codes.indexOf(word ?? '');
    return code < 0 && item.value === undefined ? [] : [{ item, code }];
  });
  // A number and a word about one thing are compared as words.
  if (
    read.every(({ item }) => item.value === undefined) ||
    read.every(({ item }) => item.value !== undefined)
  )
    return read;
  return read.flatMap(({ item, code }): ReadLook[] => {
    const outcome = table.codes[code];
    const { value: _, readSigma: __, ...rest } = item;
    return outcome === undefined ? [] : [{ item: { ...rest, outcome }, code }];
  });
}

/** Into which word a number falls. */
function wordOf(table: CheckTable, value: number): string | undefined {
  const bands = Object.entries(table.check.measured?.bands ?? {});
  return bands.find(([, [low, high]]) => value >= low && value <= high)?.[0];
}

/** Density of a misread one, and of a second look beside a first that was right: 1 for words. */
function spreadOfMisreads(table: CheckTable, read: readonly ReadLook[]) {
  const { measured } = table.check;
  const item = read.at(-1)?.item;
  if (measured === undefined || item?.value === undefined)
    return { anywhere: 1 / table.codes.length, near: 1 };
  const anywhere = 1 / (measured.anywhere[1] - measured.anywhere[0]);
  return { anywhere, near: Math.max(anywhere, 1 / (6 * Math.hypot(sigmaOf(item), measured.soundSigma))) };
}

function sigmaOf({ readSigma }: Answer): number {
  return Number.isFinite(readSigma) ? Math.abs(readSigma ?? 0) : 0;
}

/** Two readings of one gauge are the same where no more lies between them than both of their doubts. */
export function saysTheSame(one: Answer, other: Answer): boolean {
  if (one.value === undefined || other.value === undefined) return one.outcome === other.outcome;
  return Math.abs(one.value - other.value) <= 3 * Math.hypot(sigmaOf(one), sigmaOf(other)) + 1;
}

/** Looks that say the same, with the last of them. */
function grouped(
  read: readonly ReadLook[],
): readonly { readonly look: ReadLook; readonly members: readonly number[] }[] {
  const groups: { look: ReadLook; readonly members: number[] }[] = [];
  read.forEach((look, at) => {
    const home = groups.find((group) => saysTheSame(group.look.item, look.item));
    if (home === undefined) groups.push({ look, members: [at] });
    else {
      home.look = look;
      home.members.push(at);
    }
  });
  return groups;
}

/** How much each of many hypotheses gives of one reading: a share of a word, a density of a number. */
export function givenBy(
  table: CheckTable,
  of: { readonly item: Answer; readonly rows: RowsSideBySide },
): Float64Array {
  const { one, other } = visibleSideBySide(table, of.rows);
  const { soundBoth, sound, amiss } = partsOfRows(table, of.item);
  const given = new Float64Array(one.length);
  for (let n = 0; n < given.length; n++) {
    const [a, b] = [one[n] ?? 0, other[n] ?? -1];
    const soundA = sound[a] ?? 0;
    if (b < 0) given[n] = soundA * soundBoth + (amiss[a] ?? 0);
    else {
      const soundB = sound[b] ?? 0;
      const shown = (amiss[a] ?? 0) * (1 + soundB) + (amiss[b] ?? 0) * (1 + soundA);
      given[n] = soundA * soundB * soundBoth + shown / 2;
    }
  }
  return given;
}

/** What each row of a table makes of one reading, worked out once: two faults meet by the rule of `bothShares`. */
function partsOfRows(table: CheckTable, item: Answer) {
  const { measured } = table.check;
  const { value } = item;
  if (value !== undefined && measured !== undefined) {
    const parts = table.rows.map((row) => partsUnder(measured, { value, readSigma: sigmaOf(item), row }));
    return {
      soundBoth: parts[0]?.sound ?? 0,
      sound: Float64Array.from(parts, ({ soundShare }) => soundShare),
      amiss: Float64Array.from(parts, (part) => part.amiss),
    };
  }
  const at = table.codes.indexOf(item.outcome ?? '');
  return {
    soundBoth: at === 0 ? 1 : 0,
    sound: Float64Array.from(table.rows, ({ shares }) => shares[0] ?? 0),
    amiss: Float64Array.from(table.rows, ({ shares }) => (at === 0 ? 0 : (shares[at] ?? 0))),
  };
}
