import type { Job } from '../../../procedures/job.ts';
import type { JobRecord } from './schema.ts';

type Result = JobRecord['results'][number];

/** How long a stroke took each way, where it was timed, against what the sheet allows. */
export function timeResults({ sheet, readings }: Job): readonly Result[] {
  return [
    timeRow({ label: 'time to open, s', readS: readings.strokeOpenS?.valueSi, limitS: sheet.strokeOpenMaxS }),
    timeRow({ label: 'time to shut, s', readS: readings.strokeShutS?.valueSi, limitS: sheet.strokeShutMaxS }),
  ].filter((row) => row !== null);
}

interface Timed {
  readonly label: string;
  readonly readS: number | undefined;
  readonly limitS: number | null;
}

/** A hand on a stop watch has no uncertainty that anybody states: the time itself is held against the limit. */
function timeRow({ label, readS, limitS }: Timed): Result | null {
  if (readS === undefined) return null;
  const isOutside = limitS !== null && readS > limitS;
  const judged = limitS === null ? 'no limit on the sheet' : `as left ${isOutside ? 'outside' : 'inside'}`;
  return {
    label,
    asFound: '',
    asLeft: readS.toFixed(1),
    foundOutside: false,
    leftOutside: isOutside,
    limit: limitS === null ? '' : String(limitS),
    verdict: `${judged}; timed by hand`,
  };
}
