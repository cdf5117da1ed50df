import { CONDITIONS, type ConditionId } from '../../safety/conditions.ts';
import { Refusal } from '../../safety/refusal.ts';
import { backIsSafe } from '../compile.ts';
import type { JobDraft, JobEffects } from '../evolve.ts';
import type { Answer, Job, Row } from '../job.ts';
import { RULES } from '../rules/registry.ts';
import type { OpenStep, Step } from '../vocabulary.ts';
import type { ActionOf, Surroundings } from './action.ts';
import { type JudgedAnswer, judge } from './answer.ts';
import { clears, since } from './leave.ts';
import { move, openStepOf } from './move.ts';
import { noWay } from './refusals.ts';

const CORRECTABLE: readonly string[] = ['step-answered', 'row-read', 'corrected'];

/**
 * Corrects an earlier answer. The same outcome: the new values stand and work goes on. Another outcome, there
 * or at a judgement that rests on it: back to that step, or the way to safe where there is no safe way back.
 * A corrected proof voids the isolation, and the signatures over it lapse. Nothing is erased.
 */
export function correct(job: Job, action: ActionOf<'correct'>, around: Surroundings): JobDraft {
  openStepOf(job, around);
  const wrong = job.answers.find(
    (one) => one.place === action.corrects && !one.superseded && CORRECTABLE.includes(one.act),
  );
  if (wrong === undefined) throw noWay('That line cannot be corrected.', 'Choose a line that stands.');
  if (wrong.row !== null && job.tables[wrong.step]?.[wrong.row]?.place !== wrong.place)
    throw noWay('That row belongs to an earlier reading of this table.', 'Choose a row that stands.');
  const step = around.compiled.definition.steps[wrong.step];
  if (step === undefined || step.kind === 'end' || step.kind === 'hold' || step.kind === 'judgement')
    throw noWay('That line cannot be corrected.', 'Choose a reading.');
  const reason = action.reason.trim();
  const read = () => again({ job, wrong, step, given: action.given, around });
  if (reason === '') throw wantsReason(read);
  const judged = read();
  const effects = effectsOf(job, { wrong, step, judged, around });
  return {
    kind: 'corrected',
    inputs: {
      step: wrong.step,
      readings: Object.values(judged.understood.readings),
      words: judged.understood.words,
      row: wrong.row,
      corrects: wrong.place,
      reason,
    },
    outcome: { name: judged.outcome, figures: judged.figures },
    effects,
  };
}

/** Names the fields that cannot be read as well, so that nobody sends the form a third time. */
function wantsReason(read: () => unknown): Refusal {
  return new Refusal({
    kind: 'unreadable',
    code: 'COR-001',
    what: 'A correction wants its reason.',
    kept: 'What you typed is still there.',
    next: 'Write why.',
    fields: { ...unreadableIn(read), reason: 'Write why.' },
  });
}

function unreadableIn(read: () => unknown): Readonly<Record<string, string>> {
  try {
    read();
    return {};
  } catch (error) {
    if (error instanceof Refusal) return error.text.fields ?? {};
    throw error;
  }
}

function again({
  job,
  wrong,
  step,
  given,
  around,
}: {
  readonly job: Job;
  readonly wrong: Answer;
  readonly step: OpenStep;
  readonly given: Readonly<Record<string, string>>;
  readonly around: Surroundings;
}): JudgedAnswer {
  const rows = job.tables[wrong.step] ?? [];
  // The row is read again as if it were the open one: the table up to it, standing at its step.
  const then =
    wrong.row === null
      ? { ...job, step: wrong.step }
      : { ...job, step: wrong.step, tables: { ...job.tables, [wrong.step]: rows.slice(0, wrong.row) } };
  const judged = judge(then, { step, given, around });
  return wrong.row === null || judged.outcome === 'above limit'
    ? judged
    : { ...judged, outcome: wrong.outcome };
}

function effectsOf(
  job: Job,
  {
    wrong,
    step,
    judged,
    around,
  }: {
    readonly wrong: Answer;
    readonly step: OpenStep;
    readonly judged: JudgedAnswer;
    readonly around: Surroundings;
  },
): JobEffects {
  const lapses = lapsesOf(job, { wrong, around });
  // More air than the case may have stops the work, whenever it is noticed: vent first.
  if (judged.outcome === 'above limit')
    return { ...move(job, { event: { type: 'STOP', outcome: '' }, words: {}, around }), ...lapses };
  const back =
    judged.outcome === wrong.outcome ? changedJudgement(job, { wrong, judged, around }) : wrong.step;
  if (back === null || back === job.step) return { to: job.step, ...lapses };
  if (backIsSafe(around.compiled, { from: job.step, to: back, facts: job.facts })) {
    const effects = move(job, { event: { type: `BACK.${back}`, outcome: '' }, words: {}, around });
    // The corrected row itself stays: only a table that is read from its start is cleared.
    return {
      ...effects,
      ...since(job, back),
      ...(step.kind === 'table' ? {} : clears(back, around)),
      ...lapses,
    };
  }
  return { ...move(job, { event: { type: 'STOP', outcome: '' }, words: {}, around }), ...lapses };
}

/**
 * What the corrected entry had shown safe counts no more, nor do signatures that rest on it. A zero rests on the
 * reading that saw its gauge alive as well.
 */
function lapsesOf(
  job: Job,
  { wrong, around }: { readonly wrong: Answer; readonly around: Surroundings },
): Pick<JobEffects, 'lapses'> {
  const fields = wrong.readings.map((reading) => reading.field);
  const shown = (Object.keys(job.evidence) as ConditionId[]).filter((id) => {
    const note = job.evidence[id];
    if (note === undefined || CONDITIONS[id].group !== 'energy') return false;
    return note.place === wrong.place || restsOn(note.step, around).some((name) => fields.includes(name));
  });
  if (shown.length === 0) return {};
  return { lapses: { conditions: [...shown, 'workSignOff', 'returnSignOff'], reason: 'corrected' } };
}

/** Fields that a zero on this step rests on besides its own: the gauge seen alive, the first zero. */
function restsOn(id: string, { compiled }: Surroundings): readonly string[] {
  const step = compiled.definition.steps[id];
  if (step?.kind !== 'reading') return [];
  const named = step.judge.with ?? {};
  if (step.judge.rule === 'showSafe') return [named.before ?? ''];
  if (step.judge.rule !== 'stillZero') return [];
  const firstZeros = Object.values(named);
  const seenAlive = Object.values(compiled.definition.steps).flatMap((other) =>
    other.kind === 'reading' && firstZeros.includes(other.judge.with?.after ?? '')
      ? [other.judge.with?.before ?? '']
      : [],
  );
  return [...firstZeros, ...seenAlive];
}

/** The first later judgement whose outcome the corrected values change. */
function changedJudgement(
  job: Job,
  {
    wrong,
    judged,
    around,
  }: { readonly wrong: Answer; readonly judged: JudgedAnswer; readonly around: Surroundings },
): string | null {
  const corrected = withCorrection(job, { wrong, judged });
  const later = job.answers.filter((one) => one.place > wrong.place && !one.superseded);
  const changed = later.find((one) => {
    const step = around.compiled.definition.steps[one.step];
    return step?.kind === 'judgement' && outcomeOf(step, { job: corrected, id: one.step }) !== one.outcome;
  });
  return changed?.step ?? null;
}

function outcomeOf(
  step: Extract<Step, { kind: 'judgement' }>,
  { job, id }: { readonly job: Job; readonly id: string },
): string {
  return RULES[step.judge.rule].judge({
    job,
    readings: {},
    words: job.words,
    step: id,
    params: step.judge.with ?? {},
  }).outcome;
}

function withCorrection(
  job: Job,
  { wrong, judged }: { readonly wrong: Answer; readonly judged: JudgedAnswer },
): Job {
  const { readings } = judged.understood;
  const rows = [...(job.tables[wrong.step] ?? [])];
  const { signalPa, travelM } = readings;
  if (wrong.row !== null && signalPa !== undefined && travelM !== undefined) {
    const row: Row = { place: wrong.place, signal: signalPa, travel: travelM };
    rows[wrong.row] = row;
  }
  return {
    ...job,
    readings: { ...job.readings, ...readings },
    figures: { ...job.figures, [wrong.step]: judged.figures },
    tables: { ...job.tables, [wrong.step]: rows },
  };
}
