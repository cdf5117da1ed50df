import { preferredUnit, unitFor } from '../../../../procedures/calculations/units.ts';
import { holdEvidence } from '../../../../procedures/hold.ts';
import type { Reading } from '../../../../procedures/job.ts';
import { say } from '../../../../procedures/say.ts';
import type { HoldStep } from '../../../../procedures/vocabulary.ts';
import { CONDITIONS, type ConditionId, ENERGY_IDS } from '../../../../safety/conditions.ts';
import { SAFE_LIMIT_PA, SAFE_TOUCH_C } from '../../../../safety/limits.ts';
import { doneText, energyView, recordedAbsent } from '../energies.ts';
import { clock, short } from '../words.ts';
import type { CardInput } from './card.ts';

export interface EvidenceView {
  readonly rows: readonly object[];
  readonly absent: string;
}

/** Energy by energy: how it was made safe, the reading against its limit, who read it and whether somebody read it again. */
export function evidenceView(step: HoldStep<string>, input: CardInput): EvidenceView {
  const rows = holdEvidence(step, input.job);
  return {
    rows: rows.filter((row) => row.state !== 'absent').map((row) => evidenceRow(row, input)),
    absent: absentText(rows),
  };
}

type Row = ReturnType<typeof holdEvidence>[number];

function evidenceRow({ condition, note, readAgain }: Row, { job, around }: CardInput): object {
  const view = energyView(condition, { job, nowMs: around.nowMs });
  const drawn = CONDITIONS[condition].group === 'energy' || condition === 'bypass';
  const again =
    readAgain === null
      ? ''
      : `${readAgain.agrees ? 'read again' : 'READ AGAIN, DIFFERS'}: ${short(readAgain.person)}, ${readAgain.mode === 'independent' ? 'alone' : 'together'}`;
  return {
    letter: view.letter,
    name: view.name,
    done: drawn ? doneText(view, job) : '',
    state: drawn ? view.state : 'safe',
    word: drawn ? '' : String(job.situation.states[condition]).toUpperCase(),
    lock: view.lock ?? '',
    was: view.was ?? '',
    is: view.is ?? '',
    ...(view.is === null
      ? { wide: '', limit: '' }
      : limitOf(condition, { reading: note?.readings.at(-1), job })),
    unit: '',
    who: note === null ? '' : short(note.person),
    when: note === null ? '' : clock(note.at),
    gauge: [view.gauge, again].filter((text) => text !== '').join('; '),
    record: condition === 'bypass',
  };
}

/** What the reading is held against, and the uncertainty that counts against it. */
function limitOf(
  condition: ConditionId,
  { reading, job }: { readonly reading: Reading | undefined; readonly job: CardInput['job'] },
): { readonly wide: string; readonly limit: string } {
  const { units } = job.sheet;
  if (condition === 'temperature') return { wide: '', limit: `at most ${SAFE_TOUCH_C} °C` };
  const limitPa = condition in SAFE_LIMIT_PA ? SAFE_LIMIT_PA[condition as keyof typeof SAFE_LIMIT_PA] : null;
  if (limitPa === null) return { wide: '', limit: '' };
  const uncertaintyPa = reading?.uncertaintySi ?? null;
  const { label } = unitFor(preferredUnit('pressure', units));
  return {
    wide: uncertaintyPa === null ? '' : `± ${bare(uncertaintyPa, { units, label })}`,
    limit: `at most ${say({ valueSi: limitPa, dimension: 'pressure', units })}`,
  };
}

function bare(
  valueSi: number,
  { units, label }: { readonly units: CardInput['job']['sheet']['units']; readonly label: string },
): string {
  return say({ valueSi, dimension: 'pressure', units }).replace(` ${label}`, '');
}

function absentText(rows: readonly Row[]): string {
  return recordedAbsent(
    rows.filter(
      (row) => row.state === 'absent' && (ENERGY_IDS.includes(row.condition) || row.condition === 'bypass'),
    ),
  );
}

/** The lines that a signature rests on, from the oldest that is shown to the newest. */
export function restsOn(step: HoldStep<string>, { job }: Pick<CardInput, 'job'>): string {
  const first = Math.min(...holdEvidence(step, job).map((row) => row.note?.seq ?? Number.POSITIVE_INFINITY));
  return Number.isFinite(first) ? `lines ${first} to ${job.seq}` : `line ${job.seq}`;
}
