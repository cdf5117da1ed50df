/** What a second look through the same gauge would tell: whether the first was a slip. */
import { type Answer, counted, type Evidence, HEARSAY } from './evidence.ts';
import type { Question } from './information.ts';
import { givenBy, weighLooks } from './looks.ts';
import { type CheckTable, type Model, sharesOf } from './model.ts';

/** A reading is looked at so often at most: what stays doubtful then is not told by looking. */
const LOOKS_MOST = 3;
/** A reading that was as likely right is not looked at again: judgement. */
const WORTH_DOUBTING = 0.03;

/** Readings since the last repair that may be taken again, with every look at each. */
export function looksToDoubt(evidence: readonly Evidence[]): readonly (readonly Answer[])[] {
  const items = counted(evidence);
  const repairs = items.filter(({ item }) => item.kind === 'repaired').length;
  return items
    .filter(({ looks, after }) => after.length === repairs && looks.length > 0 && looks.length < LOOKS_MOST)
    .map(({ looks }) => looks)
    .filter(([first]) => first?.gauge !== HEARSAY);
}

/**
 * Share of each word at one more look, under each hypothesis of a question, in a row. Where the reading is right it
 * comes again; where it was a slip, the next look shows what is there.
 * @returns null where the reading is hardly to be doubted: everything likely explains it
 */
export function lookAgainShares(
  model: Model,
  of: {
    readonly question: Pick<Question, 'rows' | 'weights' | 'extraMisread'>;
    readonly looks: readonly Answer[];
  },
): Float64Array | null {
  const table = model.tables.get(of.looks[0]?.check ?? 'trend');
  const { extraMisread } = of.question;
  const weighed = table === undefined ? null : weighLooks(table, { looks: of.looks, extraMisread });
  if (table === undefined || weighed === null) return null;
  const { groups, none, noneAgain, slipFraction } = weighed;
  if (groups.some(({ code }) => code < 0)) return null;
  const { rows, weights } = of.question;
  const given = groups.map(({ item }) => givenBy(table, { item, rows }));
  const likely = new Float64Array(weights.length).fill(none);
  let [doubted, total] = [0, 0];
  for (let n = 0; n < weights.length; n++) {
    for (let g = 0; g < groups.length; g++)
      likely[n] = (likely[n] ?? 0) + (groups[g]?.factor ?? 0) * (given[g]?.[n] ?? 0);
    total += weights[n] ?? 0;
    doubted += ((weights[n] ?? 0) * none) / (likely[n] ?? 0);
  }
  if (doubted < WORTH_DOUBTING * total && groups.length === 1) return null;
  const width = table.codes.length;
  const shares = new Float64Array(width * weights.length);
  for (let n = 0; n < weights.length; n++) {
    const [one = 0, other = -1, all = 0] = [rows.one[n], rows.other[n], likely[n]];
    const next = nextLook(table, {
      rows: other < 0 ? [one] : [one, other],
      right: groups.map(({ factor, code }, g) => ({ share: (factor * (given[g]?.[n] ?? 0)) / all, code })),
      slipped: (none - noneAgain) / all,
      lasting: noneAgain / all,
      slipFraction,
    });
    shares.set(next, n * width);
  }
  return shares;
}

/** Probability of each outcome of one more look together with each class: class by class, outcomes in a row. */
export function lookAgainJoint(
  model: Model,
  of: { readonly question: Question; readonly looks: readonly Answer[] },
): Float64Array | null {
  const shares = lookAgainShares(model, of);
  if (shares === null) return null;
  const { classes, members, weights } = of.question;
  const width = shares.length / weights.length;
  const joint = new Float64Array(width * classes.length);
  for (let n = 0; n < weights.length; n++) {
    const half = (weights[n] ?? 0) / 2;
    for (const member of [members[2 * n] ?? 0, members[2 * n + 1] ?? 0])
      for (let k = 0; k < width; k++)
        joint[member * width + k] = (joint[member * width + k] ?? 0) + half * (shares[n * width + k] ?? 0);
  }
  return joint;
}

function nextLook(
  table: CheckTable,
  of: {
    readonly rows: readonly number[];
    readonly right: readonly { readonly share: number; readonly code: number }[];
    readonly slipped: number;
    readonly lasting: number;
    readonly slipFraction: number;
  },
): Float64Array {
  const { rows, right, slipped, lasting, slipFraction } = of;
  const width = table.codes.length;
  const next = new Float64Array(width);
  const there = sharesOf(table, rows);
  for (let at = 0; at < width; at++)
    next[at] =
      slipped * ((1 - slipFraction) * (there[at] ?? 0) + slipFraction / width) +
      ((1 - slipped - lasting) * slipFraction) / width;
  for (const { share, code } of right) next[code] = (next[code] ?? 0) + share * (1 - slipFraction);
  const [first] = right;
  if (first !== undefined) next[first.code] = (next[first.code] ?? 0) + lasting;
  return next;
}
