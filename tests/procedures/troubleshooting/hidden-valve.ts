import { CHECK_READINGS } from '../../../procedures/troubleshooting/check-readings.ts';
import type { CheckId } from '../../../procedures/troubleshooting/checks.ts';
import type { Answer } from '../../../procedures/troubleshooting/engine/evidence.ts';
import {
  type CheckTable,
  type Hypothesis,
  type Model,
  rowAt,
  sharesOf,
  visibleAt,
} from '../../../procedures/troubleshooting/engine/model.ts';

/** What somebody says who made a check: one of its words, or a number on its axis. */
export type Said = Pick<Answer, 'outcome' | 'value' | 'readSigma'>;

/** Of its misreads, so many come again at the next look; the same judgement as the engine's. */
const COMES_AGAIN = 0.5;
/** A gauge is half as uncertain as sound valves are apart: judgement. */
const GAUGE_PART = 0.5;

interface Look {
  readonly table: CheckTable;
  readonly chance: () => number;
}

/**
 * A valve with a hidden fault: answers each check as a person would, slips and all; what is there stays there. Where
 * the card asks for a number, a number is answered; `inWords` says a word of the check all the same.
 */
export function hiddenValve(
  model: Model,
  of: {
    readonly truth: Pick<Hypothesis, 'rows'>;
    readonly chance: () => number;
    readonly extraMisread?: number;
    readonly inWords?: boolean;
  },
): (check: CheckId) => Said {
  const known = new Map<CheckId, { readonly there: Said; readonly lasting: Said | null }>();
  return (check) => {
    const table = model.tables.get(check);
    if (table === undefined) throw new Error(`no check ${check} on this valve`);
    const misread = 1 - (1 - table.check.misread) * (1 - (of.extraMisread ?? 0));
    const lasting = COMES_AGAIN * misread;
    const { chance } = of;
    const at = { table, chance };
    const asked = of.inWords !== true && CHECK_READINGS[check] !== undefined;
    const numbers = asked && table.check.measured !== undefined;
    const anything = () => (numbers ? anyNumber(at) : anyWord(at));
    const look = known.get(check) ?? {
      there: numbers
        ? drawNumber(at, of.truth.rows)
        : drawWord(table.codes, { shares: sharesOf(table, of.truth.rows), chance }),
      lasting: chance() < lasting ? anything() : null,
    };
    known.set(check, look);
    if (look.lasting !== null) return readOff(at, look.lasting);
    return readOff(at, chance() < (misread - lasting) / (1 - lasting) ? anything() : look.there);
  };
}

function anyWord({ table, chance }: Look): Said {
  return { outcome: table.codes[Math.floor(chance() * table.codes.length)] ?? '' };
}

/** A misread number lies anywhere on the axis; a word that is no stretch of it comes as often as any other. */
function anyNumber(at: Look): Said {
  const word = anyWord(at);
  const { measured } = at.table.check;
  if (measured === undefined || measured.bands[word.outcome ?? ''] === undefined) return word;
  return number(at, evenly(at, measured.anywhere));
}

function drawWord(
  codes: readonly string[],
  of: { readonly shares: ArrayLike<number>; readonly chance: () => number },
): Said {
  return { outcome: codes[drawAt(of.shares, of.chance)] ?? '' };
}

/** Where it reads under one fault, or under two by the rule of the table. */
function drawNumber(at: Look, rows: readonly number[]): Said {
  const { table, chance } = at;
  const [one, other] = visibleAt(table, rows);
  const [a, b] = [rowAt(table, one), other === null ? null : rowAt(table, other)];
  const [soundA, soundB] = [a.soundShare, b?.soundShare ?? 1];
  const ofB = b === null ? 0 : ((1 - soundB) * (1 + soundA)) / 2;
  const shown = drawAt([soundA * soundB, ((1 - soundA) * (1 + soundB)) / 2, ofB], chance);
  const { measured } = table.check;
  if (measured === undefined) throw new Error('a number on a check without an axis');
  const scatter = measured.soundSigma * normal(chance);
  if (shown === 0) return number(at, (measured.soundAt ?? 0) + scatter);
  const row = shown === 1 || b === null ? a : b;
  const words = table.codes.filter((code) => measured.bands[code] === undefined);
  const wordShares = words.map((code) => row.shares[table.codes.indexOf(code)] ?? 0);
  const part = drawAt([...row.pieces.map(([share]) => share), ...wordShares], chance);
  const piece = row.pieces[part];
  if (piece === undefined) return { outcome: words[part - row.pieces.length] ?? '' };
  return number(at, evenly(at, [piece[1], piece[2]]) + scatter);
}

function number({ table }: Look, value: number): Said {
  return { value, readSigma: GAUGE_PART * (table.check.measured?.soundSigma ?? 1) };
}

/** Read off its gauge once more, a number comes out a little otherwise. */
function readOff({ chance }: Look, said: Said): Said {
  if (said.value === undefined) return said;
  return { ...said, value: said.value + (said.readSigma ?? 0) * normal(chance) };
}

function evenly({ chance }: Look, [low, high]: readonly [number, number]): number {
  return low + (high - low) * chance();
}

/** Place drawn by its share of them all. */
function drawAt(shares: ArrayLike<number>, chance: () => number): number {
  const all = Array.from(shares);
  let left = chance() * all.reduce((sum, share) => sum + share, 0);
  return Math.max(
    0,
    all.findIndex((share) => {
      left -= share;
      return left <= 0;
    }),
  );
}

/** Box and Muller 1958. */
function normal(chance: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - chance())) * Math.cos(2 * Math.PI * chance());
}
