import type { Compiled } from '../../../procedures/compile.ts';
import { type JobInputs, jobOf } from '../../../procedures/evolve.ts';
import { holdEvidence } from '../../../procedures/hold.ts';
import type { Job } from '../../../procedures/job.ts';
import { fill, say } from '../../../procedures/say.ts';
import type { SignatureNote } from '../../../procedures/signing.ts';
import { straightWay } from '../../../procedures/straight-way.ts';
import type { HoldStep } from '../../../procedures/vocabulary.ts';
import { ACTION_CLASSES } from '../../../safety/action-classes.ts';
import { CONDITIONS, type ConditionId } from '../../../safety/conditions.ts';
import { DISPOSITIONS } from '../../../safety/sign-off.ts';
import { stateWord } from '../../../views/pictures/marks.ts';
import { checkNumber } from '../../log/check-number.ts';
import { shownTime } from '../../shown-time.ts';
import type { LogEntry } from '../../store/store.ts';
import { POINT_WORDS } from '../view/cards/hold-card.ts';
import { DRAWN, doneText, energyView, recordedAbsent } from '../view/energies.ts';
import { type PointState, pointViews } from '../view/points.ts';
import { holdNumber } from '../view/scale.ts';
import { clock, type Names, nameOf, short } from '../view/words.ts';
import type { JobRecord } from './schema.ts';

type Hold = JobRecord['holds'][number];

export interface OfJob {
  readonly job: Job;
  readonly compiled: Compiled;
  readonly entries: readonly LogEntry[];
  readonly names: Names;
}

/** Every hold that was signed or sent back, as it stood at that moment, and those that still wait, blank. */
export function holdsOf(of: OfJob): Hold[] {
  const { job, compiled, entries } = of;
  const { steps } = compiled.definition;
  const answered = entries.flatMap((entry) => {
    const step = steps[stepOf(entry, job)];
    return AT_HOLD[entry.kind] !== undefined && step?.kind === 'hold'
      ? [answeredHold(entry, { of, step })]
      : [];
  });
  const signed = job.holds.map((one) => one.step);
  const straight = straightWay(compiled.definition, job.facts);
  const passed = pointViews(job, compiled).flatMap(({ step, state }) =>
    PASSED.includes(state) ? [step] : [],
  );
  const waiting = job.status === 'closed' ? [] : straight.filter((id) => steps[id]?.kind === 'hold');
  return [
    ...answered,
    ...waiting
      .filter((id) => !signed.includes(id) && !passed.includes(id))
      .map((id) => ({ ...named(id, of), ...NOT_SIGNED })),
  ];
}

/** Gone past, each in its own way: nothing of them is left blank. */
const PASSED: readonly PointState[] = ['passed', 'waived', 'not witnessed', 'review open'];

/** Lines that answer a hold, and how it stands after them. */
const AT_HOLD: Readonly<Record<string, Hold['state']>> = {
  'hold-signed': 'signed',
  'hold-sent-back': 'sent back',
  'hold-waived': 'waived',
  witnessed: 'signed',
  'not-witnessed': 'not witnessed',
  'review-opened': 'review asked for',
  reviewed: 'signed',
  'review-sent-back': 'sent back',
};

/** The job as it stood when a line was written, for its evidence and its drawing. */
export function jobBefore({ entries }: OfJob, place: number): Job {
  return jobOf(entries.filter((entry) => entry.place < place));
}

const NOT_SIGNED = {
  state: 'not signed',
  by: '',
  at: '',
  screen: '',
  meaning: '',
  restsOn: '',
  check: '',
  evidence: [],
  absent: '',
} satisfies Partial<Hold>;

/** The hold that a line is about: its own card, or the one of a review that was left open. */
function stepOf(entry: LogEntry, job: Job): string {
  const { step = '', about } = entry.inputs as { readonly step?: string; readonly about?: number };
  return job.signing.reviews.find((one) => one.place === about)?.step ?? step;
}

function named(id: string, { job, compiled }: OfJob): Pick<Hold, 'hold' | 'title'> {
  const { hold } = holdNumber(job, compiled.definition, id);
  const step = compiled.definition.steps[id];
  const kind = step?.kind === 'hold' ? POINT_WORDS[step.point] : 'Hold';
  return {
    hold: hold > 0 ? `${kind} ${hold}` : kind,
    title: fill(compiled.definition.steps[id]?.title ?? id, job),
  };
}

function answeredHold(
  entry: LogEntry,
  { of, step }: { readonly of: OfJob; readonly step: HoldStep<string> },
): Hold {
  const then = jobBefore(of, entry.place);
  const signed = of.job.holds.find((one) => one.place === entry.place);
  const rows = holdEvidence(step, then);
  const first = Math.min(...rows.map((row) => row.note?.seq ?? Number.POSITIVE_INFINITY));
  const { signature } = entry.inputs as unknown as JobInputs;
  return {
    ...named(stepOf(entry, of.job), of),
    state: AT_HOLD[entry.kind] ?? 'not signed',
    by: byWhom(entry, { of, signature }),
    at: shownTime(entry.at),
    screen: entry.screen,
    meaning: [meaningOf(entry, { of, step, then }), figuresText(entry)]
      .filter((text) => text !== '')
      .join('. '),
    restsOn: Number.isFinite(first) ? `lines ${first} to ${then.seq} of the log` : '',
    check: signed === undefined ? '' : checkNumber(signed.shownDigest),
    evidence: rows
      .filter((row) => row.state !== 'absent')
      .map((row) => evidenceRow(row.condition, { then, nowMs: Date.parse(entry.at) })),
    absent: absentText(rows),
  };
}

/** The numbers that a point is about, as whoever answered it was shown them. */
function figuresText(entry: LogEntry): string {
  const { shown } = entry.inputs as { readonly shown?: { readonly shows?: readonly (readonly string[])[] } };
  const rows = shown?.shows ?? [];
  return rows.length === 0 ? '' : `Shown: ${rows.map((row) => row.join(' ')).join('; ')}`;
}

/** The name that was printed when it was signed, with the role that it was signed in. */
function byWhom(
  entry: LogEntry,
  { of, signature }: { readonly of: OfJob; readonly signature: SignatureNote | undefined },
): string {
  if (signature === undefined || signature.name === '') return nameOf(entry.person ?? '', of.names);
  const { name, person, role } = signature;
  return `${name} (${short(person)}), ${role.replaceAll('-', ' ')}`;
}

/** What the line means: what was allowed and how it was given, or what is wrong and what is done about it. */
function meaningOf(
  entry: LogEntry,
  { of, step, then }: { readonly of: OfJob; readonly step: HoldStep<string>; readonly then: Job },
): string {
  const { reason = '' } = entry.inputs as unknown as JobInputs;
  const signed = of.job.holds.find((one) => one.place === entry.place);
  const back = of.job.signing.sentBack.find((one) => one.place === entry.place);
  if (back !== undefined) {
    const after = back.acceptedAt === null ? 'not signed since' : `signed on line ${back.acceptedAt}`;
    return `Sent back: ${reason}. What is done about it: ${DISPOSITIONS[back.disposition].toLowerCase()}; ${after}`;
  }
  if (entry.kind === 'hold-waived') return `Waived, not accepted: ${reason}`;
  if (entry.kind === 'not-witnessed') return 'The witness was told and did not come in the time given';
  if (entry.kind === 'review-opened') return 'Work went on; the job does not close before it is reviewed';
  if (entry.kind === 'reviewed') return 'Looked at and accepted while the work went on';
  if (entry.kind === 'review-sent-back') {
    const { disposition = 'again' } = entry.inputs as unknown as JobInputs;
    return `Looked at and not accepted: ${reason}. What is done about it: ${DISPOSITIONS[disposition].toLowerCase()}`;
  }
  if (signed === undefined)
    return step.point === 'review' ? 'Looked at and accepted' : 'Watched and found as it should be';
  return [allowedBy(step, { then, signed }), wayText(signed), radioText(of.job, entry.place)]
    .filter((text) => text !== '')
    .join('. ');
}

function wayText({ way, why }: Job['holds'][number]): string {
  if (way === 'second person') return `Signed by a second competent person, since ${why}`;
  return way === 'radio' ? `Signed by radio, since ${why}` : '';
}

function radioText({ signing }: Job, place: number): string {
  const note = signing.radio.find((one) => one.place === place);
  if (note === undefined) return '';
  const stands = {
    open: 'not confirmed yet by the one who was heard',
    confirmed: 'confirmed with the code by the one who was heard',
    denied: 'DENIED by the one who was said to be heard',
  };
  return `Heard by ${short(note.heardBy)}, code ${note.code} read back, ${stands[note.stands]}`;
}

/** What the signature allowed, and nothing else. */
function allowedBy(
  step: HoldStep<string>,
  { then, signed }: { readonly then: Job; readonly signed: Job['holds'][number] },
): string {
  const { envelope } = signed;
  if (step.allows.length === 0 || envelope === null) return 'Took the work as left; allowed nothing more';
  const work = envelope.work.map((action) => ACTION_CLASSES[action].name).join('; ');
  const locks = Object.values(then.locks).map((lock) => lock.lock);
  const airLimit = say({ valueSi: envelope.testAirPaMax, dimension: 'pressure', units: then.sheet.units });
  return [
    `Allowed: ${work}`,
    ...(envelope.work.includes('strokeByTestAir') ? [`One regulator in the hand, at most ${airLimit}`] : []),
    locks.length === 0 ? 'No lock on this job' : `Locks ${locks.join(', ')}`,
    `Until ${shownTime(new Date(envelope.untilMs).toISOString())}`,
  ].join('. ');
}

function evidenceRow(
  condition: ConditionId,
  { then, nowMs }: { readonly then: Job; readonly nowMs: number },
): Hold['evidence'][number] {
  const view = energyView(condition, { job: then, nowMs });
  const isEnergy = CONDITIONS[condition].group === 'energy' || condition === 'bypass';
  const note = then.evidence[condition];
  const state = DRAWN.includes(condition)
    ? stateWord(view.state)
    : then.situation.states[condition].toUpperCase();
  const lock = then.locks[condition]?.lock ?? view.lock;
  return {
    letter: view.letter,
    name: condition === 'bypass' ? 'Bypass, never an isolation' : view.name,
    done: isEnergy ? doneText(view, then) : '',
    state: lock === null || lock === undefined ? state : `${state} ${lock}`,
    was: view.was ?? '',
    is: view.is ?? (note?.words.method === 'vent' ? 'no flow, twice' : ''),
    gauge: view.gauge,
    who: note === undefined ? '' : short(note.person),
    when: note === undefined ? '' : clock(note.at),
  };
}

function absentText(rows: ReturnType<typeof holdEvidence>): string {
  return recordedAbsent(rows.filter((row) => row.state === 'absent'));
}
