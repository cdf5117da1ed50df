import type { Compiled } from '../../procedures/compile.ts';
import { FULL_CYCLE } from '../../procedures/cycle-verdict.ts';
import { jobOf } from '../../procedures/evolve.ts';
import type { Job } from '../../procedures/job.ts';
import { fill } from '../../procedures/say.ts';
import { sayTried } from '../../procedures/vocabulary.ts';
import { checkNumber } from '../log/check-number.ts';
import { shownTime } from '../shown-time.ts';
import type { LogEntry } from '../store/store.ts';
import { forcesDrawn, forcesOf } from './record/forces.ts';
import { holdsOf, jobBefore, type OfJob } from './record/holds.ts';
import { findingsOf, photosOf, usedPartsOf } from './record/notes.ts';
import { ownStrokeJob } from './record/own-stroke.ts';
import { aboutOf, cautionsOf, departures, gearOf, LIMITS, linesOf, nextOf } from './record/parts.ts';
import { conclusionOf, resultsOf } from './record/results.ts';
import type { JobRecord } from './record/schema.ts';
import { searchOf } from './record/search.ts';
import { turnsOf } from './record/seat.ts';
import { doubtsOf, type GearNow, wrongGearOf } from './record/wrong-gear.ts';
import { drawing } from './view/drawing.ts';
import { type LoopView, loopView } from './view/loop-record.ts';
import { pointViews } from './view/points.ts';
import { type StrokeView, strokeView } from './view/stroke.ts';
import { closedWords, type Names, nameOf } from './view/words.ts';

export interface RecordInput {
  /** All lines of the job, as its stream holds them. */
  readonly entries: readonly LogEntry[];
  readonly compiled: Compiled;
  readonly names: Names;
  readonly plant: string;
  readonly nowMs: number;
  /** What is known now of the gear that was used; none found wrong where left out. */
  readonly gearNow?: GearNow;
}

/** Drawn beside the numbers; a program is told the numbers alone. */
export interface RecordPictures {
  readonly asFound: string | null;
  readonly asLeft: string | null;
  /** Trend, and output against position or process value, of each record of the loop. */
  readonly loops: readonly (readonly string[])[];
  /** Forces at both ends of the travel. */
  readonly forces: string | null;
  /** The valve as it stood at its last signed hold. */
  readonly section: string;
}

export interface JobSheets {
  readonly record: JobRecord;
  readonly pictures: RecordPictures;
}

/**
 * The record of a job: a pure function of its lines, the names of the people and the moment of printing.
 * @throws TypeError for a job without lines
 */
export function recordOf({
  entries,
  compiled,
  names,
  plant,
  nowMs,
  gearNow = new Map(),
}: RecordInput): JobSheets {
  const newest = entries.at(-1);
  if (newest === undefined) throw new TypeError('A job without lines has no record.');
  const job = jobOf(entries);
  const of: OfJob = { job, compiled, entries, names };
  const { definition } = compiled;
  const { found, left } = cycles(of);
  const strokes = cyclesAsked(of).length > 0;
  const loops = loopsOf(job);
  const record: JobRecord = {
    job: job.id,
    tag: job.tag,
    title: `Record of job ${job.id}`,
    procedure: `${definition.title}, revision ${job.procedureRevision}`,
    plant,
    status: job.status === 'parked' || job.status === 'closed' ? job.status : 'open',
    open: missingWords(of),
    openedAt: shownTime(job.openedAt),
    openedBy: nameOf(job.openedBy, names),
    closedAt: job.closedAt === null ? '' : shownTime(job.closedAt),
    closedAs: closedWords(job),
    printedAt: shownTime(new Date(nowMs).toISOString()),
    about: aboutOf(job),
    conclusion: conclusionOf(job),
    asFound: found === null ? null : tableOf(found),
    asLeft: left === null ? null : tableOf(left),
    asLeftNote:
      strokes && left === null ? 'No cycle was read as left: the valve goes back as it was found.' : '',
    results: strokes && job.status !== 'closed' ? resultsOf(job) : resultsOf(job).filter(wasRead),
    turns: turnsOf(job),
    search: searchOf(job),
    forces: forcesOf(job),
    loops: loops.map(loopTold),
    holds: holdsOf(of),
    points: pointViews(job, compiled).map(({ title, state, more }) => ({ title, state, more })),
    people: peopleOf(of),
    doneBy: doneByOf(job, names),
    takenBack: takenBackOf(job),
    gear: gearOf(job),
    gearWrong: wrongGearOf({ job, compiled }, gearNow),
    findings: findingsOf(of),
    parts: usedPartsOf(of),
    photos: photosOf(of),
    departures: departures(of),
    cautions: cautionsOf(of),
    next: nextOf(job, definition),
    limits: [...LIMITS, sayTried(definition)],
    lines: linesOf(of, doubtsOf({ job, compiled }, gearNow)),
    log: { line: newest.seq, place: newest.place, check: checkNumber(newest.hash) },
  };
  return {
    record,
    pictures: {
      asFound: found?.curve ?? null,
      asLeft: left?.curve ?? null,
      loops: loops.map(({ view: { trend, orbit } }) => [trend, orbit]),
      forces: forcesDrawn(job),
      section: section(of, nowMs),
    },
  };
}

/** Every record of the loop that came with a line, those that stand no more struck. */
function loopsOf({ answers }: Job): readonly { readonly view: LoopView; readonly struck: boolean }[] {
  return answers.flatMap((answer) => {
    const view = loopView(answer);
    return view === null ? [] : [{ view, struck: answer.superseded }];
  });
}

function loopTold({ view, struck }: ReturnType<typeof loopsOf>[number]): JobRecord['loops'][number] {
  const { place, said, rows, table } = view;
  return {
    line: place,
    said,
    struck,
    rows: rows.map((row) => ({ ...row })),
    table: { heads: [...table.heads], rows: table.rows.map((cells) => [...cells]) },
  };
}

const CYCLES = [
  ['as found', 'asFoundCycle'],
  ['as left', 'asLeftCycle'],
] as const;

/** The cycles that this procedure reads: many read none. */
function cyclesAsked({ job, compiled }: OfJob): readonly (typeof CYCLES)[number][] {
  if (ownStrokeJob(job) !== null) return CYCLES;
  return CYCLES.filter(([, step]) => compiled.definition.steps[step] !== undefined);
}

/** Blank rows stand while they may still be read. */
function wasRead({ asFound, asLeft }: JobRecord['results'][number]): boolean {
  return asFound !== '' || asLeft !== '';
}

/** A cycle that was not read is blank while the job is open, and not there once it is closed. */
function cycles(of: OfJob): { readonly found: StrokeView | null; readonly left: StrokeView | null } {
  const { job } = of;
  const own = ownStrokeJob(job);
  const stroked = own ?? job;
  const asked: readonly string[] = cyclesAsked(of).map(([, step]) => step);
  const view = (step: string, title: string) =>
    !asked.includes(step) || (job.status === 'closed' && (stroked.tables[step] ?? []).length === 0)
      ? null
      : strokeView({ ...stroked, step: '' }, { step, title, form: 'record', bySignal: own !== null });
  return {
    found: view('asFoundCycle', 'Stroke, as found'),
    left: view('asLeftCycle', 'Stroke, as left'),
  };
}

function tableOf({ table }: StrokeView): JobRecord['asFound'] {
  return {
    caption: table.caption,
    groups: table.groups as NonNullable<JobRecord['asFound']>['groups'],
    rows: table.rows.map(({ cells }) => ({ cells: cells.map((cell) => ({ ...cell })) })),
    notes: [...table.notes],
  };
}

function missingWords(of: OfJob): string {
  const { job, compiled } = of;
  if (job.status === 'closed') return '';
  const step = compiled.definition.steps[job.step];
  const unsigned = holdsOf(of).filter((hold) => hold.state === 'not signed');
  const { tables } = ownStrokeJob(job) ?? job;
  const unread = cyclesAsked(of).filter(([, table]) => (tables[table] ?? []).length < FULL_CYCLE.length);
  return [
    `Not closed${job.status === 'parked' ? ', parked' : ''}: it stands at “${step === undefined ? job.step : fill(step.title, job)}”.`,
    ...(unsigned.length > 0 ? [`${unsigned.map((hold) => hold.hold).join(' and ')} not signed.`] : []),
    ...(job.signing.reviews.some((one) => one.reviewedAt === null) ? ['A review is still open.'] : []),
    ...(unread.length > 0
      ? [`The cycle ${unread.map(([when]) => when).join(' and ')} is not complete.`]
      : []),
    'What is missing is left blank.',
  ].join(' ');
}

function peopleOf({ entries, names }: OfJob): JobRecord['people'] {
  const ids = [...new Set(entries.map((entry) => entry.person))].filter((id) => id !== null);
  return ids.map((id) => ({ id: id.toUpperCase(), name: names.get(id) ?? id }));
}

/** Looking, signing and refusing, which stand with the holds. */
const BESIDE_THE_WORK: readonly string[] = [
  'hold-signed',
  'hold-sent-back',
  'hold-waived',
  'witnessed',
  'reviewed',
  'review-sent-back',
  'read-again',
  'radio-confirmed',
  'radio-denied',
  'locks-removed',
];

/** Whoever wrote a line of the work itself; who signed or sent back stands with the holds. */
function doneByOf(job: Job, names: Names): JobRecord['doneBy'] {
  const work = job.answers.filter((one) => !BESIDE_THE_WORK.includes(one.act));
  const last = new Map(work.map((one) => [one.person, one.at]));
  return [...last].map(([person, at]) => ({ name: nameOf(person, names), at: shownTime(at) }));
}

function takenBackOf(job: Job): JobRecord['takenBack'] {
  const answer = job.answers.findLast((one) => one.words.takenBackBy !== undefined && !one.superseded);
  return answer === undefined ? null : { by: answer.words.takenBackBy ?? '', at: shownTime(answer.at) };
}

function section(of: OfJob, nowMs: number): string {
  const hold = of.job.holds.find((one) => one.envelope?.work.includes('turnPlugStem')) ?? of.job.holds.at(0);
  if (hold === undefined) return drawing(of.job, { nowMs }).svg;
  return drawing(jobBefore(of, hold.place), { nowMs: Date.parse(hold.at) }).svg;
}
