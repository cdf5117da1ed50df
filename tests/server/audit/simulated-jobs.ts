/** Honest jobs by the thousand, and cheats: one job that the machine decided, with the readings of another day. */
import type { Reading } from '../../../procedures/job.ts';
import type { AuditedJob, JobLine, Opened } from '../../../server/audit/exceptions/exception.ts';
import { openJob, scripted } from '../../builders/jobs.ts';

/** Numbers by chance that are the same on every run (a linear congruential generator, Numerical Recipes). */
function chance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

function normal(random: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/** A whole stroke check, as the machine decided it. */
export function decidedJob(): AuditedJob {
  const run = openJob();
  for (let acts = 0; acts < 120 && run.job.status !== 'closed'; acts += 1) scripted(run);
  if (run.job.status !== 'closed') throw new Error(`the job stands at ${run.job.step}`);
  const [first, ...others] = run.entries;
  const screened = others.map((entry) => ({
    ...entry,
    screen: entry.kind === 'hold-signed' ? 'screen 2' : 'screen 1',
  }));
  return { opened: first?.inputs as unknown as Opened, lines: screened as unknown as JobLine[] };
}

export interface Reader {
  /** Of the travel, one standard deviation: dial, eye and the signal that was set. */
  readonly error: number;
  /** Digits that travel is given to, in percent: 0.1 or 0.5. */
  readonly grid: number;
}

/** The same job done by another honest person: slow or quick, with friction and offset of its own, and errors of the eye. */
export function honestJob(
  decided: AuditedJob,
  of: { readonly seed: number; readonly reader: Reader },
): AuditedJob {
  const random = chance(of.seed * 7919 + 17);
  const span = decided.opened.sheet.travelM ?? 0;
  const [friction, offset] = [random() * 4, normal(random) * 2];
  let atMs = Date.parse(decided.lines[0]?.at ?? '') + of.seed * 24 * 3_600_000;
  let before = 0;
  const lines = decided.lines.map((line) => {
    const signal = line.inputs.readings?.find(({ field }) => field === 'signalPa')?.valueSi ?? 0;
    const way = Math.sign(signal - before);
    before = signal;
    // Whoever knows the valve answers a card within five seconds; others take minutes.
    atMs += 5000 + -Math.log(1 - random()) * (random() < 0.3 ? 5000 : 90_000);
    const at = new Date(atMs).toISOString();
    if (line.kind !== 'row-read') return { ...line, at };
    const readings = (line.inputs.readings ?? []).map((reading) =>
      reading.field === 'travelM'
        ? readAgain(reading, { random, span, shift: offset - way * friction, reader: of.reader })
        : reading,
    );
    return { ...line, at, inputs: { ...line.inputs, readings } };
  });
  return { ...decided, opened: opened(decided, lines), lines };
}

/** Gear is always within its date for an honest job. */
function opened({ opened: as }: AuditedJob, lines: readonly JobLine[]): Opened {
  const last = lines.at(-1)?.at.slice(0, 10) ?? '';
  const gear = Object.fromEntries(
    Object.entries(as.gear).map(([role, item]) => [
      role,
      item === undefined ? item : { ...item, dueOn: last },
    ]),
  );
  return { ...as, gear };
}

function readAgain(
  reading: Reading,
  {
    random,
    span,
    shift,
    reader,
  }: {
    readonly random: () => number;
    readonly span: number;
    readonly shift: number;
    readonly reader: Reader;
  },
): Reading {
  const percent = (reading.valueSi / span) * 100 + shift + normal(random) * reader.error * 100;
  const typed = (Math.round(percent / reader.grid) * reader.grid).toFixed(1);
  return { ...reading, typed: `${typed} %`, valueSi: (Number(typed) / 100) * span };
}

/** The job with one line changed. */
export function withLine(job: AuditedJob, step: string, change: (line: JobLine) => JobLine): AuditedJob {
  const at = job.lines.findIndex(({ inputs }) => inputs.step === step);
  const line = job.lines[at];
  if (line === undefined) throw new Error(`the job has no step ${step}`);
  return { ...job, lines: job.lines.with(at, change(line)) };
}
