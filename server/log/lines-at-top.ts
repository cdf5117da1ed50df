import type { Summary } from '../store/store.ts';
import type { SiteLog } from './site-log.ts';

/** So many lines are read at once: more than are wanted on most days. */
const PAGE_LINES = 25;

export interface AtTop<Line> {
  /** At most so many are given. */
  readonly max: number;
  /** What is wanted stands before all else in the order of the list. */
  isWanted(line: Line): boolean;
}

/**
 * The lines of a list that are wanted, where those stand first in it: it is read until one is not, so that what stands behind
 * them costs nothing, however long the list.
 *
 * @example await linesAtTop<JobLine>(log, 'job', { max: 200, isWanted: ({ status }) => status !== 'closed' })
 */
export async function linesAtTop<Line>(
  log: Pick<SiteLog, 'summaries'>,
  kind: string,
  { max, isWanted }: AtTop<Line>,
): Promise<readonly Line[]> {
  const wanted: Line[] = [];
  for (let after: Summary | undefined; wanted.length < max; ) {
    const limit = Math.min(PAGE_LINES, max - wanted.length);
    const page = await log.summaries(kind, { limit, ...(after === undefined ? {} : { after }) });
    const lines = page.map(({ body }) => body as unknown as Line);
    const others = lines.findIndex((line) => !isWanted(line));
    wanted.push(...(others < 0 ? lines : lines.slice(0, others)));
    if (others >= 0 || page.length < limit) break;
    after = page.at(-1);
  }
  return wanted;
}
