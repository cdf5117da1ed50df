import { Refusal } from '../../safety/refusal.ts';
import type { ValveSheet } from '../valve-sheet/sheet.ts';
import { gearFaults, sharedGauges } from './fit.ts';
import type { GearItem } from './gear.ts';
import { GEAR_ROLES, type GearRole } from './roles.ts';
import { wantedOf } from './wanted.ts';

export type ChosenGear = { readonly [R in GearRole]?: GearItem };

export interface GearChoice {
  /** What the procedure wants chosen at this place. */
  readonly roles: readonly GearRole[];
  readonly sheet: ValveSheet;
  /** Number of the gear chosen for each role; blank or left out where none is. */
  readonly numbers: { readonly [R in GearRole]?: string };
  /** Gear that is in use, by its number. */
  readonly find: (number: string) => GearItem | null;
  /** YYYY-MM-DD */
  readonly today: string;
}

/**
 * The gear that a job is opened with: one for each role, each fit for this valve today, none there for two pressures.
 *
 * @throws Refusal OPN-006 with every piece that does not fit, by the role that it was chosen for
 * @example chosenGear({ roles: rolesAt('bench'), sheet, numbers, find, today: '2026-03-04' }).signalGauge?.number // 'G-07'
 */
export function chosenGear(choice: GearChoice): ChosenGear {
  const wrong: { [R in GearRole]?: string } = {};
  const gear: { [R in GearRole]?: GearItem } = {};
  for (const role of choice.roles) {
    const found = look(role, choice);
    if (typeof found === 'string') wrong[role] = found;
    else gear[role] = found;
  }
  for (const { role, what } of sharedGauges(gear)) wrong[role] = `${what} Choose another.`;
  if (Object.keys(wrong).length > 0) throw unfit(wrong);
  return gear;
}

/** The piece chosen, or why it will not do. */
function look(role: GearRole, { numbers, find, sheet, today }: GearChoice): GearItem | string {
  const { kind } = GEAR_ROLES[role];
  const number = (numbers[role] ?? '').trim();
  if (number === '') return `Choose a ${kind}.`;
  const item = find(number);
  if (item === null) return `There is no ${number} in use. Choose a ${kind} of the list.`;
  const stopping = gearFaults(item, { wanted: wantedOf(role, sheet), today }).filter(({ stops }) => stops);
  return stopping.length === 0 ? item : `${stopping.map(({ what }) => what).join(' ')} Choose another.`;
}

function unfit(wrong: { readonly [R in GearRole]?: string }): Refusal {
  const count = Object.keys(wrong).length;
  return new Refusal({
    kind: 'unreadable',
    code: 'OPN-006',
    what: count === 1 ? 'One piece of test gear does not fit.' : `${count} pieces of test gear do not fit.`,
    kept: 'Your choices stand in the form; no job was opened.',
    next: 'Put right what is named there, and open the job again.',
    fields: wrong,
  });
}
