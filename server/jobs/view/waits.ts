import type { Looking, OpenJob } from './shift-rows.ts';
import { nameOf } from './words.ts';

/** For whom an open job waits where it stands. @example 'a signature' */
export function waitsFor({ job, compiled }: OpenJob, { names }: Looking): string {
  if (job.status === 'parked') return 'whoever takes it up again';
  if (compiled.definition.steps[job.step]?.kind === 'hold') return 'a signature';
  return nameOf(job.answers.at(-1)?.person ?? job.openedBy, names);
}

/** @returns whole minutes, never below 0 */
export function minutesSince(at: string, { nowMs }: Pick<Looking, 'nowMs'>): number {
  return Math.max(0, Math.floor((nowMs - Date.parse(at)) / 60_000));
}

/**
 * A time that people can weigh at a glance: minutes up to two hours, hours up to two days, then days.
 * @example waitWords(200) // '3 hours'
 */
export function waitWords(minutes: number): string {
  if (minutes < 120) return counted(minutes, 'minute');
  if (minutes < 2 * 24 * 60) return counted(Math.floor(minutes / 60), 'hour');
  return counted(Math.floor(minutes / (24 * 60)), 'day');
}

function counted(count: number, unit: string): string {
  return `${count} ${unit}${count === 1 ? '' : 's'}`;
}
