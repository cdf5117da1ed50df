import type { Requirement } from './requirement.ts';

const TRIED = 'common practice, no source: a fault is believed to be borne only where it was made';

/** Which faults of the machine are made on purpose, so that what `reliability.ts` asks is seen to hold under them. */
export const FAULTS: readonly Requirement[] = [
  {
    id: 'R-01',
    text: 'A program that is killed at any moment shall have kept all that it answered; the long run kills it 200 times.',
    source: TRIED,
  },
  {
    id: 'R-02',
    text: 'The same shall hold for a kill at each write and at each sync, counted until none is met any more.',
    source: 'SQLite, testing: crash tests',
  },
  {
    id: 'R-03',
    text: 'The same shall hold for a disk whose power is cut, and the test shall be seen to fail for a program that waits for no disk.',
    source: TRIED,
  },
  {
    id: 'R-04',
    text: 'A sync that fails shall end the writing, with all that was answered kept.',
    source: 'SQLite, testing: I/O error tests',
  },
  {
    id: 'R-05',
    text: 'A disk that is really full shall be told as that, and writing shall go on when there is room.',
    source: TRIED,
  },
  {
    id: 'R-06',
    text: 'The same shall hold where the system says at a chosen write that there is no room.',
    source: 'SQLite, testing: I/O error tests',
  },
  {
    id: 'R-07',
    text: 'A file that may grow no more shall end the writing, with all that was answered kept.',
    source: TRIED,
  },
  {
    id: 'R-08',
    text: 'Calls of the C library that fail at random shall lose nothing that was answered.',
    source: TRIED,
    notBuilt:
      'the same calls are failed and killed at a chosen number below the C library (R-02, R-04, R-06), which meets programs that call the system by themselves too and tells which one it was',
  },
  {
    id: 'R-09',
    text: 'A disk that becomes read-only shall be told, and nothing shall be answered as kept on it.',
    source: TRIED,
  },
  {
    id: 'R-10',
    text: 'A clock that jumps ahead or back under the running server shall be written down, refuse no work, and leave the order of entries alone.',
    source: TRIED,
  },
  {
    id: 'R-11',
    text: 'Several that write at once shall leave no gap and no double; a second program shall be kept out.',
    source: TRIED,
  },
  {
    id: 'R-12',
    text: 'An older backup, a copy without its journal, a changed line and a cut end shall each be found.',
    source: TRIED,
  },
  {
    id: 'R-13',
    text: 'On a slow disk the page shall say that it is keeping, and post once.',
    source: TRIED,
  },
  {
    id: 'R-14',
    text: 'A program that runs out of memory shall have kept all that it answered.',
    source: TRIED,
    notBuilt:
      'the system ends it as a kill does (R-01); that memory stays flat under whatever is sent is held by the hostile requests',
  },
  {
    id: 'R-15',
    text: 'Blocks of the disk that fail or come back changed shall be found.',
    source: TRIED,
    notBuilt:
      'it wants parts of the kernel that machines for tests do not have; a changed block changes a hash, which R-12 tries by hand, and each backup reads every line again',
  },
  {
    id: 'R-16',
    text: 'Anchors shall lie where not even the server can change them.',
    source: TRIED,
    notBuilt:
      'whoever is administrator undoes every mark of a file system; paper and a file on another machine are what the pages ask for',
  },
  {
    id: 'R-17',
    text: 'Where the server goes away in the middle of an act the page shall say that it does not know, ask by the number of the request, and assume nothing.',
    source: TRIED,
  },
];
