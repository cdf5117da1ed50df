/** What the server stands on: its release, its folder, its disk. Nothing of the work. */
import { existsSync, statfsSync, statSync } from 'node:fs';
import type { BackupPlan } from '../backups/keep-backing-up.ts';
import { dataFolder } from '../store/data-folder.ts';
import { sqliteVersion } from '../store/sqlite-version.ts';

export interface Machine {
  readonly version: string;
  readonly startedAt: Date;
  /** The data folder; null for a log that lies in no folder of this machine. */
  readonly folder: string | null;
  readonly backups: BackupPlan | null;
}

export interface MachineFacts {
  readonly node: string;
  readonly sqlite: string;
  readonly memoryBytes: number;
  /** The log with its journal; null where it lies in no folder of this machine. */
  readonly logBytes: number | null;
  readonly freeBytes: number | null;
  /** Free where the copies go; null where none are made, or their folder cannot be looked at. */
  readonly backupFreeBytes: number | null;
  /** A disk that breaks takes the copies along. */
  readonly isBackupOnSameDisk: boolean;
}

/** Looks at the disk, which takes a moment: for the page that asks. */
export function machineFacts({ folder, backups }: Pick<Machine, 'folder' | 'backups'>): MachineFacts {
  const to = backups !== null && existsSync(backups.to) ? backups.to : null;
  return {
    node: process.versions.node,
    sqlite: sqliteVersion(),
    memoryBytes: process.memoryUsage.rss(),
    logBytes: folder === null ? null : logBytes(folder),
    freeBytes: folder === null ? null : freeBytes(folder),
    backupFreeBytes: to === null ? null : freeBytes(to),
    isBackupOnSameDisk: folder !== null && to !== null && statSync(folder).dev === statSync(to).dev,
  };
}

/** For whoever is no administrator: the share that is kept for those does not count. */
function freeBytes(folder: string): number {
  const { bavail, bsize } = statfsSync(folder);
  return bavail * bsize;
}

function logBytes(folder: string): number {
  const { database } = dataFolder(folder);
  return ['', '-wal']
    .map((end) => statSync(`${database}${end}`, { throwIfNoEntry: false })?.size ?? 0)
    .reduce((sum, size) => sum + size, 0);
}
