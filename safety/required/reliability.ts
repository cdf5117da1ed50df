import type { Requirement } from './requirement.ts';

/** What is asked of the log on its disk, of faults of the machine, of copies and of putting them back. */
export const RELIABILITY: readonly Requirement[] = [
  {
    id: 'RL-01',
    text: 'A commit that was answered shall have reached the disk: a write-ahead log, with a sync for each commit.',
    source: 'SQLite, pragma synchronous and wal',
  },
  {
    id: 'RL-02',
    text: 'Where a rollback journal is used, its folder shall be synced too.',
    source: 'SQLite, pragma synchronous',
    notBuilt: 'the journal is a write-ahead log, for which this changes nothing',
  },
  {
    id: 'RL-03',
    text: 'Whoever opens the database to write shall set this anew, for it is not stored in the file.',
    source: 'SQLite, pragma synchronous',
    notBuilt:
      'one function opens it to write and sets it; the power cut (RL-14) would show one that does not',
  },
  {
    id: 'RL-04',
    text: 'The data folder shall lie on a disk of this machine, not on a network.',
    source: 'SQLite, useovernet',
  },
  {
    id: 'RL-05',
    text: 'The drive shall keep what it said that it kept.',
    source: 'SQLite, howtocorrupt',
    notBuilt:
      'a matter of the machine: the README asks for a drive with protection against loss of power, and nothing more is claimed',
  },
  {
    id: 'RL-06',
    text: 'The SQLite in use shall be without the defect of the versions up to 3.51.2, which two connections at once could spoil.',
    source: 'news reports of March 2026, second hand',
  },
  {
    id: 'RL-07',
    text: 'Nothing else shall open and close the files of the database in the process of the server, for that drops its locks.',
    source: 'SQLite, howtocorrupt',
  },
  {
    id: 'RL-08',
    text: 'A writer shall take its lock when it begins, and wait for a moment.',
    source: 'SQLite, lang_transaction',
  },
  {
    id: 'RL-09',
    text: 'Somebody who reads slowly shall not let the write-ahead log grow without end.',
    source: 'SQLite, wal',
  },
  {
    id: 'RL-10',
    text: 'The numbers of entries shall be the program’s own, which no tidying of the file renumbers.',
    source: 'SQLite, lang_vacuum',
  },
  {
    id: 'RL-11',
    text: 'After a failed write the transaction shall be over, whatever SQLite did by itself.',
    source: 'SQLite, lang_transaction',
  },
  {
    id: 'RL-12',
    text: 'An answer shall go out only when the entry is durable, and the same request sent again shall get the same answer and write nothing.',
    source: 'common practice, no source',
  },
  {
    id: 'RL-13',
    text: 'A server that is killed shall lose nothing that it answered, and keep at most one entry more.',
    source: 'SQLite, atomiccommit',
  },
  {
    id: 'RL-14',
    text: 'A power cut shall take nothing that was answered.',
    source: 'SQLite, atomiccommit',
  },
  {
    id: 'RL-15',
    text: 'Less than a sync for each commit shall not be used: its loss leaves a chain that looks whole.',
    source: 'SQLite, pragma synchronous',
    notBuilt: 'the start refuses it (RL-01), and no setting of ours asks for it',
  },
  {
    id: 'RL-16',
    text: 'The test of the power cut shall be shown to fail for a program that waits for no disk.',
    source: 'common practice, no source',
  },
  {
    id: 'RL-17',
    text: 'A full disk shall be told as what it is, with everything before it kept, and writing shall go on when there is room.',
    source: 'SQLite, rescode',
  },
  {
    id: 'RL-18',
    text: 'A start on a full disk shall say so and leave nothing half made.',
    source: 'common practice, no source',
  },
  {
    id: 'RL-19',
    text: 'On a disk that became read-only nothing shall be answered as kept.',
    source: 'SQLite, rescode',
  },
  {
    id: 'RL-20',
    text: 'A log on a medium that cannot be written shall be readable.',
    source: 'SQLite, wal',
    notBuilt:
      'evidence goes out as an export or a backup, each whole in itself; the database beside its journal is not made for such a medium',
  },
  {
    id: 'RL-21',
    text: 'After a failed sync nothing more shall be written until a new start.',
    source: 'common practice, no source: the system may have dropped what it could not write',
  },
  {
    id: 'RL-22',
    text: 'A clock that was set back shall be written down, and the order shall come from the numbers.',
    source: 'common practice, no source',
  },
  {
    id: 'RL-23',
    text: 'A clock that jumps ahead shall not let anything pass.',
    source: 'common practice, no source',
    notBuilt:
      'the jump is written down with both times (R-10), and sessions and proofs of isolation end early, which is the safe side; a timed wait may end early too, and its card asks for what the gauge reads all the same',
  },
  {
    id: 'RL-24',
    text: 'Two writers at once shall not lose or double an entry.',
    source: 'SQLite, rescode',
  },
  {
    id: 'RL-25',
    text: 'A second server on the same folder shall be told so and end.',
    source: 'common practice, no source',
  },
  {
    id: 'RL-26',
    text: 'An older backup that was put back shall be told from the log by its checkpoint.',
    source: 'common practice, no source',
  },
  {
    id: 'RL-27',
    text: 'A backup shall never be put beside the journal of another log: what was there moves away whole.',
    source: 'SQLite, howtocorrupt',
  },
  {
    id: 'RL-28',
    text: 'A copy without its write-ahead log shall be told from the log by its checkpoint.',
    source: 'SQLite, wal',
  },
  {
    id: 'RL-29',
    text: 'The whole log shall be read again from time to time, for a disk can change what it holds.',
    source: 'SQLite, cksumvfs',
  },
  {
    id: 'RL-30',
    text: 'A database file that was moved or replaced shall take no more entries.',
    source: 'SQLite, howtocorrupt',
  },
  {
    id: 'RL-31',
    text: 'A backup shall be one snapshot, made while people write.',
    source: 'SQLite, lang_vacuum (VACUUM INTO)',
  },
  {
    id: 'RL-32',
    text: 'A copy and its folder shall be synced before it counts as one.',
    source: 'SQLite, lang_vacuum',
  },
  {
    id: 'RL-33',
    text: 'A copy shall have its name only once the verifier of the log has read it whole.',
    source:
      'common practice, no source: a copy that was broken off passed SQLite’s own check with a table missing',
  },
  {
    id: 'RL-34',
    text: 'Where a backup cannot be made, it shall be said, no half of it shall stay, and earlier ones shall.',
    source: 'common practice, no source',
  },
  {
    id: 'RL-35',
    text: 'Backing up, putting back and starting on it shall be tried in the tests.',
    source: 'common practice, no source',
  },
  {
    id: 'RL-36',
    text: 'Links between tables shall be checked too.',
    source: 'SQLite, pragma foreign_key_check',
    notBuilt: 'the tables have none; the verifier of the log checks what belongs together',
  },
  {
    id: 'RL-37',
    text: 'A backup shall bring what its checkpoints are checked with, and be put back on a bare machine from written steps.',
    source: 'common practice, no source',
    notBuilt:
      'the folder of the keys is backed up by hand, apart from the log; the steps stand in the README and were tried on the machine of the tests only',
  },
  {
    id: 'RL-38',
    text: 'A log of an earlier form shall be copied whole before a start changes its form, and not be changed where that fails.',
    source: 'common practice, no source',
  },
];
