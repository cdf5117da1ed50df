import type { Requirement } from './requirement.ts';

/** What is asked of copies of the log and of putting them back. */
export const RELIABILITY: readonly Requirement[] = [
  {
    id: 'RL-27',
    text: 'A backup shall never be put beside the journal of another log: what was there moves away whole.',
    source: 'SQLite, howtocorrupt',
  },
  {
    id: 'RL-31',
    text: 'A backup shall be one snapshot, made while people write.',
    source: 'SQLite, lang_vacuum (VACUUM INTO)',
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
    id: 'RL-37',
    text: 'A backup shall bring what its checkpoints are checked with, and be put back on a bare machine from written steps.',
    source: 'common practice, no source',
    notBuilt:
      'the folder of the keys is backed up by hand, apart from the log; the steps stand in the README and were tried on the machine of the tests only',
  },
];
