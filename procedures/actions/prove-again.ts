import { CONDITIONS, type ConditionId } from '../../safety/conditions.ts';
import { SAFE_LIMIT_PA } from '../../safety/limits.ts';
import { Refusal } from '../../safety/refusal.ts';
import type { Effects } from '../../safety/situation.ts';
import type { JobDraft } from '../evolve.ts';
import { type Counted, isUnlocked } from '../hold.ts';
import type { Job } from '../job.ts';
import { type Understood, understand } from '../readings/given.ts';
import type { GearRole } from '../test-gear/roles.ts';
import type { ChoiceField, Field, HoldStep, QuantityField } from '../vocabulary.ts';
import type { ActionOf, Surroundings } from './action.ts';
import { actionOf, lacksOf, openStepOf, situationNow } from './move.ts';
import { noWay } from './refusals.ts';

const GAUGE_OF: { readonly [C in ConditionId]?: GearRole } = {
  supplyAir: 'supplyGauge',
  secondSupply: 'supplyGauge',
  signalAir: 'signalGauge',
  processInlet: 'inletGauge',
  processOutlet: 'outletGauge',
};

/**
 * Lapsed conditions that stand in the open card's way and that one walk-round can show again: what its action needs, or
 * what a signer would be shown. While a signer was waited for, a shift may have ended.
 */
export function toProveAgain(job: Job, around: Surroundings): readonly ConditionId[] {
  const situation = situationNow(job, around.nowMs);
  const step = openStepOf(job, around);
  if (step.kind === 'hold') return toShowAtHold(step, { ...job, situation });
  const found = lacksOf(actionOf(step), { job, situation, around });
  return found.filter((lack) => lack.lapsed !== null).map((lack) => lack.condition);
}

/** Nothing is shown by a walk-round where a lock is gone: that is isolated again, from its lock on. */
function toShowAtHold({ evidence }: HoldStep<string>, counted: Counted): readonly ConditionId[] {
  if (evidence.some((id) => isUnlocked(id, counted))) return [];
  return evidence.filter(
    (id) => CONDITIONS[id].group === 'energy' && counted.situation.lapsed[id] !== undefined,
  );
}

/** One walk-round: locks on, gauges at zero. A held pressure is not proved again so: it is set and read afresh. */
export function proveAgainFields(job: Job, around: Surroundings): readonly Field[] {
  const lapsed = toProveAgain(job, around);
  const zeros = lapsed.flatMap((id): Field[] => {
    const gauge = GAUGE_OF[id];
    if (job.situation.states[id] !== 'isolated') return [];
    // Shown at a vent, because no gauge there could tell: it is watched again.
    if (gauge === undefined || shownAtVent(id, job)) return KEPT_BY_VENT.includes(id) ? [ventField(id)] : [];
    return [zeroField(id, gauge)];
  });
  const seen = {
    name: 'asLeft',
    label: 'Locks on, caps on, case shut, nothing moved',
    type: 'choice',
    choices: YES_NO,
  } as const;
  return [seen, ...zeros, ...(lapsed.includes('told') ? [TOLD_AGAIN] : [])];
}

/** Every field that a walk-round can ask about an energy, for whoever reads its line again. */
export function walkRoundFields(id: ConditionId): readonly (QuantityField | ChoiceField)[] {
  const gauge = GAUGE_OF[id];
  return [...(gauge === undefined ? [] : [zeroField(id, gauge)]), ventField(id)];
}

function zeroField(id: ConditionId, gauge: GearRole): QuantityField {
  return {
    name: `${id}AgainPa`,
    label: `${CONDITIONS[id].name}, gauge reads`,
    type: 'quantity',
    dimension: 'pressure',
    gauge,
  };
}

/** Energies that are shown gone by a vent without flow, where no gauge can tell. */
const KEPT_BY_VENT: readonly ConditionId[] = [
  'supplyAir',
  'secondSupply',
  'signalAir',
  'trappedAir',
  'lockUpAir',
  'oppositeAir',
  'processInlet',
  'processOutlet',
];

const SIDE_FLOW: { readonly [C in ConditionId]?: string } = {
  processInlet: 'inletFlow',
  processOutlet: 'outletFlow',
};

function shownAtVent(id: ConditionId, job: Job): boolean {
  const words = job.evidence[id]?.words ?? {};
  const side = SIDE_FLOW[id];
  const looks = [words[`${id}AgainFlow`], side === undefined ? undefined : words[side]];
  return words.method === 'vent' || looks.includes('no flow');
}

function ventField(id: ConditionId): ChoiceField {
  return {
    name: `${id}AgainFlow`,
    label: `${CONDITIONS[id].name}: vent cracked and watched twice`,
    type: 'choice',
    choices: [
      { value: 'no flow', label: 'No flow, both times' },
      { value: 'flow', label: 'It flows' },
    ],
  };
}

const TOLD_AGAIN: Field = { name: 'toldAgain', label: 'People told again, by role', type: 'text' };

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
  const left = lapsed.filter((id) => !zeroAgain(id, { job, ...understood }));
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
  { job, readings, words }: { readonly job: Job } & Pick<Understood, 'readings' | 'words'>,
): boolean {
  if (job.situation.states[id] !== 'isolated') return true;
  if (GAUGE_OF[id] === undefined || shownAtVent(id, job))
    return !KEPT_BY_VENT.includes(id) || words[`${id}AgainFlow`] === 'no flow';
  const reading = readings[`${id}AgainPa`];
  const limitPa = SAFE_LIMIT_PA[id as keyof typeof SAFE_LIMIT_PA];
  return reading !== undefined && Math.abs(reading.valueSi) + (reading.uncertaintySi ?? 0) <= limitPa;
}
