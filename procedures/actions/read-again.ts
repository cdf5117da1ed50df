import type { ConditionId } from '../../safety/conditions.ts';
import type { JobDraft } from '../evolve.ts';
import type { Answer, Job, Reading } from '../job.ts';
import { understand } from '../readings/given.ts';
import type { QuantityField } from '../vocabulary.ts';
import type { ActionOf, Surroundings } from './action.ts';
import { noWay } from './refusals.ts';
import { noteOf, refusedHold, signatoryOf } from './signer.ts';

/** The reading of a line as a second person is asked for it; nothing of what the first one read is in it. */
export function fieldsToReadAgain(
  job: Job,
  { about, around }: { readonly about: number; readonly around: Surroundings },
): { readonly line: Answer; readonly fields: readonly QuantityField[] } {
  const line = job.answers.find((one) => one.place === about && !one.superseded);
  const step = around.compiled.definition.steps[line?.step ?? ''];
  const fields =
    step?.kind === 'reading' ? step.asks.filter((field): field is QuantityField => isRead(field)) : [];
  const read = fields.filter((field) => line?.readings.some((reading) => reading.field === field.name));
  if (line === undefined || read.length === 0)
    throw noWay('That line has no reading of a gauge.', 'Choose a reading that stands.');
  return { line, fields: read };
}

function isRead(field: { readonly type: string; readonly name: string }): boolean {
  // What was there before it was made safe cannot be read again.
  return field.type === 'quantity' && !field.name.includes('Before');
}

/**
 * A second person reads the same gauge again. Independent: later, alone, and without seeing the first reading. Peer:
 * together, at the time. Where the two differ by more than both uncertainties, what rested on the first counts no more.
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
  const { readings } = understand(
    fields.map(({ carried: _, optional: _optional, ...field }) => field),
    { given: action.given, job, today: around.today },
  );
  const differing = fields.filter((field) => !agree(first(line, field.name), readings[field.name]));
  const lapsed = differing.length === 0 ? [] : restsOn(job, line.place);
  return {
    kind: 'read-again',
    inputs: {
      step: job.step,
      about: line.place,
      words: { mode },
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
