import type { Compiled } from './compile.ts';
import { nextStep } from './compile.ts';
import { evolve, type JobEffects, type JobEntry, NO_JOB } from './evolve.ts';
import type { Job } from './job.ts';
import { NOTE_LINES } from './notes/note.ts';
import type { Definition } from './vocabulary.ts';

/** What an entry of a job would be asked of the machine, or null where the machine has no part in it. */
function eventOf(entry: JobEntry): { readonly type: string; readonly outcome: string } | null {
  const { name } = entry.outcome as { readonly name?: string };
  const { to } = entry.effects as unknown as JobEffects;
  switch (entry.kind) {
    case 'step-answered':
    case 'row-read':
    case 'overridden':
      return { type: 'ANSWER', outcome: name ?? '' };
    case 'not-witnessed':
    case 'review-opened':
      return { type: 'GO_ON', outcome: '' };
    case 'hold-waived':
      return { type: 'WAIVE', outcome: '' };
    case 'witnessed':
    case 'hold-signed':
      return { type: 'SIGN', outcome: '' };
    case 'hold-sent-back':
      return { type: 'SEND_BACK', outcome: '' };
    case 'made-safe':
      return { type: 'STOP', outcome: '' };
    case 'went-back':
      return { type: `BACK.${to}`, outcome: '' };
    default:
      return null;
  }
}

/** Lines that the machine has no part in: they must stand at the open step and leave the job there. */
const STAYING: readonly string[] = [
  'parked',
  'taken-up',
  'proved-again',
  'handed-over',
  'locks-removed',
  'read-again',
  'reviewed',
  'review-sent-back',
  'radio-confirmed',
  'radio-denied',
  ...NOTE_LINES,
];

function isTakenOver({ inputs }: JobEntry): boolean {
  return (inputs as { readonly goesOnFrom?: string | null }).goesOnFrom != null;
}

function placeProblems(
  entry: JobEntry,
  { job, definition }: { readonly job: Job; readonly definition: Definition },
): readonly string[] {
  const { to } = entry.effects as unknown as JobEffects;
  const { step } = entry.inputs as { readonly step?: string };
  const problem = (what: string) => [`line ${entry.place}: ${what}`];
  if (entry.kind === 'job-opened') {
    const taken = Object.values(definition.takesOver ?? {}).map(({ at }) => at);
    const begins = isTakenOver(entry) ? taken : [definition.start];
    return begins.includes(to)
      ? []
      : problem(`the procedure begins at ${begins.join(' or ')}, the line says ${to}`);
  }
  if (entry.kind !== 'corrected' && step !== job.step)
    return problem(`the open step is ${job.step}, the line says ${step}`);
  if (STAYING.includes(entry.kind) && to !== job.step)
    return problem(`a line of this kind leaves the job at ${job.step}, it says ${to}`);
  return [];
}

/**
 * Runs the stored entries of one job through its machine once more. State is the fold of what was stored;
 * the machine must agree with where each entry says that it led.
 *
 * @returns one sentence for each entry that the machine does not bear out
 */
export function auditJob(entries: readonly JobEntry[], compiled: Compiled): readonly string[] {
  const problems: string[] = [];
  let job: Job = NO_JOB;
  for (const entry of entries) {
    const event = eventOf(entry);
    const { to } = entry.effects as unknown as JobEffects;
    if (event !== null) {
      const led = nextStep(compiled, { step: job.step, event: { ...event, facts: job.facts } });
      if (led !== to)
        problems.push(
          `line ${entry.place}: from ${job.step} by ${event.type} ${event.outcome} the machine leads to ${led ?? 'nowhere'}, the line says ${to}`,
        );
    } else if (entry.kind === 'corrected' && to !== job.step) {
      const back = nextStep(compiled, {
        step: job.step,
        event: { type: `BACK.${to}`, outcome: '', facts: job.facts },
      });
      const stop = nextStep(compiled, {
        step: job.step,
        event: { type: 'STOP', outcome: '', facts: job.facts },
      });
      if (back !== to && stop !== to)
        problems.push(`line ${entry.place}: the machine knows no way from ${job.step} to ${to}`);
    }
    problems.push(...placeProblems(entry, { job, definition: compiled.definition }));
    job = evolve(job, entry);
  }
  return problems;
}
