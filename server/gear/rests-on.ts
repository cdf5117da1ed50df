import type { Compiled } from '../../procedures/compile.ts';
import { csvCell } from '../../procedures/csv-cell.ts';
import type { Job } from '../../procedures/job.ts';
import { singleLines } from '../jobs/view/lines.ts';
import { asRead } from '../jobs/view/words.ts';
import type { Gear } from './gear-stream.ts';

/** A reading that a piece of gear was used for, by the entry of the log that holds it. */
export interface RestingReading {
  readonly job: string;
  readonly tag: string;
  /** Place in the log of the site, and among the lines of the job. */
  readonly line: number;
  readonly place: number;
  readonly at: string;
  readonly person: string;
  readonly step: string;
  readonly reading: string;
  /** False where it was corrected or asked again since. */
  readonly stands: boolean;
}

/** A reading taken on the last right day itself is listed: nobody knows the hour. */
function isInDoubt(at: string, { wrong }: Pick<Gear, 'wrong'>): boolean {
  return wrong.some((one) => at.slice(0, 10) >= one.rightUntil && at <= one.at);
}

/** Every reading of one job that rests on the gear in the time that it is in doubt. */
export function restingReadings(
  { number, gear }: { readonly number: string; readonly gear: Pick<Gear, 'wrong'> },
  { job, compiled }: { readonly job: Job; readonly compiled: Compiled },
): readonly RestingReading[] {
  const lines = singleLines(job, compiled);
  return job.answers.flatMap((answer, index) =>
    answer.readings
      .filter(({ gauge }) => gauge === number)
      // What was read earlier and written late was read with it all the same.
      .filter(() => [answer.at, answer.late?.claimedAt ?? answer.at].some((at) => isInDoubt(at, gear)))
      .map((reading) => ({
        job: job.id,
        tag: job.tag,
        line: answer.seq,
        place: answer.place,
        at: answer.at,
        person: answer.person,
        step: lines[index]?.what ?? answer.step,
        reading: asRead(reading),
        stands: !answer.superseded,
      })),
  );
}

const HEAD = [
  'job',
  'valve',
  'line of the log',
  'line of the job',
  'at',
  'person',
  'step',
  'reading',
  'stands',
];

/** The list for table programs; no cell begins like a formula. */
export function readingsCsv(readings: readonly RestingReading[]): string {
  const rows = readings.map(({ job, tag, line, place, at, person, step, reading, stands }) => [
    ...[job, tag, String(line), String(place), at, person, step, reading],
    stands ? 'yes' : 'no',
  ]);
  // The mark in front makes table programs read the letters as UTF-8.
  return `\ufeff${[HEAD, ...rows].map((cells) => `${cells.map(csvCell).join(',')}\r\n`).join('')}`;
}
