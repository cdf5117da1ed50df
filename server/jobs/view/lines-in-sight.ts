import type { JobView } from './job-view.ts';
import { lineHtml } from './line-html.ts';
import type { LineView } from './lines.ts';

type Group = JobView['lines'][number];

/** A line with all that stands behind it, or with the address at which that is. */
export type LineInSight = LineView & ({ readonly html: string } | { readonly fetch: string });

interface Of {
  readonly id: string;
  readonly tag: string;
}

/** So many of the newest lines come with what stands behind them: what was just written is what somebody looks at again. */
const WHOLE = 3;

/**
 * All lines under their phases, each with reading, verdict, who and when. What stands behind the older ones comes when somebody opens
 * them: a job of eighty lines would else send all of it with each of its pages.
 */
export function linesInSight(groups: readonly Group[], of: Of) {
  const newest = groups.flatMap(({ lines }) => lines).slice(-WHOLE);
  return groups.map(({ phase, lines }) => ({
    phase,
    lines: lines.map(
      (line): LineInSight =>
        newest.includes(line)
          ? wholeLine(line, of)
          : { ...line, fetch: `/jobs/${of.id}/lines?line=${line.place}` },
    ),
  }));
}

export function wholeLine(line: LineView, { id, tag }: Of) {
  return { ...line, html: lineHtml(line, { job: id, tag }) };
}
