import type { GearItem } from './gear.ts';

/** What a piece of gear is there for in a job. A supply gauge is its own: it is never the signal gauge. */
export const GEAR_ROLES = {
  signalGauge: { label: 'Signal gauge', kind: 'pressure gauge', where: 'both' },
  checkGauge: { label: 'Second gauge, for the rig check', kind: 'pressure gauge', where: 'both' },
  travelIndicator: { label: 'Travel indicator', kind: 'dial indicator', where: 'both' },
  regulator: { label: 'Regulator that bleeds', kind: 'regulator', where: 'both' },
  supplyGauge: { label: 'Supply gauge', kind: 'pressure gauge', where: 'line' },
  inletGauge: { label: 'Gauge at the inlet drain', kind: 'pressure gauge', where: 'line' },
  outletGauge: { label: 'Gauge at the outlet drain', kind: 'pressure gauge', where: 'line' },
  seatGauge: { label: 'Gauge for the test pressure on the seat', kind: 'pressure gauge', where: 'both' },
} as const satisfies Record<string, { label: string; kind: GearItem['kind']; where: 'both' | 'line' }>;

export type GearRole = keyof typeof GEAR_ROLES;

/** What a valve under test air wants; a gauge for the seat is wanted by its own test alone. */
export const ALL_ROLES = (Object.keys(GEAR_ROLES) as readonly GearRole[]).filter(
  (role) => role !== 'seatGauge',
);

/** @example rolesAt('bench', ['signalGauge', 'supplyGauge']) // ['signalGauge'] */
export function rolesAt(
  place: 'bench' | 'line',
  roles: readonly GearRole[] = ALL_ROLES,
): readonly GearRole[] {
  return roles.filter((role) => GEAR_ROLES[role].where === 'both' || place === 'line');
}

/** What is chosen for a job: a procedure may want on the bench what others want in the line alone. */
export function rolesFor(
  {
    gear,
    gearOnBench = [],
  }: { readonly gear: readonly GearRole[]; readonly gearOnBench?: readonly GearRole[] },
  place: 'bench' | 'line',
): readonly GearRole[] {
  const there = rolesAt(place, gear);
  return gear.filter((role) => there.includes(role) || gearOnBench.includes(role));
}
