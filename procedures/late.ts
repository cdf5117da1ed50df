import { Refusal } from '../safety/refusal.ts';
import type { Late } from './job.ts';

const DAY_MS = 24 * 3_600_000;

/**
 * A line that is written later than it was read. The line keeps the server's time; what its writer says is kept beside
 * it as a claim, with the reason, and marks the line wherever it is shown.
 *
 * @param late as typed: `09:40` of today, or `2026-11-25 09:40`, in UTC
 * @throws Refusal REA-014 for a time that cannot be meant, or one without its reason
 */
export function readLate(
  late: Late,
  { today, nowMs }: { readonly today: string; readonly nowMs: number },
): Late {
  const typed = late.claimedAt.trim();
  const claimed = /^\d{1,2}:\d{2}$/.test(typed) ? `${today} ${typed.padStart(5, '0')}` : typed;
  const claimedMs = Date.parse(`${claimed.replace(' ', 'T')}:00Z`);
  const reason = late.reason.trim();
  const fields = {
    ...(Number.isNaN(claimedMs) || claimedMs > nowMs || nowMs - claimedMs > DAY_MS
      ? { readAt: 'Write the hour and minute, in UTC, of not more than a day ago: 09:40.' }
      : {}),
    ...(reason === '' ? { lateReason: 'Write why it was not written then.' } : {}),
  };
  if (Object.keys(fields).length === 0) return { claimedAt: new Date(claimedMs).toISOString(), reason };
  throw new Refusal({
    kind: 'unreadable',
    code: 'REA-014',
    what: 'A line that is written later says when it was read, and why it was not written then.',
    kept: 'What you typed is still there.',
    next: Object.values(fields).join(' '),
    fields,
  });
}
