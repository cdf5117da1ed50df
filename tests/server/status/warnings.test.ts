import { describe, expect, test } from 'vitest';
import { shownBytes } from '../../../server/status/shown-bytes.ts';
import { type Looked, warningsOf } from '../../../server/status/warnings.ts';

const NOW = new Date('2026-03-04T08:00:00.000Z');
const hoursAgo = (hours: number) => new Date(NOW.getTime() - hours * 3_600_000).toISOString();
const GIB = 2 ** 30;

const BACKUP = { at: hoursAgo(5), folder: 'copies/one', entries: 40, check: '1', photosLost: 0 };
const WELL: Looked = {
  machine: {
    version: '1.0.0',
    startedAt: new Date(hoursAgo(200)),
    folder: 'data',
    backups: { to: 'copies', everyHours: 24, keepDays: 90 },
  },
  facts: {
    node: '20.1.0',
    sqlite: '3.53.0',
    memoryBytes: 1e8,
    logBytes: 2e8,
    freeBytes: 50 * GIB,
    backupFreeBytes: 50 * GIB,
    isBackupOnSameDisk: false,
  },
  marks: {
    backup: BACKUP,
    failed: null,
    verification: { at: hoursAgo(5), entries: 40, isWhole: true, by: 'a backup' },
  },
  now: NOW,
  checkpoint: { at: hoursAgo(1), isFailing: false, distrust: null },
  isOpenHttp: false,
};

interface Change {
  readonly machine?: Partial<Looked['machine']>;
  readonly facts?: Partial<Looked['facts']>;
  readonly marks?: Partial<Looked['marks']>;
  readonly checkpoint?: Looked['checkpoint'];
  readonly isOpenHttp?: boolean;
}

const changed = ({ machine, facts, marks, ...rest }: Change): Looked => ({
  ...WELL,
  ...rest,
  machine: { ...WELL.machine, ...machine },
  facts: { ...WELL.facts, ...facts },
  marks: { ...WELL.marks, ...marks },
});
const codes = (looked: Looked) =>
  warningsOf(looked).map(({ code, isUrgent }) => code + (isUrgent ? '!' : ''));

describe('whoever looks after the server', () => {
  test('reads nothing where all is well', () => {
    expect(codes(WELL)).toEqual([]);
  });

  test.each<[string, Change, readonly string[]]>([
    ['little space', { facts: { freeBytes: GIB - 1 } }, ['space-low']],
    ['hardly any space', { facts: { freeBytes: 99 * 2 ** 20 } }, ['space-low!']],
    ['just enough space', { facts: { freeBytes: GIB } }, []],
    ['no room for the next copy', { facts: { backupFreeBytes: 3e8 } }, ['backup-space-low']],
    [
      'a log in a database',
      { machine: { folder: null, backups: null }, marks: { backup: null } },
      ['database-backups'],
    ],
    ['no backups at all', { machine: { backups: null }, marks: { backup: null } }, ['no-backups']],
    [
      'a backup that failed, once and not also as late',
      { marks: { backup: { ...BACKUP, at: hoursAgo(60) }, failed: { at: hoursAgo(1), why: 'No room.' } } },
      ['backup-failed!'],
    ],
    ['a backup that is a day old and an hour', { marks: { backup: { ...BACKUP, at: hoursAgo(25) } } }, []],
    ['a backup that is late', { marks: { backup: { ...BACKUP, at: hoursAgo(27) } } }, ['backup-late!']],
    ['none ever, on a server that runs for days', { marks: { backup: null } }, ['backup-late!']],
    [
      'none yet, on one that just began',
      { marks: { backup: null, verification: null }, machine: { startedAt: NOW } },
      [],
    ],
    ['copies on the disk of the log', { facts: { isBackupOnSameDisk: true } }, ['backup-same-disk']],
    ['photos that are gone', { marks: { backup: { ...BACKUP, photosLost: 2 } } }, ['photos-lost!']],
    ['a log that was never read again', { marks: { verification: null } }, ['never-verified']],
    [
      'a log that was read long ago',
      { marks: { verification: { at: hoursAgo(200), entries: 1, isWhole: true, by: 'a person' } } },
      ['verified-long-ago'],
    ],
    [
      'a log that is not whole',
      { marks: { verification: { at: hoursAgo(2), entries: 1, isWhole: false, by: 'a person' } } },
      ['not-whole!'],
    ],
    [
      'a checkpoint that fails',
      { checkpoint: { at: null, isFailing: true, distrust: null } },
      ['checkpoint-failing!'],
    ],
    [
      'another log',
      { checkpoint: { at: null, isFailing: false, distrust: 'It is shorter.' } },
      ['read-only!'],
    ],
    ['no checkpoints', { checkpoint: null }, ['no-checkpoints']],
    ['no encryption', { isOpenHttp: true }, ['open-http']],
    [
      'several things, the most urgent first',
      { isOpenHttp: true, facts: { freeBytes: 1, isBackupOnSameDisk: true } },
      ['space-low!', 'backup-same-disk', 'open-http'],
    ],
  ])('is told of %s', (_, change, expected) => {
    expect(codes(changed(change))).toEqual(expected);
  });

  test('reads sizes as people say them', () => {
    expect([0, 1023, 1024, 1536, 150 * 2 ** 20, 2 ** 40, 2 ** 55].map(shownBytes)).toEqual([
      '0 bytes',
      '1023 bytes',
      '1.0 KiB',
      '1.5 KiB',
      '150 MiB',
      '1.0 TiB',
      '32768 TiB',
    ]);
  });
});
