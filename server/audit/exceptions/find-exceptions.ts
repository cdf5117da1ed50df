import { ALARM_TRIES } from '../../site-stream.ts';
import type { LogEntry } from '../../store/store.ts';
import {
  clockMoved,
  correctedLater,
  lockOverShift,
  oneScreen,
  overdueGauge,
  seldom,
  writtenLate,
} from './conduct-rules.ts';
import { noEvidence, notLive, sameEvidence, ventTooQuick } from './evidence-rules.ts';
import { type AuditedJob, type Exception, exception } from './exception.ts';
import { tooPerfect } from './too-perfect.ts';

/**
 * The exceptions of one job, in the order of their lines. Pure.
 * @param now for locks that are still on
 */
export function exceptionsOf(job: AuditedJob, now: string): readonly Exception[] {
  const rules = [
    notLive,
    ventTooQuick,
    noEvidence,
    sameEvidence,
    oneScreen,
    seldom,
    writtenLate,
    overdueGauge,
    correctedLater,
    clockMoved,
    tooPerfect,
  ];
  return [...rules.flatMap((rule) => rule(job)), ...lockOverShift(job, now)].sort(
    (one, other) => (one.lines.at(-1) ?? 0) - (other.lines.at(-1) ?? 0),
  );
}

function movedWords({ inputs }: LogEntry): string {
  const { bySeconds } = inputs as { readonly bySeconds: number };
  return `${bySeconds < 0 ? 'back' : 'ahead'} by ${Math.abs(bySeconds)} s`;
}

/** What stands in no job: runs of wrong PINs, a clock that jumped, and one that was set back under the checkpoints. */
export function siteExceptions(entries: readonly LogEntry[]): readonly Exception[] {
  return entries.flatMap((entry) => {
    if (entry.kind === 'clock-set-back') return [exception('clockMoved', entry)];
    if (entry.kind === 'clock-moved') return [exception('clockMoved', entry, movedWords(entry))];
    if (entry.kind !== 'pin-refused') return [];
    const { person, inARow } = entry.inputs as { readonly person: string | null; readonly inARow: number };
    if (inARow < ALARM_TRIES) return [];
    return [
      exception(
        'wrongPins',
        entry,
        `${inARow} in a row, ${person ?? 'a name that nobody has'}, at ${entry.screen}`,
      ),
    ];
  });
}
