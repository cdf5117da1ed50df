import { STEM_MOVES } from '../phases/common.ts';
import type { RowPlan, Step } from '../vocabulary.ts';

interface Names<Cycle extends string, Strokes extends string, Other extends string> {
  readonly cycle: Cycle;
  readonly strokes: Strokes;
  readonly verdict: Other;
  readonly phase: 'asFound' | 'asLeft';
  readonly danger: Other;
  readonly makeSafe: Other;
}

/** The full cycle and the strokes to mid-range: one table each, as found and as left alike. */
export function strokeTables<
  const Cycle extends string,
  const Strokes extends string,
  const Other extends string,
>(
  names: Names<Cycle, Strokes, Other>,
  { rows, strokes }: { readonly rows: readonly RowPlan[]; readonly strokes: readonly RowPlan[] },
): Readonly<Record<Cycle | Strokes, Step<Cycle | Strokes | Other>>> {
  const when = names.phase === 'asFound' ? 'as found' : 'as left';
  const shared = {
    kind: 'table',
    phase: names.phase,
    action: 'strokeByTestAir',
    caution: STEM_MOVES,
    makeSafe: names.makeSafe,
    judge: { rule: 'table' },
  } as const;
  const cycle: Step<Cycle | Strokes | Other> = {
    ...shared,
    title: `Read the stroke up and down, ${when}`,
    how: 'Come to each signal from one side, without passing it. Read the travel when it rests.',
    why: 'The gap between up and down is friction; the middle is the spring.',
    rows,
    ways: {
      'more rows': { to: names.cycle },
      complete: { to: names.strokes },
      'above limit': { to: names.danger },
    },
  };
  const repeat: Step<Cycle | Strokes | Other> = {
    ...shared,
    title: `Stroke to mid-range again and again, ${when}`,
    how: 'From below each time, down to the low end between.',
    why: 'What does not repeat cannot be adjusted.',
    rows: strokes,
    ways: {
      'more rows': { to: names.strokes },
      complete: { to: names.verdict },
      'above limit': { to: names.danger },
    },
  };
  return { [names.cycle]: cycle, [names.strokes]: repeat } as Readonly<
    Record<Cycle | Strokes, Step<Cycle | Strokes | Other>>
  >;
}
