import { z } from 'zod';
import { fromSi } from '../../procedures/calculations/units.ts';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import type { JobLine } from '../jobs/job-stream.ts';
import { day } from '../jobs/view/words.ts';
import { notedRows } from './noted.ts';
import { closedJobs, type Series, seriesOf } from './series.ts';
import { METHOD, type Trend, trendOf, unitWordsOf } from './trend.ts';

const limit = z.number().nullable();

const point = z.object({
  job: z.string(),
  on: z.string().describe('YYYY-MM-DD'),
  when: z.enum(['as found', 'as left']),
  value: z.number(),
  uncertainty: z.number().describe('Covers the value at about 95 %'),
  counted: z.boolean().describe('Read since the valve was last set: the trend runs over these'),
  doubt: z.string().describe('Gear that readings of this job rest on and that was found wrong since'),
});

const quantity = z.object({
  id: z.string(),
  title: z.string(),
  unit: z.string(),
  limitLow: limit,
  limitHigh: limit,
  expected: z
    .object({ value: z.number(), from: z.string() })
    .nullable()
    .describe('What the sheet expects of it; no limit'),
  points: z.array(point),
  driftPerYear: z.number().nullable(),
  driftGivePerYear: z.number().nullable().describe('Covers the drift at about 95 %'),
  isDrifting: z.boolean(),
  leaves: z
    .object({
      limit: z.number(),
      expected: z.string().nullable(),
      earliest: z.string().nullable(),
      latest: z.string().nullable(),
    })
    .nullable(),
  intervalMonths: z.int().nullable(),
  says: z.array(z.string()),
});

const notedRow = z.object({
  job: z.string(),
  tag: z.string(),
  closedOn: z.string(),
  kind: z.enum(['finding', 'part', 'repair']),
  what: z.string(),
  words: z.string(),
  number: z.string().describe('Of a part'),
  batch: z.string().describe('Batch or serial number of a part'),
  quantity: z.int().nullable(),
});

export const valveHistorySchema = z.object({
  tag: z.string(),
  jobs: z.array(
    z.object({
      job: z.string(),
      procedure: z.string(),
      closedOn: z.string(),
      closedAs: z.string(),
      outsideAsFound: z.array(z.string()),
      strokeOpenS: z.number().nullable(),
      strokeShutS: z.number().nullable(),
    }),
  ),
  noted: z
    .array(notedRow)
    .describe('What was found and what was put in on its closed jobs, the oldest first'),
  quantities: z.array(quantity),
  proposedMonths: z.int().nullable().describe('The shortest that any of the quantities proposes'),
  method: z.string(),
});

export type ValveHistory = z.infer<typeof valveHistorySchema>;

export interface HistorySheets {
  readonly history: ValveHistory;
  /** For the pictures, beside the numbers. */
  readonly drawn: readonly { readonly series: Series; readonly trend: Trend }[];
}

/** What the closed jobs of a valve say over the years: a pure function of their lines and its sheet. */
export function valveHistory(lines: readonly JobLine[], sheet: ValveSheet): HistorySheets {
  const drawn = seriesOf(lines, sheet).map((series) => ({ series, trend: trendOf(series) }));
  const proposed = drawn.map(({ trend }) => trend.intervalMonths).filter((months) => months !== null);
  const history: ValveHistory = {
    tag: sheet.tag,
    jobs: closedJobs(lines).map((job) => ({
      job: job.id,
      procedure: job.procedure,
      closedOn: day(job.closedAt ?? ''),
      closedAs: job.closedAs ?? '',
      outsideAsFound: [...(job.measured?.asFound?.outside ?? [])],
      strokeOpenS: job.measured?.strokeOpenS ?? null,
      strokeShutS: job.measured?.strokeShutS ?? null,
    })),
    noted: notedRows(lines).map((row) => ({ ...row })),
    quantities: drawn.map(quantityOf),
    proposedMonths: proposed.length === 0 ? null : Math.min(...proposed),
    method: METHOD,
  };
  return { history, drawn };
}

function quantityOf({ series, trend }: HistorySheets['drawn'][number]): ValveHistory['quantities'][number] {
  const { id, title, unit, limitLowSi, limitHighSi, expected, points } = series;
  const inUnit = (valueSi: number) => fromSi({ valueSi, unit });
  const limitOf = (valueSi: number | null) => (valueSi === null ? null : inUnit(valueSi));
  const { counted: _, line: __, says, leaves, ...told } = trend;
  return {
    id,
    title,
    unit: unitWordsOf(series),
    limitLow: limitOf(limitLowSi),
    limitHigh: limitOf(limitHighSi),
    expected: expected === null ? null : { value: inUnit(expected.valueSi), from: expected.from },
    points: points.map(({ job, at, when, valueSi, uncertaintySi, isCounted }) => ({
      job,
      on: day(at),
      when,
      value: inUnit(valueSi),
      uncertainty: inUnit(uncertaintySi),
      counted: isCounted,
      doubt: '',
    })),
    ...told,
    leaves: leaves === null ? null : { ...leaves },
    says: [...says],
  };
}
