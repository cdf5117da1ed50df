/** What may be chosen where: the same list stands on the card of a hub, in the rule that reads it, and in the proof. */
import type { Hub } from '../check.ts';
import { CHECK_IDS, type CheckId, checkOf, isCheckId } from '../checks.ts';
import { MENDED_HERE } from '../repair-procedures.ts';
import { type RepairId, repairOf } from '../repairs.ts';

/** Looks that open actuator or body: their own procedures do that, with their own holds. Here only what they showed is written. */
export const LOOKED_ELSEWHERE: readonly CheckId[] = [
  'openActuator',
  'openBody',
  'benchSetUncoupled',
  'plugFollowsStem',
];

/** Done with test air on the case of an isolated valve, behind a hold. */
export const ON_TEST_AIR: readonly CheckId[] = ['strokeOnTestAir', 'crossLeak'];

/** How a hub is called in the id of a step. */
export const HUB_TAIL: Readonly<Record<Hub, string>> = {
  'in service': 'InService',
  bypassed: 'OnBypass',
  isolated: 'Isolated',
};

/** Where a check of the list can be answered in this procedure. */
export function hubsOf(id: CheckId): readonly Hub[] {
  return LOOKED_ELSEWHERE.includes(id) ? ['in service'] : checkOf(id).hubs;
}

/** The card on which the repair is named. */
export function nameStepId(hub: Hub): string {
  return `nameCause${HUB_TAIL[hub]}`;
}

export function checksAt(hub: Hub): readonly CheckId[] {
  return CHECK_IDS.filter((id) => hubsOf(id).includes(hub));
}

/** What is mended on the spot: in service or on the bypass, never behind locks. */
export function mendsAt(hub: Hub): readonly RepairId[] {
  if (hub === 'isolated') return [];
  return MENDED_HERE.filter((id) => hub === 'bypassed' || repairOf(id).hub === 'in service');
}

/** Ways on from a hub, beside checks and mends. */
const WAYS_ON = {
  'in service': { name: 'Name the cause, and give the valve back', bypass: 'Put the valve on its bypass' },
  bypassed: {
    name: 'Name the cause, and give the valve back',
    fitGauge: 'Fit a gauge that a check wants',
    isolate: 'Isolate the valve and show it safe',
    giveBack: 'Give the valve back with nothing named, to look on in service',
  },
  isolated: {
    name: 'Name the cause, and give the valve back',
    giveBack: 'Give the valve back with nothing named, to look on in service',
  },
} as const satisfies Readonly<Record<Hub, Readonly<Record<string, string>>>>;

export type WayOn = 'name' | 'bypass' | 'fitGauge' | 'isolate' | 'giveBack';

const MEND = 'mend ';

export function mendChoice(id: RepairId): string {
  return `${MEND}${id}`;
}

export type Chosen =
  | { readonly kind: 'check'; readonly check: CheckId }
  | { readonly kind: 'mend'; readonly repair: RepairId }
  | { readonly kind: 'way'; readonly way: string };

/** @example readChoice('mend clearVent') // { kind: 'mend', repair: 'clearVent' } */
export function readChoice(choice: string): Chosen {
  if (isCheckId(choice)) return { kind: 'check', check: choice };
  const repair = MENDED_HERE.find((id) => mendChoice(id) === choice);
  return repair === undefined ? { kind: 'way', way: choice } : { kind: 'mend', repair };
}

export interface HubChoice {
  readonly value: string;
  readonly label: string;
}

/** Everything that any valve may be offered at this hub; which of it this valve has, the rule knows. */
export function choicesAt(hub: Hub): readonly HubChoice[] {
  return [
    ...Object.entries(WAYS_ON[hub]).map(([value, label]) => ({ value, label })),
    ...checksAt(hub).map((id) => ({ value: id, label: checkOf(id).title })),
    ...mendsAt(hub).map((id) => ({ value: mendChoice(id), label: repairOf(id).words })),
  ];
}

/** Outcomes of the rule that reads the card of this hub: every choice, and the lack of a gauge. */
export function outcomesAt(hub: Hub): readonly string[] {
  return choicesAt(hub).map(({ value }) => value);
}
