import { CONDITIONS, type ConditionId } from '../../safety/conditions.ts';
import { SAFE_LIMIT_PA } from '../../safety/limits.ts';
import { Refusal } from '../../safety/refusal.ts';
import type { Effects } from '../../safety/situation.ts';
import type { JobDraft } from '../evolve.ts';
import type { Job } from '../job.ts';
import { understand } from '../readings/given.ts';
import type { GearRole } from '../test-gear/roles.ts';
import type { Field, QuantityField } from '../vocabulary.ts';
import type { ActionOf, Surroundings } from './action.ts';
import { actionOf, lacksOf, openStepOf, situationNow } from './move.ts';
import { noWay } from './refusals.ts';

const GAUGE_OF: { readonly [C in ConditionId]?: GearRole } = {
  supplyAir: 'supplyGauge',
  signalAir: 'signalGauge',
  processInlet: 'inletGauge',
  processOutlet: 'outletGauge',
};

/** Lapsed conditions that stand in the open card's way and that one walk-round can show again. */
export function toProveAgain(job: Job, around: Surroundings): readonly ConditionId[] {
  const situation = situationNow(job, around.nowMs);
  const found = lacksOf(actionOf(openStepOf(job, around)), { job, situation, around });
  return found.filter((lack) => lack.lapsed !== null).map((lack) => lack.condition);
}

/** One walk-round: locks on, gauges at zero. A held pressure is not proved again so: it is set and read afresh. */
export function proveAgainFields(job: Job, around: Surroundings): readonly Field[] {
  const lapsed = toProveAgain(job, around);
  const zeros = lapsed.flatMap((id): QuantityField[] => {
    const gauge = GAUGE_OF[id];
    if (gauge === undefined || job.situation.states[id] !== 'isolated') return [];
    return [
      {
        name: `${id}AgainPa`,
        label: `${CONDITIONS[id].name}, gauge reads`,
        type: 'quantity',
        dimension: 'pressure',
        gauge,
      },
    ];
  });
  const seen = {
    name: 'asLeft',
    label: 'Locks on, caps on, case shut, nothing moved',
    type: 'choice',
    choices: YES_NO,
  } as const;
  return [seen, ...zeros];
}

const YES_NO = [
  { value: 'yes', label: 'Yes, seen by me now' },
  { value: 'no', label: 'No' },
] as const;

/** Shows again what a pause, an age or a handover lowered, by the lightest honest act. */
export function proveAgain(job: Job, action: ActionOf<'prove-again'>, around: Surroundings): JobDraft {
  const lapsed = toProveAgain(job, around);
  if (lapsed.length === 0) throw noWay('Nothing on this card has to be proved again.', 'Answer the card.');
  if (lapsed.some((id) => CONDITIONS[id].group === 'signature')) {
    throw noWay(
      'The signature over this work has lapsed.',
      'Make safe and stop, then have the hold signed again.',
    );
  }
  if (lapsed.some((id) => job.situation.states[id] === 'held' || id === 'plug')) {
    throw noWay(
      'Held air is not proved again from memory.',
      'Make safe and stop, then set and read it afresh.',
    );
  }
  const understood = understand(proveAgainFields(job, around), {
    given: action.given,
    job,
    today: around.today,
  });
  const left = lapsed.filter((id) => !zeroAgain(id, { job, readings: understood.readings }));
  if (understood.words.asLeft !== 'yes' || left.length > 0) {
    const what =
      left.length === 0
        ? 'It is not as it was left.'
        : `Not at zero: ${left.map((id) => CONDITIONS[id].name).join(', ')}.`;
    throw new Refusal({
      kind: 'unsafe',
      code: 'ILK-002',
      what,
      kept: 'Nothing was written.',
      next: 'Make safe and stop, then isolate it again.',
    });
  }
  const sets = Object.fromEntries(lapsed.map((id) => [id, job.situation.states[id]])) as Effects;
  return {
    kind: 'proved-again',
    inputs: { step: job.step, readings: Object.values(understood.readings), words: understood.words },
    outcome: { name: 'proved again', figures: {} },
    effects: { to: job.step, sets },
  };
}

function zeroAgain(
  id: ConditionId,
  {
    job,
    readings,
  }: {
    readonly job: Job;
    readonly readings: Readonly<
      Record<string, { readonly valueSi: number; readonly uncertaintySi: number | null }>
    >;
  },
): boolean {
  if (GAUGE_OF[id] === undefined || job.situation.states[id] !== 'isolated') return true;
  const reading = readings[`${id}AgainPa`];
  const limitPa = SAFE_LIMIT_PA[id as keyof typeof SAFE_LIMIT_PA];
  return reading !== undefined && Math.abs(reading.valueSi) + (reading.uncertaintySi ?? 0) <= limitPa;
}
