import { ACTION_CLASSES } from '../safety/action-classes.ts';
import type { Job } from './job.ts';
import { fill } from './say.ts';
import { straightWay } from './straight-way.ts';
import type { Definition, HoldStep, OpenStep } from './vocabulary.ts';

const POINTS: Readonly<Record<HoldStep<string>['point'], string>> = {
  hold: 'Nobody passes until each energy is shown safe and another person signs: what comes after it cannot be undone.',
  witness: 'Another person sees these numbers before the work goes on.',
  review: 'Somebody who had no hand in the work judges its numbers.',
};

const ON_RECORD = 'What is written here stands in the record, and the cards after it rest on it.';

/**
 * Why a card stands open: its own reason; where it gives none, what a hold is for, which line led here, what can hurt, and
 * the reason of the work that it belongs to.
 *
 * @example whyOf(step, { job, definition }) // 'Line 45, “Read both ends”, says: span differs.'
 */
export function whyOf(
  step: OpenStep,
  { job, definition }: { readonly job: Job; readonly definition: Definition },
): string {
  const own = fill(step.why ?? '', job);
  if (own !== '') return own;
  const parts = [step.kind === 'hold' ? POINTS[step.point] : ledHere({ job, definition }), dangerOf(step)];
  const said = parts.filter((part) => part !== '').join(' ');
  return said === '' ? sameWork(step, { job, definition }) : said;
}

/** Off the straight way an answer led here, and says so. */
function ledHere({ job, definition }: { readonly job: Job; readonly definition: Definition }): string {
  if (straightWay(definition, job.facts).includes(job.step)) return '';
  const line = job.answers.findLast(({ superseded, to }) => !superseded && to === job.step);
  const from = line === undefined ? undefined : definition.steps[line.step];
  if (line === undefined || from === undefined || from.kind === 'end') return '';
  const outcome =
    from.kind === 'question' ? fill(from.choices[line.outcome]?.label ?? '', job) : line.outcome;
  return outcome === '' ? '' : `Line ${line.place}, “${fill(from.title, job)}”, says: ${outcome}.`;
}

function dangerOf(step: OpenStep): string {
  const action = step.action ?? null;
  const danger = action === null ? '' : ACTION_CLASSES[action].danger;
  return danger === '' || danger.startsWith('None') ? '' : `What can hurt: ${danger}`;
}

/** The reason of the card before it, where both are one piece of work. */
function sameWork(
  { phase }: OpenStep,
  { job, definition }: { readonly job: Job; readonly definition: Definition },
): string {
  const way = straightWay(definition, job.facts);
  const before = way
    .slice(0, Math.max(0, way.indexOf(job.step)))
    .map((id) => definition.steps[id])
    .findLast(
      (one) => one !== undefined && one.kind !== 'end' && one.phase === phase && one.why !== undefined,
    );
  if (before === undefined || before.kind === 'end') return ON_RECORD;
  return `It belongs to “${fill(before.title, job)}”: ${fill(before.why ?? '', job)}`;
}
