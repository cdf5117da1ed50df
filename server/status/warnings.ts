/** What whoever looks after the server should see to, in words. Pure. */
import { nextDueMs } from '../backups/keep-backing-up.ts';
import type { Marks } from '../backups/marks.ts';
import { shownTime } from '../shown-time.ts';
import type { Machine, MachineFacts } from './machine.ts';
import { shownBytes } from './shown-bytes.ts';

export interface Warning {
  readonly code: string;
  readonly text: string;
  /** Work stops, or can be lost, unless somebody sees to it now. */
  readonly isUrgent: boolean;
}

export interface Looked {
  readonly machine: Machine;
  readonly facts: MachineFacts;
  readonly marks: Marks;
  readonly now: Date;
  readonly checkpoint: {
    readonly at: string | null;
    readonly isFailing: boolean;
    readonly distrust: string | null;
  } | null;
  readonly isOpenHttp: boolean;
}

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
const GIB = 2 ** 30;
/** Where less is free, somebody sees to it: the log grows by some megabytes a shift, a photo by some more. */
const FREE_BYTES_MIN = GIB;
/** Where less is free, acts may be refused today. */
const FREE_BYTES_URGENT = 100 * 2 ** 20;
/** A copy may take an hour, and a server may have been off over night. */
const LATE_MS = 2 * HOUR_MS;
const VERIFIED_DAYS_MAX = 8;

/** The most urgent first. */
export function warningsOf(looked: Looked): readonly Warning[] {
  const all = [...ofTheLog(looked), ...ofSpace(looked), ...ofBackups(looked), ...ofVerification(looked)];
  const open = looked.isOpenHttp
    ? [calm('open-http', 'There is no encryption: whoever is on this network can read PINs.')]
    : [];
  return [...all, ...open].sort((a, b) => Number(b.isUrgent) - Number(a.isUrgent));
}

const urgent = (code: string, text: string): Warning => ({ code, text, isUrgent: true });
const calm = (code: string, text: string): Warning => ({ code, text, isUrgent: false });

function ofTheLog({ checkpoint }: Looked): readonly Warning[] {
  if (checkpoint === null)
    return [calm('no-checkpoints', 'No checkpoints are kept: a log that was cut short would not show.')];
  const { distrust, isFailing } = checkpoint;
  if (distrust !== null)
    return [
      urgent(
        'read-only',
        `The log takes no work, because it is not the one that was here before. ${distrust}`,
      ),
    ];
  if (isFailing)
    return [
      urgent(
        'checkpoint-failing',
        'The last checkpoint could not be written. Look at the disk that the key lies on.',
      ),
    ];
  return [];
}

function ofSpace({ facts: { freeBytes, backupFreeBytes, logBytes } }: Looked): readonly Warning[] {
  const warnings: Warning[] = [];
  if (freeBytes !== null && freeBytes < FREE_BYTES_MIN) {
    const text = `Only ${shownBytes(freeBytes)} are free on the disk of the log. Make room: on a full disk no act is kept.`;
    warnings.push((freeBytes < FREE_BYTES_URGENT ? urgent : calm)('space-low', text));
  }
  if (backupFreeBytes !== null && logBytes !== null && backupFreeBytes < 2 * logBytes + FREE_BYTES_URGENT) {
    const text = `Only ${shownBytes(backupFreeBytes)} are free where the backups go, and one takes ${shownBytes(logBytes)}. Make room there.`;
    warnings.push(calm('backup-space-low', text));
  }
  return warnings;
}

function ofBackups(looked: Looked): readonly Warning[] {
  const { machine, facts, marks, now } = looked;
  if (machine.backups === null && machine.folder === null)
    return [
      calm(
        'database-backups',
        'The log lies in a database: back that up by its own means, and check the log on the page “Is the log whole?”.',
      ),
    ];
  if (machine.backups === null)
    return [
      calm(
        'no-backups',
        'This server makes no backups by itself. Name a folder for them in YOKESIDE_BACKUPS, on another disk.',
      ),
    ];
  const warnings: Warning[] = [];
  const { backup, failed } = marks;
  if (failed !== null)
    warnings.push(urgent('backup-failed', `The backup of ${shownTime(failed.at)} failed. ${failed.why}`));
  const { everyHours } = machine.backups;
  const dueMs = nextDueMs({ backup, failed: null }, { everyHours, nowMs: now.getTime() });
  const isLate =
    backup === null ? now.getTime() - machine.startedAt.getTime() > LATE_MS : now.getTime() > dueMs + LATE_MS;
  if (failed === null && isLate)
    warnings.push(
      urgent(
        'backup-late',
        backup === null
          ? 'No backup was ever made.'
          : `The last backup is of ${shownTime(backup.at)}, and one is due every ${everyHours} hours.`,
      ),
    );
  if (backup !== null && backup.photosLost > 0)
    warnings.push(
      urgent(
        'photos-lost',
        `The log has lost ${backup.photosLost} photos. Look for them in an older backup.`,
      ),
    );
  if (facts.isBackupOnSameDisk)
    warnings.push(
      calm(
        'backup-same-disk',
        'The backups lie on the same disk as the log. If it breaks, both are gone: name a folder on another one.',
      ),
    );
  return warnings;
}

function ofVerification({ marks: { verification }, now, machine }: Looked): readonly Warning[] {
  if (verification === null) {
    if (now.getTime() - machine.startedAt.getTime() < DAY_MS) return [];
    return [
      calm('never-verified', 'The whole log was never read again. Check it on the page “Is the log whole?”.'),
    ];
  }
  const { at, isWhole } = verification;
  if (!isWhole)
    return [
      urgent('not-whole', `On ${shownTime(at)} the log was found not whole. Make the work safe and stop.`),
    ];
  if (now.getTime() - Date.parse(at) < VERIFIED_DAYS_MAX * DAY_MS) return [];
  return [
    calm(
      'verified-long-ago',
      `The whole log was read last on ${shownTime(at)}. Check it once a week: a disk can change what it holds.`,
    ),
  ];
}
