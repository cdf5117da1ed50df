import type { Surroundings } from '../../../procedures/actions/action.ts';
import { backTargets } from '../../../procedures/actions/leave.ts';
import { actionOf, lacksOf, situationNow } from '../../../procedures/actions/move.ts';
import { proveAgainFields, toProveAgain } from '../../../procedures/actions/prove-again.ts';
import { sayUnlocked, unlockedFor } from '../../../procedures/actions/site-points.ts';
import type { Job } from '../../../procedures/job.ts';
import { newestLine } from '../../../procedures/notes/note.ts';
import { fill } from '../../../procedures/say.ts';
import { sayTried } from '../../../procedures/vocabulary.ts';
import { sayLack } from '../../../safety/interlock.ts';
import { nextProcedures } from '../next-procedures.ts';
import { noteLines, withNotes } from '../notes/lines.ts';
import { buildCard } from './cards/build-card.ts';
import type { CardInput, CardView } from './cards/card.ts';
import { drawing } from './drawing.ts';
import { drawnOn, energyView } from './energies.ts';
import { type FieldView, fieldViews, type Typed } from './fields.ts';
import { lineViews } from './lines.ts';
import { newestAct } from './newest-act.ts';
import { pointViews } from './points.ts';
import { scaleView } from './scale.ts';
import { clock, placeWords } from './words.ts';

export interface ViewInput {
  readonly job: Job;
  readonly around: Surroundings;
  readonly again: Typed;
  readonly people: CardInput['people'];
  readonly competent: CardInput['competent'];
  readonly nonce: string;
}

export type JobView = ReturnType<typeof jobView>;

/** Exactly what the page of a job needs, and what a JSON client is told of it. */
export function jobView(input: ViewInput) {
  const { job, around } = input;
  const { definition } = around.compiled;
  const step = definition.steps[job.step];
  const scale = scaleView(job, around.compiled);
  const open = step === undefined || step.kind === 'end' || job.status !== 'open' ? null : step;
  return {
    id: job.id,
    tag: job.tag,
    location: job.sheet.location,
    service: job.sheet.service,
    procedure: definition.title,
    procedureId: job.procedure,
    revision: job.procedureRevision,
    sheetRevision: job.sheetRevision,
    where: placeWords(job),
    status: job.status,
    closedAs: job.closedAs,
    goesOnAs: job.goesOnAs,
    step: job.step,
    place: job.place,
    nonce: input.nonce,
    seq: job.seq,
    lastKept: `${job.seq}, ${clock(newestLine(job)?.at ?? job.openedAt)}`,
    units: job.sheet.units,
    scale,
    lines: lineGroups(job, around),
    card: open === null ? null : buildCard(open, { ...input, number: scale.at }),
    ending: step?.kind === 'end' ? fill(step.title, job) : '',
    comesNext: job.status === 'closed' ? nextProcedures(job, definition) : [],
    tried: sayTried(definition),
    points: pointViews(job, around.compiled),
    newestAct: newestAct(job, input.people),
    lapsed: open === null ? null : lapsedView(input),
    blocked: open === null ? [] : blockedBy(input),
    back: open === null ? [] : backView(input),
    energies: drawnOn(job).map((condition) => energyView(condition, { job, nowMs: around.nowMs })),
    /** Drawn when a template asks: a JSON client has no use for it, and it costs as much as all else together. */
    drawing: (say?: (text: string) => string) => drawing(job, { nowMs: around.nowMs, ...(say && { say }) }),
  };
}

/** Lines under the heading of their phase, as they came. */
export function lineGroups(job: Job, around: Surroundings) {
  const { phases } = around.compiled.definition;
  const all: { phase: string; lines: ReturnType<typeof lineViews> }[] = [];
  const lines = withNotes(lineViews(job, around.compiled), noteLines(job, around.compiled));
  for (const line of lines) {
    const title = phases.find((phase) => phase.id === line.phase)?.title ?? '';
    const last = all.at(-1);
    if (last === undefined || last.phase !== title) all.push({ phase: title, lines: [line] });
    else all[all.length - 1] = { phase: title, lines: [...last.lines, line] };
  }
  return all;
}

/** The walk-round that shows again what has lapsed, where the open card needs it. */
function lapsedView({ job, around, again }: ViewInput): { readonly fields: readonly FieldView[] } | null {
  return toProveAgain(job, around).length === 0
    ? null
    : { fields: fieldViews(proveAgainFields(job, around), { job, again }) };
}

/** What stands against the open card and no walk-round can mend. */
function blockedBy({ job, around }: ViewInput): readonly string[] {
  const step = around.compiled.definition.steps[job.step];
  const action = step === undefined ? null : actionOf(step);
  if (action === null) return [];
  const found = lacksOf(action, { job, situation: situationNow(job, around.nowMs), around });
  const lacking = found.filter((lack) => lack.lapsed === null).map((lack) => sayLack(lack, action));
  const bare = unlockedFor(job, { action, around });
  return bare.length === 0
    ? lacking
    : [...lacking, `${sayUnlocked(bare)} Join the job below, or leave the card.`];
}

function backView({ job, around }: ViewInput): readonly { readonly value: string; readonly label: string }[] {
  const { steps } = around.compiled.definition;
  return backTargets(job, around)
    .toReversed()
    .flatMap((id) => {
      const step = steps[id];
      return step === undefined ? [] : [{ value: id, label: fill(step.title, job) }];
    });
}

export type { CardView };
