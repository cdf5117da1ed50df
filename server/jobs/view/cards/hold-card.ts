import { situationNow } from '../../../../procedures/actions/move.ts';
import { holdEvidence, unshown, workBefore } from '../../../../procedures/hold.ts';
import { sayFigure } from '../../../../procedures/say.ts';
import type { HoldStep } from '../../../../procedures/vocabulary.ts';
import { ACTION_CLASSES } from '../../../../safety/action-classes.ts';
import { CONDITIONS, ENERGY_IDS } from '../../../../safety/conditions.ts';
import { SIGN_OFF_HOURS } from '../../../../safety/limits.ts';
import { mayNotSign } from '../../../../safety/sign-off.ts';
import { checkNumber } from '../../../log/check-number.ts';
import { doneText, energyView } from '../energies.ts';
import { holdNumber } from '../scale.ts';
import { clock, short } from '../words.ts';
import { bareCard, type CardInput, type CardView } from './card.ts';

export interface HoldCard extends CardView {
  readonly hold: string;
  readonly evidence: { readonly rows: readonly object[]; readonly absent: string };
  readonly unshown: readonly string[];
  readonly allows: readonly { readonly label: string; readonly text: string; readonly strong?: string }[];
  readonly people: readonly { readonly value: string; readonly label: string }[];
  readonly shownDigest: string;
  readonly check: string;
}

/** Evidence energy by energy, what the signature would allow, and who may give it. */
export function holdCard(step: HoldStep<string>, input: CardInput): HoldCard {
  const { job, around } = input;
  const rows = holdEvidence(step, job);
  const { hold, of } = holdNumber(job, around.compiled.definition, job.step);
  return {
    ...bareCard(step, input),
    hold: hold > 0 ? `Hold ${hold} of ${of}` : 'Hold',
    evidence: {
      rows: rows.filter((row) => row.state !== 'absent').map((row) => evidenceRow(row.condition, input)),
      absent: absentText(rows),
    },
    unshown: unshown(step, situationNow(job, around.nowMs)),
    allows: allowed(step, input),
    people: input.people
      .filter((person) => mayNotSign(person, workBefore(job, around.compiled.definition)) === null)
      .map((person) => ({ value: person.id, label: person.name })),
    shownDigest: around.shownDigest,
    check: checkNumber(around.shownDigest),
    act: `Sign ${hold > 0 ? `hold ${hold}` : 'the hold'} on ${job.tag}`,
  };
}

function evidenceRow(condition: Parameters<typeof energyView>[0], { job, around }: CardInput): object {
  const view = energyView(condition, { job, nowMs: around.nowMs });
  const energy = CONDITIONS[condition].group === 'energy';
  const state = energy || condition === 'bypass' ? view.state : job.situation.states[condition];
  const note = job.evidence[condition];
  return {
    letter: view.letter,
    name: view.name,
    done: energy || condition === 'bypass' ? doneText(view, job) : '',
    state: energy || condition === 'bypass' ? view.state : 'contained',
    word: energy || condition === 'bypass' ? '' : String(state).toUpperCase(),
    lock: view.lock ?? '',
    was: view.was ?? '',
    is: view.is ?? '',
    unit: '',
    who: note === undefined ? '' : short(note.person),
    when: note === undefined ? '' : clock(note.at),
    gauge: view.gauge,
    record: condition === 'bypass',
  };
}

function absentText(rows: ReturnType<typeof holdEvidence>): string {
  const absent = rows.filter(
    (row) => row.state === 'absent' && (ENERGY_IDS.includes(row.condition) || row.condition === 'bypass'),
  );
  if (absent.length === 0) return '';
  const by = absent.find((row) => row.note !== null)?.note;
  const names = absent.map((row) => CONDITIONS[row.condition].name.toLowerCase()).join(', ');
  return by ? `Recorded absent by ${short(by.person)} at ${clock(by.at)}: ${names}.` : `Absent: ${names}.`;
}

function allowed(step: HoldStep<string>, { job, around }: CardInput): HoldCard['allows'] {
  const locks = Object.values(job.locks).map((lock) => lock.lock);
  const first = holdEvidence(step, job).map((row) => row.note?.seq ?? Number.POSITIVE_INFINITY);
  const until = new Date(around.nowMs + SIGN_OFF_HOURS * 3_600_000).toISOString();
  const work = step.allows.map((action) => ACTION_CLASSES[action].name).join('; ');
  const air = step.allows.includes('strokeByTestAir');
  return [
    { label: 'work', text: work === '' ? 'Nothing more: it takes the work as left' : work },
    ...(air
      ? [{ label: 'air', text: 'One regulator in the hand, at most', strong: sayFigure('testAirLimit', job) }]
      : []),
    {
      label: 'locks',
      text:
        locks.length === 0
          ? 'None hang on this job'
          : `${locks.join(', ')} ${step.allows.includes('restoreProcess') ? 'come off in order' : 'stay on'}`,
    },
    ...(step.allows.length > 0
      ? [{ label: 'until', text: `${clock(until)} UTC, or the end of the shift if that is earlier` }]
      : []),
    {
      label: 'rests on',
      text: `lines ${Math.min(...first)} to ${job.seq}, check ${checkNumber(around.shownDigest)}`,
    },
  ];
}
