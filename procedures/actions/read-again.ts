import type { ConditionId } from '../../safety/conditions.ts';
import type { JobDraft } from '../evolve.ts';
import { readOn } from '../hold.ts';
import type { Answer, Job, Reading } from '../job.ts';
import { understand } from '../readings/given.ts';
import type { ChoiceField, QuantityField } from '../vocabulary.ts';
import type { ActionOf, Surroundings } from './action.ts';
import { walkRoundFields } from './prove-again.ts';
import { noWay } from './refusals.ts';
import { noteOf, refusedHold, signatoryOf } from './signer.ts';

/** What is read off a gauge, or seen at a vent. */
type Read = QuantityField | ChoiceField;

/** What a second person is asked of a line; nothing of what the first one read or saw is in it. */
export function fieldsToReadAgain(
  job: Job,
  { about, around }: { readonly about: number; readonly around: Surroundings },
): { readonly line: Answer; readonly fields: readonly Read[] } {
  const line = job.answers.find((one) => one.place === about && !one.superseded);
  const names = line === undefined ? [] : readOn(line);
  const fields = line === undefined ? [] : fieldsOf(line, { job, around });
  const read = fields.filter((field) => names.includes(field.name));
  if (line === undefined || read.length === 0)
    throw noWay('That line has no reading of a gauge.', 'Choose a reading that stands.');
  return { line, fields: read };
}

/** The card's own fields; after a walk-round those that it asked of the energies which now rest on it. */
function fieldsOf(
  line: Answer,
  { job, around }: { readonly job: Job; readonly around: Surroundings },
): readonly Read[] {
  if (line.act === 'proved-again') return restsOn(job, line.place).flatMap(walkRoundFields);
  const step = around.compiled.definition.steps[line.step];
  return step?.kind === 'reading'
    ? step.asks.filter((field) => field.type === 'quantity' || field.type === 'choice')
    : [];
}

/**
 * A second person reads the same gauge again. Independent: later, alone, and without seeing the first reading. Peer:
 * together, at the time. A vent that was watched is watched again. Where the two differ by more than both uncertainties, what rested on the first counts no more.
 */
export function readAgain(job: Job, action: ActionOf<'read-again'>, around: Surroundings): JobDraft {
  const { line, fields } = fieldsToReadAgain(job, { about: action.about, around });
  const { signer } = signatoryOf(around);
  const { mode } = action;
  if (signer.id === line.person) {
    throw refusedHold({
      kind: 'not-allowed',
      code: 'HLD-014',
      what: 'Whoever read it first does not read it again.',
      next: 'Ask somebody else to read it.',
    });
  }
  if (mode !== 'independent' && mode !== 'peer') {
    throw refusedHold({
      kind: 'unreadable',
      code: 'HLD-015',
      what: 'Say whether it was read alone or together.',
      next: 'Choose one of the two.',
      fields: { mode: 'Choose one of the two.' },
    });
  }
  const { readings, words } = understand(
    fields.map(({ carried: _, optional: _optional, ...field }) => field),
    { given: action.given, job, today: around.today },
  );
  const differing = fields.filter(({ name, type }) =>
    type === 'choice' ? line.words[name] !== words[name] : !agree(first(line, name), readings[name]),
  );
  const lapsed = differing.length === 0 ? [] : restsOn(job, line.place);
  return {
    kind: 'read-again',
    inputs: {
      step: job.step,
      about: line.place,
      words: { ...words, mode },
      readings: Object.values(readings),
      signature: noteOf('read again', around),
    },
    outcome: { name: differing.length === 0 ? 'agrees' : 'differs', figures: { line: line.place } },
    effects: {
      to: job.step,
      ...(lapsed.length === 0
        ? {}
        : { lapses: { conditions: [...lapsed, 'workSignOff', 'returnSignOff'], reason: 'corrected' } }),
    },
  };
}

function first(line: Answer, field: string): Reading | undefined {
  return line.readings.find((reading) => reading.field === field);
}

function agree(one: Reading | undefined, other: Reading | undefined): boolean {
  if (one === undefined || other === undefined) return false;
  const apartSi = Math.abs(one.valueSi - other.valueSi);
  return apartSi <= (one.uncertaintySi ?? 0) + (other.uncertaintySi ?? 0);
}

function restsOn(job: Job, place: number): readonly ConditionId[] {
  return (Object.keys(job.evidence) as ConditionId[]).filter((id) => job.evidence[id]?.place === place);
}
