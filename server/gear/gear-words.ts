import { GEAR_FIELDS } from '../../procedures/test-gear/fields.ts';
import { DUE_SOON_DAYS, isOverdue } from '../../procedures/test-gear/fit.ts';
import type { GearItem } from '../../procedures/test-gear/gear.ts';
import { gearText } from '../../procedures/test-gear/gear-text.ts';
import type { LogEntry } from '../store/store.ts';
import type { Gear } from './gear-stream.ts';

const DAY_MS = 24 * 3600 * 1000;

/**
 * What is to be known about a piece of gear before it is taken along; blank where nothing is.
 *
 * @param today  YYYY-MM-DD
 * @example standing({ item, retired: false }, '2026-03-04') // 'overdue by 3 days'
 */
export function standing({ item, retired }: Pick<Gear, 'item' | 'retired'>, today: string): string {
  if (item === null) return '';
  if (retired) return 'retired';
  const days = Math.round((Date.parse(item.dueOn) - Date.parse(today)) / DAY_MS);
  const faults = [];
  if (isOverdue(item, today)) faults.push(`overdue by ${daysWords(-days)}`);
  else if (days <= DUE_SOON_DAYS) faults.push(days === 0 ? 'due today' : `due in ${daysWords(days)}`);
  if (item.bleedsDown === false) faults.push('does not bleed down');
  return faults.join('; ');
}

function daysWords(days: number): string {
  return days === 1 ? '1 day' : `${days} days`;
}

/**
 * What each save changed, in words, the latest first.
 *
 * @example historyOf(entries)[0].what // 'Due on: 2027-03-04, was 2026-03-04'
 */
export function historyOf(
  entries: readonly LogEntry[],
): readonly { readonly at: string; readonly person: string | null; readonly what: string }[] {
  let before: GearItem | null = null;
  const lines = entries.map((entry) => {
    const { at, person } = entry;
    if (entry.kind === 'gear-retired')
      return { at, person, what: `Retired: ${(entry.inputs as { readonly why: string }).why}` };
    if (entry.kind === 'gear-found-wrong') {
      const { foundOn, rightUntil, howFar } = entry.inputs as Record<string, string>;
      return {
        at,
        person,
        what: `Found wrong on ${foundOn}: ${howFar}. Known to be right until ${rightUntil}; out of use`,
      };
    }
    const { item } = entry.inputs as unknown as { readonly item: GearItem };
    const what = before === null ? 'First saved' : changes(before, item);
    before = item;
    return { at, person, what };
  });
  return lines.reverse();
}

function changes(before: GearItem, after: GearItem): string {
  const [was, is] = [gearText(before), gearText(after)];
  const changed = GEAR_FIELDS.filter(({ name }) => was[name] !== is[name]).map(
    ({ name, label }) => `${label}: ${is[name] || 'blank'}, was ${was[name] || 'blank'}`,
  );
  return changed.length === 0 ? 'Saved without a change' : changed.join('; ');
}
